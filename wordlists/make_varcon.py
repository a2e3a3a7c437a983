"""Make ``varcon.tsv``, the table that proofkit loads, from ``varcon.txt``. Run: python wordlists/make_varcon.py

VarCon 2020.12.07 (https://github.com/en-wl/wordlist, branch v1, commit b22230cc, varcon/varcon.txt)
tells for each spelling in which English it is preferred, a variant, or not used. Its format, its
sources and its licence stand in ``varcon-README.txt``. The table keeps what a proofreader needs:

- all verified clusters; of the others, which VarCon calls unchecked, those up to level 40, and the
  regular -ise and -ize pairs up to level 70, the last that "can be found in the dictionary";
- no rare sense that a story will not mean (the gray is a physical unit), and no possessives, which
  follow their word;
- no whirr and no whizz: a story spells its sounds as it likes;
- the lines on which American and British differ, and the other lines of the same words: these
  show when a spelling that looks foreign is at home in another sense ("story", "check", "mum");
- the lines of words that both Englishes spell in the same two ways (ageing, aging): a book keeps to one.

A spelling is at home in an English if it is preferred there, an equal, or a variant ("v"), not if
it is seldom used ("V"), possible ("-") or improper ("x"). Seldom used forms have columns of their own:
a book may have its reasons for them.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

HERE = Path(__file__).resolve().parent
SOURCE = HERE / "varcon.txt"
HIGHEST_LEVEL = 70
HIGHEST_UNVERIFIED_LEVEL = 40
AT_HOME = {"": 0, ".": 1, "v": 2}
SELDOM = "V"
# Of the rare senses, marked "(-)", those that would hide a difference that every story shows.
FAR_SENSES = ("physical unit", "species of wheat", "code word", "british: ", "lesbian", "technical")
SOUNDS = ("whir", "whiz")

_HEAD = re.compile(r"^# (?P<word>.+?)(?P<verified> <verified>)? \(level (?P<level>\d+)\)")
_POS = re.compile(r"<(\w+)>")
_Z = re.compile(r"z(?=(?:e[drs]?s?|ing|ation|ations|able|er|ers)$)")
_TAG = re.compile(r"^(?P<category>[ABZCD_])(?P<standing>[.vVx-]?)(?P<column>\d*)$")

HEADER = """\
# Made by make_varcon.py from varcon.txt, VarCon 2020.12.07,
# Copyright 2000-2019 Kevin Atkinson, 2016 Benjamin Titze, 1993 Geoff Kuenning; licence: varcon-README.txt
# american, british, british with -ize where that differs, seldom american, seldom british, part of speech, sense
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One line of VarCon: the forms at home in each English, the preferred first.

    ``oxford`` holds the British forms of those who write -ize; empty where the line gives none of its
    own. ``seldom_american`` and ``seldom_british`` are forms that the English has but seldom uses.
    """

    american: tuple[str, ...]
    british: tuple[str, ...]
    oxford: tuple[str, ...]
    seldom_american: tuple[str, ...]
    seldom_british: tuple[str, ...]
    pos: str
    sense: str
    level: int
    verified: bool
    far: bool
    cluster: str = ""

    @property
    def words(self) -> frozenset[str]:
        """Every form that is at home in either English."""
        return frozenset((*self.american, *self.british, *self.oxford))

    @property
    def differs(self) -> bool:
        """Whether some form is at home in one English only."""
        return set(self.american) != {*self.british, *self.oxford}

    @property
    def trusted(self) -> bool:
        """Whether somebody checked the line, or its pair is regular."""
        if self.verified or self.level <= HIGHEST_UNVERIFIED_LEVEL:
            return True
        regular = {_Z.sub("s", word) for word in self.american} == set(self.british)
        return regular and self.level <= HIGHEST_LEVEL


def read_line(text: str, *, level: int = 0, verified: bool = False, cluster: str = "") -> Line:
    """Read one word line of VarCon, such as ``A Cv: center / B C: centre``."""
    forms, *remarks = re.split(r" \| ?| #", text)
    note = " ".join(remark.strip() for remark in remarks if not remark.strip().startswith("--"))
    home: dict[str, list[tuple[int, str]]] = {"A": [], "B": [], "Z": []}
    seldom: dict[str, list[tuple[int, str]]] = {"A": [], "B": []}
    for part in forms.strip().split(" / "):
        tags, word = part.split(": ")
        for tag in tags.split():
            read = _TAG.match(tag)
            if read and read["category"] in home and read["standing"] in AT_HOME:
                home[read["category"]].append((AT_HOME[read["standing"]], word.strip()))
            elif read and read["category"] in seldom and read["standing"] == SELDOM:
                seldom[read["category"]].append((0, word.strip()))
    pos = _POS.search(note)
    return Line(
        american=_in_order(home["A"]),
        british=_in_order(home["B"]),
        oxford=_in_order(home["Z"]),
        seldom_american=_in_order(seldom["A"]),
        seldom_british=_in_order(seldom["B"]),
        pos=pos[1] if pos else "",
        sense=re.sub(r"<\w+>|\(-\)|\s+", " ", note).strip(),
        level=level,
        verified=verified,
        far=any(sense in note for sense in FAR_SENSES),
        cluster=cluster,
    )


def read_lines(path: Path) -> Iterator[Line]:
    """All word lines of VarCon that tell of American or British."""
    level, verified, cluster = 0, False, ""
    for text in path.read_text(encoding="latin-1").splitlines():
        head = _HEAD.match(text)
        if head:
            level, verified = int(head["level"]), head["verified"] is not None
            cluster = head["word"]
        elif text and not text.startswith("#"):
            line = read_line(text, level=level, verified=verified, cluster=cluster)
            if line.words:
                yield line


def kept(lines: Iterator[Line]) -> list[Line]:
    """The lines that the table holds."""
    plain = [line for line in lines if line.trusted and not line.far]
    plain = [line for line in plain if not all(w.endswith("'s") for w in line.words)]
    plain = [line for line in plain if not any(w.startswith(SOUNDS) for w in line.words)]
    differing = {word for line in plain if line.differs for word in line.words}
    return [
        line
        for line in plain
        if line.differs or len(line.words) > 1 or not differing.isdisjoint(line.words)
    ]


def row(line: Line) -> str:
    """The line as a row of the table."""
    columns = (
        line.american,
        line.british,
        line.oxford,
        line.seldom_american,
        line.seldom_british,
    )
    return "\t".join([*("/".join(forms) for forms in columns), line.pos, line.sense])


def _in_order(forms: list[tuple[int, str]]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(word for _, word in sorted(forms, key=lambda form: form[0])))


def main() -> None:
    """Write the table beside the list."""
    rows = dict.fromkeys(row(line) for line in kept(read_lines(SOURCE)))
    (HERE / "varcon.tsv").write_text(HEADER + "\n".join(rows) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
