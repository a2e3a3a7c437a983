"""What does not agree between the volumes of a series.

Names are compared by ``proofkit/checks/series.py``. Spellings and compounds are compared by reading the
volumes as one long book: what the checks of spelling ask about there, and did not ask about in any
volume alone, is a matter of the series.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import accumulate

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.registry import check_named
from proofkit.checks.series import Volume, names_across
from proofkit.issue import Issue
from proofkit.settings import Settings
from proofkit.words.vocabulary import vocabulary_of

_SPELLING = (
    "consistency/compound-two-ways",
    "consistency/okay-two-ways",
    "consistency/sound-spelt-two-ways",
    "consistency/word-spelt-two-ways",
    "english/mixed-ise-ize",
    "english/other-spelling",
    "english/past-forms",
)


def issues_across(volumes: Sequence[Volume], settings: Settings) -> tuple[tuple[Issue, ...], ...]:
    """For each volume, in order, what does not agree with another one.

    ``settings`` are those of the volume that asks. What a volume alone can't agree on is in it too.
    """
    found = [list(issues) for issues in names_across(volumes)]
    for volume, issues in _spellings(volumes, settings).items():
        found[volume] += issues
    return tuple(map(tuple, found))


def _spellings(volumes: Sequence[Volume], settings: Settings) -> Mapping[int, Sequence[Issue]]:
    whole = _joined(volumes)
    before = [0, *accumulate(len(volume.book.pages) for volume in volumes)]
    found: defaultdict[int, list[Issue]] = defaultdict(list)
    for name in _SPELLING:
        check = check_named(name)
        for issue in check.find(whole.book, whole.analysis, settings) if check else ():
            for volume, part in _by_volume(issue, before):
                found[volume].append(_about(part, whole.book, before[volume]))
    return found


def _joined(volumes: Sequence[Volume]) -> Volume:
    """All volumes as one book, its pages numbered on."""
    pages = [page for volume in volumes for page in volume.book.pages]
    numbered = tuple(replace(page, number=number) for number, page in enumerate(pages, 1))
    book = replace(volumes[0].book, pages=numbered)
    analysed = tuple(
        volume.analysis.page(page.number) for volume in volumes for page in volume.book.pages
    )
    analysis = Analysis(
        english=volumes[0].analysis.english, vocabulary=vocabulary_of(book), pages=analysed
    )
    return Volume(book=book, analysis=analysis)


def _by_volume(issue: Issue, before: Sequence[int]) -> Iterator[tuple[int, Issue]]:
    """The issue once for each volume that it has places in, with just those places."""
    places: defaultdict[int, list[Span]] = defaultdict(list)
    for span in (issue.span, *issue.related):
        places[sum(span.page > last for last in before[1:])].append(span)
    for volume, (first, *others) in places.items():
        yield volume, replace(issue, span=first, related=tuple(others))


def _about(issue: Issue, whole: Book, pages_before: int) -> Issue:
    """The issue of the long book as one of the volume that begins after so many pages."""
    same = whole.quote(issue.span) == issue.quote
    return replace(
        issue,
        span=_moved(issue.span, pages_before),
        quote=whole.quote(issue.span),
        related=tuple(_moved(span, pages_before) for span in issue.related),
        suggestions=issue.suggestions if same else (),
        message=issue.message.replace("the book", "the series"),
    )


def _moved(span: Span, pages_before: int) -> Span:
    return replace(span, page=span.page - pages_before)
