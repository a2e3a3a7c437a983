from __future__ import annotations

from pathlib import Path

import pytest

from proofkit.habits.matters import MATTERS
from proofkit.problem import Unusable
from proofkit.rulings.decisions import Decided, decided_for
from proofkit.settings import Choices


def decided(file: Path, text: str) -> Decided:
    file.write_text(text, encoding="utf-8")
    return decided_for(file.with_name("goose.docx"), Choices())


def problem(file: Path, text: str) -> str:
    with pytest.raises(Unusable) as found:
        decided(file, text)
    return str(found.value)


def test_every_form_of_every_matter_can_be_decided(file: Path) -> None:
    for matter in MATTERS:
        for form in matter.forms:
            text = f'[style]\n"{matter.name}" = "{form}"\n'
            assert decided(file, text).settings.style.form(matter.name) == form


def test_hyphens_and_capitals_make_no_difference(file: Path) -> None:
    matter = next(each for each in MATTERS if " " in each.name)
    form = matter.forms[0]
    name = matter.name.replace(" ", "-")
    text = f'[style]\n{name} = "{form.upper().replace(" ", "-")}"\ndictionary = "Uncle Tom’s"\n'
    style = decided(file, text).settings.style
    assert style.form(matter.name) == form
    assert style.form("dictionary") == "Uncle Tom’s"


def test_names_words_and_rulings_come_along(file: Path) -> None:
    found = decided(
        file,
        '[style]\nnames = ["Zoë", "Mr Tock"]\nwords = ["bedtime", " tick-tock "]\n[[stet]]\nword = "gonna"\n',
    )
    assert found.settings.style.names == ("Zoë", "Mr Tock")
    assert found.settings.style.words == ("bedtime", "tick-tock")
    assert [each.word for each in found.rulings] == ["gonna"]


def test_without_a_file_nothing_is_decided(file: Path) -> None:
    nothing = decided_for(file.with_name("goose.docx"), Choices())
    assert nothing.settings.style.forms == {}
    assert nothing.rulings == ()


def test_a_matter_or_form_that_there_is_not_is_named_with_its_line_and_those_that_there_are(
    file: Path,
) -> None:
    said = problem(file, '\n[style]\ndahs = "em rule"\n')
    assert f"{file}, line 3: there is no matter of style “dahs”. Did you mean “dash”?" in said
    assert all(each.name in said for each in MATTERS)
    said = problem(file, '[style]\n\n# as we like it\ndash = "wavy line"\n')
    assert "line 4: there is no form of dash “wavy line”." in said
    assert all(form in said for each in MATTERS if each.name == "dash" for form in each.forms)


def test_a_matter_decided_twice_in_two_spellings_is_refused(file: Path) -> None:
    matter = next(each for each in MATTERS if " " in each.name)
    first, second = matter.forms[:2]
    text = f'[style]\n"{matter.name}" = "{first}"\n{matter.name.replace(" ", "-")} = "{second}"\n'
    assert "decided twice" in problem(file, text)
    assert "can't be understood at line 3" in problem(
        file, '[style]\ndash = "em rule"\ndash = "spaced en rule"\n'
    )


@pytest.mark.parametrize(
    ("text", "lines"),
    [
        ('[style]\nwords = [\n  "bed-time",\n  "moon",\n  "bedtime",\n]\n', (3, 5)),
        ('[style]\nwords = ["bed time", "Bedtime"]\n', (2, 2)),
        ('[style]\nnames = [\n"Zoe",\n"Zoë"]\n', (3, 4)),
        ('[style]\nwords = ["moon", "bedtime"]\n\n[[stet]]\nword = "bed-time"\n', (2, 4)),
        ('[[stet]]\nword = "zoe"\n[style]\nnames = [\n"Zoë"]\n', (5, 1)),
    ],
)
def test_a_contradiction_names_both_lines(file: Path, text: str, lines: tuple[int, int]) -> None:
    said = problem(file, text)
    assert "contradicts itself" in said
    assert [f"(line {line})" in said for line in lines] == [True, True]
    assert said.index(f"(line {lines[0]})") <= said.rindex(f"(line {lines[1]})")


@pytest.mark.parametrize(
    "text",
    [
        '[style]\nwords = ["bedtime", "bedtime"]\n',
        '[style]\nnames = ["Anna", "Anya", "Bear"]\nwords = ["bear"]\n',
        '[style]\nwords = ["bedtime"]\n[[stet]]\nword = "bedtime"\n',
        '[style]\nwords = ["bedtime"]\n[[stet]]\nline = "at ›bed-time‹ once"\n',
    ],
)
def test_what_only_looks_like_a_contradiction_is_none(file: Path, text: str) -> None:
    assert decided(file, text)
