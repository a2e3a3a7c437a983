"""Which issues the author lets stand, and which rulings no longer match anything.

A ruling on a place holds for one issue. It is known by its key, which survives edits elsewhere; where
the key has changed, because a word beside it has, or because an equal slip before it was mended, by the
same words at fault in much the same surroundings. Where the book had several equal slips when the
author ruled on one, and has not as many now, the key doesn't tell which: the surroundings must agree.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from proofkit.book import Book
from proofkit.issue import Issue, key_of, matter_of
from proofkit.rulings.passage import Passage, alike, comparable, likeness, passage_at
from proofkit.rulings.ruling import Ruling


@dataclass(frozen=True, slots=True, kw_only=True)
class LetStand:
    """An issue, and the ruling by which it stands."""

    issue: Issue
    ruling: Ruling


@dataclass(frozen=True, slots=True, kw_only=True)
class Judgement:
    """The issues still ``open``, those ``let_stand``, and the rulings that are ``idle``: match nothing."""

    open: tuple[Issue, ...]
    let_stand: tuple[LetStand, ...] = ()
    idle: tuple[Ruling, ...] = ()


def judged(book: Book, issues: Sequence[Issue], rulings: Sequence[Ruling]) -> Judgement:
    """The issues, which have their keys, under the author's rulings; their order is kept."""
    if not rulings:
        return Judgement(open=tuple(issues))
    places = [ruling for ruling in rulings if ruling.about_place]
    by_issue = dict(_placed(_Draft(book, issues), places))
    busy = {id(ruling) for ruling in by_issue.values()}
    for ruling in rulings:
        covered = [] if ruling.about_place else _covered(ruling, issues)
        for number in covered:
            by_issue.setdefault(number, ruling)
            busy.add(id(ruling))
    return Judgement(
        open=tuple(issue for number, issue in enumerate(issues) if number not in by_issue),
        let_stand=tuple(
            LetStand(issue=issue, ruling=by_issue[number])
            for number, issue in enumerate(issues)
            if number in by_issue
        ),
        idle=tuple(ruling for ruling in rulings if id(ruling) not in busy),
    )


def equals(book: Book, issues: Iterable[Issue], issue: Issue) -> int:
    """How many of the issues are made of the same matter as ``issue``, itself among them."""
    matter = matter_of(book, issue)
    rivals = (each for each in issues if (each.check, each.quote) == (issue.check, issue.quote))
    return sum(matter_of(book, rival) == matter for rival in rivals)


class _Draft:
    """What is asked of the issues of one draft again and again, worked out once."""

    def __init__(self, book: Book, issues: Sequence[Issue]) -> None:
        self._pages = [page.text for page in book.pages]
        self._passages: dict[int, tuple[Passage, ...]] = {}
        self._matters = [matter_of(book, issue) for issue in issues]
        self._counts = Counter(self._matters)
        self._matter_of_key = {
            key_of(matter, nth): matter
            for matter, count in self._counts.items()
            for nth in range(1, count + 1)
        }
        self.issues = issues
        self.by_check: Mapping[str, list[int]] = defaultdict(list)
        for number, issue in enumerate(issues):
            self.by_check[issue.check].append(number)

    def passages(self, number: int) -> tuple[Passage, ...]:
        """The passage of an issue, and of the other places of its matter."""
        if number not in self._passages:
            issue = self.issues[number]
            spans = (issue.span, *issue.related)
            self._passages[number] = tuple(passage_at(self._pages, span) for span in spans)
        return self._passages[number]

    def equals(self, number: int) -> int:
        """How many issues are made of the same matter as that one, itself among them."""
        return self._counts[self._matters[number]]

    def has_key(self, number: int, ruling: Ruling) -> bool:
        """Whether the ruling's key is that of an issue, or of another one that is equal to it."""
        return self._matter_of_key.get(ruling.key) == self._matters[number]


def _placed(draft: _Draft, rulings: Sequence[Ruling]) -> Iterator[tuple[int, Ruling]]:
    """For each ruling on a place the issue that is most like it, by number; each is had but once."""
    candidates = sorted(
        (-score, which, number)
        for which, ruling in enumerate(rulings)
        for number in _of_check(draft, ruling)
        if (score := _score(draft, number, ruling)) is not None
    )
    placed: set[int] = set()
    taken: set[int] = set()
    for _minus_score, which, number in candidates:
        if which not in placed and number not in taken:
            placed.add(which)
            taken.add(number)
            yield number, rulings[which]


def _of_check(draft: _Draft, ruling: Ruling) -> Sequence[int]:
    return draft.by_check.get(ruling.check, []) if ruling.check else range(len(draft.issues))


def _score(draft: _Draft, number: int, ruling: Ruling) -> float | None:
    """How sure it is that the ruling is about the issue; None where it is not."""
    key_agrees = ruling.key == draft.issues[number].key
    if ruling.place is None:
        return 1.0 if key_agrees else None
    own = draft.passages(number)[0]
    kept = (ruling.place, *ruling.also)
    near = any(alike(ours, theirs) for ours in kept for theirs in draft.passages(number))
    same_matter = draft.has_key(number, ruling)
    if not near and not (same_matter and _told_by_key(draft, number, ruling)):
        return None
    return likeness(ruling.place, own) + 0.5 * same_matter + 0.01 * key_agrees


def _told_by_key(draft: _Draft, number: int, ruling: Ruling) -> bool:
    """Whether the key tells which place is meant: there was only one, or there are as many as then."""
    if ruling.equals == 1:
        return True
    return draft.equals(number) == ruling.equals and ruling.key == draft.issues[number].key


def _covered(ruling: Ruling, issues: Sequence[Issue]) -> list[int]:
    """The issues that a ruling on a word or a check is about."""
    return [
        number
        for number, issue in enumerate(issues)
        if ruling.check in ("", issue.check)
        and (not ruling.word or _is_word(issue.quote, ruling.word))
    ]


def _is_word(quote: str, word: str) -> bool:
    """Whether the words at fault are the word and nothing more than a mark or an owner's s."""
    ours, theirs = (comparable(text).casefold().strip(" .,;:!?…\"'()–—") for text in (quote, word))
    return ours in (theirs, f"{theirs}'s")
