"""Italics in a manuscript, held against the rest of it."""

from __future__ import annotations

from pathlib import Path

import pytest

from proofkit.analysis import Analysis
from proofkit.checks.consistency import typeface_two_ways
from proofkit.issue import Tier
from proofkit.readers.read import read
from proofkit.settings import English, Settings
from proofkit.style import Style
from proofkit.words.vocabulary import vocabulary_of


def rows(tmp_path: Path, *pages: str, style: Style | None = None) -> list[tuple[str, str]]:
    """The words at fault and the message of each row, in a Markdown manuscript of these pages."""
    path = tmp_path / "goose.md"
    path.write_text("".join(f"## Page {n}\n\n{text}\n\n" for n, text in enumerate(pages, 1)))
    book = read(path)
    analysis = Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book))
    found = list(typeface_two_ways.find(book, analysis, Settings(style=style or Style())))
    assert all(issue.tier is Tier.QUERY and not issue.suggestions for issue in found)
    return [(issue.quote, issue.message) for issue in found]


def test_a_thought_that_is_not_in_italics(tmp_path: Path) -> None:
    assert rows(
        tmp_path,
        "*Why me?* thought Pip. *Why now?* he wondered.",
        "“Why here?” thought Pip. He thought, *It is late.*",
    ) == [("Why here", "a thought in marks; elsewhere in italics (3 times)")]


def test_a_sound_that_is_not_in_italics(tmp_path: Path) -> None:
    assert rows(
        tmp_path,
        "*Splash!* In went the duck. *Plop!* In went the frog.",
        "*Boom!* That was the thunder. Then it was quiet. Crash! That was the gate.",
    ) == [("Crash", "a sound in plain type; elsewhere in italics (3 times)")]


def test_a_ship_that_is_not_in_italics(tmp_path: Path) -> None:
    assert rows(
        tmp_path,
        "The captain of the *Merry Whelk* was a hen. The *Merry Whelk* leaked.",
        "They pumped out the Merry Whelk and sailed on.",
    ) == [("Merry Whelk", "a title in plain type; elsewhere in italics (twice)")]


@pytest.mark.parametrize(
    "text",
    [
        "*Splash!* In went the duck. There was a splash, a plop and a crash. *Plop!*",
        "He was *very* late. She was very late. *Really* late. Really!",
        "*Splash!* In went the duck. “Boom!” said the owl. *Plop!* In went the frog.",
        "*Why me?* thought Pip. *Why now?* thought Pip. He thought about it all day.",
    ],
)
def test_what_is_no_change_of_voice(tmp_path: Path, text: str) -> None:
    assert rows(tmp_path, text) == []


def test_what_was_decided_comes_first(tmp_path: Path) -> None:
    style = Style(forms={"thoughts": "italics"})
    text = "“Why me?” thought Pip. “Why now?” thought Pip."
    assert rows(tmp_path, text, style=style) == [
        ("Why me", "a thought in marks; your style sheet has them in italics")
    ]
