"""Print how many broken feet and rhymes are found, planted one at a time, and how many good lines are doubted.

    python -m tests.bench.planted_verse [misses] [alarms] [poems]

The poems are those of ``nursery-verse.txt``, regular or not, each a book of its own with a stanza a
page. In every line, where it can be done, one slip of each kind is planted: a foot too few, a foot too
many, a word stressed on the other syllable, a last word that does not rhyme. A slip is found if a row
that was not there before points at its line (of a rhyme: at either line). ``misses`` and ``alarms``
print them; ``poems`` prints the metre found for each poem.
"""

from __future__ import annotations

import random
import re
import sys
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.verse import line_stumbles, refrain_differs, rhyme_fails
from proofkit.issue import Issue
from proofkit.reading.syllables import syllables
from proofkit.reading.verse.find import verse_of
from proofkit.reading.verse.poem import RhymeKind, Verse
from proofkit.reading.verse.rhyme import rhyme
from proofkit.reading.verse.stumbles import FEWEST_LINES
from proofkit.settings import English, Settings
from proofkit.words.pronunciations import pronunciations, stress
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of

POEMS = Path(__file__).parent / "nursery-verse.txt"
CHECKS = (line_stumbles, rhyme_fails, refrain_differs)
ENGLISH = English.BRITISH
SEED = 7
_WORD = re.compile(r"[^\W\d_]+(?:['’][^\W\d_]+)*")

FOOT_OF_TWO = ("very", "pretty", "silver", "merry", "little", "busy")
FOOT_OF_THREE = ("wonderful", "beautiful", "tumbledown", "and merrily", "and happily")
RISING = ("alone", "afraid", "today", "balloon", "giraffe", "surprised", "around", "below", "again")
FALLING = ("kitten", "happy", "yellow", "window", "apple", "hungry", "rabbit", "butter", "pocket")
LAST_WORDS = (
    "cup", "leg", "dog", "hat", "ship", "lamp", "fish", "bird", "stone", "wheel", "lunch", "milk", "drum", "nest",
    "cart", "spoon", "cloud", "moth", "field", "porch", "kitten", "pocket", "window", "apple", "yellow", "rabbit",
    "garden", "picture", "balloon", "giraffe", "afraid", "today", "surprise", "wonderful", "elephant", "anything",
)  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Poem:
    """A poem: its title and its stanzas, each of lines."""

    title: str
    stanzas: tuple[tuple[str, ...], ...]

    def with_line(self, stanza: int, line: int, text: str) -> Poem:
        """The poem with one line replaced."""
        rows = [list(own) for own in self.stanzas]
        rows[stanza][line] = text
        return Poem(title=self.title, stanzas=tuple(map(tuple, rows)))

    def book(self) -> Book:
        """A book of a stanza a page."""
        return book_of(*("\n".join(stanza) for stanza in self.stanzas))


@dataclass(frozen=True, slots=True, kw_only=True)
class Plant:
    """A poem with one slip; ``lines`` are the places (stanza, line) where a row may point."""

    kind: str
    poem: Poem
    lines: tuple[tuple[int, int], ...]
    text: str


def poems() -> tuple[Poem, ...]:
    """All poems of the file."""
    parts = re.split(r"(?m)^## (.+)$", POEMS.read_text(encoding="utf-8"))[1:]
    return tuple(
        Poem(title=title, stanzas=tuple(tuple(s.split("\n")) for s in text.strip().split("\n\n")))
        for title, text in zip(parts[::2], parts[1::2], strict=True)
    )


def rows(book: Book) -> list[Issue]:
    """What the checks of verse say of a book."""
    analysis = Analysis(english=ENGLISH, vocabulary=vocabulary_of(book))
    return [issue for check in CHECKS for issue in check.find(book, analysis, Settings())]


def places(book: Book) -> set[tuple[int, int, str]]:
    """The stanza and line of each row, from 0, and what it says."""
    return {(issue.span.page - 1, _line_of(book, issue), issue.message) for issue in rows(book)}


def _line_of(book: Book, issue: Issue) -> int:
    return book.page(issue.span.page).text.count("\n", 0, issue.span.start)


def plants(poem: Poem, foot: int, dice: random.Random) -> Iterator[Plant]:
    """Every slip that can be planted in a poem whose feet have so many syllables."""
    makers: dict[str, Callable[[str], str | None]] = {
        "a foot too few": lambda line: shortened(line, foot, dice),
        "a foot too many": lambda line: lengthened(line, foot, dice),
        "a stress on the wrong syllable": lambda line: misplaced(line, dice),
    }
    for s, stanza in enumerate(poem.stanzas):
        for n, line in enumerate(stanza):
            for kind, make in makers.items():
                text = make(line)
                if text:
                    changed = poem.with_line(s, n, text)
                    yield Plant(kind=kind, poem=changed, lines=((s, n),), text=text)
            yield from _rhyme_plant(poem, s, n, dice)


def _rhyme_plant(poem: Poem, s: int, n: int, dice: random.Random) -> Iterator[Plant]:
    stanza = poem.stanzas[s]
    mates = [
        other
        for other in range(max(0, n - 3), min(len(stanza), n + 4))
        if other != n and rhyme(last(stanza[n]), last(stanza[other]), ENGLISH) is RhymeKind.PERFECT
    ]
    text = unrhymed(stanza, n, dice) if mates else None
    if text:
        lines = tuple((s, other) for other in (n, *mates))
        yield Plant(
            kind="a rhyme that fails", poem=poem.with_line(s, n, text), lines=lines, text=text
        )


def shortened(line: str, foot: int, dice: random.Random) -> str | None:
    """The line without a run of words of so many syllables, the first and the last word kept."""
    words = line.split(" ")
    runs = [
        (start, end)
        for start in range(1, len(words) - 1)
        for end in range(start + 1, len(words))
        if sum(map(syllables, words[start:end])) == foot
    ]
    if not runs:
        return None
    start, end = dice.choice(runs)
    return " ".join((*words[:start], *words[end:]))


def lengthened(line: str, foot: int, dice: random.Random) -> str | None:
    """The line with a foot more before one of its words but the first."""
    words = line.split(" ")
    if len(words) < 2:
        return None
    more = dice.choice(FOOT_OF_TWO if foot == 2 else FOOT_OF_THREE)
    at = dice.randrange(1, len(words))
    return " ".join((*words[:at], more, *words[at:]))


def misplaced(line: str, dice: random.Random) -> str | None:
    """The line with a word of two syllables changed for one with its stress on the other."""
    found = []
    # Not the first word: a line of iambs may begin with a trochee, and no reader minds.
    for match in list(_WORD.finditer(line))[1:-1]:
        ways = {stress(way) for way in pronunciations(match.group(), ENGLISH)}
        if ways == {"10"}:
            found.append((match, RISING))
        elif ways == {"01"}:
            found.append((match, FALLING))
    if not found:
        return None
    match, words = dice.choice(found)
    return line[: match.start()] + dice.choice(words) + line[match.end() :]


def unrhymed(stanza: Sequence[str], n: int, dice: random.Random) -> str | None:
    """The line with its last word changed for one of the same beat that rhymes with none of the stanza."""
    *_, match = _WORD.finditer(stanza[n])
    own = stress(pronunciations(match.group(), ENGLISH)[0])
    others = [last(line) for line in stanza]
    fitting = [
        word
        for word in LAST_WORDS
        if stress(pronunciations(word, ENGLISH)[0]) == own
        and not any(rhyme(word, other, ENGLISH) is RhymeKind.PERFECT for other in others)
    ]
    if not fitting:
        return None
    return stanza[n][: match.start()] + dice.choice(fitting) + stanza[n][match.end() :]


def last(line: str) -> str:
    """The last word of a line."""
    *_, match = _WORD.finditer(line)
    return match.group()


def scanned_lines(verse: Verse | None) -> int:
    """How many lines are scanned."""
    return len(verse.lines) if verse and judged(verse) else 0


def judged(verse: Verse) -> bool:
    """Whether its lines are held against a metre."""
    return verse.metre is not None and len(verse.lines) >= FEWEST_LINES


def main(parts: Sequence[str]) -> None:
    """Print the figures."""
    dice = random.Random(SEED)  # noqa: S311 - the same slips each time
    tried, found = Counter[str](), Counter[str]()
    tried_scanned, found_scanned = Counter[str](), Counter[str]()
    lines = alarms = scanned = stanzas = 0
    for poem in poems():
        book = poem.book()
        verse = verse_of(book, ENGLISH)
        before = places(book)
        size = sum(map(len, poem.stanzas))
        lines, alarms, stanzas = lines + size, alarms + len(rows(book)), stanzas + len(poem.stanzas)
        scanned += scanned_lines(verse)
        if "poems" in parts:
            print(
                f"{verse.metre.name if verse and verse.metre else '—':45} {verse.scheme if verse else '':10} {poem.title}"
            )
        if "alarms" in parts:
            for issue in rows(book):
                line = book.page(issue.span.page).text.splitlines()
                at = book.page(issue.span.page).text.count("\n", 0, issue.span.start)
                print(f"ALARM {issue.check} “{line[at]}” {issue.message}")
        foot = verse.metre.foot.syllables if verse and verse.metre else 2
        for plant in plants(poem, foot, dice):
            hit = any(row[:2] in plant.lines for row in places(plant.poem.book()) - before)
            tried[plant.kind] += 1
            found[plant.kind] += hit
            if verse and (
                judged(verse)
                if plant.kind != "a rhyme that fails"
                else len(verse.lines) >= FEWEST_LINES and verse.scheme
            ):
                tried_scanned[plant.kind] += 1
                found_scanned[plant.kind] += hit
            if not hit and "misses" in parts:
                print(
                    f"MISS {plant.kind}: “{plant.text}” {poem.title} {'' if verse and judged(verse) else '(not scanned)'}"
                )
    print(
        f"{len(poems())} poems, {stanzas} stanzas, {lines} lines; {scanned} lines scanned ({scanned / lines:.0%})"
    )
    print(f"false rows: {alarms}, {100 * alarms / lines:.2f} on 100 good lines")
    print(f"{'':34}{'all':>16}{'where scanned or schemed':>28}")
    for kind in tried:
        print(
            f"{kind:34}{_share(found[kind], tried[kind])}{_share(found_scanned[kind], tried_scanned[kind]):>28}"
        )
    print(
        f"{'together':34}{_share(found.total(), tried.total())}{_share(found_scanned.total(), tried_scanned.total()):>28}"
    )


def _share(part: int, whole: int) -> str:
    return f"{part:>5}/{whole:<5}{part / whole if whole else 0:>5.0%}"


if __name__ == "__main__":
    main(sys.argv[1:])
