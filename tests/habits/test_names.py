"""Who and what has a name in a book."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.engines.analyse import Analyst
from proofkit.engines.memory import Memory
from proofkit.habits.names import Kind, Named, names_of
from proofkit.settings import English
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of

TOCK = book_of(
    "Old Mr Tock wound the clocks. “Good morning, Mr Tock!” said Mrs Pell.",
    "But Tock said nothing. Mrs Tock laughed at him.",
    "“Tick,” said Mr Tock.",
)
ISLE = book_of(
    "Tilda Moon sailed the Salty Sue to the Isle of Socks. She lived in Crumb Street.",
    "On Monday Tilda met Grandma in Kisumu. “Whoosh!” said Grandma. “Oh, I see,” she said.",
    "Then the Snargle roared. Tilda told the Snargle to sit. The Snargle sat, and he cried.",
)


def named(book: Book, analysis: Analysis | None = None) -> Mapping[str, Named]:
    """The names of a book, by what they are called; without the language model if none is given."""
    plain = Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book))
    return {one.name: one for one in names_of(book, analysis or plain)}


def counts(one: Named) -> dict[str, int]:
    return {form: len(spans) for form, spans in one.forms.items()}


def test_a_title_and_an_epithet_are_part_of_one_name() -> None:
    assert counts(named(TOCK)["Mr Tock"]) == {"Mr Tock": 2, "Old Mr Tock": 1}


def test_a_couple_are_two_and_their_bare_name_may_be_either() -> None:
    names = named(TOCK)
    assert set(names) == {"Mr Tock", "Mrs Pell", "Tock", "Mrs Tock"}
    assert (names["Mr Tock"].asked, names["Mrs Tock"].asked, names["Tock"].asked) == (
        "he",
        "she",
        "",
    )
    assert (names["Mr Tock"].first_page, names["Mr Tock"].last_page) == (1, 3)


def test_a_bare_name_is_his_whose_titled_one_stands_alone() -> None:
    names = named(book_of("Old Mr Tock woke, and Tock yawned. “Good morning, Mr Tock!” they said."))
    assert counts(names["Old Mr Tock"]) == {"Old Mr Tock": 1, "Tock": 1, "Mr Tock": 1}


def test_characters_places_and_things() -> None:
    kinds = {name: one.kind for name, one in named(ISLE).items()}
    assert kinds == {
        "Tilda Moon": Kind.CHARACTER,
        "Salty Sue": Kind.THING,
        "Isle of Socks": Kind.PLACE,
        "Crumb Street": Kind.PLACE,
        "Grandma": Kind.CHARACTER,
        "Kisumu": Kind.PLACE,
        "Snargle": Kind.CHARACTER,
    }


def test_forms_that_differ_in_accents_or_capitals_are_one() -> None:
    names = named(book_of("Then Zoë met McPhee. So Zoë told Mcphee. “Zoe!” said McPhee to Zoë."))
    assert counts(names["Zoë"]) == {"Zoë": 3, "Zoe": 1}
    assert counts(names["McPhee"]) == {"McPhee": 2, "Mcphee": 1}


def test_spans_cover_the_name_without_its_possessive() -> None:
    book = book_of("They ate Mrs. Pell's pie. Everybody loved Mrs. Pell’s pies.")
    (pell,) = named(book).values()
    assert [book.quote(span) for span in pell.spans] == ["Mrs. Pell", "Mrs. Pell"]


@pytest.mark.parametrize(
    "text",
    [
        "Whoosh! Oh, it went. Bang! Then the wind blew. Oh, how it blew.",
        "They came on Monday in July. I saw them, and I'm sure it was Christmas.",
        "“WHO ATE THE PIE?” he cried. “Yes, WHO?”",
        "They spoke English and French. An Indian elephant waved.",
        "So the cat sat. So the dog sat. Nobody spoke. Nobody sang.",
    ],
)
def test_what_is_no_name(text: str) -> None:
    assert named(book_of(text)) == {}


def test_a_name_only_ever_at_the_beginning_of_sentences() -> None:
    assert set(named(book_of("Zib woke. Zib ate. The cat slept."))) == {"Zib"}


@pytest.mark.engine
def test_pronouns_of_characters() -> None:
    book = book_of("Tilda took her net. She ran. Tilda sang as she ran.", "Grandpa shook his head.")
    with Analyst(memory=Memory(None)) as analyst:
        (analysis,) = analyst.analyse(
            [(book, English.BRITISH)], language_model=True, grammar_engine=False
        )
    names = named(book, analysis)
    assert {sex: len(spans) for sex, spans in names["Tilda"].pronouns.items()} == {"she": 3}
    assert {sex: len(spans) for sex, spans in names["Grandpa"].pronouns.items()} == {"he": 1}
