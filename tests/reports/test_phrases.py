from __future__ import annotations

from proofkit.problem import Notice
from proofkit.reports.phrases import (
    about,
    counted,
    held_back,
    more_about,
    next_step,
    quoted,
    tally,
    title,
)
from proofkit.reports.shown import rows_shown
from tests.reports.goat import SPREADS, book, goat, slips

ERRORS, QUERIES = slips(book(*SPREADS))[:8], slips(book(*SPREADS))[8:]
MISSING = Notice(text="The grammar engine did not start.", unchecked=True)


def test_the_first_line_says_how_long_which_english_and_for_whom() -> None:
    assert about(goat()) == ("196 words on 10 spreads, British English, a picture book for 3 to 6")


def test_without_pages_the_first_line_says_so_and_counts_none() -> None:
    line = about(goat(paginated=False, issues=()))
    assert line.startswith("196 words, British English")
    assert "no pages are marked" in line
    assert "spread" not in line


def test_what_was_not_checked_is_said_first_and_last() -> None:
    report = goat(notices=(MISSING,))
    assert about(report).endswith("; not everything was checked")
    assert "not everything was checked" in str(next_step(report))
    assert "not everything" not in about(goat()) + str(next_step(goat()))


def test_a_notice_that_costs_no_check_changes_neither() -> None:
    seen = Notice(text="The manuscript has tracked changes.")
    assert about(goat(notices=(seen,))) == about(goat())
    assert next_step(goat(notices=(seen,))) == next_step(goat())


def test_the_tally_names_both_tiers() -> None:
    assert tally(goat()) == "8 errors to mend, 2 queries to think about"
    assert tally(goat(issues=QUERIES[:1])) == "No errors to mend, 1 query to think about"
    assert tally(goat(issues=ERRORS[:1])) == "1 error to mend, no queries to think about"
    assert tally(goat(issues=())) == "No errors to mend, no queries to think about"


def test_the_tally_counts_what_was_let_stand() -> None:
    line = tally(goat(let_stand={"grammar/its": ""}))
    assert line == "7 errors to mend, 2 queries to think about; 1 let stand earlier"


def test_with_errors_the_next_step_is_to_mend_them() -> None:
    step = next_step(goat())
    assert "mend no. 1 to 8 in your manuscript" in step.sentence
    assert str(more_about(goat())).endswith("no. 1: proofkit explain grammar/confused-words")


def test_the_way_to_let_one_stand_has_the_key_of_a_row() -> None:
    report = goat()
    mister = report.queries[0].key
    command = f'proofkit stet "Goat manuscript.docx" {mister[:4]}'
    assert next_step(report).command == command
    assert next_step(goat(issues=ERRORS[:2])).command.endswith(goat().issues[1].key[:4])
    assert next_step(goat(issues=QUERIES)).command == command
    assert not next_step(goat(issues=())).command


def test_with_queries_alone_nothing_must_change() -> None:
    step = str(next_step(goat(issues=QUERIES)))
    assert "nothing must change" in step
    assert "no. 1 and 2" in step
    assert "human proofreader" in step


def test_with_nothing_found_the_last_line_says_what_a_machine_cannot_judge() -> None:
    step = str(next_step(goat(issues=())))
    assert "can't tell" in step
    assert step.endswith("a human proofreader comes next.")


def test_a_clean_book_is_not_called_clean_when_something_was_left_out() -> None:
    step = str(next_step(goat(issues=(), notices=(MISSING,))))
    assert "See the note above" in step
    assert "nothing more to ask" not in step


def test_held_back_rows_are_counted_and_the_command_can_be_typed() -> None:
    report = goat()
    shown, hidden = rows_shown(report, 9)
    assert len(shown) == 9
    assert str(held_back(hidden, report)) == (
        '1 more row held back. To see all: proofkit check "Goat manuscript.docx" --limit 0'
    )
    assert rows_shown(report, 0) == (report.issues, ())


def test_a_book_without_a_title_goes_by_its_file() -> None:
    assert title(goat()) == "The Lighthouse Goat"
    untitled = goat(path="drafts/goat 3.docx", title="")
    assert title(untitled) == "goat 3"


def test_numbers_agree_with_their_nouns() -> None:
    assert counted(1, "query") == "1 query"
    assert counted(0, "query") == "0 queries"
    assert counted(1204, "word") == "1,204 words"


def test_a_path_is_quoted_only_where_a_prompt_needs_it() -> None:
    assert quoted("goat.docx") == "goat.docx"
    assert quoted("my goat.docx") == '"my goat.docx"'


def test_a_title_cannot_steer_the_terminal() -> None:
    steering = goat(issues=(), title="The \x1b[31mGoat\x07")
    assert title(steering) == "The \N{REPLACEMENT CHARACTER}[31mGoat\N{REPLACEMENT CHARACTER}"
