"""Things that have one name in Britain and another in America, where the name is plain.

The table is ``wordlists/country-words.tsv``, made from VarCon's voc.tab (licence:
``wordlists/varcon-README.txt``) and pairs of our own by ``wordlists/make_country_words.py``. What both countries
say in some sense (jumper, biscuit, boot, chips, pants) is not in it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from proofkit.book import Book, Span
from proofkit.settings import English
from proofkit.words.data import wordlist
from proofkit.words.vocabulary import Vocabulary, opens_sentence

_TABLE = "country-words.tsv"
_PARTS = re.compile(r"[^\s]+")


@dataclass(frozen=True, slots=True, kw_only=True)
class CountryWord:
    """A word or phrase of ``english``, and what the other English says, the usual first.

    ``not_before``: words that make it another thing when they follow ("candy cane").
    """

    word: str
    english: English
    others: tuple[str, ...]
    not_before: tuple[str, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """Its words."""
        return tuple(_PARTS.findall(self.word))


@lru_cache(maxsize=1)
def country_words() -> tuple[CountryWord, ...]:
    """The whole table, phrases of most words first."""
    words = []
    for row in wordlist(_TABLE).read_text(encoding="utf-8").splitlines():
        if not row.startswith("#"):
            english, word, others, not_before = row.split("\t")
            words.append(
                CountryWord(
                    word=word,
                    english=English(english),
                    others=tuple(others.split("/")),
                    not_before=tuple(not_before.split()),
                )
            )
    return tuple(sorted(words, key=lambda own: -len(own.parts)))


def words_of_country(
    book: Book, vocabulary: Vocabulary, english: English
) -> Iterator[tuple[CountryWord, tuple[Span, ...]]]:
    """The words of ``english`` that the book has, with their places; names, and parts of others, left out."""
    taken: set[tuple[int, int]] = set()
    for own in country_words():
        if own.english is english and all(vocabulary.count(part) for part in own.parts):
            spans = tuple(_places(book, own, taken))
            if spans:
                yield own, spans


def _places(book: Book, own: CountryWord, taken: set[tuple[int, int]]) -> Iterator[Span]:
    follow = rf"(?!\s+(?:{'|'.join(own.not_before)})\b)" if own.not_before else ""
    words = r"\s+".join(map(re.escape, own.parts))
    pattern = re.compile(rf"(?i)(?<![\w'’-]){words}(?![\w-]|['’](?!s\b)\w){follow}")
    for page in book.pages:
        for match in pattern.finditer(page.prose):
            letters = {(page.number, at) for at in range(*match.span())}
            if letters.isdisjoint(taken) and not _is_name(page.prose, match):
                taken |= letters
                yield page.span(*match.span())


def _is_name(prose: str, match: re.Match[str]) -> bool:
    """Capitals where a sentence asks for none: the Flashlight Gang, Lorry the Lizard."""
    words = match[0].split()
    if match[0].isupper():
        return False
    if words[-1][0].isupper() and (len(words) > 1 or not opens_sentence(prose, match.start())):
        return True
    return words[0][0].isupper() and not opens_sentence(prose, match.start())
