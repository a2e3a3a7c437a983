"""Words that the author settled: decided in the style, or let stand wherever they are."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from proofkit.issue import Issue
from proofkit.rulings.passage import comparable
from proofkit.rulings.ruling import Ruling
from proofkit.style import Style
from proofkit.words.confirm import WordToConfirm

# These ask whether a word is the one that was meant; the others ask what is done with it.
_FAMILIES = ("spelling/", "words/")
_WORD = re.compile(r"[^\W\d_]+(?:['-][^\W\d_]+)*")


def is_settled(issue: Issue, style: Style) -> bool:
    """Whether an issue asks about a word that stands as the author decided it."""
    if not issue.check.startswith(_FAMILIES):
        return False
    quote = comparable(issue.quote).strip(" .,;:!?\"'")
    return quote.lower() in _lowered((*style.words, *style.names))


def unsettled(
    words: Iterable[WordToConfirm], style: Style, rulings: Sequence[Ruling]
) -> tuple[WordToConfirm, ...]:
    """The words that the author has still to confirm."""
    settled = _lowered((*style.words, *style.names, *(ruling.word for ruling in rulings)))
    return tuple(word for word in words if comparable(word.word).lower().strip("'") not in settled)


def still_idle(idle: Iterable[Ruling], words: Iterable[WordToConfirm]) -> tuple[Ruling, ...]:
    """The rulings that match nothing, less those on a word that would else have to be confirmed."""
    asked = _lowered(word.word for word in words)
    return tuple(ruling for ruling in idle if not (_lowered([ruling.word]) & asked))


def _lowered(decided: Iterable[str]) -> frozenset[str]:
    """Each word or name in lower case, whole and by its words."""
    whole = {comparable(word).lower().strip("'") for word in decided} - {""}
    return frozenset(whole | {part for word in whole for part in _WORD.findall(word)})
