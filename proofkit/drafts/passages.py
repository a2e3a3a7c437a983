"""Issues known again by the words at fault and those around them, where nothing else tells them."""

from __future__ import annotations

from collections.abc import Sequence

from proofkit.drafts.draft import Draft, DraftIssue
from proofkit.rulings.passage import Passage, alike, likeness, passage_in, same_words, written

_MANY = 8  # words at fault


class Passages:
    """The places of issues with the words around them, each worked out once."""

    def __init__(self, *drafts: Draft) -> None:
        self._texts = {id(draft): draft.texts for draft in drafts}
        self._known: dict[int, tuple[Passage, ...]] = {}

    def of(self, draft: Draft, issue: DraftIssue) -> tuple[Passage, ...]:
        """The passages of an issue, as they are written down for a ruling."""
        if id(issue) not in self._known:
            texts = self._texts[id(draft)]
            lines = (written(texts, place) for place in issue.places)
            self._known[id(issue)] = tuple(p for line in lines if (p := passage_in(line)))
        return self._known[id(issue)]


def agreement(kept: Sequence[Passage], found: Sequence[Passage]) -> float | None:
    """How much of the surroundings of the places most alike is the same; None where none are alike."""
    return max((likeness(k, f) for k in kept for f in found if _known_again(k, f)), default=None)


def _known_again(kept: Passage, found: Passage) -> bool:
    """By the words at fault and those around them; many words at fault are known by themselves."""
    by_itself = len(kept.quote.split()) >= _MANY and same_words(kept, found)
    return by_itself or alike(kept, found)
