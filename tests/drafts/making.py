"""Drafts made by hand: a book, and what is found in it."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence
from datetime import UTC, datetime, timedelta

from proofkit.book import Book, Page, Paragraph
from proofkit.drafts.draft import (
    Draft,
    DraftIssue,
    DraftMeasures,
    DraftPage,
    Versions,
    text_digest,
)
from proofkit.issue import Issue, Tier, issue_at, with_keys

BEGUN = datetime(2026, 3, 2, 9, 30, tzinfo=UTC)
# Slips that tests write into their stories, each found by a check of a word's own.
SLIPS = {
    "spelling/slip": r"\b(?:mornign|wiht|teh|geeese)\b",
    "repetition/twice": r"\b(\w+) \1\b",
    "spacing/gap": r"(?<=\S)  +(?=\S)",
    "sentences/no-stop": r"(?<=[a-z])(?=\n\n|\Z)",
}


def book_of(*texts: str) -> Book:
    """A book with a page for each text; blank lines part paragraphs."""
    return Book(
        path="goose.docx",
        title="The Goose",
        pages=tuple(page_of(number, text) for number, text in enumerate(texts, 1)),
    )


def page_of(number: int, text: str) -> Page:
    paragraphs, at = [], 0
    for block in text.split("\n\n"):
        paragraphs.append(Paragraph(start=at, end=at + len(block)))
        at += len(block) + 2
    return Page(number=number, text=text, paragraphs=tuple(paragraphs), label=f"Page {number}")


def slips_in(book: Book) -> tuple[Issue, ...]:
    """The slips of a book, with their keys."""
    return with_keys(
        book,
        [
            issue_at(
                book,
                page.span(*found.span()),
                check=check,
                tier=Tier.QUERY if check.startswith("spacing/") else Tier.ERROR,
                message="a slip",
                confidence=0.9,
            )
            for page in book.pages
            for check, pattern in SLIPS.items()
            for found in re.finditer(pattern, page.text)
        ],
    )


def drafted(
    book: Book,
    issues: Sequence[Issue],
    *,
    number: int = 1,
    stand: Collection[str] = (),
    version: str = "1.0",
    complete: bool = True,
) -> Draft:
    """The draft of a book, a week after the one before; issues with a key in ``stand`` are let stand."""
    pages = tuple(
        DraftPage(
            number=page.number,
            label=page.label,
            spread=page.spread,
            role=page.role,
            words=page.words,
            text=page.text,
        )
        for page in book.pages
    )
    found = tuple(_issue(issue, let_stand=issue.key in stand) for issue in issues)
    return Draft(
        number=number,
        date=BEGUN + timedelta(weeks=number - 1),
        file=book.path,
        title=book.title,
        pages=pages,
        issues=found,
        measures=_measures(book, found),
        versions=Versions(proofkit=version),
        text_digest=text_digest(pages),
        asked_digest=version,
        complete=complete,
    )


def draft_of_texts(*texts: str, number: int = 1) -> Draft:
    """A draft of these pages with the slips in them."""
    book = book_of(*texts)
    return drafted(book, slips_in(book), number=number)


def _measures(book: Book, issues: Sequence[DraftIssue]) -> DraftMeasures:
    open_ = [issue for issue in issues if not issue.let_stand]
    errors = sum(issue.tier is Tier.ERROR for issue in open_)
    return DraftMeasures(
        words=book.words,
        pages=len(book.pages),
        spreads=0,
        errors=errors,
        queries=len(open_) - errors,
        let_stand=len(issues) - len(open_),
        grade=None,
    )


def _issue(issue: Issue, *, let_stand: bool) -> DraftIssue:
    return DraftIssue(
        key=issue.key,
        check=issue.check,
        tier=issue.tier,
        page=issue.span.page,
        start=issue.span.start,
        end=issue.span.end,
        quote=issue.quote,
        message=issue.message,
        confidence=issue.confidence,
        related=issue.related,
        let_stand=let_stand,
    )
