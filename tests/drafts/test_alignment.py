from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from proofkit.book import Span
from proofkit.drafts.alignment import NOWHERE, linked, words_of

STORY = (
    "The goose went down to the lake before anybody else was up.",
    "Nobody knew where the wind had gone, and even the reeds stood still.",
    "A crow sat on the boat that lay upside down on the shore.",
)
pages = st.lists(st.text("abc .\n", max_size=30), max_size=5)


def followed(was: tuple[str, ...], now: tuple[str, ...]) -> list[str | None]:
    """What each word of some pages has become."""
    old, new = words_of(was), words_of(now)
    return [None if to == NOWHERE else new.texts[to] for to in linked(old, new)]


def test_every_word_of_the_same_text_is_itself() -> None:
    words = words_of(STORY)
    assert linked(words, words) == tuple(range(len(words.texts)))


def test_pages_in_another_order_are_followed() -> None:
    old, new = words_of(STORY), words_of(STORY[::-1])
    links = linked(old, new)
    assert [new.texts[to] for to in links] == list(old.texts)
    assert {new.starts[to][0] for to in links[:12]} == {3}


def test_a_word_with_another_in_its_place_went_nowhere() -> None:
    now = (STORY[0].replace("goose", "hen"), *STORY[1:])
    assert followed(STORY, now)[:4] == ["the", None, "went", "down"]


def test_a_name_that_another_has_replaced_all_through_is_that_other() -> None:
    was = tuple(f"{page} So said Wilf to the frog." for page in STORY)
    now = tuple(page.replace("Wilf", "Mabel") for page in was)
    assert followed(was, now).count("mabel") == 3


def test_a_word_is_found_at_its_place_and_none_between_two() -> None:
    words = words_of(("The grey  goose",))
    assert words.within(Span(page=1, start=4, end=8)) == (1, 2)
    assert words.within(Span(page=1, start=5, end=12)) == (1, 3)
    assert words.within(Span(page=1, start=8, end=10)) == (2, 2)
    assert words.within(Span(page=2, start=0, end=0)) == (3, 3)


def test_an_accent_written_after_its_letter_is_the_same_word() -> None:
    assert followed(("The cafe\u0301 was shut",), ("The caf\u00e9 was shut",)) == [
        "the",
        "caf\u00e9",
        "was",
        "shut",
    ]


@given(pages, pages)
def test_no_two_words_become_the_same_one(was: list[str], now: list[str]) -> None:
    old, new = words_of(was), words_of(now)
    links = [to for to in linked(old, new) if to != NOWHERE]
    assert len(set(links)) == len(links)
    assert all(0 <= to < len(new.texts) for to in links)
