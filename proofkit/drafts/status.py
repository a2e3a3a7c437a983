"""What becomes of an issue from draft to draft."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from proofkit.book import Span
from proofkit.drafts.draft import DraftIssue
from proofkit.issue import Tier
from proofkit.rulings.passage import Passage


class Status(StrEnum):
    """How an issue stands against the drafts before."""

    NEW = "new"
    STILL_THERE = "still there"
    BACK_AGAIN = "back again"  # it had gone, and here it is again
    LET_STAND = "let stand"

    FIXED = "fixed"
    GONE_WITH_TEXT = "gone with its text"  # its sentence was cut: nothing was mended
    NO_LONGER_RAISED = (
        "no longer raised"  # the text stands as it was: the checks changed, or failed
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """An issue of the newest draft with its status.

    ``before``       what it was in an earlier draft; None where it is new
    ``from_change``  whether the words there, or those beside them, were changed since the last draft
    """

    issue: DraftIssue
    status: Status
    before: DraftIssue | None = None
    from_change: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Ended:
    """An issue that is no longer there: as it was last seen, and how it went.

    ``draft``    the number of the draft in which it was last seen
    ``passages`` its words and their surroundings there, and those of its other places
    ``places``   where it was, as places of the newest draft; empty where its text is gone
    """

    issue: DraftIssue
    status: Status
    draft: int
    passages: tuple[Passage, ...]
    places: tuple[Span, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Counts:
    """How many issues have each status. Those let stand before they went are in none of the last three."""

    new: int = 0
    still_there: int = 0
    back_again: int = 0
    let_stand: int = 0
    fixed: int = 0
    gone_with_text: int = 0
    no_longer_raised: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """A draft against those before it.

    ``issues``   all of the newest draft's, in its order
    ``ended``    those of the draft before that are no longer there
    ``past``     all that ended so far and did not come back, the newest among them: what the next
        comparison needs to know of the drafts before the last
    """

    issues: tuple[Standing, ...]
    ended: tuple[Ended, ...] = ()
    past: tuple[Ended, ...] = ()

    def having(self, status: Status) -> tuple[DraftIssue, ...]:
        """The issues of a status; those let stand before they went are left out."""
        here = (each.issue for each in self.issues if each.status is status)
        gone = (each.issue for each in self.ended if each.status is status)
        return (*here, *(issue for issue in gone if not issue.let_stand))

    @property
    def new(self) -> tuple[DraftIssue, ...]:
        """The issues that no draft had before."""
        return self.having(Status.NEW)

    @property
    def fixed(self) -> tuple[DraftIssue, ...]:
        """The issues that were mended since the last draft."""
        return self.having(Status.FIXED)

    @property
    def gone_with_text(self) -> tuple[DraftIssue, ...]:
        """The issues whose sentence was cut since the last draft."""
        return self.having(Status.GONE_WITH_TEXT)

    @property
    def back_again(self) -> tuple[DraftIssue, ...]:
        """The issues that had gone in an earlier draft and are there again."""
        return self.having(Status.BACK_AGAIN)

    @property
    def from_change(self) -> tuple[DraftIssue, ...]:
        """The issues, new or back again, that stand in words which were changed since the last draft."""
        fresh = {Status.NEW, Status.BACK_AGAIN}
        return tuple(e.issue for e in self.issues if e.status in fresh and e.from_change)

    def counts(self, tier: Tier | None = None) -> Counts:
        """How many issues have each status, of one tier or of both."""
        here = ((each.issue, each.status) for each in self.issues)
        gone = ((each.issue, each.status) for each in self.ended if not each.issue.let_stand)
        return _counts(
            status for issue, status in (*here, *gone) if tier is None or issue.tier is tier
        )


def _counts(statuses: Iterable[Status]) -> Counts:
    number = Counter(statuses)
    return Counts(
        new=number[Status.NEW],
        still_there=number[Status.STILL_THERE],
        back_again=number[Status.BACK_AGAIN],
        let_stand=number[Status.LET_STAND],
        fixed=number[Status.FIXED],
        gone_with_text=number[Status.GONE_WITH_TEXT],
        no_longer_raised=number[Status.NO_LONGER_RAISED],
    )
