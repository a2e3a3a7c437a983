"""Which English a book is written in, by its own spellings, words and marks.

A picture book of 300 words may have one spelling that tells, and that one may be the slip. So what else
parts the two Englishes votes too: words of one country, Mr without a point, single quotation marks.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from proofkit.book import Book
from proofkit.settings import English
from proofkit.words.country_words import country_words
from proofkit.words.lists import word_set
from proofkit.words.quotations import quotations_of
from proofkit.words.variants import other_english, variants
from proofkit.words.vocabulary import Vocabulary, vocabulary_of

# What VarCon doesn't tell apart (mum is also an adjective) or doesn't hold, and every story says. Some
# families south of the Sahara or in the Midlands have a British Mom, so she has one vote in all.
_KIN = {
    "mum": English.BRITISH,
    "mums": English.BRITISH,
    "mom": English.AMERICAN,
    "moms": English.AMERICAN,
    "mommy": English.AMERICAN,
}
# A mummy may lie in a pyramid; Mummy doesn't.
_KIN_NAMES = {"mummy": English.BRITISH}
# Beside the words of country_words(): said at home, and known abroad.
_AT_HOME: dict[English, frozenset[str]] = {
    English.BRITISH: word_set("grandad anorak plimsolls"),
    English.AMERICAN: word_set("zipper zippers"),
}
_TITLE = re.compile(r"\b(?:Mr|Mrs|Dr)(\.?) +(?=[A-Z])")
_LEAST_SPEECHES = 3
# One word used all through a book is one decision: beyond this it adds nothing.
_MOST_VOTES_OF_A_WORD = 3
# A form that the other English has too, though seldom, tells half as much; so does a doubled
# consonant (travelling), which many Americans learn as well. Nobody learns traveling in Britain.
_HALF = 0.5
_DOUBLED = re.compile(r"([b-df-hj-np-tv-z])\1(?=e[dr]|ing|ers?\b|ous)")
_CLEAR_MAJORITY = 3.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Votes:
    """What the book says: each use of a telling spelling counts one, up to three a word.

    A word of one country, Mr without a point and single quotation marks count one for the whole book.
    Mr. with its point and double marks tell nothing: many British publishers have them.
    """

    british: float
    american: float

    @property
    def english(self) -> English:
        """The English with more votes. A tie, or no vote at all, is British."""
        return English.AMERICAN if self.american > self.british else English.BRITISH

    @property
    def clear(self) -> bool:
        """Whether one side has at least three votes, and three times as many as the other."""
        more, fewer = max(self.british, self.american), min(self.british, self.american)
        return more >= _CLEAR_MAJORITY and more >= _CLEAR_MAJORITY * fewer


def english_of(book: Book, vocabulary: Vocabulary) -> English:
    """The English that the book is in: the one that more of its spellings, words and marks are at home in.

    Spellings such as "realize" are at home in both and don't vote. A tie is British.
    """
    return votes(book, vocabulary).english


def english_for(book: Book, chosen: English | None) -> English:
    """The English that the author chose, or else the one that the book is in."""
    return chosen or english_of(book, vocabulary_of(book))


def votes(book: Book, vocabulary: Vocabulary) -> Votes:
    """How the book votes."""
    sums = dict.fromkeys(English, 0.0)
    for english, weight in (*_spellings(vocabulary), *_words(vocabulary), *_marks(book)):
        sums[english] += weight
    return Votes(british=sums[English.BRITISH], american=sums[English.AMERICAN])


def _spellings(vocabulary: Vocabulary) -> Iterator[tuple[English, float]]:
    for word, use in vocabulary.uses.items():
        english = _english_of_word(vocabulary, word)
        if english:
            weak = variants().seldom_in(word, other_english(english)) or (
                english is English.BRITISH and _is_doubled(word, english)
            )
            most = 1 if word in _KIN or word in _KIN_NAMES else _MOST_VOTES_OF_A_WORD
            yield english, (_HALF if weak else 1.0) * min(use.count, most)


def _words(vocabulary: Vocabulary) -> Iterator[tuple[English, float]]:
    for own in country_words():
        if len(own.parts) == 1 and vocabulary.count(own.word):
            yield own.english, 1.0
    for english, words in _AT_HOME.items():
        for word in words:
            if vocabulary.count(word):
                yield english, 1.0


def _marks(book: Book) -> Iterator[tuple[English, float]]:
    points = {title[1] for page in book.pages for title in _TITLE.finditer(page.prose)}
    if points == {""}:
        yield English.BRITISH, 1.0
    quotations = quotations_of(book)
    if not quotations.double and len(quotations.speech) >= _LEAST_SPEECHES:
        yield English.BRITISH, 1.0


def _english_of_word(vocabulary: Vocabulary, word: str) -> English | None:
    if word in _KIN:
        return _KIN[word]
    if vocabulary.is_name(word):
        return _KIN_NAMES.get(word)
    parts = {variants().belongs_to(part) for part in word.replace("‑", "-").split("-")} - {None}
    return parts.pop() if len(parts) == 1 else None


def _is_doubled(word: str, english: English) -> bool:
    other = variants().in_english(word, other_english(english))
    return other is not None and _DOUBLED.sub(r"\1", word) == _DOUBLED.sub(r"\1", other)
