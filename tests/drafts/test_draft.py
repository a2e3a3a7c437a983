from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest

from proofkit.book import Book
from proofkit.drafts.draft import Draft, SpreadWords
from proofkit.drafts.from_report import draft_of
from proofkit.engines.note import EngineNote
from proofkit.issue import Tier
from proofkit.problem import Notice
from proofkit.reading.measure import measure
from proofkit.report import Report, report_of
from proofkit.rulings.ruling import Ruling
from proofkit.settings import English, Settings
from proofkit.style import Style
from tests.drafts.making import book_of, slips_in
from tests.drafts.test_matching import BOOK

WHEN = datetime(2026, 11, 25, 9, tzinfo=UTC)


def book(*texts: str) -> Book:
    """A book with two pages on a spread."""
    plain = book_of(*texts)
    return replace(
        plain, pages=tuple(replace(page, spread=(page.number + 1) // 2) for page in plain.pages)
    )


def report(of: Book, *, let_stand: int = 0) -> Report:
    issues = slips_in(of)
    return report_of(
        of,
        issues[let_stand:],
        english=English.BRITISH,
        age_band="picture",
        words_to_confirm=(),
        reading=measure(of),
        engines=(EngineNote(name="grammar engine", version="6.8", ran=True),),
        let_stand=((issue, "dialect") for issue in issues[:let_stand]),
    )


def draft(of: Book, settings: Settings | None = None, *, edition: str = "") -> Draft:
    return draft_of(report(of), date=WHEN, settings=settings or Settings(), edition=edition)


def test_a_draft_has_what_the_report_has() -> None:
    made = draft_of(
        report(book(*BOOK), let_stand=1),
        date=WHEN,
        settings=Settings(),
        rulings=[Ruling(at="proofkit.toml", word="mornign", because="dialect")],
    )
    assert made.texts == BOOK
    assert [issue.quote for issue in made.open] == ["the the", "  ", ""]
    assert [(issue.quote, issue.because) for issue in made.issues if issue.let_stand] == [
        ("mornign", "dialect")
    ]
    assert [ruling.word for ruling in made.rulings] == ["mornign"]
    assert made.versions.engines == (("grammar engine", "6.8"),)
    assert made.complete


def test_its_measures_are_those_of_the_report() -> None:
    measures = draft(book(*BOOK)).measures
    assert (measures.errors, measures.queries, measures.let_stand) == (3, 1, 0)
    assert measures.spread_words == (
        SpreadWords(spread=1, words=52),
        SpreadWords(spread=2, words=16),
    )
    assert measures.heaviest == SpreadWords(spread=1, words=52)
    assert measures.per_thousand == pytest.approx(1000 * 4 / 68)


def test_a_file_of_another_name_on_another_day_is_the_same_draft() -> None:
    here = draft(book(*BOOK))
    there = draft(replace(book(*BOOK), path=str(Path("sent") / "Goose v3 FINAL (2).docx")))
    assert replace(here, date=WHEN.replace(year=2027)).digest == there.digest


def test_another_text_page_break_or_label_is_another_draft() -> None:
    made = book(*BOOK)
    labelled = replace(made, pages=(replace(made.pages[0], label="Title"), *made.pages[1:]))
    others = (book(BOOK[0].replace("flat", "still"), *BOOK[1:]), book(*BOOK, ""), labelled)
    digests = {draft(each).text_digest for each in (made, *others)}
    assert len(digests) == 4


def test_other_settings_or_checks_are_another_draft_and_the_pace_is_not() -> None:
    made = book(*BOOK)
    first = draft(made).digest
    assert draft(made, Settings(age_band="early")).digest != first
    assert draft(made, Settings(style=Style(names=("Mr Tock",)))).digest != first
    assert draft(made, edition="later").digest != first
    assert draft(made, Settings(words_a_minute=90, title="The Goose")).digest == first
    assert draft(made, Settings(english=English.BRITISH)).digest == first


def test_a_draft_that_was_not_wholly_checked_says_so() -> None:
    unchecked = replace(report(book(*BOOK)), notices=(Notice(text="No grammar.", unchecked=True),))
    assert not draft_of(unchecked, date=WHEN, settings=Settings()).complete


def test_an_issue_keeps_its_tier_and_places() -> None:
    made = draft(book(*BOOK))
    gap = next(issue for issue in made.issues if issue.tier is Tier.QUERY)
    assert gap.places == (gap.span,)
    assert made.texts[gap.page - 1][gap.start : gap.end] == gap.quote


def test_a_date_without_its_time_zone_is_refused() -> None:
    naive = WHEN.replace(tzinfo=None)
    with pytest.raises(ValueError, match="time zone"):
        draft_of(report(book(*BOOK)), date=naive, settings=Settings())
