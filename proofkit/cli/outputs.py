"""Where each report goes, settled and tested before any work is done."""

from __future__ import annotations

import os
from collections import Counter
from collections.abc import Mapping, Sequence
from pathlib import Path

from proofkit.problem import Unusable
from proofkit.reports.writing import check_target, make_folder


def into_folder(output: str, manuscripts: Sequence[Path]) -> bool:
    """Whether ``output`` means a folder: for several reports, or because it is one or is written so."""
    separators = tuple(filter(None, (os.sep, os.altsep)))
    return len(manuscripts) > 1 or output.endswith(separators) or Path(output).is_dir()


def targets(output: str, manuscripts: Sequence[Path], ending: str) -> Mapping[Path, Path]:
    """The file that each manuscript's report is written to; ``ending`` is ".json" and the like.

    In a folder a report has its manuscript's stem, or its whole name where two share a stem. Raises
    Unusable where a report can't go, or would take the place of another or of a manuscript.
    """
    if not into_folder(output, manuscripts):
        chosen = {manuscripts[0]: Path(output)}
    else:
        make_folder(Path(output))
        stems = Counter(manuscript.stem.casefold() for manuscript in manuscripts)
        chosen = {
            manuscript: Path(output) / f"{_name(manuscript, stems)}{ending}"
            for manuscript in manuscripts
        }
        _refuse_namesakes(chosen)
    for target in chosen.values():
        check_target(target, manuscripts)
    return chosen


def _name(manuscript: Path, stems: Counter[str]) -> str:
    return manuscript.stem if stems[manuscript.stem.casefold()] == 1 else manuscript.name


def _refuse_namesakes(chosen: Mapping[Path, Path]) -> None:
    """Two manuscripts of one name, from two folders, can't both have their report in one."""
    taken: dict[str, Path] = {}
    for manuscript, target in chosen.items():
        other = taken.setdefault(target.name.casefold(), manuscript)
        if other != manuscript:
            raise Unusable(
                f"The reports on {other} and {manuscript} would both be called {target.name}. "
                "Check them one after the other, each with a folder of its own after --output."
            )
