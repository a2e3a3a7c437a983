"""Drafts of the goat's book: the same slips, each time fewer of them."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, datetime, timedelta

from proofkit.book import Book
from proofkit.drafts.draft import Draft
from proofkit.drafts.from_report import draft_of
from proofkit.issue import Issue, Tier
from proofkit.problem import Notice
from proofkit.report import Report
from proofkit.rulings.ruling import Ruling
from proofkit.settings import Settings
from tests.reports.goat import SPREADS, book, goat, slip

FIRST_DAY = datetime(2026, 9, 1, 10, 30, tzinfo=UTC)
MISSING = Notice(text="The grammar engine did not start.", unchecked=True)

# The words at fault, the words to read instead, the check, the tier.
SLIPS = (
    ("the the", "the", "repetition/doubled-word", Tier.ERROR),
    ("evening Nell", "evening, Nell", "address/no-comma", Tier.ERROR),
    ("bucket .", "bucket.", "spacing/space-before-stop", Tier.ERROR),
    ("in form", "in from", "grammar/confused-words", Tier.ERROR),
    ("Mister", "Mr", "consistency/name-spelt-two-ways", Tier.QUERY),
    ("she  took", "she took", "spacing/two-spaces", Tier.ERROR),
    ("It’s light", "Its light", "grammar/its", Tier.ERROR),
)


def draft(
    *mended: str,
    day: float = 0,
    file: str = "Goat v1.docx",
    spreads: Sequence[str] = SPREADS,
    age_band: str = "picture",
    complete: bool = True,
    rulings: tuple[Ruling, ...] = (),
    let_stand: str = "",
) -> Draft:
    """The goat's book with these slips, named by the words at fault, mended; checked on that day.

    ``let_stand`` names a check whose slip is ruled right.
    """
    return draft_of(
        report_on(*mended, file=file, spreads=spreads, complete=complete, let_stand=let_stand),
        date=FIRST_DAY + timedelta(days=day),
        settings=Settings(age_band=age_band),
        rulings=rulings,
    )


def report_on(
    *mended: str,
    file: str = "Goat v1.docx",
    spreads: Sequence[str] = SPREADS,
    complete: bool = True,
    let_stand: str = "",
) -> Report:
    """The report on such a draft."""
    texts = list(spreads)
    for wrong, right, *_ in SLIPS:
        if wrong in mended:
            texts = [text.replace(wrong, right) for text in texts]
    of = book(*texts, path=file)
    return goat(
        of,
        issues=_found(of),
        notices=() if complete else (MISSING,),
        let_stand={let_stand: "so she says"} if let_stand else {},
    )


def _found(of: Book) -> list[Issue]:
    return [
        slip(of, wrong, right, check=check, message=f"read {right}", tier=tier)
        for wrong, right, check, tier in SLIPS
        if any(wrong in page.text for page in of.pages)
    ]
