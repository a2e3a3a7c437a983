from __future__ import annotations

import sqlite3
from contextlib import closing
from dataclasses import replace
from pathlib import Path

import pytest

from proofkit.book import Span
from proofkit.drafts.ledger import Recorded, draft_numbered, drafts, record, summaries
from proofkit.drafts.ledger_file import LEDGER, ledger_of
from proofkit.drafts.status import Counts, Status
from proofkit.problem import Unusable
from proofkit.rulings.ruling import Ruling
from tests.drafts.goat_drafts import SLIPS, draft
from tests.reports.goat import SPREADS

STET = Ruling(at="proofkit.toml, line 4", key="k7f2bcd", because="her own word")


@pytest.fixture
def ledger(tmp_path: Path) -> Path:
    return tmp_path / LEDGER


def statuses(recorded: Recorded) -> dict[str, str]:
    return {each.issue.quote: each.status.value for each in recorded.comparison.issues}


def test_only_a_books_folder_has_a_ledger(tmp_path: Path) -> None:
    assert ledger_of(tmp_path / "Goat.docx") is None
    (tmp_path / "proofkit.toml").write_text("")
    assert ledger_of(tmp_path / "Goat v3 FINAL (2).docx") == tmp_path / "proofkit.db"


def test_a_draft_is_read_again_as_it_was_recorded(ledger: Path) -> None:
    first = draft(rulings=(STET,), let_stand="grammar/its", file="Goat “v1”.docx")
    issue = replace(first.issues[0], related=(Span(page=4, start=2, end=9),))
    first = replace(first, issues=(issue, *first.issues[1:]))
    record(ledger, first)
    assert draft_numbered(ledger, 1) == replace(first, number=1)
    assert draft_numbered(ledger, 2) is None


def test_each_draft_stands_against_the_one_before_whatever_its_file_is_called(ledger: Path) -> None:
    record(ledger, draft())
    second = record(ledger, draft("the the", "in form", day=3, file="Goat v3 FINAL (2).docx"))
    assert second.is_new
    assert (second.draft.number, second.last and second.last.number) == (2, 1)
    assert statuses(second)["Mister"] == "still there"
    assert {issue.quote for issue in second.comparison.fixed} == {"the the", "in form"}
    assert (second.last and second.last.errors, second.draft.errors) == (6, 4)
    assert second.draft.of_errors == Counts(still_there=4, fixed=2)
    assert second.draft.counts == Counts(still_there=5, fixed=2)


def test_a_slip_made_again_drafts_later_is_back_again(ledger: Path) -> None:
    record(ledger, draft())
    for day, mended in enumerate([("the the",), ("the the", "bucket ."), ("bucket .",)], 1):
        last = record(ledger, draft(*mended, day=day))
    assert statuses(last)["the the"] == "back again"
    assert last.draft.counts.back_again == 1


def test_the_same_text_again_adds_nothing_and_tells_the_same(ledger: Path) -> None:
    record(ledger, draft())
    second = record(ledger, draft("the the", day=1))
    content = ledger.read_bytes()
    again = record(ledger, draft("the the", day=9, file="another name.odt"))
    assert not again.is_new
    assert (again.draft, again.last) == (second.draft, second.last)
    assert statuses(again) == statuses(second)
    first = record(ledger, draft(day=10))
    assert (first.is_new, first.draft.number, first.last) == (False, 1, None)
    assert ledger.read_bytes() == content


def test_settings_and_rulings_make_another_draft_of_the_same_text(ledger: Path) -> None:
    for day, other in enumerate(
        [
            draft(),
            draft(day=1, age_band="early-reader"),
            draft(day=2, rulings=(STET,)),
            draft("the the", day=3, rulings=(STET,)),
        ],
        1,
    ):
        assert record(ledger, other).draft.number == day
    assert summaries(ledger)[1].counts == Counts(still_there=len(SLIPS))


def test_an_incomplete_check_is_no_measure_for_a_complete_one(ledger: Path) -> None:
    record(ledger, draft())
    half = draft("the the", day=1, complete=False)
    half = replace(half, issues=half.issues[:2])
    assert record(ledger, half).last == summaries(ledger)[0]
    whole = record(ledger, draft("the the", day=2))
    assert (whole.draft.number, whole.draft.against) == (3, 1)
    assert whole.draft.counts == Counts(still_there=len(SLIPS) - 1, fixed=1)
    assert not record(ledger, half).is_new  # what is known completely is not recorded by halves


def test_a_ruling_shows_in_the_next_draft(ledger: Path) -> None:
    record(ledger, draft())
    ruled = record(ledger, draft(day=1, rulings=(STET,), let_stand="grammar/its"))
    assert statuses(ruled)["It’s light"] == "let stand"
    kept = draft_numbered(ledger, 2)
    assert kept is not None
    assert [issue.because for issue in kept.issues if issue.let_stand] == ["so she says"]
    assert [ruling.because for ruling in kept.rulings] == ["her own word"]


def test_pages_that_did_not_change_are_kept_once(ledger: Path) -> None:
    for day in range(6):
        record(ledger, draft(*[wrong for wrong, *_ in SLIPS[:day]], day=day))
    with closing(sqlite3.connect(ledger)) as base:
        (texts,) = base.execute("SELECT count(*) FROM page_text").fetchone()
        (pages,) = base.execute("SELECT count(*) FROM page").fetchone()
    assert pages == 6 * (len(SPREADS) + 1)
    assert texts == len(SPREADS) + 1 + 5


def test_a_long_page_is_compressed_and_a_short_one_can_be_read_as_it_is(ledger: Path) -> None:
    long = " ".join(SPREADS) * 20
    record(ledger, draft(spreads=(*SPREADS[:9], long)))
    with closing(sqlite3.connect(ledger)) as base:
        kept = [content for (content,) in base.execute("SELECT content FROM page_text")]
    assert SPREADS[0] in kept
    assert any(isinstance(content, bytes) and len(content) < len(long) / 5 for content in kept)
    recorded = draft_numbered(ledger, 1)
    assert recorded is not None
    assert recorded.pages[10].text == long


def test_any_sqlite_tool_reads_the_story_of_the_drafts(ledger: Path) -> None:
    record(ledger, draft())
    record(ledger, draft("the the", day=2))
    with closing(sqlite3.connect(ledger)) as base:
        assert base.execute("PRAGMA journal_mode").fetchone() == ("delete",)
        assert base.execute("PRAGMA integrity_check").fetchone() == ("ok",)
        assert base.execute("PRAGMA foreign_key_check").fetchall() == []
        told = base.execute("SELECT number, errors, queries, fixed FROM every_draft").fetchall()
        went = base.execute("SELECT draft, quote, status FROM every_ending").fetchall()
        (label,) = base.execute(
            "SELECT label FROM every_issue WHERE draft = 2 AND quote = 'in form'"
        ).fetchone()
    assert told == [(1, 6, 1, 0), (2, 5, 1, 1)]
    assert went == [(2, "the the", "fixed")]
    assert label == "Spread 4"


def test_all_drafts_whole_in_their_order(ledger: Path) -> None:
    given = [draft(*[wrong for wrong, *_ in SLIPS[:day]], day=day) for day in range(3)]
    for each in given:
        record(ledger, each)
    assert list(drafts(ledger)) == [replace(each, number=n) for n, each in enumerate(given, 1)]


def test_where_there_is_no_ledger_a_sentence_says_how_to_begin_one(ledger: Path) -> None:
    with pytest.raises(Unusable, match=r"no ledger of drafts .* proofkit begin"):
        summaries(ledger)
    assert not ledger.exists()


def test_the_schema_names_every_table_and_status() -> None:
    from proofkit.drafts import schema  # noqa: PLC0415 - its docstring is what is tested

    said = schema.__doc__ or ""
    names = [
        line.split()[2].strip("(;")
        for line in "".join(schema.MIGRATIONS).splitlines()
        if line.startswith(("CREATE TABLE", "CREATE VIEW"))
    ]
    assert [name for name in names if f"``{name}``" not in said] == []
    assert [
        status
        for status in Status
        if f"“{status}”" not in said and f'"{status}"' not in " ".join(said.split())
    ] == []


def test_a_check_that_failed_half_way_adds_nothing_to_a_text_known_completely(ledger: Path) -> None:
    record(ledger, draft())
    half = draft(day=1, complete=False, age_band="board")
    assert not record(ledger, half).is_new
    assert record(ledger, draft("the the", day=2, complete=False)).is_new
    assert record(ledger, draft("the the", day=3)).is_new


def test_a_past_in_another_shape_is_passed_over(ledger: Path) -> None:
    record(ledger, draft())
    record(ledger, draft("the the", "in form", day=1))
    with closing(sqlite3.connect(ledger)) as base, base:
        base.execute("UPDATE past SET ended = '{\"colour\": \"red\"}' WHERE ended LIKE '%the the%'")
    again = record(ledger, draft(day=2, age_band="board"))
    assert (statuses(again)["the the"], statuses(again)["in form"]) == ("new", "back again")
