"""The example book's style sheet, with the real language model: what a copy-editor would write down.

The rows expected here were listed by reading the book, not by running proofkit.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from pathlib import Path

import pytest

from examples.make_examples import FORMATS, HERE, NAME
from proofkit.engines.memory import Memory
from proofkit.reports.stylesheet.plain import as_plain
from proofkit.reports.stylesheet.setting import how
from proofkit.sheets import style_sheet
from proofkit.stylesheet.sheet import Basis, Part, Row, StyleSheet
from proofkit.words.dictionary import dictionary

pytestmark = pytest.mark.engine

DAY = date(2026, 11, 25)
DRAFTS = {suffix: HERE / f"{NAME}{suffix}" for suffix in FORMATS}
CLEAN = HERE / "clean" / f"{NAME}.docx"

# Everybody and everything that bears a name in the story, and the spreads that have it first and last.
# Wren, Orla Finchley and the Tumbledown Press stand before and after the story.
CHARACTERS = {
    "Mabel": (1, 12),
    "Granny": (3, 3),
    "Biscuit": (1, 11),
    "Red": (1, 11),
    "Mrs Quill": (4, 4),
    "Captain Bright": (5, 5),
    "Otis": (8, 11),
    "Blue": (11, 11),
}
PLACES = {"Tumbledown Hill": (1, 11)}
SOUNDS = {"flap", "pop", "whiffle", "whoosh", "wuff"}
# "Catched" is how Otis speaks; a windle is explained where it comes up.
INVENTED = {"catched", "windle"}
DECISIONS = """
title = "The Borrowed Wind, second draft"

[style]
dictionary = "The Tumbledown Dictionary"
dash = "spaced en rule"
names = ["Mrs Quill", "Captain Bright", "Aunt Pim"]
words = ["bedtime", "wind-jar", "whoosh"]

[[stet]]
word = "catched"
because = "Otis speaks so"
"""


@pytest.fixture(scope="module")
def sheets(tmp_path_factory: pytest.TempPathFactory) -> Mapping[str, StyleSheet]:
    """The sheets of the draft, of the clean copy, and of a draft with decisions beside it."""
    folder = tmp_path_factory.mktemp("book")
    decided = folder / f"{NAME}.docx"
    decided.write_bytes(DRAFTS[".docx"].read_bytes())
    (folder / "proofkit.toml").write_text(DECISIONS, encoding="utf-8")
    memory = Memory(folder / "memory.db")
    files = {**DRAFTS, "clean": CLEAN, "decided": decided}
    return {name: made(path, memory) for name, path in files.items()}


def made(path: Path, memory: Memory) -> StyleSheet:
    return style_sheet(path, memory=memory, made=DAY)


def rows(sheet: StyleSheet, part: Part) -> dict[str, Row]:
    section = sheet.section(part)
    return {row.form or row.term: row for row in section.rows} if section else {}


def spreads(sheet: StyleSheet, part: Part) -> dict[str, tuple[int | None, int | None]]:
    pages = sheet.pages
    return {
        name: (pages[row.places[0].page - 1].spread, pages[row.places[-1].page - 1].spread)
        for name, row in rows(sheet, part).items()
    }


@pytest.mark.parametrize("which", [".docx", "clean"])
def test_all_who_have_a_name_are_there_and_nobody_else(
    sheets: Mapping[str, StyleSheet], which: str
) -> None:
    assert spreads(sheets[which], Part.CHARACTERS) == CHARACTERS
    assert spreads(sheets[which], Part.PLACES) == PLACES
    assert rows(sheets[which], Part.THINGS) == {}


def test_a_misspelt_name_stands_beside_the_right_one(sheets: Mapping[str, StyleSheet]) -> None:
    quill = rows(sheets[".docx"], Part.CHARACTERS)["Mrs Quill"]
    assert [other.form for other in quill.others] == ["Mrs Quil"]
    assert how(quill) == "mostly (2 of 3)"
    assert rows(sheets["clean"], Part.CHARACTERS)["Mrs Quill"].basis is Basis.ALWAYS


def test_notes_say_what_a_name_is_and_where_its_word_has_no_capital(
    sheets: Mapping[str, StyleSheet],
) -> None:
    notes = {name: row.note for name, row in rows(sheets["clean"], Part.CHARACTERS).items()}
    assert "dog" in notes["Biscuit"]
    assert "kite" in notes["Red"]
    assert "“her granny” without a capital" in notes["Granny"]
    assert "“the captain” without a capital" in notes["Captain Bright"]


@pytest.mark.parametrize("which", [".docx", "clean"])
def test_sounds_and_invented_words_are_listed_and_nothing_misspelt(
    sheets: Mapping[str, StyleSheet], which: str
) -> None:
    assert set(rows(sheets[which], Part.SOUNDS)) == SOUNDS
    assert set(rows(sheets[which], Part.INVENTED)) == INVENTED


def test_words_that_every_dictionary_has_are_not_listed(
    sheets: Mapping[str, StyleSheet],
) -> None:
    """Of the story's plain words only one has a second spelling: towards."""
    assert set(rows(sheets["clean"], Part.WORDS)) == {"towards"}
    known = dictionary(sheets["clean"].english)
    assert not [word for word in rows(sheets["clean"], Part.INVENTED) if known.knows(word)]


def test_the_books_habits_are_there(sheets: Mapping[str, StyleSheet]) -> None:
    marks = {row.term: row for row in rows(sheets["clean"], Part.PUNCTUATION).values()}
    found = {term: row.form for term, row in marks.items()}
    assert found["quotation marks"] == "double"
    assert found["shape of the marks"] == "curly"
    assert found["ellipsis"] == "one character"
    assert found["Mr, Mrs, Dr"] == "Mr"
    assert {row.basis for row in marks.values()} == {Basis.ALWAYS}
    types = rows(sheets["clean"], Part.TYPEFACES).values()
    assert [row.form for row in types if row.term == "in capitals"] == ["WHOOSH"]
    english = rows(sheets["clean"], Part.ENGLISH)["British"]
    assert english.basis is Basis.ALWAYS


def test_the_drafts_slips_are_seen_as_the_rarer_form(sheets: Mapping[str, StyleSheet]) -> None:
    draft = sheets[".docx"]
    assert [o.form for o in rows(draft, Part.ENGLISH)["British"].others] == ["harbor"]
    assert how(rows(draft, Part.PUNCTUATION)["curly"]) == "mostly (37 of 39)"


def test_what_the_draft_cannot_agree_on_is_an_open_question(
    sheets: Mapping[str, StyleSheet],
) -> None:
    questions = rows(sheets[".docx"], Part.QUESTIONS)
    assert "bed-time or bedtime" in questions
    assert "bedtime" not in rows(sheets[".docx"], Part.WORDS)
    assert rows(sheets["clean"], Part.QUESTIONS) == {}


def test_decisions_come_first_and_close_the_question(sheets: Mapping[str, StyleSheet]) -> None:
    sheet = sheets["decided"]
    assert sheet.title == "The Borrowed Wind, second draft"
    names, words = rows(sheet, Part.CHARACTERS), rows(sheet, Part.WORDS)
    decided = {name for name, row in names.items() if row.basis is Basis.DECIDED}
    assert decided == {"Mrs Quill", "Captain Bright", "Aunt Pim"}
    assert names["Aunt Pim"].note == "not in this draft"
    assert how(words["bedtime"]) == "decided (1 of 2)"
    assert words["wind-jar"].note == "not in this draft"
    assert "bed-time or bedtime" not in rows(sheet, Part.QUESTIONS)
    assert rows(sheet, Part.PUNCTUATION)["spaced en rule"].basis is Basis.DECIDED
    assert rows(sheet, Part.SOUNDS)["whoosh"].basis is Basis.DECIDED
    dictionary_row = rows(sheet, Part.ENGLISH)["The Tumbledown Dictionary"]
    assert dictionary_row.basis is Basis.DECIDED
    catched = rows(sheet, Part.INVENTED)["catched"]
    assert (catched.basis, catched.note) == (Basis.DECIDED, "let stand: Otis speaks so")


def test_all_five_formats_give_one_sheet(sheets: Mapping[str, StyleSheet]) -> None:
    texts = {as_plain(sheets[suffix]).partition("\n")[2] for suffix in FORMATS}
    assert len(texts) == 1


def test_nothing_before_or_after_the_story_is_listed(sheets: Mapping[str, StyleSheet]) -> None:
    text = as_plain(sheets["clean"])
    for word in ("Orla", "Finchley", "Wren", "Press", "art note", "illustration"):
        assert word not in text
