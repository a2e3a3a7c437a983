"""Which English the book is in, and the dictionary that settles what the sheet doesn't."""

from __future__ import annotations

from proofkit.settings import English
from proofkit.stylesheet.ground import Ground
from proofkit.stylesheet.sheet import Basis, Other, Row
from proofkit.words.english import votes

_NAMES = {English.BRITISH: "British", English.AMERICAN: "American"}
_OTHER_SPELLINGS = ("english/other-spelling", "english/other-word")


def english_rows(ground: Ground) -> tuple[Row, ...]:
    """The English, with the spellings that belong to the other one; and the dictionary, to be named."""
    return (_english(ground), _dictionary(ground))


def _english(ground: Ground) -> Row:
    """Decided where the settings name it; else what the book's own words and marks say."""
    vote = votes(ground.book, ground.analysis.vocabulary)
    others = tuple(
        Other(form=issue.quote, places=(issue.span, *issue.related))
        for issue in ground.issues
        if issue.check in _OTHER_SPELLINGS
    )
    basis, note = Basis.DECIDED, ""
    if ground.settings.english is None:
        both = min(vote.british, vote.american) > 0
        basis = Basis.MOSTLY if both or others else Basis.ALWAYS
        note = "by its spellings, words and marks"
        if vote.british == vote.american:
            basis, note = Basis.OPEN, "nothing in the book tells: taken to be British"
    return Row(
        term="English",
        form=_NAMES[ground.analysis.english],
        basis=basis,
        others=others,
        note=note,
    )


def _dictionary(ground: Ground) -> Row:
    decided = ground.style.form("dictionary")
    if decided:
        return Row(term="dictionary", form=decided, basis=Basis.DECIDED)
    return Row(
        term="dictionary",
        form="to be named",
        basis=Basis.OPEN,
        note="whatever is not listed here goes by it",
    )
