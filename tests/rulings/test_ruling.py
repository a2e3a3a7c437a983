from __future__ import annotations

from pathlib import Path

import pytest

from proofkit.own_file import read_own_file
from proofkit.problem import Unusable
from proofkit.rulings.ruling import Ruling, idle_sentence, rulings_in


def rulings(file: Path, text: str) -> tuple[Ruling, ...]:
    file.write_text(text, encoding="utf-8")
    return rulings_in(read_own_file(file))


def test_without_a_file_or_rulings_there_are_none(file: Path) -> None:
    assert rulings_in(None) == ()
    assert rulings(file, 'english = "british"\n') == ()


def test_each_is_about_a_place_a_word_or_a_check_and_knows_its_line(file: Path) -> None:
    place, key, word, both, check = rulings(
        file,
        '# mine\n\n[[stet]]\nline = "went ›up up‹ the hill"\n\n[[stet]]\nkey = "k7f2bcd"\n'
        '[[ stet ]]\nword = "gonna"\n  [["stet"]]\nword = "ain’t"\ncheck = "a/b"\n'
        '[[stet]]\ncheck = "a/b" # all of it\nbecause = """\n[[stet]]\n"""\n',
    )
    assert [each.line for each in (place, key, word, both, check)] == [3, 6, 8, 10, 13]
    assert [each.about_place for each in (place, key, word, both, check)] == [True, True] + [
        False
    ] * 3
    assert [each.about_check for each in (word, both, check)] == [False, False, True]
    assert place.place is not None
    assert place.place.quote == "up up"


def test_a_list_of_rulings_on_one_line_is_understood_too(file: Path) -> None:
    first, second = rulings(file, '\nstet = [{ word = "gonna" }, { word = "wanna" }]\n')
    assert (first.word, first.line, second.word, second.line) == ("gonna", 2, "wanna", 2)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("\n[[stet]]\n", "line 2: this [[stet]] doesn’t say what is to stand"),
        ('[[stet]]\nbecause = "so"\n', "line 1: this [[stet]] doesn’t say"),
        ('[[stet]]\nline = "no marks"\n', "line 1: mark the words"),
        ("[[stet]]\nword = 3\n", 'line 1: word must be in quotation marks, as in word = "…"'),
        ('[[stet]]\nword = "x"\nalso = "y"\n', "line 1: also must be a list"),
        ('[[stet]]\nword = "x"\nequals = "y"\n', "line 1: equals must be a number"),
        ("\n[stet]\nword = 'x'\n", "line 2: what is to stand is written under [[stet]]"),
        ("stet = 'x'\n", "line 1: what is to stand"),
    ],
)
def test_one_that_cannot_be_understood_is_named_with_its_line(
    file: Path, text: str, said: str
) -> None:
    with pytest.raises(Unusable) as problem:
        rulings(file, text)
    assert said in str(problem.value)
    assert str(file) in str(problem.value)


def test_those_that_match_nothing_are_said_on_one_line() -> None:
    one, two = Ruling(at="", line=4, word="x"), Ruling(at="", line=9, word="y")
    assert idle_sentence([one]).startswith(
        "The ruling on line 4 of proofkit.toml no longer matches "
    )
    assert "rulings on lines 4 and 9 of proofkit.toml no longer match " in idle_sentence([one, two])
    assert "line" not in idle_sentence([one, Ruling(at="", word="z")])
