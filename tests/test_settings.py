from __future__ import annotations

from pathlib import Path

import pytest

from proofkit.problem import Unusable
from proofkit.settings import Choices, English, Settings, settings_for


def settings(folder: Path, text: str, asked: Choices | None = None) -> Settings:
    (folder / "proofkit.toml").write_text(text, encoding="utf-8")
    return settings_for(folder / "goose.docx", asked or Choices())


def test_all_that_the_file_can_hold(tmp_path: Path) -> None:
    found = settings(
        tmp_path,
        'title = " The Goose "\nenglish = "american"\nage-band = "board"\nseries = ["../one", "two.docx"]\n'
        'grammar-server = "http://localhost:1"\n[style]\ndash = "em rule"\nnames = ["Pim"]\nwords = ["okay"]\n'
        '[[stet]]\nword = "gonna"\n',
    )
    assert found.title == "The Goose"
    assert found.english is English.AMERICAN
    assert found.age_band == "board"
    assert found.series == (tmp_path / "../one", tmp_path / "two.docx")
    assert found.grammar_server == "http://localhost:1"
    assert found.style.form("dash") == "em rule"
    assert (found.style.names, found.style.words) == (("Pim",), ("okay",))


def test_without_a_file_the_usual_holds(tmp_path: Path) -> None:
    assert settings_for(tmp_path / "goose.docx", Choices()) == Settings()
    assert settings(tmp_path, 'english = "auto"\n') == Settings()


def test_what_is_asked_for_comes_first(tmp_path: Path) -> None:
    asked = Choices(english=English.BRITISH, age_band="chapter", grammar_server="http://x")
    for text in ("", 'english = "american"\nage-band = "board"\ngrammar-server = "http://y"\n'):
        found = settings(tmp_path, text, asked)
        assert (found.english, found.age_band, found.grammar_server) == (
            English.BRITISH,
            "chapter",
            "http://x",
        )


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (
            '\nage_band = "board"\n',
            "line 2: there is no setting “age_band”. Did you mean age-band?",
        ),
        ("xyzzy = 1\n", "line 1: there is no setting “xyzzy”. There are title, english"),
        ("\ntitle = 3\n", 'line 2: title must be in quotation marks, as in title = "…"'),
        (
            '\n\nenglish = "welsh"\n',
            "line 3: english is “welsh”, and it can be “british”, “american”",
        ),
        ('series = "one"\n', "line 1: series must be a list"),
        ("[style]\n\nwords = [3]\n", "line 3: words must be a list"),
        ("[style]\ndash = true\n", "line 2: dash must be in quotation marks"),
        ('style = "mine"\n', "line 1: style must be a table"),
    ],
)
def test_what_cannot_be_used_is_named_with_its_line(tmp_path: Path, text: str, said: str) -> None:
    with pytest.raises(Unusable) as problem:
        settings(tmp_path, text)
    assert f"{tmp_path / 'proofkit.toml'}, {said}" in str(problem.value)


def test_how_fast_it_is_read_aloud(tmp_path: Path) -> None:
    assert settings(tmp_path, "words-a-minute = 130\n").words_a_minute == 130
    for wrong in ('"130"', "0", "-5", "1.5", "true"):
        with pytest.raises(Unusable, match="line 1: words-a-minute must be a whole number"):
            settings(tmp_path, f"words-a-minute = {wrong}\n")
