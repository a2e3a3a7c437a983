"""The dictionary: which words British and American English have.

The words come from SCOWL, size 70 (``wordlists/make_dictionary.py`` tells which and why). A word is
known as it stands in running text: with a capital, a possessive, a contraction, joined by hyphens.
"""

from __future__ import annotations

import gzip
import re
import unicodedata
from dataclasses import dataclass, field
from functools import lru_cache

from proofkit.settings import English
from proofkit.words.data import wordlist

_APOSTROPHES = str.maketrans({"’": "'", "‘": "'", "ʼ": "'", "‑": "-", "\u00ad": None})
# What may follow any noun or pronoun: Goose's, Goose'll, who'd, they've, we're.
_CLITICS = ("'s", "'ll", "'d", "'ve", "'re", "'")
_ORDINAL = re.compile(r"\d+(?:st|nd|rd|th|s)?")


# Two dictionaries are never compared word by word: a dictionary is its own key.
@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Dictionary:
    """The words of one English.

    ``words``          in lower case, with contractions
    ``elsewhere``      words of the other English, and spellings that dictionaries call less usual
    ``names``          words that take a capital: names, nationalities, months, feast days
    ``abbreviations``  written just so
    ``capitals``       for every name in lower case, the way it is written
    """

    words: frozenset[str]
    elsewhere: frozenset[str]
    names: frozenset[str]
    abbreviations: frozenset[str]
    capitals: dict[str, str] = field(repr=False)

    def knows(self, word: str) -> bool:
        """Whether the word, as it stands in a text, is an English word or name.

        Accents that English may write or leave off don't matter: café, naïve.
        """
        plain = word.translate(_APOSTROPHES)
        return self._knows(plain, self.words) or (
            not plain.isascii() and self._knows(_without_accents(plain), self.words)
        )

    def knows_elsewhere(self, word: str) -> bool:
        """Whether only the other English has the word, or it is a less usual spelling."""
        plain = word.translate(_APOSTROPHES)
        return not self._knows(plain, self.words) and self._knows(plain, self.words, self.elsewhere)

    def is_name(self, word: str) -> bool:
        """Whether the word has a capital and is one that takes it: Africa, African, Jonah's."""
        plain = _stem(word.translate(_APOSTROPHES))
        return plain in self.names or (
            plain[:1].isupper() and plain.isupper() and plain.lower() in self.capitals
        )

    def as_name(self, word: str) -> str | None:
        """How a lower-case word that exists only as a name is written: monday gives Monday."""
        plain = word.translate(_APOSTROPHES)
        if plain in self.words or plain in self.elsewhere:
            return None
        return self.capitals.get(plain)

    def _knows(self, word: str, *lists: frozenset[str]) -> bool:
        if self._knows_whole(word, lists):
            return True
        if "-" in word:
            return all(
                not part or len(part) == 1 or self._knows_whole(part, lists)
                for part in word.split("-")
            )
        return False

    def _knows_whole(self, word: str, lists: tuple[frozenset[str], ...]) -> bool:
        lower = word.lower()
        if word in self.abbreviations or self.is_name(word):
            return True
        if word.isupper() and word.capitalize() in self.abbreviations:
            return True
        if any(lower in known for known in lists):
            return True
        stem = _stem(lower)
        if stem != lower and any(stem in known for known in lists):
            return True
        return _ORDINAL.fullmatch(lower) is not None or self._is_plural_name(word)

    def _is_plural_name(self, word: str) -> bool:
        """The Pendleburys, the Joneses; only with their capital."""
        return word[:1].isupper() and (
            (word.endswith("s") and word[:-1] in self.names)
            or (word.endswith("es") and word[:-2] in self.names)
        )


@lru_cache(maxsize=2)
def dictionary(english: English) -> Dictionary:
    """The dictionary of British or American English, read once (40 ms)."""
    blocks = _blocks()
    other = English.AMERICAN if english is English.BRITISH else English.BRITISH
    names = frozenset(blocks["names"])
    return Dictionary(
        words=frozenset(blocks["both"]).union(blocks[english.value]),
        elsewhere=frozenset(blocks[other.value]).union(blocks["unusual"]),
        names=names,
        abbreviations=frozenset(blocks["abbreviations"]),
        capitals={name.lower(): name for name in names},
    )


def dialect() -> frozenset[str]:
    """Words that novels for children have only in speech: leetle, sech, gwine. Not all of dialect."""
    return _of_novels()["dialect"]


def familiar() -> frozenset[str]:
    """Words that stories for children use though English at large seldom does: whiskers, raisins."""
    return _of_novels()["familiar"]


def joined_in_novels() -> frozenset[str]:
    """Rarer words of two that stories write as one, not as two: raindrop."""
    return _of_novels()["joined"]


@lru_cache(maxsize=1)
def _of_novels() -> dict[str, frozenset[str]]:
    blocks = _parted(wordlist("dictionary-novels.txt").read_text("utf-8").rstrip())
    return {kind: frozenset(words) for kind, words in blocks.items() if kind[0].islower()}


def _blocks() -> dict[str, list[str]]:
    return _parted(gzip.decompress(wordlist("dictionary.txt.gz").read_bytes()).decode())


def _parted(text: str) -> dict[str, list[str]]:
    blocks = {}
    for block in ("\n" + text).split("\n# ")[1:]:
        kind, _, words = block.partition("\n")
        blocks[kind] = words.split("\n")
    return blocks


def _without_accents(word: str) -> str:
    parts = unicodedata.normalize("NFKD", word)
    return "".join(letter for letter in parts if not unicodedata.combining(letter))


def _stem(word: str) -> str:
    """The word without a possessive or what is contracted after it."""
    for clitic in _CLITICS:
        if word.endswith(clitic) and len(word) > len(clitic):
            return word[: -len(clitic)]
    return word
