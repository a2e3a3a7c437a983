"""Rulings on what the real checks of the text find in the example book, through two hundred edits of it."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.registry import all_checks
from proofkit.issue import Issue, with_keys
from proofkit.ranking import without_rivals
from proofkit.readers.read import read
from proofkit.rulings.judging import judged
from proofkit.settings import English, Settings
from proofkit.words.vocabulary import vocabulary_of
from tests.rulings.drafts import ruled

EXAMPLE = Path(__file__).parents[2] / "examples" / "the-borrowed-wind.md"
EDITS = 200
NEUTRAL = ("quietly", "slowly", "once more", "at last", "after a while")
SENTENCE = "Mabel thought about it for a little while."


def issues_of(book: Book) -> tuple[Issue, ...]:
    analysis = Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book))
    settings = Settings(english=English.BRITISH)
    checks = (check for check in all_checks() if check.needs <= {Need.TEXT})
    return with_keys(
        book,
        without_rivals([issue for c in checks for issue in c.find(book, analysis, settings)]),
    )


def draft(folder: Path, blocks: list[str]) -> Book:
    path = folder / "draft.md"
    path.write_text("\n\n".join(blocks) + "\n", encoding="utf-8")
    return read(path)


def edited(blocks: list[str], ruled_on: set[str], chance: random.Random) -> list[str]:
    """The blocks with one paragraph that no ruling is about changed, dropped, or put in."""
    free = [
        number
        for number, block in enumerate(blocks)
        if block[:1].isalpha() and number > 2 and not any(quote in block for quote in ruled_on)
    ]
    at = chance.choice(free)
    words = blocks[at].split(" ")
    kind = chance.choice(("word", "word", "word", "paragraph", "page", "drop"))
    if kind == "drop":
        return [*blocks[:at], *blocks[at + 1 :]]
    if kind == "word":
        where = chance.randrange(1, len(words)) if len(words) > 1 else 1
        words.insert(where, chance.choice(NEUTRAL))
        return [*blocks[:at], " ".join(words), *blocks[at + 1 :]]
    new = [SENTENCE] if kind == "paragraph" else ["## Spread 40", SENTENCE]
    return [*blocks[: at + 1], *new, *blocks[at + 1 :]]


@pytest.mark.slow
def test_two_hundred_edits_of_the_example_leave_every_ruling_in_force(
    file: Path, tmp_path: Path
) -> None:
    blocks = EXAMPLE.read_text(encoding="utf-8").strip().split("\n\n")
    book = draft(tmp_path, blocks)
    found = [
        issue for issue in issues_of(book) if not issue.check.startswith(("reading/", "pages/"))
    ]
    rulings = ruled(file, book, found, *found)
    assert len(rulings) == len(found) >= 8
    matters = {(issue.check, issue.quote) for issue in found}
    quotes = {book.quote(span) for issue in found for span in (issue.span, *issue.related)}
    chance = random.Random(40)  # noqa: S311 - chance, not secrecy
    held = 0
    for _ in range(EDITS):
        now = draft(tmp_path, edited(blocks, quotes, chance))
        judgement = judged(now, issues_of(now), rulings)
        assert [each for each in judgement.open if (each.check, each.quote) in matters] == []
        held += len(judgement.let_stand)
    print(f"{len(rulings)} rulings, {EDITS} edits: in force {held} of {EDITS * len(rulings)} times")
    assert held > 0.98 * EDITS * len(rulings)  # what is gone with its companion can't stand
