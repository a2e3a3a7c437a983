from __future__ import annotations

from proofkit.problem import Notice
from proofkit.reports.plain import as_plain
from tests.reports.goat import SPREADS, book, goat, slip

HEADS = "no.\ttier\tplace\tfor\tread\twhy\tcheck\tkey"


def test_a_row_is_eight_cells_with_tabs_between() -> None:
    lines = as_plain(goat()).splitlines()
    rows = lines[lines.index(HEADS) + 1 :][:10]
    assert rows[1].split("\t") == [
        "2",
        "error",
        "spread 2",
        "… Mr Brannock climbed ›the the‹ ninety-nine steps to light …",
        "the",
        "a word twice",
        "repetition/doubled-word",
        goat().issues[1].key,
    ]
    assert all(row.count("\t") == 7 for row in rows)


def test_it_begins_with_the_book_and_ends_with_what_to_do_next() -> None:
    lines = as_plain(goat(notices=(Notice(text="There are tracked changes."),))).splitlines()
    assert lines[0].startswith("The Lighthouse Goat: 196 words on 10 spreads")
    assert lines[1] == "8 errors to mend, 2 queries to think about"
    assert lines[2] == "Note: There are tracked changes."
    assert lines[-1].startswith("Next: mend no. 1 to 8")


def test_the_words_of_each_spread_are_listed() -> None:
    lines = as_plain(goat()).splitlines()
    at = lines.index("spread\twords\tlongest sentence\tgrade")
    words = [int(line.split("\t")[1]) for line in lines[at + 1 : at + 11]]
    assert sum(words) == 196
    assert words[:3] == [14, 23, 15]


def test_there_is_no_decoration() -> None:
    text = as_plain(goat())
    assert not set(text) & set("\x1b─│┃━▁▂▃▄▅▆▇█")
    assert text == "\n".join(line.rstrip(" ") for line in text.splitlines()) + "\n"


def test_an_explanation_is_never_cut() -> None:
    of = book(*SPREADS)
    message = "a reason so long that no window would show the whole of it " * 3
    found = slip(of, "biscuit", "cake", check="spelling/slip", message=message.strip())
    assert message.strip() in as_plain(goat(of, issues=(found,)))


def test_all_rows_are_there_unless_fewer_are_asked_for() -> None:
    assert "held back" not in as_plain(goat())
    some = as_plain(goat(), limit=4)
    assert "6 more rows held back" in some
    assert "two spaces" not in some


def test_what_is_let_stand_is_counted_and_shown_on_request() -> None:
    report = goat(
        let_stand={"repetition/doubled-word": "as Nell’s mother says it", "grammar/its": ""}
    )
    plain = as_plain(report).splitlines()
    assert plain[1] == "6 errors to mend, 2 queries to think about; 2 let stand earlier"
    at = plain.index(
        '2 rows let stand. To see what: proofkit check "Goat manuscript.docx" --show-stet'
    )
    assert plain[at - 1].startswith("8\tquery")
    shown = as_plain(report, show_stet=True).splitlines()
    assert [line.split("\t")[:3] for line in shown if "\tstet\t" in line] == [
        ["9", "stet", "spread 2"],
        ["10", "stet", "spread 9"],
    ]
    assert "a word twice; let stand: as Nell’s mother says it" in "\n".join(shown)
    assert not [line for line in shown if "--show-stet" in line]
