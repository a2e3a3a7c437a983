"""Where a book has two words joined, hyphened or apart, and what work they do there."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass

from proofkit.analysis import Analysis, PageAnalysis, Token
from proofkit.book import Book, Page, Span
from proofkit.words.lists import word_set
from proofkit.words.vocabulary import Vocabulary

# What stands between the two words.
SHAPES = ("", "-", " ")

_WORD = re.compile(r"(?<![\w'’-])([^\W\d_]{2,})(?:([-‑])([^\W\d_]{2,}))?(?![\w‑-])")
# After these the two words are a verb and its particle: "look out" beside "a look-out".
_PARTICLES = word_set(
    "up off out in on down away over by back through round around along together ahead about"
)
_PREFIXES = word_set("re un co pre non de anti over under out")
_GREETINGS = frozenset({("good", "night"), ("good", "morning"), ("good", "bye")})


@dataclass(frozen=True, slots=True, kw_only=True)
class Compound:
    """One place of a compound. ``shape`` is what stands between ``first`` and ``second``."""

    first: str
    second: str
    shape: str
    span: Span

    def written(self, shape: str) -> str:
        """The compound with another shape, its capitals kept."""
        return f"{self.first}{shape}{self.second}"


def compounds(book: Book, analysis: Analysis) -> Iterator[list[Compound]]:
    """The places of each compound that the book has with a hyphen or in two shapes, by their work."""
    halves = _halves(analysis.vocabulary)
    groups: dict[tuple[str, str, str], list[Compound]] = defaultdict(list)
    for page in book.pages:
        own = analysis.page(page.number)
        starts = {token.start: at for at, token in enumerate(own.tokens)}
        for compound, work in _on_page(page, own, starts, halves):
            key = (compound.first.lower(), _singular(compound.second.lower()), work)
            groups[key].append(compound)
    yield from groups.values()


def _halves(vocabulary: Vocabulary) -> dict[str, tuple[str, str]]:
    """The closed words of the book that are elsewhere in it apart or hyphened, and their two halves."""
    uses = vocabulary.uses
    found: dict[str, tuple[str, str]] = {}
    for word in uses:
        first, hyphen, second = word.replace("‑", "-").partition("-")
        if hyphen and "-" not in second and first + second in uses:
            found[first + second] = (first, second)
    for word in uses:
        for at in range(3, len(word) - 2):
            first, second = word[:at], word[at:]
            if first in uses and second in uses and word.isalpha():
                found.setdefault(word, (first, second))
    return found


def _on_page(
    page: Page, own: PageAnalysis, starts: dict[int, int], halves: dict[str, tuple[str, str]]
) -> Iterator[tuple[Compound, str]]:
    before: re.Match[str] | None = None
    for match in _WORD.finditer(page.prose):
        if match[2]:
            compound = _compound(page, match[1], match[3], "-", match.start(), match.end())
            yield from _with_work(compound, own, starts, match.start(3))
        elif match[1].lower() in halves:
            length = len(halves[match[1].lower()][0])
            first, second = match[1][:length], match[1][length:]
            compound = _compound(page, first, second, "", match.start(), match.end())
            yield from _with_work(compound, own, starts, match.start())
        elif before and page.prose[before.end() : match.start()] == " " and not before[2]:
            compound = _compound(page, before[1], match[1], " ", before.start(), match.end())
            if _is_open_compound(own, starts, before.start(), match.start()):
                yield from _with_work(compound, own, starts, match.start())
        before = match


def _compound(page: Page, first: str, second: str, shape: str, start: int, end: int) -> Compound:
    return Compound(first=first, second=second, shape=shape, span=page.span(start, end))


def _with_work(
    compound: Compound, own: PageAnalysis, starts: dict[int, int], last: int
) -> Iterator[tuple[Compound, str]]:
    """The compound and whether it stands before a noun; nothing for names, echoes and the like."""
    first, second = compound.first.lower(), compound.second.lower()
    if compound.second[0].isupper() or first in _PREFIXES or _is_echo(first, second):
        return
    at = starts.get(last)
    after = own.tokens[at + 1] if at is not None and at + 1 < len(own.tokens) else None
    touches = after is not None and after.start - compound.span.end == 1
    yield compound, "before a noun" if touches and after and after.pos == "NOUN" else "alone"


def _is_echo(first: str, second: str) -> bool:
    """Choo-choo, tick-tock: a rhythm, not a compound."""
    consonants = [re.sub(r"[aeiouy]", "", word) for word in (first, second)]
    return consonants[0] == consonants[1] or first[1:] == second[1:]


def _is_open_compound(own: PageAnalysis, starts: dict[int, int], first: int, second: int) -> bool:
    """Whether two words side by side are one noun: the second's tag is a noun's, the first leans on it."""
    at = starts.get(first)
    if at is None or starts.get(second) != at + 1:
        return False
    one, two = own.tokens[at], own.tokens[at + 1]
    words = (one.text.lower(), two.text.lower())
    if words in _GREETINGS:
        return not _after_article(own, at)
    if two.text.lower() in _PARTICLES or two.pos != "NOUN":
        return False
    return one.pos == "NOUN" and one.tag == "NN" and _leans_on(one, at + 1, own)


def _leans_on(token: Token, on: int, own: PageAnalysis) -> bool:
    return token.dep in ("compound", "nmod", "amod") and (
        token.head == on or own.tokens[on].head == token.head
    )


def _after_article(own: PageAnalysis, at: int) -> bool:
    return at > 0 and own.tokens[at - 1].text.lower() in ("a", "the", "this", "that", "one", "very")


def _singular(word: str) -> str:
    return word[:-1] if word.endswith("s") and not word.endswith("ss") else word
