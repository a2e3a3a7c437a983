"""What is said of a page read aloud. The tongue twisters are traditional; the rest is invented."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import closing

import pytest

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.engines.language_model import LanguageModel
from proofkit.reading.rhythm.beginnings import alike_beginnings
from proofkit.reading.rhythm.find import rhythm_of
from proofkit.reading.rhythm.place import Stumble
from proofkit.reading.rhythm.twisters import twisters
from proofkit.settings import English
from proofkit.words.quotations import quotations_of
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of

TWISTERS = [
    "She sells sea-shells on the sea-shore.",
    "She sees cheese she can chew.",
    "Red lorry, yellow lorry, red lorry.",
    "The sixth sick sheikh’s sixth sheep is sick.",
    "The thistle sifter sifted three sieves of thistles.",
]
NO_TWISTERS = [
    "Peter Piper picked a peck of pickled pepper.",  # one sound again and again trips nobody
    "The silver fish swam softly past the sunken ship.",
    "She shut the shop and sat on the step in the sun.",
    "He rolled the red ball along the lawn and laughed.",
    "Then the sun sank. She sat still.",  # a breath between the two
    "“She sees cheese she can chew,” said Nan.",  # the speaker's own
    "She sees\ncheese she\ncan chew.",  # set in lines
]
ALIKE = [
    "Otto ran to the gate at the end of the lane. Otto pulled at the rusty bolt. Otto gave up.",
    "She put on her boots. She whistled for the dog. She took the path by the river.",
    "The goat looked at the hat. The goat sniffed its brim. The goat ate it from the top down.",
]
NOT_ALIKE = [
    # twice is nothing
    "She put on her boots. She whistled for the dog. The path by the river was dry.",
    # built alike on purpose
    "She looked under the bed. She looked under the rug. She looked under the cat.",
    # a drum beat
    "He hopped up. He fell down. He lay still.",
    # speech
    "“I want my bear. I lost him by the pond. I looked and looked.”",
    # different things, the same article
    "The moon came up over the hill. The owl woke. The mice ran home to bed.",
    # lines
    "He ran to the hills,\nHe sat by the mills,\nHe counted his pills and went home.",
]


def kinds(book: Book) -> list[Stumble]:
    speech = quotations_of(book)
    found = (*twisters(book, English.BRITISH, speech), *alike_beginnings(book, speech))
    return [place.kind for place in found]


@pytest.mark.parametrize("text", TWISTERS)
def test_old_tongue_twisters_twist_the_tongue(text: str) -> None:
    assert kinds(book_of(text)) == [Stumble.TWISTER]


@pytest.mark.parametrize("text", ALIKE)
def test_three_that_begin_alike(text: str) -> None:
    book = book_of(text)
    (place,) = alike_beginnings(book, quotations_of(book))
    assert len({book.quote(word).lower() for word in place.words}) == 1
    assert len(place.words) == 3


@pytest.mark.parametrize("text", [*NO_TWISTERS, *NOT_ALIKE])
def test_what_reads_well_is_left_alone(text: str) -> None:
    assert kinds(book_of(text)) == []


def test_four_alike_are_one_place() -> None:
    book = book_of(f"{ALIKE[1]} She sang all the way to the mill.")
    assert kinds(book) == [Stumble.BEGINNINGS]


def test_a_beginning_that_comes_back_on_other_pages_is_a_refrain() -> None:
    refrain = "Bim went to the well with his pail. Bim filled it to the brim. Bim spilt the lot."
    assert kinds(book_of(refrain)) == [Stumble.BEGINNINGS]
    assert kinds(book_of(refrain, "On Tuesday it rained.", refrain)) == []


@pytest.fixture(scope="module")
def model() -> Iterator[LanguageModel]:
    with closing(LanguageModel()) as loaded:
        yield loaded


def rhythm(model: LanguageModel, *texts: str) -> list[tuple[Stumble, list[str]]]:
    book = book_of(*texts)
    analysis = Analysis(
        english=English.BRITISH,
        vocabulary=vocabulary_of(book),
        pages=tuple(model.analyse([page.prose for page in book.pages])),
    )
    found = rhythm_of(book, analysis)
    return [(place.kind, [book.quote(word) for word in place.words]) for place in found]


@pytest.mark.engine
@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("The gloomy lane led to a house. Inside was a long and gloomy hall.", "gloomy"),
        ("The dog whimpered at the door until somebody came. Then it whimpered for its bowl.", "whimpered"),
        ("Nan looked crossly at the clock, put on her hat and crossly fed the hens.", "crossly"),
    ],
)  # fmt: skip
def test_an_uncommon_word_comes_back(model: LanguageModel, text: str, word: str) -> None:
    assert rhythm(model, text) == [(Stumble.ECHO, [word, word])]


@pytest.mark.engine
@pytest.mark.parametrize(
    "text",
    [
        "It was a gloomy, gloomy lane that led to the house.",
        "The kettle sang on the stove, and Nan took the kettle off.",
        "All the splashing in the morning and all the splashing at night made the ducks happy.",
        "“Gloomy!” said Nan. “It is a long and gloomy hall.”",
        "The dog could whistle. Nan heard it whistle, and the cat had to whistle too.",
        "He had a good look round and then a good look at his feet.",
    ],
)
def test_a_word_that_comes_back_on_purpose(model: LanguageModel, text: str) -> None:
    assert rhythm(model, text) == []


@pytest.mark.engine
def test_a_page_has_one_remark_and_sounds_have_none(model: LanguageModel) -> None:
    assert [kind for kind, _ in rhythm(model, f"{TWISTERS[0]} {ALIKE[1]}")] == [Stumble.TWISTER]
    assert rhythm(model, "Splish, splash, splosh, went her shoes.") == []
