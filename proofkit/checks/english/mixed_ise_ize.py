"""Verbs in -ise and verbs in -ize, mixed.

What it finds
    In a British book, realise beside organize. Both endings are good British English, but a book
    keeps to one. Words that have only one spelling (surprise, exercise, advertise, prize) don't
    count.

Why a reader minds
    Few children will see it. The publisher's copy-editor will, and has to ask which one you mean.

Example
    She realised that it was late. He apologized.

Better
    She realised that it was late. He apologised.

When to let it stand
    When one of them is in a quotation or a name. Otherwise choose one ending and keep to it.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import English, Settings
from proofkit.words.variants import variants

NAME = "english/mixed-ise-ize"
NEEDS = frozenset({Need.TEXT})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for the book, on the ending that it has less often; -ize if they are equal."""
    if analysis.english is not English.BRITISH:
        return
    spans: dict[str, list[Span]] = {"ise": [], "ize": []}
    for word, use in analysis.vocabulary.uses.items():
        partner = variants().ise_ize(word)
        if partner and not analysis.vocabulary.is_name(word):
            # They differ in one letter, and s comes before z.
            spans["ise" if word < partner else "ize"] += use.spans
    if not (spans["ise"] and spans["ize"]):
        return
    fewer, more = ("ise", "ize") if len(spans["ise"]) < len(spans["ize"]) else ("ize", "ise")
    first, *others = sorted(spans[fewer])
    count = len(spans[more])
    yield issue_at(
        book,
        first,
        check=NAME,
        tier=Tier.QUERY,
        message=f"elsewhere the book has -{more} ({count} {'time' if count == 1 else 'times'})",
        suggestions=(variants().ise_ize(book.quote(first)) or "",),
        confidence=0.8,
        related=others,
    )
