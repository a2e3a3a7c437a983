"""Slips of whole words, of the spaces between them, and of the commas beside speech and clauses."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping
from functools import cache

from proofkit.analysis import Analysis
from proofkit.book import Book, Page
from proofkit.words.context.pairs import confusions
from proofkit.words.dictionary import dictionary
from proofkit.words.suggest import in_case_of
from tests.bench._slips import Slip, Source, slip_at
from tests.bench._texts import SHARED

_MISSPELLINGS = SHARED / "lists" / "misspellings-wikipedia.dat"
_WORD = re.compile(r"(?<![\w'’-])[a-z]{2,}(?![\w'’-])")
_COMMA_BEFORE_SPEECH = re.compile(r"(?<=[a-z]),(?= [“\"][A-Z])")
_COMMA_AFTER_SPEECH = re.compile(r"(?<=[a-z]),(?=[”\"] (?:said|asked|cried|says) )")
_COMMA_BEFORE_WHO = re.compile(r"(?<=[a-z]),(?= (?:who|whose) )")
_SPACE_AFTER_STOP = re.compile(r"(?<=[a-z][.,!?]) (?=[A-Za-z])")
_NO_SPACE_BEFORE_STOP = re.compile(r"(?<=[a-z]{2})(?=[.,!?](?: |$))")


def _instead(others: Mapping[str, tuple[str, ...]]) -> Source:
    """Each word of the mapping, written as one of the others."""

    def find(_book: Book, analysis: Analysis, page: Page) -> Iterator[Slip]:
        for word in _WORD.finditer(page.prose):
            known = others.get(word[0], ())
            for other in known if not analysis.vocabulary.is_name(word[0]) else ():
                yield slip_at(page, word.start(), word.end(), in_case_of(word[0], other))

    return find


def _misspelt(book: Book, analysis: Analysis, page: Page) -> Iterator[Slip]:
    yield from _instead(_misspellings())(book, analysis, page)


def _confused(book: Book, analysis: Analysis, page: Page) -> Iterator[Slip]:
    yield from _instead(_meant())(book, analysis, page)


def _split_compound(_book: Book, analysis: Analysis, page: Page) -> Iterator[Slip]:
    words = dictionary(analysis.english).words
    for word in _WORD.finditer(page.prose):
        halves = ((word[0][:at], word[0][at:]) for at in range(3, len(word[0]) - 2))
        for first, second in halves if len(word[0]) > 7 else ():
            if first in words and second in words and len(second) > 3:
                yield slip_at(page, word.start(), word.end(), f"{first} {second}")


def _written(pattern: re.Pattern[str], wrong: str) -> Source:
    def find(_book: Book, _analysis: Analysis, page: Page) -> Iterator[Slip]:
        for match in pattern.finditer(page.prose):
            yield slip_at(page, match.start(), match.end(), wrong)

    return find


@cache
def _meant() -> Mapping[str, tuple[str, ...]]:
    """For each word that others are written for, those others."""
    found: defaultdict[str, tuple[str, ...]] = defaultdict(tuple)
    for written, meant in sorted(confusions()):
        found[meant] += (written,)
    return dict(found)


@cache
def _misspellings() -> Mapping[str, tuple[str, ...]]:
    """The Wikipedia editors' misspellings of each word; none where the list is absent."""
    found: defaultdict[str, tuple[str, ...]] = defaultdict(tuple)
    right = ""
    for line in _MISSPELLINGS.read_text("utf-8").split() if _MISSPELLINGS.exists() else ():
        if line.startswith("$"):
            right = line[1:].lower()
        elif line.isalpha() and line.islower():
            found[right] += (line,)
    return dict(found)


WORD_KINDS: Mapping[str, Source] = {
    "word taken for another": _confused,
    "misspelling": _misspelt,
    "compound split": _split_compound,
    "space lost": _written(_SPACE_AFTER_STOP, ""),
    "space before a stop": _written(_NO_SPACE_BEFORE_STOP, " "),
    "comma lost, before speech": _written(_COMMA_BEFORE_SPEECH, ""),
    "comma lost, after speech": _written(_COMMA_AFTER_SPEECH, ""),
    "comma lost, before who": _written(_COMMA_BEFORE_WHO, ""),
}
