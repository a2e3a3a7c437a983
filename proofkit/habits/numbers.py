"""Whether the book writes its numbers in words or in figures: three mice, 3 mice.

Only small numbers of things are compared. Ages, dates, times, pages, house and bus numbers, money,
measures, scores and sums have figures of their own right. New Hart's Rules and the Chicago manual (9.2)
write numbers up to a hundred in words in running text; others up to ten (all from memory).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.habits._number_words import CARDINAL, cardinal, value
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage
from proofkit.words.lists import word_set

MATTER = "numbers"
WORDS, FIGURES = FORMS = ("in words", "in figures")

_LARGEST = 100
_NUMBER = re.compile(
    rf"(?<![\w£$€#.,:/+×=’'–—-])(?:(?P<figure>\d{{1,3}})|(?P<word>{CARDINAL}))"
    r"(?![\w%°’'/+×=-])(?![.,:]\d)",
    re.IGNORECASE,
)
_NEXT = re.compile(r"[ \u00a0\n]([^\W\d_][\w’'-]*)")
_BEFORE = re.compile(r"([\w’'.]+)[ \u00a0]$")
# After these a number is a label, a page, an age or a time.
_LABELLED = word_set(
    """
    number numbers no no. nos. page pages p. pp. chapter room bus route platform flat house apartment
    door gate act scene part book volume level stage row seat line grade year class channel track lane
    bay day night week size step figure fig. age aged at by until till before after past to since turned nearly almost
    am i'm i’m is he's he’s she's she’s was january february march april may june july august september
    october november december minus plus times than
    """
)
# Before these it is an age, a time, money or a measure.
_MEASURED = word_set(
    """
    o’clock o'clock am pm a.m p.m year-old year-olds january february march april june july august
    september october november december kg g km m cm mm ft in lb lbs oz mph ml l kilo kilos kilograms grams litres liters kilometres kilometers
    metres meters centimetres centimeters degrees percent per p pence pounds dollars cents euros rand
    plus minus times and or to past squared nil all
    """
)
_SUM = re.compile(r"[ \u00a0]?[+×=÷−–][ \u00a0]?")
_AGE = re.compile(r"[ \u00a0\n](?:years?|months?|weeks?|days?)(?: and a half)? (?:old|of age)\b")


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every matter takes both
    """Where the book has a number from two to a hundred in words, where in figures, before what it counts."""
    return usage_of(MATTER, _places(book))


def number_at(book: Book, span: Span) -> int:
    """The number at a place of ``usage``."""
    quote = book.quote(span)
    return int(quote) if quote.isdigit() else value(quote) or 0


def in_form(number: int, form: str) -> str:
    """The number in words or in figures."""
    return str(number) if form == FIGURES else cardinal(number)


def _places(book: Book) -> Iterator[tuple[str, Span]]:
    for page in book.pages:
        for match in _NUMBER.finditer(page.prose):
            number = int(match["figure"]) if match["figure"] else value(match["word"]) or 0
            if 2 <= number <= _LARGEST and _counts_things(match):
                yield (FIGURES if match["figure"] else WORDS), page.span(*match.span())


def _counts_things(match: re.Match[str]) -> bool:
    """Whether the number counts what follows, by the words beside it."""
    text, start, end = match.string, match.start(), match.end()
    if _SUM.search(text[max(0, start - 2) : start]) or _SUM.match(text, end):
        return False
    before = _BEFORE.search(text[max(0, start - 20) : start])
    after = _NEXT.match(text, end)
    if _AGE.match(text, end) or (after and after[1].lower() in _MEASURED):
        return False
    if after is None or after[1][0].isupper():
        # It stands alone ("there were 3."), in a list or a countdown; or it is a label.
        return before is not None and before[1].lower() in ("were", "only", "all", "had", "the")
    return before is None or before[1].lower() not in _LABELLED or _counts_all_the_same(before[1])


def _counts_all_the_same(before: str) -> bool:
    """Whether the word also stands before plain numbers: "is 3 sheep", "to 3 friends"."""
    return before.lower() in word_set("at by after before to was is than past since till until")
