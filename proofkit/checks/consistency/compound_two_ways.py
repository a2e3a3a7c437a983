"""One compound in two ways: bedtime, bed-time, bed time.

What it finds
    Two words that the book writes as one, with a hyphen or apart, and not always the same, where
    they do the same work in the sentence. A hyphen that only joins them before a noun (a well-known
    tale, a three-year-old boy) is right beside "well known" and "three years old".

Why a reader minds
    Each way may be good English; two ways in one book look like chance.

Example
    At bedtime the cat came in. It was past bed-time.

Better
    At bedtime the cat came in. It was past bedtime.

When to let it stand
    When the two mean different things: everyday shoes, every day; a good night, "Goodnight!"
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.consistency._compounds import SHAPES, Compound, compounds
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.dictionary import dictionary

NAME = "consistency/compound-two-ways"
NEEDS = frozenset({Need.LANGUAGE_MODEL})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for each compound, on the places that don't follow its usual way."""
    for same_work in compounds(book, analysis):
        counts = {shape: sum(c.shape == shape for c in same_work) for shape in SHAPES}
        if sum(count > 0 for count in counts.values()) < 2 or not _of_words(same_work[0], analysis):
            continue
        usual = max(
            SHAPES, key=lambda shape: (counts[shape], _in_dictionary(same_work, shape, analysis))
        )
        odd = sorted((c for c in same_work if c.shape != usual), key=lambda c: c.span)
        better = odd[0].written(usual)
        times = "once" if counts[usual] == 1 else f"{counts[usual]} times"
        yield issue_at(
            book,
            odd[0].span,
            check=NAME,
            tier=Tier.QUERY,
            message=f"elsewhere the book has {better} ({times})",
            suggestions=(better,),
            confidence=0.65,
            related=[c.span for c in odd[1:]],
        )


def _of_words(compound: Compound, analysis: Analysis) -> bool:
    """Whether both halves are words; not laugh-ing at a line's end, nor a drawled we-ell."""
    words = dictionary(analysis.english).words
    halves = compound.first.lower(), compound.second.lower()
    # Of the shortest words only "to" makes compounds: to-day, to-night.
    return all(half in words and (len(half) > 2 or half == "to") for half in halves)


def _in_dictionary(same_work: list[Compound], shape: str, analysis: Analysis) -> bool:
    """Of equals, the one that the dictionary has as one word."""
    return shape == "" and same_work[0].written("").lower() in dictionary(analysis.english).words
