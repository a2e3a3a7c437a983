"""One compound in two ways: bedtime, bed-time, bed time.

What it finds
    Words that the book writes as one, with a hyphen or apart, and not always the same, where they do
    the same work in the sentence; a prefix with and without its hyphen (re-open, reopen). A hyphen
    that only joins words before a noun (a well-known tale) is right beside "the tale is well known".

Why a reader minds
    Each way may be good English; two ways in one book look like chance.

Example
    At bedtime the cat came in. It was past bed-time.

Better
    At bedtime the cat came in. It was past bedtime.

When to let it stand
    When the two mean different things: everyday shoes, every day; a good night, "Goodnight!" To keep
    one way in all drafts, write the word as it is to stand among the words of your style sheet.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.consistency._odd_words import Row, row_of
from proofkit.habits.compounds import BEFORE_NOUN, compound_usages, decided_compound, joined_as
from proofkit.issue import Issue
from proofkit.settings import Settings
from proofkit.words.dictionary import dictionary

NAME = "consistency/compound-two-ways"
NEEDS = frozenset({Need.LANGUAGE_MODEL})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for each compound, on the places that don't follow its usual way."""
    words = dictionary(analysis.english).words

    def likeliest(forms: Sequence[str]) -> str:
        """Of equals, the dictionary's one word, else the open one; of three words the one with hyphens."""
        return min(
            forms, key=lambda form: (form not in words, form.count("-") == 1, -form.count("-"))
        )

    row = Row(
        check=NAME,
        better=lambda span, form: joined_as(book.quote(span), form),
        preferred=likeliest,
        confidence=0.75,
    )
    for usage in compound_usages(book, analysis, settings.style.words):
        decided = decided_compound(usage.matter, settings.style.words)
        if decided and usage.matter.endswith(BEFORE_NOUN) and " " in decided:
            continue  # open words may still take their hyphens before a noun
        issue = row_of(book, usage, row, decided=decided)
        if issue:
            yield issue
