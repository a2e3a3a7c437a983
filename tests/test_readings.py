"""From a file to how it reads, with the real language model."""

from __future__ import annotations

from pathlib import Path

import pytest

from proofkit.engines.memory import Memory
from proofkit.reading.bands import Place
from proofkit.readings import ReadOutcome, readings
from proofkit.settings import Choices, English

BOOK = (
    "# The Grey Heron\n\n## Spread 1\n\nThe heron stood in the cold grey water. Her favourite fish had gone.\n\n"
    "## Spread 2\n\nShe implored the frog to tell her where. The frog said nothing at all.\n"
)


def read(folder: Path, memory: Memory, band: str | None = None) -> ReadOutcome:
    path = folder / "heron.md"
    path.write_text(BOOK, encoding="utf-8")
    (outcome,) = readings([path], Choices(age_band=band), memory=memory)
    return outcome


@pytest.mark.engine
def test_a_manuscript_and_the_same_again(tmp_path: Path) -> None:
    memory = Memory(tmp_path / "memory.db")
    first = read(tmp_path, memory).report
    assert first is not None
    assert (first.title, first.english, first.book.words) == (
        "The Grey Heron",
        English.BRITISH,
        27,
    )
    assert "implored" in [word.word for word in first.words_beyond]
    assert (first.phonics, first.verse) == (None, None)
    assert read(tmp_path, memory).report == first
    memory.close()


@pytest.mark.engine
def test_another_band_is_another_reading(tmp_path: Path) -> None:
    memory = Memory(tmp_path / "memory.db")
    heard = read(tmp_path, memory).report
    alone = read(tmp_path, memory, "early-reader").report
    assert heard is not None
    assert alone is not None
    assert heard.phonics is None
    assert alone.phonics is not None
    assert heard.places["words"] is Place.WITHIN
    assert alone.places["words"] is Place.BELOW
    memory.close()


def test_what_is_not_there_is_a_sentence(tmp_path: Path) -> None:
    (outcome,) = readings([tmp_path / "gone.docx"], Choices(), memory=Memory(None))
    assert outcome.report is None
    assert "gone.docx" in str(outcome.problem)
