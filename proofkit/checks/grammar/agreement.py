"""A verb that doesn't go with its subject.

What it finds
    A verb in the form for one where the subject is more than one, or the other way about: "the dogs
    was", "he have", "there was three ducks". Only what the story tells is judged, not what somebody
    says in it.

Why a reader minds
    Whoever reads aloud stumbles, or mends it in passing and wonders what else is wrong.

Example
    The dogs was asleep.

Better
    The dogs were asleep.

When to let it stand
    When the one who tells the story talks so, from the first page to the last.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from proofkit.analysis import Analysis, Match
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.grammar._matches import issues_for
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "grammar/agreement"
NEEDS = frozenset({Need.GRAMMAR_ENGINE})

# After these a verb stands in its bare form: "did he go", "she made it look", "heard the fox sniff".
_BARE_AFTER = re.compile(
    r"\b(?:d(?:o|oes|id)|sh(?:ould|all)|w(?:ould|ill)|c(?:an|ould)|m(?:ay|ight|ust)|let|make|makes|made|making"
    r"|hear|heard|see|saw|seen|watch|watched|feel|felt|help|helped|why not)(?:n['’]t)?\b[^.!?\n]*$",
    re.IGNORECASE,
)
_WISHED = re.compile(
    r"\b(?:if|though|whether|wish|wished|unless|lest|till|until|that)\b[^.!?\n]*$", re.IGNORECASE
)
_FREE = frozenset({"need", "dare", "be", "being"})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each verb and subject that disagree, alike ones together."""
    matches = tuple(match for match in analysis.matches if not _allowed(book, match))
    told = replace(analysis, matches=matches)
    yield from issues_for(book, told, NAME, "the verb doesn't go with its subject")


def _allowed(book: Book, match: Match) -> bool:
    """Whether the verb may stand in this form: a bare one after "did" or "made", a "were" after "if"."""
    prose = book.page(match.page).prose
    verb, before = prose[match.start : match.end].lower(), prose[: match.start]
    if verb in _FREE or (verb == "were" and _WISHED.search(before)):
        return True
    reading = match.replacements[0].lower() if match.replacements else ""
    return reading.rstrip("es") == verb.rstrip("e") and bool(_BARE_AFTER.search(before))
