"""A line of verse as syllables, each with what stress it can bear.

Every word has one reading or more: its pronunciations, and its elisions (murm'ring, th'Assyrian), which
cost the reader something. Monosyllables are free: CMUdict marks nearly all of them as stressed, and in
a line they are as the metre has them; but *the* and *a* are seldom a beat, and a noun is rarely off.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from proofkit.settings import English
from proofkit.words.lists import word_set
from proofkit.words.pronunciations import Sounds, is_vowel, spoken_as, stress

WORD = re.compile(r"['’‘]?[^\W\d_]+(?:['’][^\W\d_]+)*['’]?")
_PAUSE = re.compile(r"[,.;:!?—–…]|--")

# What a syllable is: which it may be, a beat or off.
# Of the two syllables of a small word (before, after), the stressed one may well be off: DEMOTED.
PRIMARY, DEMOTED, SECONDARY, WEAK, FREE, SMALL, ARTICLE, GUESSED, EITHER = "PDSWFfaGE"

_ARTICLES = word_set("a an the th'")
_SMALL = word_set("""
and of to in on at for from with by as but or nor if than that is am are was were be been being has had
have do does did will would shall should can could may might must i you he she it we they me him her us
them my your his its our their this these those some so there when what who whom whose how where which
i'm i'll i'd i've you're you'll he's he'll she's she'll it's it'll we're we'll we've they're they'll
that's there's what's who's o'er upon than then just like 'twas 'tis 'twill 'em thy thee thou ye into
one all such while ere till
""")
_MOVABLE = word_set("""
into unto onto upon within without inside outside something anything maybe sometimes himself herself
itself myself yourself themselves
""")
_TWO_SYLLABLES = word_set("""
about above across after against along among amongst around because before behind below beneath beside
between beyond despite during except over toward towards under until without away very every any many only
never ever even also either neither other another little father mother mister uncle
muttered whispered answered grumbled mumbled murmured shouted chuckled giggled added whistled
""")
_ELISION = 0.35


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One way of reading a word: its syllables, one letter each, and what it costs the reader."""

    syllables: str
    cost: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Word:
    """A word of a line: ``start`` and ``end`` count in the line; ``pause``: a mark stands before it."""

    text: str
    start: int
    end: int
    readings: tuple[Reading, ...]
    pause: bool = False


def words_of(line: str, english: English) -> tuple[Word, ...]:
    """The words of a line with all their readings; words without letters are left out."""
    words = []
    end = 0
    matches = list(WORD.finditer(line))
    for at, match in enumerate(matches):
        text = match.group()
        after = matches[at + 1].group() if at + 1 < len(matches) else ""
        readings = readings_of(text.lower().replace("’", "'"), english)
        if _runs_into(text, after):
            readings = (*readings, *_shorter(readings))
        pause = bool(_PAUSE.search(line[end : match.start()]))
        end = match.end()
        words.append(Word(text=text, start=match.start(), end=end, readings=readings, pause=pause))
    return tuple(words)


def _runs_into(text: str, after: str) -> bool:
    """Th'Assyrian, many a: a weak vowel at the end before another."""
    begins = after[:1].lower() in ("a", "e", "i", "o", "u")
    return begins and bool(re.fullmatch(r"the|to|\w{2,}y", text.lower())) and text.lower() != "they"


def _shorter(readings: tuple[Reading, ...]) -> tuple[Reading, ...]:
    return tuple(
        Reading(syllables=reading.syllables[:-1], cost=reading.cost + _ELISION)
        for reading in readings
        if reading.syllables[-1:] in (ARTICLE, SMALL, WEAK)
    )


@lru_cache(maxsize=20_000)
def readings_of(word: str, english: English) -> tuple[Reading, ...]:
    """The ways of reading a word in lower case; the first costs nothing."""
    spoken = spoken_as(word, english)
    found: dict[str, float] = {}
    for sounds in spoken.ways:
        for elided, cost in ((sounds, 0.0), *((one, _ELISION) for one in _elisions(sounds))):
            syllables = _syllables(word, elided, guessed=spoken.guessed)
            found[syllables] = min(cost, found.get(syllables, cost))
    readings = (Reading(syllables=way, cost=cost) for way, cost in found.items())
    return tuple(readings) or (Reading(syllables=FREE),)


def _syllables(word: str, sounds: Sounds, *, guessed: bool) -> str:
    digits = stress(sounds)
    if len(digits) < 2:
        kind = ARTICLE if word in _ARTICLES else SMALL if word in _SMALL else FREE
        return kind if digits or not word.endswith("'") else ""
    if guessed:
        return GUESSED * len(digits)
    if word in _MOVABLE:
        return EITHER * len(digits)
    several = digits.count("1") > 1
    main = EITHER if several else DEMOTED if word in _TWO_SYLLABLES else PRIMARY
    if digits.endswith("102"):
        main = DEMOTED  # the stress of kangaroo, afternoon, Galilee moves to where it is wanted
    kinds = {"0": WEAK, "1": main, "2": SECONDARY}
    return "".join(kinds[digit] for digit in digits)


def _elisions(sounds: Sounds) -> list[Sounds]:
    """The word with one weak vowel left out, wherever poets leave it out."""
    ways = []
    for at, sound in enumerate(sounds):
        if at and is_vowel(sound) and sound[-1] == "0" and _may_go(sounds, at):
            ways.append((*sounds[:at], *sounds[at + 1 :]))
    return ways


def _may_go(sounds: Sounds, at: int) -> bool:
    """After a vowel (flower, being); before one (Assyrian); before r, l or n and a weak vowel (wandering)."""
    before, after = sounds[at - 1], sounds[at + 1 : at + 3]
    if is_vowel(before) or (after and is_vowel(after[0])):
        return True
    opens = (
        len(after) == 2
        and after[0] in ("R", "L", "N")
        and is_vowel(after[1])
        and after[1][-1] == "0"
    )
    return opens and any(is_vowel(sound) for sound in sounds[:at])
