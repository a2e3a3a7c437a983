"""How many misspellings that people make we find, and how often the word that was meant comes first.

The lists are Wikipedia's of common misspellings (CC BY-SA) and the one that comes with GNU Aspell, in
Roger Mitton's form: a line "$word", then its misspellings. They are not part of the project, so the
test is skipped where they are not beside it.
"""

from __future__ import annotations

from collections import defaultdict
from pathlib import Path

import pytest

from proofkit.settings import English
from proofkit.words.dictionary import Dictionary, dictionary
from proofkit.words.suggest import suggest

LISTS = Path(__file__).resolve().parents[3] / "shared" / "lists"
ENGLISHES = tuple(dictionary(english) for english in English)
# Every so many of the list, to keep the test short.
EVERY = 4


def misspellings(name: str) -> dict[str, set[str]]:
    """For each misspelling, the words that may have been meant."""
    path = LISTS / f"misspellings-{name}.dat"
    if not path.exists():
        pytest.skip(f"{path.name} is not beside the project")
    meant: dict[str, set[str]] = defaultdict(set)
    word = ""
    for line in path.read_text("latin-1").split():
        if line.startswith("$"):
            word = line[1:]
        else:
            meant[line.replace("_", " ")].add(plain(word))
    return dict(sorted(meant.items())[::EVERY])


def plain(word: str) -> str:
    return word.lower().replace("-", " ").replace("_", " ")


def place(wrong: str, meant: set[str], known: Dictionary) -> int:
    """The place of the first right suggestion in one English; 99 if there is none."""
    found = [plain(word) for word in suggest(wrong, known)]
    return min((found.index(word) for word in meant if word in found), default=99)


@pytest.mark.slow
@pytest.mark.parametrize(
    ("name", "found", "first", "three"),
    # The second list holds what spelling checkers fail at; hunspell has 0.50 of it first.
    [("wikipedia", 0.97, 0.92, 0.97), ("aspell", 0.95, 0.68, 0.86)],
)
def test_misspellings_are_found_and_mended(
    name: str, found: float, first: float, three: float
) -> None:
    pairs = misspellings(name)
    wrong = [w for w in pairs if not any(known.knows(w) for known in ENGLISHES)]
    places = [min(place(w, pairs[w], known) for known in ENGLISHES) for w in wrong]
    shares = (
        len(wrong) / len(pairs),
        sum(at == 0 for at in places) / len(wrong),
        sum(at < 3 for at in places) / len(wrong),
    )
    print(f"\n{name}: found {shares[0]:.3f}, right first {shares[1]:.3f}, in three {shares[2]:.3f}")
    assert shares[0] >= found
    assert shares[1] >= first
    assert shares[2] >= three
