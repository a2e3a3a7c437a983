"""Print how many broken feet and rhymes are found, planted one at a time, and how many good lines are doubted.

    python -m tests.bench.planted_verse [misses] [alarms] [poems]

The poems are those of ``nursery-verse.txt``, which the prices were set on, and of
``nursery-verse-unseen.txt``, which they were not fitted to (but looked at once); regular or not, each a book of its own with a stanza a
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
from dataclasses import dataclass, field
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

HERE = Path(__file__).parent
KNOWN, UNSEEN = HERE / "nursery-verse.txt", HERE / "nursery-verse-unseen.txt"
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


def poems(file: Path = KNOWN) -> tuple[Poem, ...]:
    """All poems of a file."""
    parts = re.split(r"(?m)^## (.+)$", file.read_text(encoding="utf-8"))[1:]
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


@dataclass(slots=True, kw_only=True)
class Tally:
    """What was counted."""

    poems: int = 0
    stanzas: int = 0
    lines: int = 0
    judged: int = 0
    alarms: int = 0
    tried: Counter[tuple[str, bool]] = field(default_factory=Counter)
    found: Counter[tuple[str, bool]] = field(default_factory=Counter)


def measured(file: Path, parts: Sequence[str]) -> Tally:
    """Every slip tried in every poem of a file; ``parts`` says what to print on the way."""
    dice = random.Random(SEED)  # noqa: S311 - the same slips each time
    tally = Tally()
    for poem in poems(file):
        book = poem.book()
        verse = verse_of(book, ENGLISH)
        before = places(book)
        tally.poems += 1
        tally.stanzas += len(poem.stanzas)
        tally.lines += sum(map(len, poem.stanzas))
        tally.judged += scanned_lines(verse)
        tally.alarms += len(rows(book))
        if "poems" in parts:
            metre = verse.metre.name if verse and verse.metre else "—"
            print(f"{metre:45} {verse.scheme if verse else '':10} {poem.title}")
        if "alarms" in parts:
            _print_alarms(book)
        foot = verse.metre.foot.syllables if verse and verse.metre else 2
        for plant in plants(poem, foot, dice):
            hit = any(row[:2] in plant.lines for row in places(plant.poem.book()) - before)
            where = plant.kind, can_be_found(plant.kind, verse)
            tally.tried[where] += 1
            tally.found[where] += hit
            if "misses" in parts and not hit and where[1]:
                print(f"MISS {plant.kind}: “{plant.text}” {poem.title}")
    return tally


def can_be_found(kind: str, verse: Verse | None) -> bool:
    """Whether the poem has what the slip offends against: a clear metre, or a scheme of rhymes."""
    if verse is None:
        return False
    if kind == "a rhyme that fails":
        return bool(verse.scheme) and len(verse.lines) >= FEWEST_LINES
    return judged(verse)


def _print_alarms(book: Book) -> None:
    for issue in rows(book):
        line = book.page(issue.span.page).text.split("\n")[_line_of(book, issue)]
        print(f"ALARM {issue.check} “{line}” {issue.message}")


def main(parts: Sequence[str]) -> None:
    """Print the figures for the verse that the prices were set on, and for verse unseen."""
    for file in (KNOWN, UNSEEN):
        tally = measured(file, parts)
        share = tally.judged / tally.lines
        print(f"\n{file.name}: {tally.poems} poems, {tally.stanzas} stanzas, {tally.lines} lines")
        print(f"held against a metre: {tally.judged} lines ({share:.0%})")
        print(
            f"false rows: {tally.alarms}, {100 * tally.alarms / tally.lines:.2f} on 100 good lines"
        )
        print(f"{'found':34}{'everywhere':>16}{'where metre or scheme is clear':>34}")
        for kind in dict.fromkeys(kind for kind, _ in tally.tried):
            _print_row(kind, tally, (kind,))
        _print_row("together", tally, tuple({kind for kind, _ in tally.tried}))


def _print_row(name: str, tally: Tally, kinds: Sequence[str]) -> None:
    clear = [(kind, True) for kind in kinds]
    everywhere = [*clear, *((kind, False) for kind in kinds)]
    cells = [
        _share(sum(tally.found[key] for key in keys), sum(tally.tried[key] for key in keys))
        for keys in (everywhere, clear)
    ]
    print(f"{name:34}{cells[0]}{cells[1]:>34}")


def _share(part: int, whole: int) -> str:
    return f"{part:>5}/{whole:<5}{part / whole if whole else 0:>5.0%}"


if __name__ == "__main__":
    main(sys.argv[1:])
