"""Speech in single or in double marks.

British publishers set single marks, American ones double (New Hart's Rules 4.14); many British
publishers of children's books set double marks too.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage
from proofkit.words.quotations import Quotation, Quotations, quotations_of

MATTER = "quotation-marks"
FORMS = ("double", "single")

_PLAIN = 0.3  # the cost of marks that may as well be apostrophes is higher
_LONG = 120  # characters: two apostrophes far apart look like a long quotation


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every matter takes both
    """Every whole quotation on one page, mark to mark, that lies in no other."""
    return usage_of(MATTER, _places(quotations_of(book)))


def _places(quotations: Quotations) -> Iterator[tuple[str, Span]]:
    usual, other = FORMS if quotations.double else FORMS[::-1]
    for quotation in quotations.speech:
        if quotation.span is not None:
            yield usual, quotation.span
    for quotation in quotations.other:
        if quotation.span is not None and _stands_alone(quotation, quotation.span, quotations):
            yield other, quotation.span


def _stands_alone(quotation: Quotation, span: Span, quotations: Quotations) -> bool:
    if len(quotation.parts) != 1 or not (quotation.opening and quotation.closing):
        return False
    if quotation.opening.opening + quotation.closing.closing > _PLAIN:
        return False
    return span.end - span.start <= _LONG and not quotations.speaks(span.page, span.start)
