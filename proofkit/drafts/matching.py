"""Which issue of the newest draft is which of the drafts before, and what became of the others.

An issue is known again by its words, followed from draft to draft wherever they went: pages put in,
moved or renumbered, a paragraph carried to another spread, a name changed all through leave it what it
was. Where its words can't be followed its surroundings tell it, as they tell an author's ruling. What
is no longer there was fixed if its sentence still stands, and went with its text if not.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from proofkit.book import Span
from proofkit.drafts.draft import Draft, DraftIssue
from proofkit.drafts.passages import Passages, agreement
from proofkit.drafts.revision import Revision
from proofkit.drafts.status import Comparison, Ended, Standing, Status
from proofkit.rulings.passage import Passage, same_words

# How well an old issue, by its place in a list, agrees with a new one; None where it is another.
_Score = Callable[[int, int], float | None]


def compared(history: Sequence[Draft], now: Draft) -> Comparison:
    """The newest draft against all before it, the oldest first."""
    comparison, last = Comparison(issues=()), None
    for draft in (*history, now):
        comparison = compared_with_last(last, draft, past=comparison.past)
        last = draft
    return comparison


def compared_with_last(last: Draft | None, now: Draft, *, past: Sequence[Ended] = ()) -> Comparison:
    """The newest draft against the last one.

    ``past`` is what had ended by then: ``past`` of the last draft's own comparison.
    """
    if last is None:
        return Comparison(issues=tuple(_standing(issue, Status.NEW) for issue in now.issues))
    match = _Match(last, now, past)
    ended = tuple(match.ended())
    return Comparison(
        issues=tuple(match.standing()), ended=ended, past=(*match.still_gone(), *ended)
    )


class _Match:
    """Two drafts, and which issue of the one is which of the other."""

    def __init__(self, last: Draft, now: Draft, past: Sequence[Ended]) -> None:
        self._last, self._now, self._past = last, now, past
        self._revision = Revision(last.texts, now.texts)
        self._covered = [self._revision.covered(issue.places) for issue in now.issues]
        self._passages = Passages(last, now)
        self._times = Counter(map(_check_and_quote, (*last.issues, *now.issues)))
        self._stays: dict[int, int] = {}  # from an issue of the last draft to one of the newest
        self._returns: dict[int, int] = {}  # from one of the past to one of the newest
        for score, trait in (
            (self._same_place, _check),
            (self._same_text, _quote),
            (self._same_surroundings, _check),
            (self._only_one, _check_and_quote),
        ):
            left = {n: issue for n, issue in enumerate(last.issues) if n not in self._stays}
            self._stays |= self._paired(left, score, trait)
        self._kept = [tuple(map(self._renamed, ended.passages)) for ended in past]
        gone = {number: ended.issue for number, ended in enumerate(past)}
        self._returns |= self._paired(gone, self._returned, _check)

    def standing(self) -> Iterator[Standing]:
        """The issues of the newest draft, each with its status."""
        stayed = {new: old for old, new in self._stays.items()}
        returned = {new: old for old, new in self._returns.items()}
        for number, issue in enumerate(self._now.issues):
            before, status = None, Status.NEW
            if number in stayed:
                before, status = self._last.issues[stayed[number]], Status.STILL_THERE
            elif number in returned:
                gone = self._past[returned[number]]
                before, status = gone.issue, _on_return(gone.status)
            changed = not self._revision.unchanged(issue.span)
            yield _standing(issue, status, before, from_change=changed)

    def ended(self) -> Iterator[Ended]:
        """The issues of the last draft that are no longer there."""
        for number, issue in enumerate(self._last.issues):
            if number not in self._stays:
                yield Ended(
                    issue=issue,
                    status=self._how_ended(issue),
                    draft=self._last.number,
                    passages=self._passages.of(self._last, issue),
                    places=self._carried(issue.places),
                )

    def still_gone(self) -> Iterator[Ended]:
        """What had ended and did not come back, with its places as they are now."""
        for number, gone in enumerate(self._past):
            if number not in self._returns:
                yield replace(
                    gone,
                    places=self._carried(gone.places),
                    passages=self._kept[number],
                )

    def _how_ended(self, issue: DraftIssue) -> Status:
        if not any(map(self._revision.still_stands, issue.places)):
            return Status.GONE_WITH_TEXT
        last, now = self._last, self._now
        otherwise_checked = last.versions != now.versions or last.text_digest == now.text_digest
        untouched = all(map(self._revision.untouched, issue.places))
        if untouched and (otherwise_checked or not now.complete):
            return Status.NO_LONGER_RAISED
        return Status.FIXED

    def _carried(self, places: Iterable[Span]) -> tuple[Span, ...]:
        standing = filter(self._revision.still_stands, places)
        carried = (self._revision.carried(place) for place in standing)
        return tuple(place for place in carried if place)

    def _renamed(self, passage: Passage) -> Passage:
        renamed = self._revision.renamed
        return Passage(
            before=tuple(map(renamed, passage.before)),
            quote=renamed(passage.quote),
            after=tuple(map(renamed, passage.after)),
        )

    def _same_place(self, old: int, new: int) -> float | None:
        """By how many places that are the same; then by the words at fault, then by the key."""
        ours, theirs = self._last.issues[old], self._now.issues[new]
        met = self._revision.met(ours.places, self._covered[new])
        if not met:
            return None
        return met + 0.5 * (ours.quote == theirs.quote) + 0.1 * (ours.key == theirs.key)

    def _same_text(self, old: int, new: int) -> float | None:
        """By words that nobody touched: another check may ask about them now."""
        ours, theirs = self._last.issues[old], self._now.issues[new]
        same = self._revision.meet(ours.span, theirs.span)
        return 1.0 if same and self._revision.unchanged(theirs.span) else None

    def _same_surroundings(self, old: int, new: int) -> float | None:
        """By what stands around: the words went where they could not be followed."""
        ours, theirs = self._last.issues[old], self._now.issues[new]
        if ours.quote == theirs.quote and self._revision.same_sentence(ours.span, theirs.span):
            return 2.0
        if self._revision.still_stands(ours.span) or not self._revision.is_new(theirs.span):
            return None
        return agreement(self._passages.of(self._last, ours), self._passages.of(self._now, theirs))

    def _only_one(self, old: int, new: int) -> float | None:
        """By words that are nowhere else in either draft, and went here as they came there."""
        ours, theirs = self._last.issues[old], self._now.issues[new]
        once_in_each = self._times[_check_and_quote(ours)] == 2
        alone = once_in_each and any(map(str.isalpha, ours.quote))
        gone = not self._revision.still_stands(ours.span)
        return 1.0 if alone and gone and self._revision.is_new(theirs.span) else None

    def _returned(self, old: int, new: int) -> float | None:
        """By the place where it was, or where that is gone by what stood around it."""
        gone, issue = self._past[old], self._now.issues[new]
        found = self._passages.of(self._now, issue)
        kept = self._kept[old]
        if not gone.places:
            return agreement(kept, found)
        if not any(self._revision.reach(p, q) for p in gone.places for q in issue.places):
            return None
        if any(same_words(one, here) for one in kept for here in found):
            return 2.0 + 0.1 * (gone.issue.key == issue.key)
        return None

    def _paired(
        self, olds: Mapping[int, DraftIssue], score: _Score, trait: Callable[[DraftIssue], str]
    ) -> dict[int, int]:
        """For each old issue not yet paired the new one of the same trait that agrees with it best."""
        free = defaultdict(list)
        taken = {*self._stays.values(), *self._returns.values()}
        for number, issue in enumerate(self._now.issues):
            if number not in taken:
                free[trait(issue)].append(number)
        candidates = sorted(
            (-agrees, old, new)
            for old, issue in olds.items()
            for new in free[trait(issue)]
            if (agrees := score(old, new)) is not None
        )
        pairs: dict[int, int] = {}
        for _less_is_better, old, new in candidates:
            if old not in pairs and new not in taken:
                pairs[old] = new
                taken.add(new)
        return pairs


def _standing(
    issue: DraftIssue,
    status: Status,
    before: DraftIssue | None = None,
    *,
    from_change: bool = True,
) -> Standing:
    return Standing(
        issue=issue,
        status=Status.LET_STAND if issue.let_stand else status,
        before=before,
        from_change=from_change,
    )


def _on_return(ended: Status) -> Status:
    """What was merely not raised for a while never went."""
    return Status.STILL_THERE if ended is Status.NO_LONGER_RAISED else Status.BACK_AGAIN


def _check(issue: DraftIssue) -> str:
    return issue.check


def _check_and_quote(issue: DraftIssue) -> str:
    return f"{issue.check} {issue.quote}"


def _quote(issue: DraftIssue) -> str:
    return issue.quote
