"""Print how well the mixture of the two Englishes is found, over every verified cluster of VarCon.

    python -m tests.bench.varcon [--misses]

Each line of a verified cluster whose American form differs from its British one is put in two sentences of
one short book, once in each form, in a place for its part of speech: once in a book that is otherwise
British, once in one that is otherwise American. A mixture is found when an issue stands on the form of
the other English and its first suggestion is a form at home. Where VarCon has both forms at home in that
English (ageing beside aging), there is no other English to find; whether the book's two ways are pointed
out all the same is counted apart. The traps, words that are right as they stand, are sentences by hand in
``tests/outside/varcon-traps.tsv``; the figures tell how many of them are left alone.
"""

from __future__ import annotations

import argparse
import runpy
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby
from pathlib import Path
from typing import Protocol, cast

from proofkit.analysis import Analysis
from proofkit.checks.check import Check, Need
from proofkit.checks.registry import all_checks
from proofkit.issue import Issue
from proofkit.settings import English, Settings
from proofkit.words.data import wordlist
from proofkit.words.english import english_of
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of

TRAPS = Path(__file__).parents[1] / "outside" / "varcon-traps.tsv"
FRAMES = {
    English.BRITISH: "“My favourite colour is grey,” said our neighbour at the harbour.",
    English.AMERICAN: "“My favorite color is gray,” said our neighbor at the harbor.",
}
_CARRIERS = {
    "noun": "The hare thought of the {}.",
    "verb": "They had to {} it.",
    "verb -s": "She always {} it.",
    "verb -ed": "She had {} it.",
    "verb -ing": "She was {} it.",
    "adverb": "She went {} there.",
    "adjective": "It was very {} there.",
}
# Where VarCon names a sense, or one part of speech of several, the sentence has it; nothing else would
# be fair. Senses without a sentence here keep the plain one, in which nobody could tell them.
_SENSES = {
    "barque": "They saw a three-masted {} at sea.",
    "barques": "They saw three-masted {} at sea.",
    "groyne": "He sat on a {} on the beach.",
    "groynes": "He sat on the {} along the shore.",
    "matt": "The paint was {} black.",
    "cheque": "Grandma wrote a {} for ten pounds.",
    "cheques": "She cashed the {} at the bank.",
    "draught": "There was a cold {} under the door.",
    "draughts": "She shivered in the cold {} that blew in.",
    "gybe": "They made the dinghy {} at once.",
    "gybed": "The dinghy {} at once.",
    "gybes": "The dinghy {} in every wind.",
    "gybing": "The dinghy was {} all day.",
    "licences": "They showed their {} at the gate.",
    "lupin": "She picked a {} and a rose.",
    "metre": "The snake was a {} long.",
    "metres": "The snake was two {} long.",
    "micrometre": "The flea was one {} long.",
    "micrometres": "The flea was nine {} long.",
    "noughts": "They played {} and crosses.",
    "prise": "He tried to {} the lid off the tin.",
    "prised": "He {} the two bricks apart.",
    "prises": "He {} the two bricks apart.",
    "prising": "He was {} the lid off the tin.",
    "storey": "She leant from the top {} of the tower.",
    "storeys": "The tower was nine {} high.",
}
# Reads the language model's tags where there are any, and does without.
_BY_TAGS = "consistency/word-spelt-two-ways"
_POS = {"N": "noun", "V": "verb", "Adj": "adjective", "Adv": "adverb"}


class Line(Protocol):
    """What is read of a line that ``wordlists/make_varcon.py`` gives."""

    @property
    def american(self) -> tuple[str, ...]: ...
    @property
    def british(self) -> tuple[str, ...]: ...
    @property
    def oxford(self) -> tuple[str, ...]: ...
    @property
    def pos(self) -> str: ...
    @property
    def sense(self) -> str: ...
    @property
    def verified(self) -> bool: ...
    @property
    def cluster(self) -> str: ...


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial:
    """One line in a book of ``english``: the form that belongs there, the other, and what was said."""

    line: Line
    part: str
    english: English
    own: str
    other: str
    issues: tuple[Issue, ...]

    @property
    def homes(self) -> frozenset[str]:
        """Every form at home in the book's English."""
        line = self.line
        own = line.american if self.english is English.AMERICAN else (*line.british, *line.oxford)
        return frozenset(own)

    @property
    def both_at_home(self) -> bool:
        return self.other in self.homes

    @property
    def by_sense(self) -> bool:
        """Whether VarCon tells the form by its sense or its part of speech."""
        return bool(self.line.sense or self.line.pos)

    @property
    def found(self) -> bool:
        said = [i for i in self.issues if i.quote.lower() in (self.own.lower(), self.other.lower())]
        if self.both_at_home:
            return bool(said)
        return any(
            i.quote.lower() == self.other.lower()
            and i.suggestions
            and i.suggestions[0] in self.homes
            for i in said
        )


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--misses", action="store_true", help="print every mixture not found")
    show = parser.parse_args().misses
    done = list(trials())
    for english in English:
        own = [trial for trial in done if trial.english is english]
        told = [trial for trial in own if not trial.both_at_home]
        _print(f"{english.value} book, the other's form", told, show=show)
        _print("  of them told by sense or part of speech", [t for t in told if t.by_sense])
        _print("  both forms at home there", [t for t in own if t.both_at_home], show=False)
    silent, speaking = traps()
    print(f"traps left alone: {sum(not said for _, said in silent)} of {len(silent)}")
    print(f"their other sense found: {sum(said for _, said in speaking)} of {len(speaking)}")
    for text, said in (*silent, *((text, not said) for text, said in speaking)):
        if said:
            print("   ", text)


def trials() -> Iterator[Trial]:
    """Every line of a verified cluster that differs, possessives left out, both ways."""
    checks = _checks()
    for line, part in _lines():
        american, british = line.american[0], line.british[0]
        for english, own, other in (
            (English.BRITISH, british, american),
            (English.AMERICAN, american, british),
        ):
            carrier = _SENSES.get(british) if line.sense or line.pos else None
            forms = (own, other)
            texts = (
                FRAMES[english],
                *((carrier or _CARRIERS[part]).format(form) for form in forms),
            )
            yield Trial(
                line=line, part=part, english=english, own=own, other=other,
                issues=tuple(_issues(checks, texts, None)),
            )  # fmt: skip


def traps() -> tuple[list[tuple[str, bool]], list[tuple[str, bool]]]:
    """The sentences by hand, each with whether anything was said: those to leave alone, those to find."""
    checks = _checks()
    silent, speaking = [], []
    for row in TRAPS.read_text("utf-8").splitlines():
        if not row or row.startswith("#"):
            continue
        name, better, text = row.split("\t")
        english = English(name)
        found = list(_issues(checks, (FRAMES[english], text.replace("*", "")), english))
        if better == "-":
            silent.append((text, bool(found)))
        else:
            right = any(i.suggestions and i.suggestions[0] == better for i in found)
            speaking.append((f"{text} | {better}", right))
    return silent, speaking


def _lines() -> Iterator[tuple[Line, str]]:
    table = runpy.run_path(str(wordlist("make_varcon.py")))
    lines = cast("Iterable[Line]", table["read_lines"](table["SOURCE"]))
    verified = (line for line in lines if line.verified)
    for _, group in groupby(verified, key=lambda line: line.cluster):
        cluster = list(group)
        words = {word for line in cluster for word in (*line.american, *line.british)}
        for line in cluster:
            own, other = (line.american or ("",))[0], (line.british or ("",))[0]
            if own and other and own != other and not own.endswith("'s"):
                yield line, _part(line, own, words)


def _part(line: Line, word: str, cluster: set[str]) -> str:
    """The part of speech, as the inflections beside it in the cluster show it."""
    nominal = any(other.endswith("'s") for other in cluster)
    verbal = any(other.endswith("ing") for other in cluster)
    endings = {"ing": "verb -ing", "ed": "verb -ed", "s": "verb -s"}
    ending = next((named for end, named in endings.items() if word.endswith(end)), "verb")
    if line.pos == "V" or (verbal and (ending in ("verb -ing", "verb -ed") or not nominal)):
        return ending
    if line.pos in _POS:
        return _POS[line.pos]
    if nominal or word.endswith("s"):
        return "noun"
    return "adverb" if word.endswith("ly") else "adjective"


def _checks() -> Sequence[Check]:
    return [
        check
        for check in all_checks()
        if check.family in ("english", "consistency")
        and (check.needs == frozenset({Need.TEXT}) or check.name == _BY_TAGS)
    ]


def _issues(
    checks: Sequence[Check], texts: Sequence[str], chosen: English | None
) -> Iterator[Issue]:
    book = book_of(*texts)
    vocabulary = vocabulary_of(book)
    analysis = Analysis(english=chosen or english_of(book, vocabulary), vocabulary=vocabulary)
    for check in checks:
        yield from check.find(book, analysis, Settings(english=chosen))


def _print(title: str, done: Sequence[Trial], *, show: bool = False) -> None:
    clusters: dict[str, list[bool]] = defaultdict(list)
    for trial in done:
        clusters[trial.line.cluster].append(trial.found)
    whole, found = sum(all(own) for own in clusters.values()), sum(t.found for t in done)
    print(
        f"{title:44} {found:4} of {len(done):4} lines {found / max(1, len(done)):.3f},"
        f" {whole:4} of {len(clusters):4} clusters {whole / max(1, len(clusters)):.3f}"
    )
    missed = [trial for trial in done if not trial.found]
    if show:
        parts = Counter(trial.part for trial in missed)
        print("    missed:", dict(parts))
        for trial in missed:
            said = [f"{i.check} {i.quote} {i.suggestions[:1]}" for i in trial.issues]
            print(f"      {trial.own} / {trial.other} ({trial.part}; {trial.line.sense}) {said}")


if __name__ == "__main__":
    main()
