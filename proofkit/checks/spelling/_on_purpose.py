"""Unknown words that an author means: sounds, dialect, other languages, play with words."""

from __future__ import annotations

import re

from rapidfuzz.distance import OSA

from proofkit.checks.spelling._run_together import parts
from proofkit.words.dictionary import Dictionary
from proofkit.words.frequency import zipf
from proofkit.words.suggest import candidates
from proofkit.words.vocabulary import WORD

_ELONGATED = re.compile(r"(\w)\1\1", re.IGNORECASE)
_REPEATED = re.compile(r"(\w{2,})\1")
_VOWEL = re.compile(r"[aeiouy]", re.IGNORECASE)
_APOSTROPHES = "'’‘"
_MARKS = "\"“”'‘’*_«»"
# "a game called tippy", "the word splosh": the word is introduced to the reader.
_INTRODUCED = re.compile(
    r"\b(?:called|named|word|words|say|says|means|dubbed)\W*(?:an?\s+|the\s+)?\W*$"
)
_PLAYFUL_ENDS = (
    "ish",
    "like",
    "less",
    "ness",
    "some",
    "let",
    "kin",
    "kins",
    "wards",
    "ward",
    "y",
    "ie",
)
_ENDINGS = ("s", "es", "ed", "er", "est")
_LOAN_END = re.compile(r"[aiou]$")
_DIALECT = re.compile(
    r"(?:^|[\s\"“‘—-])['’](?:em|im|er|is|ere|ad|ave|e|ow|ome|is|ead|bout|cause|tis|twas)\b"
    r"|\b(?:an|o|th|wi|ol|t)['’](?=\s)|\w{2}in['’](?=\s)|\b(?:ain['’]t|thou|thee|thy|thine|ye|yer|yez|ter"
    r"|meself|hisself|oi|ee|dis|dat|dey|de|git|wot|allus|ez|aye|och|nae|wee)\b",
    re.IGNORECASE,
)
_END = re.compile(r"[.!?…\n]")
_CONTENT_WORD = 5.9
_COMMON = 4.5
_LIKELY_SLIP = 0.75
_FREQUENT = 4.0


def is_sound(word: str) -> bool:
    """Whether the word is drawn out, beaten twice or without vowel: brrr, eeeh, chacha."""
    return (
        _ELONGATED.search(word) is not None
        or _REPEATED.fullmatch(word.lower()) is not None
        or not _VOWEL.search(word)
    )


def is_playful(word: str, known: Dictionary) -> bool:
    """Whether the word is openly made from English ones: goosegirl, puddlish, moonboat."""
    for end in _PLAYFUL_ENDS:
        stem = word.removesuffix(end)
        if stem != word and len(stem) > 2 and _is_base(stem, known):
            return True
    return any(
        _is_part(word[:at], known) and _is_part(word[at:], known)
        for at in range(3, len(word) - 2)
    )  # fmt: skip


def is_loan(word: str, meant: str) -> bool:
    """Whether the word ends as English words seldom do and as the meant one doesn't: posho, matoke."""
    return _LOAN_END.search(word) is not None and word[-1] != meant[-1]


def is_set_apart(text: str, start: int, end: int) -> bool:
    """Whether the text shows that the word is meant: in marks of its own, introduced, clipped."""
    before, after = text[max(0, start - 40) : start], text[end : end + 2]
    if before[-1:] and before[-1] in _MARKS and after[:1] and after[0] in _MARKS:
        return True
    if before[-1:] and before[-1] in _APOSTROPHES and not before[-2:-1].isalnum():
        return True
    clipped = (
        after[:1] and after[0] in _APOSTROPHES and text[start:end].endswith(("in", "o", "an", "th"))
    )
    hyphened = before[-1:] == "-" or after[:1] == "-"
    return bool(clipped) or hyphened or _INTRODUCED.search(before) is not None


def is_among_strangers(text: str, start: int, end: int, known: Dictionary) -> bool:
    """Whether its sentence has another word the dictionary lacks, or hardly a word beside it.

    That is a song or a saying in another language, or a sound ("Splosh!"); a word beside one that it
    resembles is word play ("flibber, flobber"); and beside 'em, ain't and thou it is somebody's way
    of speaking.
    """
    left = [m.end() for m in _END.finditer(text, 0, start)]
    right = _END.search(text, end)
    sentence_start = left[-1] if left else 0
    sentence_end = right.start() if right else len(text)
    word = text[start:end].lower()
    if _DIALECT.search(text, sentence_start, sentence_end):
        return True
    matches = list(WORD.finditer(text, sentence_start, sentence_end))
    others = [match.group() for match in matches if match.start() != start]
    here = sum(1 for match in matches if match.start() < start)
    beside = others[max(0, here - 2) : here + 2]
    return (
        not others
        or any(_plays_with(word, other.lower()) for other in beside)
        or any(_is_stranger(other, known) for other in others)
    )


def _plays_with(word: str, other: str) -> bool:
    """Whether two neighbours look made for each other: flibber, flobber. Not "teh then"."""
    alike = other != word and len(other) > 3 and OSA.distance(word, other) <= 2
    return alike and zipf(other) < _COMMON


def _is_stranger(word: str, known: Dictionary) -> bool:
    """Whether a word is neither English nor, very likely, a slip for English."""
    if word[0].isupper() or known.knows(word) or known.knows_elsewhere(word):
        return False
    likely = candidates(word, known)[:1]
    slip = any(c.cost <= _LIKELY_SLIP and zipf(c.word) >= _FREQUENT for c in likely)
    return not slip and parts(word, known) is None


def is_inflected(word: str, known: Dictionary) -> bool:
    """Whether it is a child's grammar, or a form too rare for dictionaries: hurted, horridest."""
    return any(_has_ending(word, end, known) for end in _ENDINGS)


def _has_ending(word: str, end: str, known: Dictionary) -> bool:
    stem = word.removesuffix(end)
    if stem == word or len(stem) < 3 or (stem[-1] == "y" and stem[-2] not in "aeiou"):
        return False
    return stem in known.words and zipf(stem) >= (2 if end == "s" else 2.5)


def _is_base(stem: str, known: Dictionary) -> bool:
    return any(
        base in known.words and zipf(base) >= 2.5
        for base in (stem, stem + "e", stem[:-1] if stem[-1] == stem[-2] else stem)
    )


def _is_part(part: str, known: Dictionary) -> bool:
    return part in known.words and 3.5 <= zipf(part) <= _CONTENT_WORD
