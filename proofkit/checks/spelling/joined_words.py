"""Two words written as one.

What it finds
    Words that are run together: common pairs (*alot, infront, atleast, noone*) and a space left out
    beside a small word (*thegoose, andthen*).

Why a reader minds
    A child who spells the word out doesn't find it, and reads a long word that isn't there.

Example
    There was alot of noise infront of the barn.

Better
    There was a lot of noise in front of the barn.

When to let it stand
    In a word that you joined for fun.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.spelling._on_purpose import is_among_strangers, is_set_apart
from proofkit.checks.spelling._rows import rows
from proofkit.checks.spelling._run_together import is_pair, parts
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.dictionary import Dictionary, dictionary
from proofkit.words.suggest import in_case_of
from proofkit.words.vocabulary import Use, Vocabulary

NAME = "spelling/joined-words"
NEEDS = frozenset({Need.TEXT})

_OPENERS = frozenset({"and", "but", "then", "they", "this", "when", "with", "was", "were", "so"})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield an issue for each place; for a habit of the book, one with the other places as related."""
    known = dictionary(analysis.english)
    for use in analysis.vocabulary.uses.values():
        form = use.usual_form
        if known.knows(form) or known.knows_elsewhere(form) or use.capitals_inside:
            continue
        pair = parts(form, known)
        if pair and (
            is_pair(*pair)
            or (_may_open(form, pair) and _is_slip(book, use, analysis.vocabulary, known))
        ):
            for span, related in rows(use.spans):
                yield issue_at(
                    book,
                    span,
                    check=NAME,
                    tier=Tier.ERROR,
                    message="two words, not one",
                    suggestions=(in_case_of(book.quote(span), " ".join(pair)),),
                    confidence=0.9 if is_pair(*pair) else 0.75,
                    related=related,
                )


def _may_open(form: str, pair: tuple[str, str]) -> bool:
    """A capital marks a name (Hereward, Theron), unless the first half is no beginning of one."""
    return form.islower() or pair[0] in _OPENERS


def _is_slip(book: Book, use: Use, vocabulary: Vocabulary, known: Dictionary) -> bool:
    """A space left out happens once, in a sentence of English words."""
    span = use.spans[0]
    text = book.page(span.page).prose
    return (
        use.count == 1
        and not is_set_apart(text, span.start, span.end)
        and not is_among_strangers(book, span, vocabulary, known)
    )
