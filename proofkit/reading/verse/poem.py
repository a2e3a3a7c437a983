"""What is known of a book's verse, as plain values.

Terms, as in any handbook of prosody (P. Fussell, Poetic Meter and Poetic Form, 1979): a *beat* is the
stressed syllable of a foot, "/"; the others are *off*, "x". A line is *catalectic* where its last
foot lacks its unstressed end.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from proofkit.book import Span


class Foot(StrEnum):
    """The five feet that English children's verse is made of."""

    IAMBIC = "iambic"  # x/
    TROCHAIC = "trochaic"  # /x
    ANAPAESTIC = "anapaestic"  # xx/
    DACTYLIC = "dactylic"  # /xx
    AMPHIBRACHIC = "amphibrachic"  # x/x

    @property
    def syllables(self) -> int:
        """Two or three."""
        return 2 if self in (Foot.IAMBIC, Foot.TROCHAIC) else 3


class RhymeKind(StrEnum):
    """How two line ends sound together."""

    PERFECT = "perfect"  # bright, night
    IDENTICAL = "identical"  # the same sounds: sea, see; or the same word again
    NEAR = "near"  # time, mine; tree, merrily
    EYE = "eye"  # love, move
    NONE = "none"


class StumbleKind(StrEnum):
    """What makes the reader stumble."""

    SHORT = "short"  # a beat or more is missing
    LONG = "long"  # a beat or more too many
    STRESS = "stress"  # a word would have to be stressed on the wrong syllable
    CROWDED = "crowded"  # the beats are there, with too many syllables between them, or none


@dataclass(frozen=True, slots=True, kw_only=True)
class Stumble:
    """Where a line leaves the metre of its poem.

    ``span``      the word for STRESS, else the line
    ``beats``     how many beats the line has when it is read naturally
    ``expected``  how many its neighbours lead the reader to expect
    ``surprise``  how much worse the line fits than its neighbours do, 1.2 or more
    """

    kind: StumbleKind
    span: Span
    beats: int
    expected: int
    surprise: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One line of verse.

    ``syllables``  as read in the poem's metre (elisions made), else as the dictionary counts them
    ``stresses``   one "/" or "x" a syllable, as read in the metre; "" where the poem has none
    ``letter``     its letter in the stanza's scheme
    """

    span: Span
    text: str
    syllables: int
    stresses: str = ""
    letter: str = ""
    stumble: Stumble | None = None

    @property
    def beats(self) -> int:
        """How many beats it has as read in the metre."""
        return self.stresses.count("/")


@dataclass(frozen=True, slots=True, kw_only=True)
class Pair:
    """Two lines of a stanza, by their places from 0, that the scheme lets rhyme."""

    first: int
    second: int
    kind: RhymeKind


@dataclass(frozen=True, slots=True, kw_only=True)
class Stanza:
    """A stanza: ``page`` is where it begins, ``scheme`` its own rhymes ("AABB", "ABCB")."""

    page: int
    lines: tuple[Line, ...]
    scheme: str
    pairs: tuple[Pair, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Metre:
    """The metre that fits a whole poem best.

    ``beats``       of each line of a stanza, in turn, over and over: (4,) or (4, 3) or (3, 3, 2, 2, 3)
    ``catalectic``  whether most lines lack the unstressed end of their last foot (trochaic, dactylic)
    ``loose``       whether feet of two and of three syllables mix freely
    """

    foot: Foot
    beats: tuple[int, ...]
    catalectic: bool = False
    loose: bool = False

    @property
    def name(self) -> str:
        """In the usual words: "trochaic tetrameter catalectic", "iambic, 4 and 3 beats in turn"."""
        if len(self.beats) == 1:
            name = f"{self.foot} {_MEASURES[self.beats[0]]}"
        elif len(self.beats) == 2:
            name = f"{self.foot}, {self.beats[0]} and {self.beats[1]} beats in turn"
        else:
            name = f"{self.foot}, {'-'.join(map(str, self.beats))} beats"
        return f"{name} catalectic" if self.catalectic else name


_MEASURES = (
    "", "monometer", "dimeter", "trimeter", "tetrameter", "pentameter", "hexameter", "heptameter",
    "octameter",
)  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class FailedRhyme:
    """A line that should rhyme with an earlier one by the poem's scheme, and does not.

    ``span`` and ``word`` are the later line's last word, ``partner_span`` and ``partner`` the earlier's.
    """

    span: Span
    word: str
    partner_span: Span
    partner: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OddRefrain:
    """A line that stands elsewhere with one word different.

    ``span``    the odd line; ``word`` what differs in it, "" where a word is missing
    ``usual``   the line as it stands elsewhere; ``places`` where, in order
    ``instead`` what the usual line has in the word's place, "" where the odd line has a word too many
    """

    span: Span
    word: str
    usual: str
    instead: str
    places: tuple[Span, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Verse:
    """All verse of a book.

    ``metre``   None where no metre is clear (then no line is said to stumble), or where a story has
                several songs, each in its own
    ``scheme``  the rhyme scheme that most stanzas have, or ""
    ``whole``   whether the whole story is verse, and not songs in a story
    """

    stanzas: tuple[Stanza, ...]
    metre: Metre | None
    scheme: str
    whole: bool
    failed_rhymes: tuple[FailedRhyme, ...] = ()
    odd_refrains: tuple[OddRefrain, ...] = ()

    @property
    def lines(self) -> tuple[Line, ...]:
        """All lines, in the book's order."""
        return tuple(line for stanza in self.stanzas for line in stanza.lines)

    @property
    def stumbles(self) -> tuple[Line, ...]:
        """The lines that stumble."""
        return tuple(line for line in self.lines if line.stumble)
