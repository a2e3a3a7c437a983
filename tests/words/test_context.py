from __future__ import annotations

from pathlib import Path

import pytest

from proofkit.words.context.counts import Counts, as_byte
from proofkit.words.context.features import feature_names
from proofkit.words.context.model import Choice, ContextModel, context_model
from proofkit.words.context.pairs import confusion_pairs, confusions
from proofkit.words.context.table import MAGIC, SHELVES, Table, name_key
from proofkit.words.context.tokens import EDGE, REACH, Tokens, class_of, tokens_of
from proofkit.words.data import wordlist


def written(path: Path, numbers: dict[str, int]) -> Table:
    """A table of these numbers, written as the training script writes it, but plainly."""
    keys = sorted((name_key(name), number) for name, number in numbers.items())
    begins = [sum(key >> 16 < shelf for key, _ in keys) for shelf in range(SHELVES + 1)]
    path.write_bytes(
        MAGIC
        + b"".join(begin.to_bytes(4, "little") for begin in begins)
        + b"".join((key & 0xFFFF).to_bytes(2, "little") for key, _ in keys)
        + bytes(number for _, number in keys)
    )
    return Table(path)


def tokens(text: str, *names: str) -> list[str]:
    """The tokens of a text whose names are known, without the edges."""
    return tokens_of(text, lambda word: word in names).words[REACH:-REACH]


def read(text: str) -> Tokens:
    """The tokens of a text without names of its own."""
    return tokens_of(text, lambda _: False)


def test_a_table_gives_each_name_its_number_and_others_none(tmp_path: Path) -> None:
    names = {"the": 200, "of the": 90, "left of the": 7}
    table = written(tmp_path / "numbers.bin", names)
    assert {name: table.get(name) for name in names} == names
    assert table.get("the of") == 0
    assert table.get("") == 0


def test_a_file_of_something_else_is_not_a_table(tmp_path: Path) -> None:
    path = tmp_path / "other.bin"
    path.write_bytes(b"something else" * 50)
    with pytest.raises(ValueError, match="not a table"):
        Table(path)


def test_words_in_lower_case_names_as_one_stops_as_three() -> None:
    assert tokens("“Where’s Mr. Fox?” asked Tom Tit; then—silence!") == (
        ["where's", "Nn", "?", "asked", "Nn", ",", "then", ",", "silence", "."]
    )


def test_a_capital_at_the_start_is_no_name_unless_the_book_says_so() -> None:
    assert tokens("Hare ran. Hare sat.") == ["hare", "ran", ".", "hare", "sat", "."]
    assert tokens("Hare ran. Hare sat.", "Hare") == ["Nn", "ran", ".", "Nn", "sat", "."]


def test_days_and_i_are_no_names() -> None:
    assert tokens("So on Tuesday I ran.") == ["so", "on", "tuesday", "i", "ran", "."]


def test_places_of_tokens_are_those_of_the_text() -> None:
    text = "One frog. Mr. Green Frog sat, at Tom's."
    found = read(text)
    places = list(zip(found.words, found.starts, found.ends, strict=True))[REACH:-REACH]
    assert [text[start:end] for _, start, end in places] == (
        ["One", "frog", ".", "Mr. Green Frog", "sat", ",", "at", "Tom's", "."]
    )
    assert found.words[:REACH] == found.words[-REACH:] == [EDGE] * REACH


def test_only_the_stretch_asked_for_is_read() -> None:
    text = "Not this. But this. Not that."
    start = text.index("But")
    found = tokens_of(text, lambda _: False, start, start + len("But this."))
    assert found.words[REACH:-REACH] == ["but", "this", "."]
    assert found.starts[REACH] == start


@pytest.mark.parametrize(
    ("word", "expected"),
    [("wobbling", "<ing>"), ("glorped", "<ed>"), ("whirr-tick", "<->"), ("zom", "<>")],
)
def test_a_seldom_word_stands_for_its_kind(word: str, expected: str) -> None:
    assert class_of(word) == expected


def test_a_share_follows_the_counts_and_sums_to_one(tmp_path: Path) -> None:
    runs = {"a": 600, "cat": 300, "dog": 100, "a cat": 200, "a dog": 50}
    numbers = {run: as_byte(count) for run, count in runs.items()}
    counts = Counts(written(tmp_path / "runs.bin", numbers), 1000)
    assert counts.count("a cat") == pytest.approx(200, rel=0.03)
    assert counts.count("cat a") == 0
    cat, dog = counts.share(["", "", "a", "cat"], 3), counts.share(["", "", "a", "dog"], 3)
    # (200 + 30 x 0.3) / (600 + 30), and likewise (50 + 30 x 0.1) / 630
    assert cat == pytest.approx(209 / 630, rel=0.05)
    assert dog == pytest.approx(53 / 630, rel=0.05)


def test_features_look_three_words_far_and_the_bag_six() -> None:
    words = read("one two three four five six seven eight nine ten eleven").words
    at = words.index("six")
    names = list(feature_names(words, list("1234567"), at))
    assert {"a three", "c five", "d seven", "h five seven", "q seven eight nine"} <= set(names)
    assert {"B 3", "C 5", "F 3 5", "L five 5"} <= set(names)
    assert {"z four", "z eight", f"z {EDGE}"} <= set(names)
    assert not any("six" in name for name in names)


def test_odds_need_both_votes(tmp_path: Path) -> None:
    choice = Choice(written="form", meant="from", bias=0.0, margin=2.0)
    runs = {"jumped": 50, "from": 400, "form": 40, "the": 900, "jumped from": 30, "from the": 200}
    counted = {run: as_byte(count) for run, count in runs.items()}
    weights = {"form/from c jumped": 128 - 60, "form/from d the": 128 - 40}
    words = read("He jumped form the roof.").words
    at = words.index("form")
    both = ContextModel(written(tmp_path / "both.bin", counted | weights), 9000, [choice])
    assert both.neighbour_odds(words, at, choice) == pytest.approx(5.0)
    assert both.odds(words, at, choice) > 5.0
    one = ContextModel(written(tmp_path / "one.bin", counted), 9000, [choice])
    assert one.odds(words, at, choice) == 0.0


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("The cat jumped form the roof.", "from"),
        ("They lived at the edge of the would.", "wood"),
        ("I am to tired to walk.", "too"),
        ("He did not no what to do.", "know"),
    ],
)
def test_the_model_doubts_a_wrong_word(text: str, meant: str) -> None:
    assert [doubt.choice.meant for doubt in context_model().doubts(read(text))] == [meant]


@pytest.mark.parametrize(
    "text",
    [
        "The cat jumped from the roof, and they had to form a line.",
        "They would not go into the wood. I am too tired to walk two miles.",
        "He did not know what to do now. No, no!",
    ],
)
def test_the_model_lets_right_words_stand(text: str) -> None:
    assert list(context_model().doubts(read(text))) == []


def test_every_choice_that_ships_is_one_that_is_looked_for() -> None:
    rows = [
        line.split("\t") for line in wordlist("word-choice.tsv").read_text("utf-8").splitlines()
    ]
    ways = [(row[0], row[1]) for row in rows if len(row) == 6]
    assert len(ways) == len(set(ways)) > 300
    assert set(ways) <= confusions()
    assert len(confusion_pairs()) > 200


def test_the_texts_are_named_and_those_for_the_test_kept_apart() -> None:
    lines = wordlist("word-choice-texts.tsv").read_text("utf-8").splitlines()
    assert any("public domain" in line for line in lines if line.startswith("#"))
    uses = {line.split("\t")[0]: line.split("\t")[2] for line in lines if not line.startswith("#")}
    assert list(uses.values()).count("test") == 5
    assert len(uses) == sum(not line.startswith("#") for line in lines)


def test_what_ships_is_small() -> None:
    names = ("word-choice.bin", "word-choice.tsv", "word-choice-texts.tsv")
    assert sum(wordlist(name).stat().st_size for name in names) < 6.2e6
