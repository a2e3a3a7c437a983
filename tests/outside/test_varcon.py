"""The spelling table beside VarCon itself, and the hard lines of VarCon's own making.

``varcon-check-pairs.tsv``: 84 lines of VarCon 2020.12.07 (Kevin Atkinson, Benjamin Titze; licence in
``wordlists/varcon-README.txt``), picked for their traps.
"""

from __future__ import annotations

import re
import runpy
from pathlib import Path

import pytest

from proofkit.settings import English
from proofkit.words.data import wordlist
from proofkit.words.variants import variants
from tests.bench.varcon import traps, trials

TABLE = runpy.run_path(str(wordlist("make_varcon.py")))
CHECK_PAIRS = Path(__file__).parent / "varcon-check-pairs.tsv"
LINES = [
    line
    for line in CHECK_PAIRS.read_text(encoding="utf-8").splitlines()
    if line and not line.startswith("#")
]


def forms(line: str, categories: str, *standings: str) -> set[str]:
    """By plain text, not by the reader under test: the line's forms with such a tag."""
    found = set()
    for part in re.split(r" \| ", line)[0].strip().split(" / "):
        tags, word = part.split(": ")
        if any(tag[0] in categories and tag[1:] in standings for tag in tags.split()):
            found.add(word.strip())
    return found


def test_there_are_84_check_pairs() -> None:
    assert len(LINES) == 84


@pytest.mark.parametrize("line", LINES)
def test_each_check_pair(line: str) -> None:
    """A spelling at home in both Englishes, in this sense or another, is left as it is."""
    table = variants()
    american = forms(line, "A", "", ".", "v")
    british = forms(line, "BZ", "", ".", "v")
    far = "species of wheat" in line or "game of checkers" in line
    for word in american | british:
        belongs = table.belongs_to(word)
        assert belongs is not (English.AMERICAN if word in british else English.BRITISH) or far
        if belongs is English.AMERICAN:
            assert table.british(word) in british
        elif belongs is English.BRITISH and not far:
            assert table.american(word) in american
        else:
            assert table.british(word) == word or table.readings(word) == () or far


@pytest.mark.parametrize("line", [line for line in LINES if not line.startswith("_")])
def test_each_check_pair_that_differs_is_a_reading(line: str) -> None:
    american = forms(line, "A", "", ".", "v")
    british, oxford = forms(line, "B", "", ".", "v"), forms(line, "Z", "", ".", "v")
    pos = "".join(re.findall(r"<(\w+)>", line))
    readings = [
        (set(r.american), set(r.british), set(r.oxford), r.pos)
        for word in american
        for r in variants().readings(word)
    ]
    if american != british | oxford:
        assert (american, british, oxford, pos) in readings


def test_the_table_is_what_the_script_makes() -> None:
    made = dict.fromkeys(
        TABLE["row"](line) for line in TABLE["kept"](TABLE["read_lines"](wordlist("varcon.txt")))
    )
    table = wordlist("varcon.tsv").read_text(encoding="utf-8")
    assert table == TABLE["HEADER"] + "\n".join(made) + "\n"


def test_the_list_is_whole() -> None:
    """Counted with other tools from the published file: 18,118 word lines in 7,158 clusters, 1,567 verified."""
    text = wordlist("varcon.txt").read_text(encoding="latin-1").splitlines()
    heads = [line for line in text if re.match(r"# .*\(level", line)]
    assert len(heads) == 7158
    assert sum("<verified>" in line for line in heads) == 1567
    assert sum(bool(line) and not line.startswith("#") for line in text) == 18118


def test_the_readme_example() -> None:
    line = TABLE["read_line"]("A Cv: acknowledgment / Av B C: acknowledgement")
    assert line.american == ("acknowledgment", "acknowledgement")
    assert line.british == ("acknowledgement",)


def test_verified_pairs_convert_both_ways() -> None:
    """Over the verified lines with one sense: British to American and back is where VarCon says."""
    table = variants()
    lines = [
        line
        for line in TABLE["read_lines"](wordlist("varcon.txt"))
        if line.verified and line.level <= 70 and not line.sense and not line.pos
        if not any(word.endswith("'s") for word in line.words)
        if line.american
        and line.british
        and line.american[0] not in {*line.british, *line.oxford}
        and line.british[0] not in line.american
    ]
    right = [
        line
        for line in lines
        if table.british(line.american[0]) in line.british
        and table.american(line.british[0]) in line.american
    ]
    print(f"verified pairs, both ways right: {len(right)} of {len(lines)}")
    assert len(lines) > 1000
    assert len(right) / len(lines) > 0.97


@pytest.mark.slow
def test_mixtures_of_the_verified_clusters_are_found() -> None:
    """Over all verified lines that differ, in sentences: the other English's form, both ways."""
    done = [trial for trial in trials() if not trial.both_at_home]
    for english in English:
        own = [trial.found for trial in done if trial.english is english]
        print(f"{english.value}: {sum(own)} of {len(own)}")
        assert len(own) > 1200
        assert sum(own) / len(own) >= 0.98


def test_traps_stay_silent_and_their_other_senses_speak() -> None:
    silent, speaking = traps()
    assert len(silent) > 60
    assert len(speaking) > 50
    assert [text for text, said in silent if said] == []
    assert [text for text, right in speaking if not right] == []
