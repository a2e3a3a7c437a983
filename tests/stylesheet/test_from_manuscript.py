"""Small manuscripts to their style sheets, with the real language model."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest

from proofkit.engines.memory import Memory
from proofkit.problem import Unusable
from proofkit.reports.stylesheet.setting import how
from proofkit.sheets import style_sheet
from proofkit.stylesheet.sheet import Basis, Part, Row, StyleSheet

pytestmark = pytest.mark.engine

Sheet = Callable[..., StyleSheet]


@pytest.fixture
def sheet(tmp_path: Path) -> Sheet:
    """Makes the sheet of a text; what was decided may stand beside it."""

    def make(*pages: str, decided: str = "") -> StyleSheet:
        text = "".join(f"## Page {number}\n\n{page}\n\n" for number, page in enumerate(pages, 1))
        manuscript = tmp_path / "kite.md"
        manuscript.write_text(f"# The Night Kite\n\n{text}", encoding="utf-8")
        if decided:
            (tmp_path / "proofkit.toml").write_text(decided, encoding="utf-8")
        return style_sheet(manuscript, memory=Memory(None), made=date(2026, 11, 25))

    return make


def rows(made: StyleSheet, part: Part) -> dict[str, Row]:
    section = made.section(part)
    return {row.form or row.term: row for row in section.rows} if section else {}


def terms(made: StyleSheet, part: Part) -> dict[str, Row]:
    section = made.section(part)
    return {row.term: row for row in section.rows} if section else {}


def test_words_are_listed_that_could_be_written_in_another_way(sheet: Sheet) -> None:
    made = sheet(
        "The bedroom window was open, and a three-year-old was eating cake in the café.",
        "She leapt up. A clip-board fell down. Nobody else saw the rainbow in the afternoon.",
    )
    words = rows(made, Part.WORDS)
    assert {"café", "clip-board", "three-year-old"} <= set(words)
    assert not {"bedroom", "window", "rainbow", "afternoon"} & set(words)


def test_a_noun_with_a_capital_and_without_is_listed(sheet: Sheet) -> None:
    made = sheet("We saw a king. Then the king sang.", "So the King sat down by the sea.")
    king = rows(made, Part.WORDS)["king"]
    assert (how(king), [other.form for other in king.others]) == ("mostly (2 of 3)", ["King"])
    assert "sea" not in rows(made, Part.WORDS)


def test_a_compound_in_two_ways_is_mostly_or_an_open_question(sheet: Sheet) -> None:
    clear = sheet("The flower-pot fell. His flower-pot was small.", "Her flowerpot was lost.")
    assert how(rows(clear, Part.WORDS)["flower-pot"]) == "mostly (2 of 3)"
    tied = sheet("The flower-pot fell.", "Her flowerpot was lost.")
    assert "flower-pot or flowerpot" in rows(tied, Part.QUESTIONS)
    assert "flower-pot" not in rows(tied, Part.WORDS)
    decided = sheet(
        "The flower-pot fell.",
        "Her flowerpot was lost.",
        decided='[style]\nwords = ["flowerpot"]\n',
    )
    assert how(rows(decided, Part.WORDS)["flowerpot"]) == "decided (1 of 2)"
    assert rows(decided, Part.QUESTIONS) == {}


def test_a_name_in_two_ways_has_both_on_one_row(sheet: Sheet) -> None:
    made = sheet(
        "Zoë ran home. “Stop!” said Zoë.", "Zoë sat down. Then Zoe slept, and Pim sang to Zoë."
    )
    zoe = rows(made, Part.CHARACTERS)["Zoë"]
    assert [other.form for other in zoe.others] == ["Zoe"]
    assert zoe.basis is Basis.MOSTLY
    assert "Zoe" not in rows(made, Part.CHARACTERS)


def test_a_people_of_many_is_no_character(sheet: Sheet) -> None:
    made = sheet("Pim sang to the Kenyans. The Kenyans sang to Pim.")
    assert set(rows(made, Part.CHARACTERS)) == {"Pim"}


def test_a_name_that_does_nothing_is_among_the_other_names(sheet: Sheet) -> None:
    made = sheet(
        "Captain Bell had a postcard from Egypt. The captain read it to his dog Pudding.",
        "“Good!” said Tam. The boat was called Saltwind.",
    )
    people = rows(made, Part.CHARACTERS)
    assert set(people) == {"Captain Bell", "Pudding", "Tam"}
    assert people["Pudding"].note == "dog"
    assert "“the captain” without a capital" in people["Captain Bell"].note
    assert {"Egypt", "Saltwind"} <= {*rows(made, Part.PLACES), *rows(made, Part.THINGS)}


def test_dates_times_and_numbers_stand_in_their_part(sheet: Sheet) -> None:
    made = sheet("On 3 May at 7.30 p.m. the kite flew over twelve boats and two islands.")
    assert {"dates", "numbers"} <= set(terms(made, Part.NUMBERS))
    assert "dates" not in terms(made, Part.PUNCTUATION)


def test_italics_and_capitals_are_seen_and_left_to_a_person(sheet: Sheet) -> None:
    made = sheet("*What if it bites?* thought Pim. BANG! went the UK gate.")
    section = made.section(Part.TYPEFACES)
    assert section is not None
    seen = {(row.term, row.form) for row in section.rows}
    assert {
        ("thoughts", "italics"),
        ("sounds", "plain"),
        ("in italics", "What if it bites?"),
        ("in capitals", "BANG"),
    } == seen
    assert "decide it" in section.remark
    none = sheet("Pim flew a kite.").section(Part.TYPEFACES)
    assert none is not None
    assert none.remark.startswith("No italics are seen")


def test_an_english_that_nothing_tells_is_open_and_one_that_was_set_is_decided(
    sheet: Sheet,
) -> None:
    assert terms(sheet("Pim flew a kite."), Part.ENGLISH)["English"].basis is Basis.OPEN
    told = sheet("The harbour was grey. The colour of the plough was grey.")
    assert terms(told, Part.ENGLISH)["English"].basis is Basis.ALWAYS
    chosen = sheet("Pim flew a kite.", decided='english = "american"\n')
    english = terms(chosen, Part.ENGLISH)["English"]
    assert (english.form, english.basis) == ("American", Basis.DECIDED)


def test_a_slip_is_no_invented_word_and_a_word_let_stand_is_decided(sheet: Sheet) -> None:
    story = "The flumpet hid. One mornign the flumpet sang, and Pim was gladsome-mad."
    assert set(rows(sheet(story), Part.INVENTED)) == {"flumpet"}
    kept = sheet(story, decided='[[stet]]\nword = "flumpet"\nbecause = "her own word"\n')
    flumpet = rows(kept, Part.INVENTED)["flumpet"]
    assert (flumpet.basis, flumpet.note) == (Basis.DECIDED, "let stand: her own word")


def test_two_forms_that_were_let_stand_are_asked_no_more(sheet: Sheet) -> None:
    story = ("The flower-pot fell.", "Her flowerpot was lost.")
    assert "flower-pot or flowerpot" in rows(sheet(*story), Part.QUESTIONS)
    ruled = sheet(*story, decided='[[stet]]\ncheck = "consistency/compound-two-ways"\n')
    both = rows(ruled, Part.WORDS)["flower-pot and flowerpot"]
    assert (how(both), both.note) == ("decided (2)", "let stand")
    assert rows(ruled, Part.QUESTIONS) == {}


def test_what_cannot_be_used_is_said_in_a_sentence(sheet: Sheet, tmp_path: Path) -> None:
    with pytest.raises(Unusable, match=r"nope\.docx"):
        style_sheet(tmp_path / "nope.docx", memory=Memory(None), made=date(2026, 11, 25))
    with pytest.raises(Unusable, match=r"English"):
        sheet("Der kleine Drache flog über die Berge und suchte seine Mutter im tiefen Wald. " * 4)
