"""One word in two spellings that are both right.

What it finds
    A word that your English spells in two ways, in both: smidgen and smidgeon, adviser and advisor, in
    America catalog and catalogue. It proposes the spelling that the book has more often, or the one that dictionaries prefer.

Why a reader minds
    Either is right. Both together look like a slip, and a child who learns words by their looks meets two.

Example
    A smidgen of honey for the bear. A smidgeon for the bees.

Better
    A smidgen of honey for the bear. A smidgen for the bees.

When to let it stand
    When one of them is in a quotation, a letter or a name.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.counting import times
from proofkit.habits.accepted_spellings import mixed_usages
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.variants import cased_like

NAME = "english/two-accepted-spellings"
NEEDS = frozenset({Need.TEXT})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue a word, on the first place that is spelt otherwise than the book mostly does."""
    decided = {word.lower() for word in settings.style.words}
    for usage in mixed_usages(analysis):
        chosen = next((form for form in usage.places if form in decided), None)
        form = chosen or usage.usual or next(iter(usage.places))
        first, *others = usage.against(form)
        yield issue_at(
            book,
            first,
            check=NAME,
            tier=Tier.ERROR if chosen else Tier.QUERY,
            message=f"your style sheet has {form}"
            if chosen
            else f"elsewhere the book has {form} ({times(usage.count(form))})",
            suggestions=(cased_like(form, book.quote(first)),),
            confidence=0.85 if chosen else 0.6,
            related=others,
        )
