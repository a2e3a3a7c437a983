"""Several manuscripts that must agree: the volumes of a series, or all that lie in one book's folder."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import msgspec

from proofkit.book import Book
from proofkit.engines.memory import Memory
from proofkit.issue import Issue
from proofkit.opening import digest, read_once
from proofkit.own_file import FILE_NAME
from proofkit.problem import Unusable
from proofkit.progress import Progress
from proofkit.settings import Choices, Settings, settings_for
from proofkit.words.english import english_for

if TYPE_CHECKING:
    from proofkit.checks.series import Volume

_KIND = "series"
_MANUSCRIPTS = {".docx", ".odt", ".rtf", ".md", ".txt"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Member:
    """A manuscript of the series, with its own settings."""

    path: Path
    book: Book
    settings: Settings


def companions(
    manuscript: Path, series: Sequence[Path], checked: Sequence[Path]
) -> tuple[Path, ...]:
    """The manuscripts that ``manuscript`` must agree with.

    ``series`` are the files and folders that its settings name; of a folder the manuscript changed last
    is taken. ``checked`` are those of the same run: they count where they lie in the same book's folder.
    """
    folder, here = manuscript.parent, manuscript.resolve()
    beside = checked if (folder / FILE_NAME).is_file() else ()
    found = [other for other in beside if other.parent == folder]
    for named in series:
        found += [named] if named.is_file() else list(_latest(named))
    return tuple({p.resolve(): p for p in found if p.resolve() != here}.values())


def not_agreeing(
    asking: Member, others: Sequence[Path], asked: Choices, *, memory: Memory, progress: Progress
) -> tuple[Issue, ...]:
    """What in ``asking`` does not agree with the other manuscripts; those that can't be read don't count."""
    members = [asking, *_readable(others, asked, memory)]
    if len(members) == 1:
        return ()
    # One order, whichever of them asks: of two names as frequent the later one is the odd one.
    members.sort(key=lambda member: str(member.path.resolve()))
    place = members.index(asking)
    key = digest(place, asking.settings.style, *((m.book, m.settings.english) for m in members))
    kept = memory.recall(_KIND, key)
    if kept:
        return msgspec.msgpack.decode(kept, type=tuple[Issue, ...])
    # Only now: most books stand alone, and need not wait for what compares several.
    from proofkit.across import issues_across  # noqa: PLC0415

    found = issues_across(_analysed(members, memory, progress), asking.settings)[place]
    memory.remember(_KIND, key, msgspec.msgpack.encode(found))
    return found


def _latest(folder: Path) -> Iterator[Path]:
    if folder.is_dir():
        files = [f for f in folder.iterdir() if f.suffix.lower() in _MANUSCRIPTS and f.is_file()]
        yield from sorted(files, key=lambda file: (file.stat().st_mtime, file.name))[-1:]


def _readable(paths: Sequence[Path], asked: Choices, memory: Memory) -> Iterator[Member]:
    for path in paths:
        try:
            settings = settings_for(path, asked)
            yield Member(path=path, book=read_once(path, memory), settings=settings)
        except Unusable:
            continue  # said where that manuscript itself is checked


def _analysed(members: Sequence[Member], memory: Memory, progress: Progress) -> list[Volume]:
    # Only now: what is remembered needs no engine, and need not wait for their libraries.
    from proofkit.checks.series import Volume  # noqa: PLC0415
    from proofkit.engines.analyse import Analyst  # noqa: PLC0415

    books = [(m.book, english_for(m.book, m.settings.english)) for m in members]
    with Analyst(memory=memory, progress=progress) as analyst:
        analyses = analyst.analyse(books, language_model=True, grammar_engine=False)
        return [
            Volume(book=member.book, analysis=analysis)
            for member, analysis in zip(members, analyses, strict=True)
        ]
