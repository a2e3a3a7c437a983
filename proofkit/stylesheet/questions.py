"""What the book can't agree on and nobody has decided: the open questions at the end of a style sheet."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence

from proofkit.book import Span
from proofkit.issue import Issue, Tier
from proofkit.stylesheet.ground import Ground, touch
from proofkit.stylesheet.sheet import Basis, Other, Row

_FAMILIES = ("consistency", "english")


def question_rows(ground: Ground, open_rows: Sequence[Row]) -> tuple[Row, ...]:
    """The rows that are open, and the checks' queries on consistency about anything else."""
    asked = [span for row in open_rows for other in row.others for span in other.places]
    queries = [issue for issue in ground.issues if _is_open(issue) and not _is_asked(issue, asked)]
    alike: dict[tuple[str, str], list[Issue]] = defaultdict(list)
    for issue in queries:
        alike[(_term(issue), issue.message)].append(issue)
    return (*open_rows, *(_question(*matter, issues) for matter, issues in alike.items()))


def _is_open(issue: Issue) -> bool:
    return issue.tier is Tier.QUERY and issue.check.partition("/")[0] in _FAMILIES


def _is_asked(issue: Issue, asked: Sequence[Span]) -> bool:
    return any(touch(issue.span, span) for span in asked)


def _term(issue: Issue) -> str:
    forms = dict.fromkeys((issue.quote, *issue.suggestions[:1]))
    return " or ".join(form for form in forms if form.strip())


def _question(term: str, message: str, issues: Sequence[Issue]) -> Row:
    places = sorted(span for issue in issues for span in (issue.span, *issue.related))
    return Row(
        term=term,
        form="",
        basis=Basis.OPEN,
        others=(Other(form=issues[0].quote, places=tuple(places)),),
        note=message,
    )
