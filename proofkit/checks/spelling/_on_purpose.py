"""Unknown words that an author means: sounds, dialect, other languages, play with words."""

from __future__ import annotations

import re

from rapidfuzz.distance import OSA

from proofkit.book import Book, Span
from proofkit.checks.spelling._run_together import parts
from proofkit.checks.spelling._voice import Voice, is_dialect, voice_at
from proofkit.words.dictionary import Dictionary, familiar
from proofkit.words.frequency import zipf
from proofkit.words.suggest import Candidate, candidates
from proofkit.words.vocabulary import WORD, Vocabulary

# A stop can't be drawn out within a word: wigggled.
_ELONGATED = re.compile(r"(?!([bcdgkpqt])\1\1\w)(\w)\2\2", re.IGNORECASE)
_REPEATED = re.compile(r"(\w{2,})\1")
_VOWEL = re.compile(r"[aeiouy]", re.IGNORECASE)
_APOSTROPHES = "'’‘"
_BREAKS_OFF = ("—", "–", "…", "--", "..")
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
# What goes before a word or after it, the least letters of the word, and how the word itself ends.
_FAMILIES: tuple[tuple[str, str, int, tuple[str, ...]], ...] = (
    ("un", "", 4, ("",)),
    ("un", "ly", 4, ("", "le")),
    ("", "edly", 3, ("ed",)),
    ("", "ingly", 3, ("ing",)),
    ("", "ings", 3, ("ing",)),
    ("", "ress", 4, ("or", "er", "our")),
    ("", "ess", 4, ("",)),
    ("", "ful", 3, ("",)),
    ("", "fuls", 3, ("",)),
    ("", "ee", 4, ("", "e")),
    ("", "et", 5, ("",)),
    ("", "ets", 5, ("",)),
)
_ENDINGS = ("s", "es", "ed", "er", "ers", "est", "eth", "nesses")
_LOAN_END = re.compile(r"[aiou]$")
_END = re.compile(r"[aiou]$")
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
_SMALL = 2
_MANY = 5
_LONG = 7
_VOWEL_COST = 0.65


def is_sound(word: str) -> bool:
    """Whether the word is drawn out or beaten twice: brrr, eeeh, chacha."""
    return _ELONGATED.search(word) is not None or _REPEATED.fullmatch(word.lower()) is not None


def has_no_vowel(word: str) -> bool:
    """Whether nobody can say the word: a sound (pst), or a slip (drk)."""
    return not _VOWEL.search(word)


def is_playful(word: str, meant: Candidate, known: Dictionary) -> bool:
    """Whether the word is openly made from English ones: goosegirl, puddlish, moonboat. Not listend."""
    for end in _PLAYFUL_ENDS:
        stem = word.removesuffix(end)
        if stem != word and len(stem) > 2 and _is_base(stem, known):
            return True
    if len(word) >= _LONG and meant.cost <= _VOWEL_COST and zipf(meant.word) >= _FREQUENT:
        return False
    return any(
        _is_part(word[:at], known) and _is_part(word[at:], known)
        for at in range(3, len(word) - 2)
    )  # fmt: skip


def is_derived(word: str, known: Dictionary) -> bool:
    """Whether it belongs to a family of English words: unlicked, startledly, instructress, handfuls."""
    for start, end, longest, bases in _FAMILIES:
        stem = word.removeprefix(start).removesuffix(end)
        if len(start + stem + end) != len(word) or len(stem) < longest or stem == word:
            continue
        if any(stem + base in known.words and zipf(stem + base) >= 2 for base in bases):
            return True
    return False


def is_loan(word: str, meant: str) -> bool:
    """Whether the word ends as English words seldom do and as the meant one doesn't: posho, matoke."""
    return _LOAN_END.search(word) is not None and word[-1] != meant[-1]


def is_set_apart(text: str, start: int, end: int, *, plain: bool = False) -> bool:
    """Whether the text shows that the word is meant: in marks of its own, clipped, introduced, broken off.

    A ``plain`` slip is neither introduced nor broken off: "He says thier house is green."
    """
    before, after = text[max(0, start - 40) : start], text[end : end + 2]
    if before[-1:] and before[-1] in _MARKS and after[:1] and after[0] in _MARKS:
        return True
    if before[-1:] and before[-1] in _APOSTROPHES and not before[-2:-1].isalnum():
        return True
    clipped = (
        after[:1] and after[0] in _APOSTROPHES and text[start:end].endswith(("in", "o", "an", "th"))
    )
    hyphened = before[-1:] == "-" or after[:1] == "-"
    if clipped or hyphened:
        return True
    return not plain and (_INTRODUCED.search(before) is not None or after.startswith(_BREAKS_OFF))


def is_among_strangers(
    book: Book, span: Span, vocabulary: Vocabulary, known: Dictionary, *, plain: bool = False
) -> bool:
    """Whether what is said around it has another word the dictionary lacks, or hardly a word at all.

    That is a song or a saying in another language, somebody's way of speaking, or a sound ("Splosh!");
    and a word beside one that it resembles is word play ("flibber, flobber"). In speech all the words of
    the paragraph that are spoken tell, elsewhere those of the sentence. Among many English words one
    other, such as a dish, doesn't excuse a ``plain`` slip.
    """
    voice = voice_at(book, span)
    if is_dialect(voice):
        return True
    text, at = voice.text, voice.at
    left = [m.end() for m in _END.finditer(text, 0, at)]
    right = _END.search(text, voice.end)
    start, end = left[-1] if left else 0, right.start() if right else len(text)
    sentence = [m for m in WORD.finditer(text, start, end) if m.start() != at]
    here = sum(1 for match in sentence if match.start() < at)
    beside = sentence[max(0, here - 2) : here + 2]
    if not sentence:
        return True
    if not plain and any(_plays_with(text[at : voice.end], m.group()) for m in beside):
        return True
    strangers = [m for m in sentence if _is_stranger(m.group(), known)]
    if strangers and not (plain and len(strangers) * _MANY < len(sentence)):
        return True
    return voice.spoken and not plain and _speaks_strangely(voice, vocabulary, known)


def _speaks_strangely(voice: Voice, vocabulary: Vocabulary, known: Dictionary) -> bool:
    return any(
        _is_stranger(m.group(), known) or _opens_strangely(m.group(), vocabulary, known)
        for m in WORD.finditer(voice.text)
        if m.start() != voice.at
    )


def _plays_with(word: str, other: str) -> bool:
    """Whether two neighbours look made for each other: flibber, flobber. Not "teh then"."""
    word, other = word.lower(), other.lower()
    alike = other != word and len(other) > 3 and OSA.distance(word, other) <= 2
    return alike and zipf(other) < _COMMON


def _is_stranger(word: str, known: Dictionary) -> bool:
    """Whether a word is neither English nor, very likely, a slip for English. A name is no stranger."""
    if word[0].isupper() or known.knows(word) or known.knows_elsewhere(word):
        return False
    if len(word) <= _SMALL:
        return True
    likely = candidates(word, known)[:1]
    slip = any(c.cost <= _LIKELY_SLIP and _is_usual(c.word) for c in likely)
    return not slip and parts(word, known) is None


def _is_usual(word: str) -> bool:
    return zipf(word) >= _FREQUENT or word in familiar()


def _opens_strangely(word: str, vocabulary: Vocabulary, known: Dictionary) -> bool:
    """Whether a capital word is a stranger that opens a sentence (Nunca, Vot) and no name of the book."""
    use = vocabulary.use(word)
    once = use is not None and use.count == 1 and not use.capitals_inside
    return word.istitle() and once and not known.knows(word) and _is_stranger(word.lower(), known)


def is_inflected(word: str, known: Dictionary) -> bool:
    """Whether it is a child's grammar, or a form too rare for dictionaries: hurted, lonesomer, daisied."""
    return any(_has_ending(word, end, known) for end in _ENDINGS)


def _has_ending(word: str, end: str, known: Dictionary) -> bool:
    stem = word.removesuffix(end)
    if stem == word or len(stem) < 3 or (stem[-1] == "y" and stem[-2] not in "aeiou"):
        return False
    bases = (
        stem,
        stem + "e" if end[0] == "e" else stem,
        stem[:-1] + "y" if stem[-1] == "i" else stem,
    )
    return any(base in known.words and zipf(base) >= (2 if end == "s" else 2.5) for base in bases)


def _is_base(stem: str, known: Dictionary) -> bool:
    return any(
        base in known.words and zipf(base) >= 2.5
        for base in (stem, stem + "e", stem[:-1] if stem[-1] == stem[-2] else stem)
    )


def _is_part(part: str, known: Dictionary) -> bool:
    return part in known.words and 3.5 <= zipf(part) <= _CONTENT_WORD
