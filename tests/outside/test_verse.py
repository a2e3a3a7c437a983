"""Verse against published scansions, rhymes that are known to be or not to be, and prose that is none.

The metres are those that handbooks give: Coleridge's Metrical Feet (1806), which scans itself; the
prosody pages of the University of Virginia for Gray, Wordsworth and Byron; F. V. N. Painter, Elementary
Guide to Literary Criticism (1903), for Longfellow and the two lines of his own.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from proofkit.readers.read import read
from proofkit.reading.verse.find import verse_of
from proofkit.reading.verse.poem import RhymeKind
from proofkit.reading.verse.read_poem import metre_of
from proofkit.reading.verse.rhyme import rhyme
from proofkit.settings import English
from proofkit.words.pronunciations import listed, spoken_as
from tests.bench.planted_verse import KNOWN, UNSEEN, Tally, measured
from tests.marked import book_of

BOOKS = Path(__file__).resolve().parents[3] / "shared" / "books" / "dev"
RHYMING = {RhymeKind.PERFECT, RhymeKind.IDENTICAL}


def _rhyme(pair: str, english: English) -> RhymeKind:
    first, second = pair.split()
    return rhyme(first, second, english)


@pytest.mark.parametrize("english", English)
@pytest.mark.parametrize(
    ("line", "metre", "syllables"),
    [
        ("Trochee trips from long to short;", "trochaic tetrameter catalectic", 7),
        ("Iambics march from short to long;", "iambic tetrameter", 8),
        ("With a leap and a bound the swift Anapaests throng", "anapaestic tetrameter", 12),
        ("The curfew tolls the knell of parting day", "iambic pentameter", 10),
        ("I wandered lonely as a cloud", "iambic tetrameter", 8),
        ("The Assyrian came down like the wolf on the fold", "anapaestic tetrameter", 12),
        ("As unto the bow the cord is", "trochaic tetrameter", 8),
        ("Softly the breezes descend in the valley", "dactylic tetrameter catalectic", 11),
        ("How she smiled, and I could not but love", "anapaestic trimeter", 9),
        (
            "This is the forest primeval, the murmuring pines and the hemlocks",
            "dactylic hexameter catalectic",
            17,
        ),
        (
            "'Twas the night before Christmas, when all through the house",
            "anapaestic tetrameter",
            12,
        ),
        ("Twinkle, twinkle, little star,", "trochaic tetrameter catalectic", 7),
    ],
)
def test_a_line_has_its_published_metre(
    line: str, metre: str, syllables: int, english: English
) -> None:
    found = metre_of([line], english)
    assert found is not None
    assert found[0].name == metre
    assert not found[0].loose
    assert [len(pattern) for pattern in found[1]] == [syllables]


def test_swift_is_off_the_beat_in_the_line_about_anapaests() -> None:
    found = metre_of(["With a leap and a bound the swift Anapaests throng"], English.BRITISH)
    assert found is not None
    assert found[1] == ("xx/xx/xx/xx/",)


@pytest.mark.parametrize("english", English)
def test_a_limerick(english: English) -> None:
    verse = verse_of(
        book_of(
            "There was an Old Man with a beard,\n"
            "Who said, “It is just as I feared!\n"
            "Two Owls and a Hen,\n"
            "Four Larks and a Wren,\n"
            "Have all built their nests in my beard!”"
        ),
        english,
    )
    assert verse is not None
    assert verse.scheme == "AABBA"
    assert [line.syllables for line in verse.lines] == [8, 8, 5, 5, 8]
    assert verse.metre is not None
    assert verse.metre.beats == (3, 3, 2, 2, 3)


def test_ballad_metre_has_four_and_three_beats_and_rhymes_the_even_lines() -> None:
    verse = verse_of(
        book_of(
            "The fair breeze blew, the white foam flew,\n"
            "The furrow followed free;\n"
            "We were the first that ever burst\n"
            "Into that silent sea.\n\n"
            "Water, water, every where,\n"
            "And all the boards did shrink;\n"
            "Water, water, every where,\n"
            "Nor any drop to drink."
        ),
        English.BRITISH,
    )
    assert verse is not None
    assert verse.metre is not None
    assert verse.metre.beats == (4, 3)
    assert verse.stanzas[0].scheme == "ABCB"


@pytest.mark.parametrize("english", English)
@pytest.mark.parametrize(
    "pair",
    [
        "bright night", "house mouse", "tea sea", "one sun", "bear pear", "cloud crowd", "hour flower",
        "again rain", "again men", "boat note", "wind find", "scone bone", "vase cars", "butterfly sky",
    ],
)  # fmt: skip
def test_these_rhyme_in_both_englishes(pair: str, english: English) -> None:
    assert _rhyme(pair, english) in RHYMING


@pytest.mark.parametrize("english", English)
@pytest.mark.parametrize(
    "pair",
    ["love move", "cough through", "were there", "eye symmetry", "tomato veto", "tree merrily"],
)
def test_these_rhyme_in_neither(pair: str, english: English) -> None:
    assert _rhyme(pair, english) not in RHYMING


@pytest.mark.parametrize(
    "pair", ["scone gone", "caught court", "bath hearth", "poor paw", "sure more"]
)
def test_these_rhyme_in_southern_england_only(pair: str) -> None:
    assert _rhyme(pair, English.BRITISH) in RHYMING
    assert _rhyme(pair, English.AMERICAN) not in RHYMING


def test_tomato_and_potato_part_the_englishes() -> None:
    assert rhyme("tomato", "potato", English.BRITISH) is RhymeKind.EYE
    assert rhyme("tomato", "potato", English.AMERICAN) is RhymeKind.PERFECT


@pytest.mark.parametrize("word", ["gitche", "gumee", "pyjamas", "nappy"])
def test_words_that_the_pronouncing_dictionary_lacks_are_known(word: str) -> None:
    assert not listed(word)
    assert not spoken_as(word, English.BRITISH).guessed


def test_prose_is_not_taken_for_verse() -> None:
    if not BOOKS.exists():
        pytest.skip("the forty books are not beside the project")
    books = sorted(BOOKS.glob("*.md"))
    taken = [path.name for path in books if verse_of(read(path), English.BRITISH)]
    assert len(books) == 40
    assert len(taken) <= 1, taken


@pytest.fixture(scope="module")
def tallies() -> tuple[Tally, Tally]:
    """The planted slips, in the verse that the prices were set on and in verse unseen."""
    return measured(KNOWN, ()), measured(UNSEEN, ())


@pytest.mark.slow
def test_planted_slips_are_found_where_the_metre_is_clear(tallies: tuple[Tally, Tally]) -> None:
    known, unseen = (
        sum(count for (_, clear), count in tally.found.items() if clear)
        / sum(count for (_, clear), count in tally.tried.items() if clear)
        for tally in tallies
    )
    assert known >= 0.85
    assert unseen >= 0.75


@pytest.mark.slow
def test_good_lines_are_seldom_doubted_and_most_are_held_against_a_metre(
    tallies: tuple[Tally, Tally],
) -> None:
    for tally in tallies:
        assert tally.alarms / tally.lines <= 0.01
        assert tally.judged / tally.lines >= 0.5
