"""A place where the grammar of the sentence lacks a small word.

What it finds
    "When came home, she slept" (who came?), "he very hungry", "once there a jackal", "they began show",
    "she sat the chair": a clause without its subject, its verb, its to, or the word that leads to the
    place. Grammar points at the gap, and the counts of novels for children must say that a word fits
    there far better than none. Dialect and lines of verse are left alone.

Why a reader minds
    A small word is easily lost in typing, and never missed by the one who wrote it; the voice that reads
    aloud stumbles.

Example
    He very hungry.

Better
    He was very hungry.

When to let it stand
    In a small child's talk, a note, a poem.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from proofkit.analysis import Analysis, Token
from proofkit.book import Book, Page
from proofkit.checks.check import Need
from proofkit.checks.grammar._clauses import opens_clause
from proofkit.checks.grammar._gaps import Gaps
from proofkit.checks.grammar._narrative import narrative_of
from proofkit.checks.grammar._voices import tier_at
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.lists import word_set

NAME = "grammar/lost-word"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_OPENERS = word_set("when because if while although though until till")
_FINITE = frozenset({"VBD", "VBZ", "MD"})
_INVERTED = word_set("was were had did is are could should would can will has have do does")
_PERSONS = ("he", "she", "they", "it", "we", "I")
_BE = {"he": ("was", "is"), "she": ("was", "is"), "it": ("was", "is"), "i": ("was", "am")}
_BE_MANY = ("were", "are")
_SHARE = word_set("than as and or but nor")
_DEGREES = word_set("very so too quite not only really")
_WANTING = word_set("""
begin began begins want wants wanted try tried tries decide decided decides hope hoped agreed agrees need needs
needed love loves loved like likes liked prefer prefers preferred forgot forgets learned learnt manage managed
promised promises refused refuses start started starts continued wish wished ought able going ready easy
hard glad pleased proceeded
""")
_RESTING = word_set(
    "lived sat stood stared looked pointed laughed smiled arrived belonged listened waited lay knelt plunged"
)
_STANDING = word_set("sat stood")
_PLACING = ("in", "on", "at", "into", "to", "for", "with", "by", "under", "from", "of")
_TIMES = word_set(
    "next other same very whole first last day night week minute moment second evening morning year summer winter "
    "hour part test life afternoon own"
)
_STRETCH = 2
_TO_LEAST = 0.0
# Of these something is the middle, the top, the rest.
_OF = word_set("middle top edge bottom end rest front couple fond proud kinds")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Gap:
    """A gap before the token ``at``: which words may be lost there, and the least that one must gain."""

    at: int
    words: Sequence[str]
    least: float
    why: str


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each such gap, on the words beside it; a query where somebody speaks."""
    past = narrative_of(book, analysis).told_in_past
    for page in book.pages:
        if "\n" in page.prose.strip().replace("\n\n", " "):
            continue
        tokens, gaps = analysis.page(page.number).tokens, None
        for at in range(1, len(tokens) - 1):
            gap = _gap(tokens, at)
            if gap is None or tokens[at].start != tokens[at - 1].end + 1:
                continue
            gaps = gaps or Gaps(page, analysis)
            gained = sorted(((gaps.gain(tokens[at].start, w), w) for w in gap.words), reverse=True)
            tier = tier_at(book, analysis, page, tokens[at].start)
            if tier and gained[0][0] > gap.least:
                best = [word for gain, word in gained if gain > gained[0][0] - _STRETCH]
                yield _issue(book, page, tokens, gap, _by_tense(best, past=past), tier)


def _by_tense(words: list[str], *, past: bool) -> list[str]:
    present = ("is", "are", "am")
    return sorted(words, key=lambda word: past and word in present)


def _issue(
    book: Book, page: Page, tokens: Sequence[Token], gap: _Gap, words: list[str], tier: Tier
) -> Issue:
    left, right = tokens[gap.at - 1], tokens[gap.at]
    return issue_at(
        book,
        page.span(left.start, right.end),
        check=NAME,
        tier=tier,
        message=gap.why,
        confidence=0.7 if tier is Tier.ERROR else 0.5,
        suggestions=[f"{left.text} {word} {right.text}" for word in words[:3]],
    )


def _gap(tokens: Sequence[Token], at: int) -> _Gap | None:
    return (
        _lost_subject(tokens, at)
        or _lost_be(tokens, at)
        or _lost_to(tokens, at)
        or _lost_place(tokens, at)
        or _lost_of(tokens, at)
    )


def _lost_subject(tokens: Sequence[Token], at: int) -> _Gap | None:
    """*When came home*: a finite verb right after the word that opens its clause."""
    before, verb = tokens[at - 1].text.lower(), tokens[at]
    joined = at > 1 and tokens[at - 2].end == tokens[at - 1].start
    if joined or before not in _OPENERS or verb.tag not in _FINITE or not verb.text.islower():
        return None
    after = tokens[at + 1]
    if verb.text in _INVERTED and after.tag in ("DT", "PRP", "PRP$", "NNP", "NN", "NNS", "EX"):
        return None  # "when was the party"
    return _Gap(at=at, words=_PERSONS, least=4.0, why="a he, she, it or they seems to be missing")


def _lost_be(tokens: Sequence[Token], at: int) -> _Gap | None:
    """*He very hungry*, *they going*, *once there a king*: no verb after the subject."""
    subject = tokens[at - 1].text.lower()
    after = tokens[at]
    if subject == "there" and after.text in ("a", "an", "no", "some", "many"):
        opens = at < 2 or tokens[at - 2].tag not in (
            "IN",
            "VB",
            "VBD",
            "VBN",
            "VBZ",
            "VBP",
            "VBG",
            "RB",
        )
        once = at > 1 and tokens[at - 2].text.lower() in ("time", "day", "once")
        return (
            _Gap(at=at, words=("was", "were", "is", "are"), least=2.0, why=_NO_VERB)
            if opens or once
            else None
        )
    if subject not in _NOMINATIVES or not (at < 2 or opens_clause(tokens, at - 1)):
        return None
    before = tokens[at - 2] if at > 1 else None
    if before and (before.tag[:2] == "VB" or before.text.lower() in _SHARE):
        return None  # "to find it bewildering", "she is right and they wrong"
    place = at
    while tokens[place].text in _DEGREES and place + 1 < len(tokens):
        place += 1
    asks = place + 1 < len(tokens) and tokens[place + 1].text == "?"
    if asks or tokens[place].tag not in ("JJ", "VBG", "CD") or not tokens[place].text.islower():
        return None
    return _Gap(at=at, words=_BE.get(subject, _BE_MANY), least=6.0, why=_NO_VERB)


_NOMINATIVES = word_set("he she they it we i")
_NO_VERB = "a verb seems to be missing"


def _lost_to(tokens: Sequence[Token], at: int) -> _Gap | None:
    """*They began show*: a plain verb after one that takes to."""
    before = tokens[at - 1]
    if (
        before.text not in _WANTING
        or tokens[at].tag not in ("VB", "VBP")
        or not tokens[at].text.islower()
    ):
        return None
    return _Gap(at=at, words=("to",), least=_TO_LEAST, why="a “to” seems to be missing")


def _lost_place(tokens: Sequence[Token], at: int) -> _Gap | None:
    """*She sat the chair*, *he went back the table*: nothing leads to the place."""
    before = tokens[at - 1].text
    back = before == "back" and tokens[at - 2].tag in ("VBD", "VBZ", "VBP", "VB") and at > 1
    if not back and (before not in _RESTING or tokens[at - 1].tag != "VBD"):
        return None
    if tokens[at].tag not in ("DT", "PRP$") or tokens[at + 1].text.lower() in _TIMES:
        return None
    if before in _STANDING and any(t.tag == "IN" for t in tokens[at + 2 : at + 4]):
        return None  # "he stood the lamp on the box"
    if tokens[at].text not in ("the", "a", "an", "his", "her", "their", "its", "my", "our"):
        return None
    tags = [token.tag for token in tokens[at + 1 : at + 5]]
    tags = tags[: tags.index("CC")] if "CC" in tags else tags
    if back and _FINITE & set(tags):
        return None  # "when he came back the children ran"
    return _Gap(at=at, words=_PLACING, least=3.0, why="a small word seems to be missing")


def _lost_of(tokens: Sequence[Token], at: int) -> _Gap | None:
    """*The middle the court*, *fond cheese*: what it is the middle of, with nothing between."""
    before, after = tokens[at - 1].text, tokens[at]
    if before not in _OF or not after.text.islower():
        return None
    led = at > 1 and tokens[at - 2].tag in ("DT", "JJ", "IN", "RB", "VBD", "VBZ")
    names = after.tag in ("DT", "PRP$") or (
        before in ("couple", "fond", "kinds") and after.tag in ("NN", "NNS")
    )
    return (
        _Gap(at=at, words=("of",), least=3.0, why="an “of” seems to be missing")
        if led and names
        else None
    )
