"""A capital on an ordinary word inside a sentence.

What it finds
    A word that the book has small elsewhere, and once with a capital where no sentence, speech, name or title
    asks for it (*He was Very tired, she had a Hat*). A noun after "the" may be a name and is left to
    the checks of consistency. Small words that may begin a sentence after a lost stop have a
    page of their own.

Why a reader minds
    The capital says: here begins something, or here is a name.

Example
    The cat was fast. Everybody knew how Fast the cat was.

Better
    The cat was fast. Everybody knew how fast the cat was.

When to let it stand
    When the capital gives the word weight, as in a Very Important Letter.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from proofkit.analysis import Analysis, Token
from proofkit.book import Book, Page
from proofkit.checks.check import Need
from proofkit.checks.sentences._unstopped import unstopped
from proofkit.checks.sentences._verse import in_verse, verse_at
from proofkit.checks.speech._seams import paragraph_at
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.dictionary import dictionary
from proofkit.words.frequency import zipf
from proofkit.words.lists import word_set

NAME = "capitals/capital-inside-sentence"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_COMMON = 3.8  # Zipf value
_LETTERS = 3
_SUBJECTS = word_set("He She It They We You I")
_BEFORE_NOUN = word_set("a an my your his her its our their")
# Part of a title or name, or what is written somewhere: the Book of Fire, the word Stop.
_BESIDE_TITLES = word_set(
    "of word words letter sign signs called named said reads says read mr mrs miss dear god"
)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield each such capital."""
    if in_verse(book):
        return
    for page in book.pages:
        tokens = analysis.page(page.number).tokens
        begun = set(unstopped(page, tokens, analysis))
        for at in range(1, len(tokens) - 1):
            if at in begun or not _is_odd(page, tokens, at, analysis):
                continue
            word = tokens[at]
            if verse_at(page, *paragraph_at(page, word.start)):
                continue
            yield issue_at(
                book,
                page.span(word.start, word.end),
                check=NAME,
                tier=Tier.ERROR,
                message="a capital inside the sentence",
                suggestions=(word.text.lower(),),
                confidence=0.65,
            )


def _is_odd(page: Page, tokens: Sequence[Token], at: int, analysis: Analysis) -> bool:
    before, word, after = tokens[at - 1 : at + 2]
    if not (word.text.istitle() and word.text.isalpha() and len(word.text) >= _LETTERS):
        return False
    if page.prose[before.end : word.start] != " " or not before.text.isalpha():
        return False
    if (
        not (before.text.islower() or before.text in _SUBJECTS)
        or after.text[:1].isupper()
        or after.text[:1] in "-‑"
    ):
        return False
    if {before.text, after.text.lower()} & _BESIDE_TITLES:
        return False
    noun = before.text in _BEFORE_NOUN or not _is_noun(word.text.lower(), analysis)
    return noun and _is_ordinary(word.text.lower(), analysis)


def _is_noun(word: str, analysis: Analysis) -> bool:
    """Whether it is a noun where the book has it small: that may name a character or a place."""
    use = analysis.vocabulary.use(word)
    small = {(s.page, s.start) for s in use.spans} if use else set()
    return any(
        token.text == word and token.tag in ("NN", "NNS") and (number, token.start) in small
        for number in {page for page, _ in small}
        for token in analysis.page(number).tokens
    )


def _is_ordinary(word: str, analysis: Analysis) -> bool:
    """Whether it is a common word, small elsewhere, with this one capital inside a sentence."""
    use, known = analysis.vocabulary.use(word), dictionary(analysis.english)
    return (
        use is not None
        and use.lower > 0
        and use.capitals_inside == 1
        and word in known.words
        and word not in known.capitals
        and zipf(word) > _COMMON
    )
