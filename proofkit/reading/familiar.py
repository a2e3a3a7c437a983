"""Words that a child may be taken to know by sight: the lists of Spache and of Dale and Chall.

The lists hold plain words, and their authors' rules for everything else fill pages of books that are
out of print. Ours, where a word is not on the list as it stands:

- another form of a listed word is familiar: plurals and possessives; -s, -ed and -ing of verbs, with a
  letter doubled or an e dropped or a y turned into i; irregular pasts and plurals; -er, -est and -ly;
- so is a contraction of one: she'll, wouldn't;
- a hyphened word is familiar if its parts are: ding-dong, tea-time;
- a British spelling or word is as familiar as the American one on the list: colour, mum;
- a name is familiar, and so is a figure. Whoever counts says what is a name in the book.

Sounds and invented words are not: a child must spell out *whirr* like any other word.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from enum import StrEnum
from functools import cache

from proofkit.settings import English
from proofkit.words.country_words import country_words
from proofkit.words.data import wordlist
from proofkit.words.forms import irregular_verbs, plural_of
from proofkit.words.variants import variants

_PART = re.compile(r"[^\W\d_]+(?:['’][^\W\d_]+)*")
_CONTRACTION = re.compile(r"(?P<stem>.+?)(?:n't|'(?:s|d|m|ll|ve|re))")
_ENDINGS = ("ing", "ed", "er", "est", "ly", "s", "es")
_SHORTEST_STEM = 2
# What children call their mother is on no list.
_FAMILY = dict.fromkeys(("mum", "mummy", "mam", "mom", "mommy"), "mother")


class WordList(StrEnum):
    """The lists that a text is held against, by the name of their file."""

    SPACHE = "spache"
    DALE_CHALL = "dale-chall"

    @property
    def whose(self) -> str:
        """Whose list it is."""
        return "Spache" if self is WordList.SPACHE else "Dale and Chall"


def parts(word: str) -> list[str]:
    """The plain words, in lower case, of which a word in a text is made; none in a figure."""
    return [part.lower().replace("’", "'") for part in _PART.findall(word)]


@cache
def is_listed(part: str, which: WordList) -> bool:
    """Whether a plain word in lower case, or the word of which it is a form, is on the list."""
    words = _with_irregular_forms(which)
    return any(form in words or _american(form) in words for form in _stems(part))


def _american(word: str) -> str:
    return _american_words().get(word) or variants().american(word) or word


@cache
def listed_words(which: WordList) -> frozenset[str]:
    """The list as published, in lower case."""
    return frozenset(_lines(f"{which}-words.txt"))


@cache
def _with_irregular_forms(which: WordList) -> frozenset[str]:
    words = listed_words(which)
    verbs = (verb for verb in irregular_verbs() if verb.plain in words)
    pasts = (form for verb in verbs for form in (*verb.pasts, *verb.participles))
    return words.union((plural_of(word) for word in words), pasts)


def _lines(name: str) -> Iterator[str]:
    for line in wordlist(name).read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            yield line.lower()


@cache
def _american_words() -> dict[str, str]:
    """British words of the home and the street, each with what the other English says."""
    british = (own for own in country_words() if own.english is English.BRITISH)
    return {own.word: own.others[0] for own in british} | _FAMILY


def _stems(word: str) -> Iterator[str]:
    """The word, and each one that it may be a form of."""
    yield word
    contraction = _CONTRACTION.fullmatch(word)
    if contraction:
        yield from _stems(contraction["stem"])
    bare = word.rstrip("'")
    for ending in _ENDINGS:
        stem = bare.removesuffix(ending)
        if stem != bare and len(stem) >= _SHORTEST_STEM:
            yield from (stem, f"{stem}e")
            if stem[-1] == stem[-2]:
                yield stem[:-1]
            if stem.endswith("i"):
                yield f"{stem[:-1]}y"
