"""A word that belongs to a name, with a capital in one place and without it in another.

What it finds
    "old Rufus" beside "Old Rufus", "Alder Village" beside "Alder village". Only places inside
    sentences count, and for a word before the name only those without an article or owner.

Why a reader minds
    Either the word is part of the name or it is not.

Example
    They asked Old Rufus. Nobody knew more than Old Rufus. So old Rufus told them.

Better
    They asked Old Rufus. Nobody knew more than Old Rufus. So Old Rufus told them.

When to let it stand
    When one place really means something else: the village near Alder, a Rufus who is old.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.counting import times
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.lists import word_set
from proofkit.words.place_words import FEATURES
from proofkit.words.vocabulary import Vocabulary, opens_sentence

NAME = "consistency/word-beside-name"
NEEDS = frozenset({Need.TEXT})

# Words that make part of a name, or merely describe its bearer.
_EPITHETS = word_set(
    """
    old young little big great good clever brave wise poor tiny mighty greedy lazy busy
    happy sad uncle aunt auntie mother father brother sister grandma grandpa granny
    grandmother grandfather cousin king queen prince princess chief captain doctor professor
    farmer miller baker nurse baby madam lady lord sir teacher
    """
)
_PAIR = re.compile(r"(?<![\w'’-])([^\W\d_]+) ([^\W\d_]+(?:['’-][^\W\d_]+)*)")
_WORD_BEFORE = re.compile(r"([\w’'-]+)[ ]$")
_OWNERS = word_set(
    """
    a an the this that his her my your our their its whose no every
    """
)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for each pair of word and name, on the form that the book has less often."""
    for forms in _pairs(book, analysis.vocabulary).values():
        capital, lower = forms[True], forms[False]
        if not (capital and lower):
            continue
        fewer, more = (capital, lower) if len(capital) < len(lower) else (lower, capital)
        form = book.quote(fewer[0])
        better = form.lower() if fewer is capital else form.capitalize()
        yield issue_at(
            book,
            fewer[0],
            check=NAME,
            tier=Tier.ERROR if len(more) >= 2 * len(fewer) else Tier.QUERY,
            message=f"beside this name the book elsewhere has {better} ({times(len(more))})",
            suggestions=(better,),
            confidence=0.75,
            related=fewer[1:],
        )


def _pairs(book: Book, vocabulary: Vocabulary) -> dict[tuple[str, str], dict[bool, list[Span]]]:
    """The places of each pair of word and name, by whether the word has a capital."""
    pairs: dict[tuple[str, str], dict[bool, list[Span]]] = defaultdict(
        lambda: {True: [], False: []}
    )
    for page in book.pages:
        prose, at = page.prose, 0
        while match := _PAIR.search(prose, at):
            at = match.end(1)
            for group, key in _words_beside_names(match, vocabulary):
                pairs[key][match[group][0].isupper()].append(page.span(*match.span(group)))
    return pairs


def _words_beside_names(
    match: re.Match[str], vocabulary: Vocabulary
) -> Iterator[tuple[int, tuple[str, str]]]:
    first, second = match[1], _without_possessive(match[2])
    if first.isupper() or second.isupper():
        return
    if (
        first.lower() in _EPITHETS
        and _is_name(second, vocabulary)
        and not opens_sentence(match.string, match.start(1))
        and not _is_owned(match.string, match.start(1))
    ):
        yield 1, (first.lower(), second)
    if second.lower() in FEATURES and match[2] == second and _is_name(first, vocabulary):
        yield 2, (first, second.lower())


def _is_name(word: str, vocabulary: Vocabulary) -> bool:
    return word[0].isupper() and vocabulary.is_name(word) and word.lower() not in _EPITHETS


def _is_owned(text: str, at: int) -> bool:
    before = _WORD_BEFORE.search(text[max(0, at - 30) : at])
    return before is not None and (
        before[1].lower() in _OWNERS or before[1].endswith(("'s", "’s", "s'", "s’"))
    )


def _without_possessive(word: str) -> str:
    return word.removesuffix("'s").removesuffix("’s")
