from __future__ import annotations

import os
from collections.abc import Iterable, Iterator
from pathlib import Path

import pytest

from proofkit import pipeline
from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Check, Need
from proofkit.engines import analyse
from proofkit.engines.memory import Memory
from proofkit.issue import Issue, Tier, issue_at
from proofkit.pipeline import Outcome, check_manuscripts
from proofkit.settings import Choices, English, Settings

STORY = (
    "Page 1\n\nThe goat climbed the hill and looked at the sea.\n\nPage 2\n\nIt was a good hill.\n"
)


def every_goat(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    for page in book.pages:
        if (at := page.prose.find("goat")) >= 0:
            yield issue_at(
                book,
                page.span(at, at + 4),
                check="animals/goat",
                tier=Tier.QUERY,
                message="a goat",
                confidence=0.5,
            )


def broken(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    raise ZeroDivisionError


def check_of(find: object) -> Check:
    assert callable(find)
    return Check(name="animals/goat", needs=frozenset({Need.TEXT}), find=find, handbook="")


@pytest.fixture
def manuscript(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setattr(pipeline, "all_checks", lambda: (check_of(every_goat),))
    monkeypatch.setattr(
        analyse.Analyst, "ask", lambda *_: None
    )  # a check of the text needs no engine
    path = tmp_path / "goat.txt"
    path.write_text(STORY, encoding="utf-8")
    return path


@pytest.fixture
def memory(tmp_path: Path) -> Iterator[Memory]:
    memory = Memory(tmp_path / "memory.sqlite")
    yield memory
    memory.close()


def checked(path: Path, memory: Memory, asked: Choices | None = None) -> Outcome:
    (outcome,) = check_manuscripts([path], asked or Choices(), memory=memory)
    return outcome


def quotes(outcome: Outcome) -> list[str]:
    assert outcome.report is not None, outcome.problem
    return [issue.quote for issue in outcome.report.issues]


def no_engine(**_: object) -> None:
    pytest.fail("an engine was asked for")


def test_an_unchanged_manuscript_is_reported_from_memory(
    manuscript: Path, memory: Memory, monkeypatch: pytest.MonkeyPatch
) -> None:
    first = checked(manuscript, memory)
    monkeypatch.setattr(analyse, "Analyst", no_engine)
    again = checked(manuscript, memory)
    assert quotes(again) == quotes(first) == ["goat"]


def test_a_changed_manuscript_is_checked_anew(manuscript: Path, memory: Memory) -> None:
    checked(manuscript, memory)
    manuscript.write_text(STORY.replace("It was", "The goat had"), encoding="utf-8")
    assert quotes(checked(manuscript, memory)) == ["goat", "goat"]


def test_another_age_band_is_another_question(
    manuscript: Path, memory: Memory, monkeypatch: pytest.MonkeyPatch
) -> None:
    checked(manuscript, memory)
    monkeypatch.setattr(analyse, "Analyst", no_engine)
    with pytest.raises(pytest.fail.Exception):
        checked(manuscript, memory, Choices(age_band="board"))


def test_what_is_damaged_in_the_memory_is_found_anew(
    manuscript: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    memory = Memory(None)
    monkeypatch.setattr(memory, "recall_many", lambda _, keys: dict.fromkeys(keys, b"rubbish"))
    assert quotes(checked(manuscript, memory)) == ["goat"]


def test_a_check_that_fails_costs_only_itself_and_is_named(
    manuscript: Path, memory: Memory, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(pipeline, "all_checks", lambda: (check_of(broken), check_of(every_goat)))
    for _ in range(2):  # what was not checked wholly is not remembered
        outcome = checked(manuscript, memory)
        assert quotes(outcome) == ["goat"]
        assert outcome.report is not None
        assert not outcome.report.complete
        assert "animals/goat" in outcome.report.notices[-1].text


def test_one_that_cannot_be_read_stops_no_other(manuscript: Path, memory: Memory) -> None:
    missing = manuscript.with_name("sheep.txt")
    outcomes = list(check_manuscripts([missing, manuscript], Choices(), memory=memory))
    assert [outcome.path for outcome in outcomes] == [missing, manuscript]
    assert "sheep.txt" in (outcomes[0].problem or "")
    assert quotes(outcomes[1]) == ["goat"]


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="the system has no named pipes")
def test_a_pipe_is_refused_and_not_waited_for(manuscript: Path, memory: Memory) -> None:
    pipe = manuscript.with_name("pipe.txt")
    os.mkfifo(pipe)
    assert "no ordinary file" in (checked(pipe, memory).problem or "")


def test_another_language_is_refused_in_a_sentence(manuscript: Path, memory: Memory) -> None:
    german = "Die kleine Ziege stieg auf den Berg und sah das Meer, und das war sehr schön. " * 3
    manuscript.write_text(german, encoding="utf-8")
    assert "English" in (checked(manuscript, memory).problem or "")


def test_the_books_own_settings_hold_unless_others_are_asked_for(
    manuscript: Path, memory: Memory
) -> None:
    own = manuscript.with_name("proofkit.toml")
    own.write_text('english = "american"\nage-band = "board"\n', encoding="utf-8")
    by_the_book = checked(manuscript, memory).report
    assert by_the_book is not None
    assert by_the_book.manuscript.english is English.AMERICAN
    assert by_the_book.manuscript.age_band == "board"
    asked = checked(manuscript, memory, Choices(english=English.BRITISH)).report
    assert asked is not None
    assert asked.manuscript.english is English.BRITISH


@pytest.mark.parametrize(
    ("toml", "named"),
    [
        ('english = "british\n', "line 1"),
        ('english = "welsh"', "welsh"),
        ("age-band = 3", "age-band"),
        ('age-band = "teenager"', "teenager"),
        ('grammar-server = "https://api.languagetool.org"', "public"),
    ],
)
def test_settings_that_cannot_be_used_are_named(
    manuscript: Path, memory: Memory, toml: str, named: str
) -> None:
    manuscript.with_name("proofkit.toml").write_text(toml, encoding="utf-8")
    assert named in (checked(manuscript, memory).problem or "")


def test_rulings_title_and_series_ask_no_engine_again_and_decisions_of_style_do(
    manuscript: Path, memory: Memory, monkeypatch: pytest.MonkeyPatch
) -> None:
    checked(manuscript, memory)
    monkeypatch.setattr(analyse, "Analyst", no_engine)
    own = manuscript.with_name("proofkit.toml")
    own.write_text('title = "G"\nseries = ["../one"]\n[[stet]]\nword = "goat"\n', encoding="utf-8")
    outcome = checked(manuscript, memory)
    assert quotes(outcome) == []
    assert [issue.quote for issue in outcome.issues] == ["goat"]
    own.write_text('[style]\nwords = ["goat"]\n', encoding="utf-8")
    with pytest.raises(pytest.fail.Exception):
        checked(manuscript, memory)


def test_idle_rulings_are_not_named_where_something_was_not_checked(
    manuscript: Path, memory: Memory, monkeypatch: pytest.MonkeyPatch
) -> None:
    own = manuscript.with_name("proofkit.toml")
    own.write_text('[[stet]]\nword = "sheep"\n', encoding="utf-8")
    whole = checked(manuscript, memory).report
    assert whole is not None
    assert ["line 1" in notice.text for notice in whole.notices] == [True]
    monkeypatch.setattr(pipeline, "all_checks", lambda: (check_of(broken), check_of(every_goat)))
    manuscript.write_text(STORY.replace("good", "fine"), encoding="utf-8")
    part = checked(manuscript, memory).report
    assert part is not None
    assert ["failed" in notice.text for notice in part.notices] == [True]
