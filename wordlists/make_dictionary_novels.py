"""Make ``dictionary-novels.txt``: what children's novels tell of words beyond the dictionary.

    python wordlists/make_dictionary_novels.py FOLDER

The folder holds the texts of novels, one a file. The committed list was counted over 389 public-domain
children's novels (Project Gutenberg, 1850–1930; 16.6 million words). It has three blocks, each a line
``# kind`` and then one word a line:

    dialect    words that no dictionary has, that at least four of the novels have, and of whose uses
               nine in ten stand in speech: somebody's way of speaking (leetle, sech, hoose)
    familiar   words of at least thirty novels that stand there three times as often as in English at
               large, or that English at large uses seldom (whiskers)
    joined     rarer words of two that at least three novels write as one, and at least twice as many
               novels as write them apart (raindrop)

Left out of the dialect are forms clipped with an apostrophe (goin’), which need no list.
"""

from __future__ import annotations

import re
import sys
from collections import Counter
from itertools import pairwise
from math import log10
from pathlib import Path

HERE = Path(__file__).parent
LEAST_NOVELS = 4
FAMILIAR_NOVELS = 30
IN_SPEECH = 0.9
JOINED_NOVELS = 3
AS_MANY = 2
OFTENER = 0.5  # powers of ten
# Words above are frequent enough by themselves (a Zipf value, as proofkit.words.frequency gives it).
SELDOM = 3.2
_SPEECH = re.compile(r"[\"“]([^\"”]*)[\"”]?")
_WORD = re.compile(r"(?<![\w'’\-‑])[a-z]{3,}(?![\w'’\-‑])")
_RUN = re.compile(r"[a-z]+(?: [a-z]+)+")
_ENDINGS = frozenset(
    "ness est ing ings ful less able ible some ward wards ship hood ted led ling lings let lets ers ies ism "
    "ist ism sed ded ged ned ked red ved tic tion ally lier ting ding ging ning sing ring king ling ping".split()
)
_HEAD = """# Counted by make_dictionary_novels.py over 389 public-domain novels (Project Gutenberg, 1850-1930).
"""


def main(folder: Path) -> None:
    """Count the novels in ``folder`` and write the list beside this script."""
    sys.path.insert(0, str(HERE.parent))
    from proofkit.settings import English  # noqa: PLC0415 - found only once the path is set
    from proofkit.words.dictionary import dictionary  # noqa: PLC0415
    from proofkit.words.frequency import zipf  # noqa: PLC0415

    both = [dictionary(english) for english in English]
    novels, uses, spoken = counted(sorted(folder.glob("*.txt")))
    apart = pairs(sorted(folder.glob("*.txt")))
    strange = {
        word
        for word in novels
        if not any(d.knows(word) or d.knows_elsewhere(word) or d.as_name(word) for d in both)
    }
    blocks = {
        "dialect": {
            word
            for word in strange
            if novels[word] >= LEAST_NOVELS and spoken[word] >= IN_SPEECH * uses[word]
        },
        "familiar": {
            word
            for word, times in novels.items()
            if times >= FAMILIAR_NOVELS
            and word not in strange
            and (zipf(word) < SELDOM or log10(uses[word] / uses.total()) + 9 - zipf(word) > OFTENER)
        },
        "joined": {
            left + right
            for word, times in novels.items()
            if times >= JOINED_NOVELS and word not in strange and zipf(word) < SELDOM
            for left, right in halves(word)
            if left in novels and right in novels and times >= AS_MANY * apart[left, right]
            if min(zipf(left), zipf(right)) >= 3
        },
    }
    lines = [line for kind, found in blocks.items() for line in (f"# {kind}", *sorted(found))]
    (HERE / "dictionary-novels.txt").write_text(_HEAD + "\n".join(lines) + "\n", "utf-8")


def counted(paths: list[Path]) -> tuple[Counter[str], Counter[str], Counter[str]]:
    """For each word in lower case: how many novels have it, how many uses, how many of them in speech."""
    novels: Counter[str] = Counter()
    uses: Counter[str] = Counter()
    spoken: Counter[str] = Counter()
    for path in paths:
        text = path.read_text("utf-8")
        if text.count('"') + text.count("“") < text.count("\n\n"):
            continue  # speech in single marks, which can't be told from apostrophes so simply
        words = _WORD.findall(text)
        novels.update(set(words))
        uses.update(words)
        for paragraph in text.split("\n\n"):
            for speech in _SPEECH.findall(paragraph):
                spoken.update(_WORD.findall(speech))
    return novels, uses, spoken


def pairs(paths: list[Path]) -> Counter[tuple[str, str]]:
    """How many novels have each two words side by side."""
    apart: Counter[tuple[str, str]] = Counter()
    for path in paths:
        runs = _RUN.findall(" ".join(path.read_text("utf-8").split()))
        apart.update({pair for run in runs for pair in pairwise(run.split())})
    return apart


def halves(word: str) -> list[tuple[str, str]]:
    """All ways to part a word into two of at least three letters, the second no ending."""
    parted = [(word[:at], word[at:]) for at in range(3, len(word) - 2)]
    return [(left, right) for left, right in parted if right not in _ENDINGS]


if __name__ == "__main__":
    main(Path(sys.argv[1]))
