"""What the book can't agree on and nobody has decided: the open questions at the end of a style sheet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from proofkit.book import Span
from proofkit.issue import Issue, Tier
from proofkit.stylesheet.ground import Ground, touch
from proofkit.stylesheet.sheet import Basis, Other, Row

_FAMILIES = ("consistency", "english")


def question_rows(ground: Ground, open_rows: Sequence[Row]) -> tuple[Row, ...]:
    """The rows that are open, and the checks' queries on consistency about anything else."""
    asked = [span for row in open_rows for other in row.others for span in other.places]
    queries = [issue for issue in ground.issues if _is_open(issue) and not _is_asked(issue, asked)]
    return (*open_rows, *(_question(issue) for issue in queries))


def _is_open(issue: Issue) -> bool:
    return issue.tier is Tier.QUERY and issue.check.partition("/")[0] in _FAMILIES


def _is_asked(issue: Issue, asked: Sequence[Span]) -> bool:
    return any(touch(issue.span, span) for span in asked)


def _question(issue: Issue) -> Row:
    forms = dict.fromkeys((issue.quote, *issue.suggestions[:1]))
    return Row(
        term=" or ".join(form for form in forms if form.strip()),
        form="",
        basis=Basis.OPEN,
        others=(Other(form=issue.quote, places=tuple(_places(issue))),),
        note=issue.message,
    )


def _places(issue: Issue) -> Iterator[Span]:
    yield issue.span
    yield from issue.related
