"""One word written as two.

What it finds
    Pronouns and small words pulled apart (*him self, every where, may be* for *maybe, all ready* for
    *already*), and two nouns that dictionaries join and most people write as one (*goal keeper, bee
    hive*). Pairs that books have long written apart (*back door, fairy tale*) are left alone, and so is *every one of them*.
    Where the book itself has the joined word too, it is asked about as one compound spelt two ways.

Why a reader minds
    "Him self" reads as two things; a child who meets the word again, whole, doesn't know it.

Example
    The goal keeper looked at him self in the pond.

Better
    The goalkeeper looked at himself in the pond.

When to let it stand
    Where your dictionary, or the style of the series, writes the two apart.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Sequence
from functools import lru_cache

from proofkit.analysis import Analysis, Token
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.spelling._apart import joined
from proofkit.checks.spelling._rows import rows
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.data import wordlist
from proofkit.words.dictionary import Dictionary, dictionary, joined_in_novels
from proofkit.words.frequency import zipf
from proofkit.words.suggest import in_case_of
from proofkit.words.vocabulary import Vocabulary

NAME = "spelling/split-compound"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

# How frequent the joined word must be (Zipf values) to be asked about: below, people write either (sea
# wall, bull frog); and to be right even where older books write the pair apart (snowman, wheelchair).
_USUAL = 2.5
_TODAY = 3.2
_SURE = 0.75
# Most people join the two today, but no story of the past did.
_RATHER = 0.5
# Adjectives that the model may take for the first half of a compound.
_ADJECTIVES = frozenset(
    re.split(
        r"\s+",
        """black blue brown green grey red white yellow big small high low long short hot cold
        dark light free fresh hard soft sweet wild old young good dead strong common""",
    )
)
# Written either way today.
_EITHER_WAY = frozenset(
    re.split(
        r"\s+",
        """backyard backyards bathtime bathwater beechwood birdcage boatload boatloads boyfriend
        boyfriends clamshell clubhouse cookbook cookbooks dinnertime doghouse doghouses
        dollhouse dollhouses fairytale fairytales farmyard folktale folktales fruitcake
        girlfriend girlfriends henhouse henhouses hometown honeybee honeybees marketplace
        marketplaces motorboat motorboats naptime nighttime pinewood playdough playtime racehorse racehorses
        racetrack rainwater riverbed rockpool rockpools rollercoaster seawater songbird songbirds songbook storytime
        streetlight streetlights teamwork teatime treehouse treehouses waterhole waterholes
        woodpile""",
    )
)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield an issue for each place; for a habit of the book, one with the other places as related."""
    known = dictionary(analysis.english)
    places: dict[str, list[tuple[Span, float]]] = defaultdict(list)
    for page in book.pages:
        tokens = analysis.page(page.number).tokens
        for at in range(len(tokens) - 1):
            if not _side_by_side(tokens, at, page.text):
                continue
            found = joined(tokens, at) or _compound(tokens, at, known, analysis.vocabulary)
            if found:
                span = page.span(tokens[at].start, tokens[at + 1].end)
                places[found[0]].append((span, found[1]))
    for word, found_at in places.items():
        sure = max(each for _, each in found_at)
        for span, related in rows([span for span, _ in found_at]):
            yield _issue(book, span, word, sure, related)


def _issue(book: Book, span: Span, word: str, sure: float, related: tuple[Span, ...]) -> Issue:
    return issue_at(
        book,
        span,
        check=NAME,
        tier=Tier.ERROR if sure > _RATHER else Tier.QUERY,
        message="one word, not two" if sure > _RATHER else "mostly written as one word",
        suggestions=(in_case_of(book.quote(span)[0], word),),
        confidence=sure,
        related=related,
    )


def _side_by_side(tokens: Sequence[Token], at: int, text: str) -> bool:
    """Two words with one space between them, no hyphen on either side."""
    left, right = tokens[at], tokens[at + 1]
    around = text[max(0, left.start - 1) : left.start] + text[right.end : right.end + 1]
    return (
        text[left.end : right.start] in (" ", "\u00a0")
        and left.text.isalpha()
        and right.text.isalpha()
        and right.text.islower()
        and "-" not in around
        and "‑" not in around
    )


def _compound(
    tokens: Sequence[Token], at: int, known: Dictionary, vocabulary: Vocabulary
) -> tuple[str, float] | None:
    """Two nouns that are one word, and how sure that is; nothing where the book joins them too."""
    left, right = tokens[at], tokens[at + 1]
    word = left.text.lower() + right.text
    if not _is_noun_before(left, right) or not left.text.islower() or word not in known.words:
        return None
    if vocabulary.count(word):
        return None
    if word in _EITHER_WAY or (right.tag == "VBG" and word[:-3] + "er" not in known.words):
        return None
    if at and tokens[at - 1].dep == "compound" and tokens[at - 1].head != at + 1:
        return None
    sure = _sureness(word)
    return (word, sure) if sure else None


def _sureness(word: str) -> float:
    """How sure it is that two nouns are this one word; 0 where people write either."""
    often = max(zipf(form) for form in _numbers(word))
    if often >= _TODAY or any(form in joined_in_novels() for form in _numbers(word)):
        return _SURE
    if often < _USUAL or any(form in _open_forms() for form in _numbers(word)):
        return 0.0
    return _RATHER


def _numbers(word: str) -> tuple[str, ...]:
    """The word, and its singular where it is a plural."""
    return (word, word.removesuffix("s"))


def _is_noun_before(left: Token, right: Token) -> bool:
    if left.dep != "compound" or left.tag not in ("NN", "NNP", "JJ") or left.text in _ADJECTIVES:
        return False
    return right.tag in ("NN", "NNS") or right.tag == "VBG"


@lru_cache(maxsize=1)
def _open_forms() -> frozenset[str]:
    """The joined forms of all pairs that are as usual apart."""
    lines = wordlist("open-compounds.txt").read_text("utf-8").splitlines()
    return frozenset(line.replace(" ", "") for line in lines if not line.startswith("#"))
