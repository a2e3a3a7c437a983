from __future__ import annotations

import pytest

from proofkit.book import Book, Page, Paragraph
from proofkit.reading.formulas import ease_in_words
from proofkit.reports.pacing import sentences_on_reading, steps, unit
from tests.reports.goat import goat


def page(number: int, words: int, *, spread: int | None = None, label: str = "") -> Page:
    text = "Nell went up. " * (words // 3)
    whole = Paragraph(start=0, end=len(text))
    return Page(number=number, text=text, paragraphs=(whole,), spread=spread, label=label)


def paced(*pages: Page) -> Book:
    return Book(path="goat.docx", title="", pages=pages)


def test_the_two_pages_of_a_spread_are_one_step() -> None:
    report = goat(
        paced(page(1, 30, spread=1), page(2, 60, spread=1), page(3, 9, spread=2)), issues=()
    )
    assert unit(report) == "spread"
    assert [(step.name, step.words) for step in steps(report)] == [("1", 90), ("2", 9)]


def test_a_page_that_lies_on_no_spread_is_a_step_of_its_own() -> None:
    report = goat(paced(page(1, 12, label="Page 1"), page(2, 9, spread=1)), issues=())
    assert [(step.name, step.words) for step in steps(report)] == [("p. 1", 12), ("1", 9)]


def test_without_spreads_the_pages_are_the_steps() -> None:
    report = goat(paced(page(1, 12, label="Page 7"), page(2, 9, label="The storm")), issues=())
    assert unit(report) == "page"
    assert [step.name for step in steps(report)] == ["7", "2"]


def test_without_marks_there_are_no_steps_and_the_sentences_say_so() -> None:
    report = goat(issues=(), paginated=False)
    assert steps(report) == ()
    assert "No pages are marked" in sentences_on_reading(report)[1]


def test_a_book_of_many_pages_is_not_set_out_page_by_page() -> None:
    many = paced(*(page(n, 300, spread=n) for n in range(1, 100)))
    assert steps(goat(many, issues=())) == ()


def test_a_heavy_spread_is_named_beside_what_is_usual() -> None:
    report = goat(paced(page(1, 30, spread=1), page(2, 90, spread=2)), issues=())
    assert sentences_on_reading(report)[-2] == (
        "Picture books usually have up to 67 words on a spread; here spread 2 (90) has more"
    )


def test_too_short_a_book_has_no_score() -> None:
    lines = sentences_on_reading(goat(paced(page(1, 30, spread=1)), issues=()))
    assert "too few words for a readability score" in lines[0]


def test_a_long_page_keeps_its_own_grade_and_needs_no_excuse() -> None:
    report = goat(paced(page(1, 150, spread=1), page(2, 150, spread=2)), issues=())
    assert not [line for line in sentences_on_reading(report) if "of its own" in line]
    assert all(step.grade is not None for step in steps(report))


@pytest.mark.parametrize(
    ("ease", "name"),
    [(94.66, "very easy"), (84.84, "easy"), (75.03, "fairly easy"), (65.22, "standard"),
     (54.39, "fairly difficult"), (40.18, "difficult"), (14.97, "very difficult")],
)  # fmt: skip
def test_ease_has_flesch_s_names(ease: float, name: str) -> None:
    # Flesch, The Art of Readable Writing, 1949, quoted in DuBay, The Principles of Readability, 2004, p. 23.
    assert ease_in_words(ease) == name
