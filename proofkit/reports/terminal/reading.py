"""How the story is spread over its pages: a strip of figures, one column for each turn of the page."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rich.text import Text

from proofkit.report import Report
from proofkit.reports.pacing import (
    MEASURES,
    Step,
    grade_shown,
    sentences_on_reading,
    steps,
    unit,
)
from proofkit.reports.terminal.theme import INK

_HEIGHTS = "▁▂▃▄▅▆▇█"
_CELL = 5


def reading_section(report: Report, width: int, *, bars: bool) -> Iterator[Text]:
    """The strip, in as many pieces as the width asks for, and the sentences about the whole.

    ``bars`` draws the words as columns of blocks above their numbers, for terminals that have them.
    """
    found = steps(report)
    heads = (unit(report), *MEASURES)
    label = max(len(head) for head in heads) + 2
    across = max(1, (width - label) // _CELL)
    fullest = max((step.words for step in found), default=0)
    for first in range(0, len(found), across):
        yield from _piece(found[first : first + across], heads, label, fullest if bars else 0)
    for sentence in sentences_on_reading(report):
        yield Text(sentence)


def _piece(
    steps_: Sequence[Step], heads: Sequence[str], label: int, fullest: int
) -> Iterator[Text]:
    if fullest:
        yield _line("", label, [_bar(step.words, fullest) for step in steps_], INK)
    columns = zip(
        *((s.name, str(s.words), str(s.longest_sentence), grade_shown(s.grade)) for s in steps_),
        strict=True,
    )
    for head, cells in zip(heads, columns, strict=True):
        if any(cells):
            yield _line(head, label, cells, INK if head == heads[0] else "")


def _line(head: str, label: int, cells: Sequence[str], style: str) -> Text:
    return Text(
        head.ljust(label) + "".join(cell.rjust(_CELL) for cell in cells), style, no_wrap=True
    )


def _bar(words: int, fullest: int) -> str:
    """A block as high as the words are many, beside the fullest; a step without words has none."""
    if not words:
        return ""
    return _HEIGHTS[round((len(_HEIGHTS) - 1) * words / fullest)] * 2
