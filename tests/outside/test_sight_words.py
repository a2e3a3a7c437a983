"""The lists of words that children first know by sight hold what their authors' articles say.

E. W. Dolch, A Basic Sight Vocabulary, The Elementary School Journal 36 (1936): 220 words, 40 of them for
pre-primers, 52 for primers, then 41, 46 and 41 for three grades, and 95 nouns apart. E. Fry, Instant Words
(1957): the first hundred.
"""

from __future__ import annotations

from collections import Counter

from proofkit.reading.familiar import WordList, is_listed
from proofkit.words.data import wordlist


def rows(name: str) -> list[str]:
    lines = wordlist(name).read_text(encoding="utf-8").splitlines()
    return [line for line in lines if line and not line.startswith("#")]


def test_dolch() -> None:
    words = [row.split("\t") for row in rows("dolch-220.tsv")]
    assert len({word for word, _ in words}) == 220
    assert Counter(grade for _, grade in words) == {
        "pre-primer": 40,
        "primer": 52,
        "first": 41,
        "second": 46,
        "third": 41,
    }
    nouns = rows("dolch-95-nouns.txt")
    assert len(set(nouns)) == 95
    assert not {word for word, _ in words} & set(nouns)


def test_fry() -> None:
    assert len(set(rows("fry-first-100.txt"))) == 100


def test_what_children_know_by_sight_is_familiar() -> None:
    """Lists of other hands, held against ours: the long one has all of them, the short one 19 of 20."""
    words = {row.split("\t")[0] for row in rows("dolch-220.tsv")} | set(rows("dolch-95-nouns.txt"))
    sight = {word.lower().replace("’", "'") for word in words | set(rows("fry-first-100.txt"))}
    off_long = {word for word in sight if not is_listed(word, WordList.DALE_CHALL)}
    off_short = {word for word in sight if not is_listed(word, WordList.SPACHE)}
    assert len(off_long) <= 0.01 * len(sight), off_long
    assert len(off_short) <= 0.05 * len(sight), off_short
