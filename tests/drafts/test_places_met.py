"""Many places at once meet just where each of them meets one of the others."""

from __future__ import annotations

import random
from itertools import product

import pytest

from proofkit.book import Span
from proofkit.drafts.revision import Revision
from tests.drafts.goat_drafts import SLIPS, draft

OLD = draft().texts
NEW = draft(*(wrong for wrong, *_ in SLIPS[:4])).texts


def places(texts: tuple[str, ...], dice: random.Random) -> list[Span]:
    """Places of nought to two words, marks and gaps among them."""
    found = []
    for _ in range(dice.randrange(1, 5)):
        page = dice.randrange(len(texts))
        start = dice.randrange(len(texts[page]))
        end = min(len(texts[page]), start + dice.choice((0, 1, 2, 6, 12)))
        found.append(Span(page=page + 1, start=start, end=end))
    return found


@pytest.mark.parametrize("pages", [(OLD, NEW), (OLD, tuple(reversed(NEW))), (OLD, OLD[:3])])
def test_all_at_once_is_each_with_each(pages: tuple[tuple[str, ...], tuple[str, ...]]) -> None:
    old, new = pages
    revision, dice = Revision(old, new), random.Random(5)  # noqa: S311 - samples, no secret
    olds = [places(old, dice) for _ in range(60)]
    news = [places(new, dice) for _ in range(60)]
    counts = []
    for ours, theirs in product(olds, news):
        each = sum(any(revision.meet(our, their) for their in theirs) for our in ours)
        assert revision.met(ours, revision.covered(theirs)) == each
        counts.append(each)
    assert sum(map(bool, counts)) > 100
