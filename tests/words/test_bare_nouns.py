"""Noun phrases, and how likely they stand without an article."""

from __future__ import annotations

import pytest

from proofkit.words.bare_nouns import bare_nouns
from proofkit.words.noun_phrases import EDGE, PLAIN, NounPhrase, noun_phrase


def phrase_of(tagged: str, noun: str) -> NounPhrase | None:
    """The phrase that ends with ``noun``, in words that are written as word/TAG."""
    pairs = [pair.rpartition("/") for pair in tagged.split()]
    words, tags = [pair[0] for pair in pairs], [pair[2] for pair in pairs]
    return noun_phrase(words, tags, words.index(noun))


def test_a_bare_noun_and_its_neighbours() -> None:
    phrase = phrase_of("She/PRP put/VBD key/NN in/IN it/PRP", "key")
    assert phrase == NounPhrase(
        first=2, determined=False, noun="key", before="put", describing=PLAIN, after="in"
    )


def test_before_a_determined_noun_stands_what_is_before_its_article() -> None:
    phrase = phrase_of("She/PRP saw/VBD a/DT very/RB old/JJ goat/NN ./.", "goat")
    assert phrase is not None
    assert phrase.determined
    assert (phrase.before, phrase.describing, phrase.after) == ("saw", "very", ".")


@pytest.mark.parametrize(
    "tagged",
    [
        "the/DT glittering/VBG world/NN",
        "a/DT small/JJ but/CC deep/JJ world/NN",
        "a/DT long/JJ ,/, ivy/NN -/HYPH covered/VBN world/NN",
        "a/DT kind/NN of/IN misty/JJ world/NN",
        "the/DT Tan/NNP world/NN",
    ],
)
def test_an_article_further_off(tagged: str) -> None:
    phrase = phrase_of(tagged + " ./.", "world")
    assert phrase is not None
    assert phrase.determined


def test_a_noun_that_describes_another_is_no_phrase() -> None:
    assert phrase_of("She/PRP saw/VBD dog/NN bowls/NNS", "dog") is None


def test_the_beginning_of_a_sentence_is_an_edge() -> None:
    phrase = phrase_of("Stop/UH !/. water/NN came/VBD", "water")
    assert phrase is not None
    assert phrase.before == EDGE


@pytest.mark.parametrize(
    ("bare", "wanting"),
    [
        ("went/VBD to/IN school/NN ./.", "went/VBD to/IN hill/NN ./."),
        ("came/VBD by/IN boat/NN ./.", "saw/VBD boat/NN ./."),
        ("was/VBD in/IN bed/NN ./.", "was/VBD on/IN chair/NN ./."),
        ("drank/VBD water/NN ./.", "opened/VBD door/NN ./."),
    ],
)
def test_what_stands_bare_is_likelier_than_what_does_not(bare: str, wanting: str) -> None:
    odds = []
    for tagged in (bare, wanting):
        noun = tagged.split()[-2].partition("/")[0]
        phrase = phrase_of(tagged, noun)
        assert phrase is not None
        assert bare_nouns().knows(noun)
        odds.append(bare_nouns().odds(phrase))
    assert odds[0] > odds[1] + 1
