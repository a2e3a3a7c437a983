from __future__ import annotations

import pytest

from proofkit.reading.verse.poem import RhymeKind
from proofkit.reading.verse.rhyme import rhyme, rhyme_of_ends
from proofkit.settings import English


@pytest.mark.parametrize(
    ("pair", "kind"),
    [
        ("hat cat", RhymeKind.PERFECT),
        ("rabbit habit", RhymeKind.PERFECT),
        ("sea see", RhymeKind.IDENTICAL),
        ("moon moon", RhymeKind.IDENTICAL),
        ("time mine", RhymeKind.NEAR),
        ("town ground", RhymeKind.NEAR),
        ("merrily tree", RhymeKind.NEAR),
        ("love move", RhymeKind.EYE),
        ("symmetry eye", RhymeKind.EYE),
        ("kitten garden", RhymeKind.NONE),
        ("cup tree", RhymeKind.NONE),
        ("flash bridge", RhymeKind.NONE),
    ],
)
def test_kinds_of_rhyme(pair: str, kind: RhymeKind) -> None:
    first, second = pair.split()
    assert rhyme(first, second, English.BRITISH) is kind
    assert rhyme(second, first, English.BRITISH) is kind


def test_two_words_may_rhyme_with_two_or_with_one() -> None:
    assert rhyme_of_ends(("found", "it"), ("round", "it"), English.BRITISH) is RhymeKind.PERFECT
    assert rhyme_of_ends(("upon", "it"), ("whose", "bonnet"), English.BRITISH) is RhymeKind.PERFECT
    assert rhyme_of_ends(("lost", "it"), ("round", "it"), English.BRITISH) is RhymeKind.IDENTICAL
