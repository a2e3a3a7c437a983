"""The one value that every report is made from: a checked manuscript, ready to be shown.

It is plain data, frozen, and msgspec turns it into JSON as it stands; ``reports/report.schema.json``
documents that shape for those who read it with a program.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from proofkit.book import Book, Role, Span
from proofkit.engines.note import EngineNote
from proofkit.issue import Issue, Tier
from proofkit.problem import Notice
from proofkit.reading.measure import BookReading, PageReading
from proofkit.settings import English
from proofkit.words.confirm import WordToConfirm


@dataclass(frozen=True, slots=True, kw_only=True)
class Manuscript:
    """The manuscript as a whole.

    ``title``      as the manuscript gives it, or ""
    ``age_band``   the band's short name, as the command line takes it ("picture")
    ``words``      words of story
    ``pages``      pages that carry story; 1 where none are marked
    ``spreads``    spreads that carry story; 0 where they are not known
    ``paginated``  whether the author marked pages or spreads
    """

    path: str
    title: str
    english: English
    age_band: str
    words: int
    pages: int
    spreads: int
    paginated: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class PageReport:
    """A page of the manuscript: all of its text, how many words of story, how it reads."""

    number: int
    label: str
    spread: int | None
    role: Role
    words: int
    text: str
    reading: PageReading | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class RankedIssue:
    """An issue in its place: ``rank`` 1 is most worth mending first.

    ``page`` is the 1-based place in the report's pages; ``start`` and ``end`` count characters of that
    page's text. ``suggestions`` replace just those characters; an empty one takes them out.
    """

    rank: int
    key: str
    check: str
    tier: Tier
    page: int
    start: int
    end: int
    quote: str
    message: str
    suggestions: tuple[str, ...] = ()
    confidence: float
    related: tuple[Span, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class LetStand:
    """An issue that the author lets stand, and ``because`` of what, or ""."""

    issue: RankedIssue
    because: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SinceLast:
    """How a manuscript stands against the last draft in its book's ledger.

    ``draft``, ``last``     the numbers of the two drafts
    ``days``                days between them, by the calendar
    ``errors``, ``queries``  those open in the last draft
    ``fixed`` to ``still_there``  what became of the errors: those of the last draft that were mended, went
        with their sentence, are not raised any more, or are let stand now; those of this draft that are
        new, had gone before, or were there already
    ``new_keys``, ``back_keys``  the keys of the issues, errors or queries, that are new or back again
    ``new_only``            whether the report's issues are just these
    """

    draft: int
    last: int
    days: int
    errors: int
    queries: int
    fixed: int
    gone_with_text: int
    no_longer_raised: int
    let_stand: int
    new: int
    back_again: int
    still_there: int
    new_keys: tuple[str, ...] = ()
    back_keys: tuple[str, ...] = ()
    new_only: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Report:
    """Everything that a run found out about one manuscript; ``issues`` by rank.

    ``let_stand`` are the issues that the author rules right; their ranks follow those of the open ones.

    ``words_to_confirm`` are those that no dictionary has and that are taken for the book's own.

    ``since_last`` is None where the book keeps no ledger, and for its first draft.
    """

    schema_version: int = 1
    manuscript: Manuscript
    engines: tuple[EngineNote, ...]
    pages: tuple[PageReport, ...]
    issues: tuple[RankedIssue, ...]
    words_to_confirm: tuple[WordToConfirm, ...]
    reading: BookReading
    notices: tuple[Notice, ...] = ()
    let_stand: tuple[LetStand, ...] = ()
    since_last: SinceLast | None = None

    @property
    def errors(self) -> tuple[RankedIssue, ...]:
        """The issues that are wrong in published English, by rank."""
        return tuple(issue for issue in self.issues if issue.tier is Tier.ERROR)

    @property
    def queries(self) -> tuple[RankedIssue, ...]:
        """The issues that a careful proofreader would ask about, by rank."""
        return tuple(issue for issue in self.issues if issue.tier is Tier.QUERY)

    @property
    def complete(self) -> bool:
        """Whether everything that should be checked was checked."""
        return not any(notice.unchecked for notice in self.notices)


def report_of(  # noqa: PLR0913 - a report is made of that many things
    book: Book,
    issues: Iterable[Issue],
    *,
    english: English,
    age_band: str,
    words_to_confirm: Iterable[WordToConfirm],
    reading: BookReading,
    engines: Iterable[EngineNote],
    notices: Iterable[Notice] = (),
    let_stand: Iterable[tuple[Issue, str]] = (),
) -> Report:
    """The report of a book whose ``issues`` come ranked and with their keys.

    So do those ``let_stand``, each with the author's reason for it.
    """
    ranked = tuple(_in_its_rank(rank, issue) for rank, issue in enumerate(issues, 1))
    readings = {page.page: page for page in reading.pages}
    return Report(
        manuscript=Manuscript(
            path=book.path,
            title=book.title,
            english=english,
            age_band=age_band,
            words=book.words,
            pages=len(book.story_pages),
            spreads=len(book.spreads),
            paginated=book.paginated,
        ),
        engines=tuple(engines),
        pages=tuple(
            PageReport(
                number=page.number,
                label=page.label,
                spread=page.spread,
                role=page.role,
                words=page.words,
                text=page.text,
                reading=readings.get(page.number),
            )
            for page in book.pages
        ),
        issues=ranked,
        words_to_confirm=tuple(words_to_confirm),
        reading=reading,
        notices=(*(Notice(text=remark) for remark in book.remarks), *notices),
        let_stand=tuple(
            LetStand(issue=_in_its_rank(rank, issue), because=because)
            for rank, (issue, because) in enumerate(let_stand, len(ranked) + 1)
        ),
    )


def _in_its_rank(rank: int, issue: Issue) -> RankedIssue:
    return RankedIssue(
        rank=rank,
        key=issue.key,
        check=issue.check,
        tier=issue.tier,
        page=issue.span.page,
        start=issue.span.start,
        end=issue.span.end,
        quote=issue.quote,
        message=issue.message,
        suggestions=issue.suggestions,
        confidence=issue.confidence,
        related=issue.related,
    )
