"""A name that the author decided comes before what the book mostly does."""

from __future__ import annotations

from types import ModuleType

import pytest

from proofkit.analysis import Analysis
from proofkit.checks.consistency import (
    made_up_name_capital,
    name_spelt_two_ways,
    possessive_two_ways,
    season_capital,
    title_point_two_ways,
)
from proofkit.settings import English, Settings
from proofkit.style import Style
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of

TIBBS = "There sat Tibs. Poor Tibs! Nobody fed Tibs. At last they called Tibbs."
MCPHEE = "There sat McPhee. Poor McPhee! At last they called Mcphee."
WOOD = (
    "He feared the Whispering Wood. She feared the Whispering Wood, and the whispering wood sang."
)
JAMES = "James had a hat. That was James's hat and James's coat. Whose were James' boots?"
TITLES = "There was Mr Tock. There was Mrs Tock. Then came Mr. Pell."
MOON = "He saw the moon. She saw the moon. They saw the Moon."


def style(*, names: tuple[str, ...] = (), **forms: str) -> Style:
    return Style(
        names=names, forms={matter.replace("_", "-"): form for matter, form in forms.items()}
    )


@pytest.mark.parametrize(
    ("check", "text", "decided", "odd", "better"),
    [
        (name_spelt_two_ways, TIBBS, style(names=("Mr Tibbs",)), ["Tibs"] * 3, "Tibbs"),
        (name_spelt_two_ways, MCPHEE, style(names=("Mcphee",)), ["McPhee"] * 2, "Mcphee"),
        (
            made_up_name_capital,
            WOOD,
            style(names=("whispering wood",)),
            ["Whispering Wood"] * 2,
            "whispering wood",
        ),
        (possessive_two_ways, JAMES, style(possessive_of_s="James'"), ["James's"] * 2, "James'"),
        (title_point_two_ways, TITLES, style(title_point="Mr."), ["Mr", "Mrs"], "Mr."),
        (season_capital, MOON, style(names=("Moon",)), ["moon"] * 2, "Moon"),
    ],
)
def test_the_decided_form_is_followed(
    check: ModuleType, text: str, decided: Style, odd: list[str], better: str
) -> None:
    book = book_of(text)
    analysis = Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book))
    (usual,) = check.find(book, analysis, Settings())
    assert usual.suggestions[0] != better
    (issue,) = check.find(book, analysis, Settings(style=decided))
    assert [book.quote(span) for span in (issue.span, *issue.related)] == odd
    assert issue.suggestions == (better,)
    assert "your style sheet has" in issue.message


def test_two_decided_names_are_two_people() -> None:
    book = book_of("There sat Zibbelo. Poor Zibbelo! They loved Zibbelo. Then came Zibelo.")
    analysis = Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book))
    settings = Settings(style=Style(names=("Zibbelo", "Zibelo")))
    assert len(list(name_spelt_two_ways.find(book, analysis, Settings()))) == 1
    assert list(name_spelt_two_ways.find(book, analysis, settings)) == []
