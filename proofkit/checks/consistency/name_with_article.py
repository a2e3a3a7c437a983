"""A character who is Jackal in one place and the jackal in another.

What it finds
    A common noun used as a name (Jackal ran) in a book that also says "the jackal" of, it seems,
    the same one. "A jackal", at his first appearance, is left alone. In a book that has both, "the
    Jackal", which is neither, is asked about.

Why a reader minds
    A small child may think that there are two of them.

Example
    Jackal met Hare. "Run!" said Jackal. Hare ran, and Jackal laughed. Then the jackal went home.

Better
    Jackal met Hare. "Run!" said Jackal. Hare ran, and Jackal laughed. Then Jackal went home.

When to let it stand
    When there is another jackal, or when the first page introduces the animal before it has a name.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.consistency._roles import RoleUses, role_uses
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.dictionary import dictionary

NAME = "consistency/name-with-article"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_SEVERAL = 3


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for each character, on the form that the book has less often."""
    words = dictionary(analysis.english)
    for word, uses in role_uses(book, analysis).items():
        with_the = sorted([*uses.the_lower, *uses.the_capital])
        if not (with_the and uses.bare_capital):
            continue
        if not uses.the_lower and words.is_name(word.capitalize()):
            continue  # the Ben that we met: a real name, and no kind of thing
        name, count = word.capitalize(), len(with_the)
        if _is_neither(uses):
            message = f"elsewhere {name} without an article, and the {word} without a capital"
            yield _issue(book, uses.the_capital, name, message)
            continue
        if uses.as_name >= max(_SEVERAL, count) and len(uses.bare_capital) > 1:
            yield _issue(book, with_the, name, f"elsewhere {name} ({uses.as_name} times)")
        elif count >= _SEVERAL * len(uses.bare_capital):
            better = f"the {word}"
            yield _issue(book, _bare(uses), better, f"elsewhere {better} ({count} times)")


def _is_neither(uses: RoleUses) -> bool:
    """The Jackal, seldom, in a book that has both Jackal and the jackal."""
    seldom = len(uses.the_capital)
    return 0 < 2 * seldom <= min(len(uses.bare_capital), len(uses.the_lower))


def _bare(uses: RoleUses) -> list[Span]:
    return sorted([*uses.bare_capital, *uses.bare_start])


def _issue(book: Book, spans: list[Span], better: str, message: str) -> Issue:
    first, *others = spans
    if book.quote(first)[0].isupper() and better.startswith("the "):
        at = first.start
        opens = at == 0 or book.page(first.page).prose[:at].rstrip()[-1:] in tuple('.!?"“')
        better = better.capitalize() if opens else better
    return issue_at(
        book,
        first,
        check=NAME,
        tier=Tier.QUERY,
        message=message,
        suggestions=(better,),
        confidence=0.5,
        related=others,
    )
