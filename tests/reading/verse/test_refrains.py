from __future__ import annotations

from proofkit.book import Span
from proofkit.reading.verse.layout import Set
from proofkit.reading.verse.refrains import odd_refrains

USUAL = "Down in the valley the river runs wide"


def lines(*texts: str) -> list[Set]:
    return [Set(span=Span(page=n, start=0, end=len(t)), text=t) for n, t in enumerate(texts, 1)]


def test_a_word_changed() -> None:
    changed = "Down by the valley the river runs wide"
    (odd,) = odd_refrains(lines(USUAL, USUAL, changed))
    assert (odd.word, odd.instead) == ("by", "in")
    assert odd.span == Span(page=3, start=5, end=7)
    assert [span.page for span in odd.places] == [1, 2]


def test_a_word_missing_and_a_word_too_many() -> None:
    (odd,) = odd_refrains(lines(USUAL, USUAL, "Down in the valley river runs wide"))
    assert (odd.word, odd.instead) == ("", "the")
    (odd,) = odd_refrains(lines(USUAL, USUAL, "Down in the valley the river runs so wide"))
    assert (odd.word, odd.instead) == ("so", "")


def test_stops_and_capitals_make_no_difference() -> None:
    assert not odd_refrains(lines(USUAL, USUAL, "down in the valley, the river runs wide!"))


def test_a_refrain_that_stands_once_is_none() -> None:
    assert not odd_refrains(lines(USUAL, "Down by the valley the river runs wide"))


def test_verses_of_a_song_are_meant_to_differ() -> None:
    wheels = "The wheels on the bus go round"
    others = ("The wipers on the bus go round", "The doors on the bus go round")
    assert not odd_refrains(lines(wheels, wheels, *others))
