"""No comma after yes, no, oh or well at the beginning of what is said.

What it finds
    "Yes I will", "No it isn't", "Oh I see", "Well we could try": the little answer stands before a
    whole sentence of its own. "Oh yes", "no one" and "yes please" are left alone.

Why a reader minds
    The answer is a sentence by itself, however short, and wants its breath. "No dogs bark here" and
    "No, dogs bark here" say opposite things.

Example
    "Yes I can swim," said Duck.

Better
    "Yes, I can swim," said Duck.

When to let it stand
    After "oh" and "well" in speech that comes all in a rush, and in verse. After "yes" and "no" hardly
    ever.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.commas._rows import Missing, rows
from proofkit.issue import Issue, Tier
from proofkit.settings import Settings
from proofkit.words.quotations import quotations_of

NAME = "commas/after-yes-or-no"
NEEDS = frozenset({Need.TEXT})

_PRONOUN = r"(?:I|you|we|he|she|it|they)\b"
# "No that" and "no this" may be a slip for "not"; "no there" can't.
_SENTENCE = rf"(?:{_PRONOUN}|there(?:['’]s| (?:is|are|was|were|will|must))\b|(?:that|this)(?:['’]s| (?:is|was|will|can))\b)"
_OPENS = r"(?:(?<=[.!?…—–] )|(?<=^))"
_ANSWER = re.compile(
    rf"{_OPENS}((?:[Oo]h,? |[Bb]ut,? |[Aa]nd,? )?(?:Yes|No|yes|no|Yeah|yeah|Nope|Yep))\s+"
    rf"(?={_SENTENCE}|(?<=[Yy]es )(?:the|your|our|let['’]s|please do|do|can|may) )"
)
_CRY = re.compile(
    rf"{_OPENS}(Oh|Well|Ah)\s+(?={_SENTENCE}|(?:how|what) (?:a|an|\w+ly|nice|wonderful|lovely|kind)\b)"
)
_NEVER = re.compile(r"I never[.!]")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue each, the same words as one; after "oh" and "well" it is a query."""
    yield from rows(book, NAME, _places(book))


def _places(book: Book) -> Iterator[Missing]:
    for quotation in quotations_of(book).speech:
        for part in quotation.parts if quotation.whole else ():
            text = book.quote(part)
            for pattern in (_ANSWER, _CRY):
                for match in pattern.finditer(text):
                    if _NEVER.match(text, match.end()):
                        continue  # well I never
                    yield Missing(
                        span=book.page(part.page).span(
                            part.start + match.start(1), part.start + match.end(1)
                        ),
                        reading=f"{match[1]},",
                        message=f"a comma after {match[1].split()[-1].lower()}",
                        tier=Tier.ERROR if pattern is _ANSWER else Tier.QUERY,
                        confidence=0.85 if pattern is _ANSWER else 0.6,
                    )
