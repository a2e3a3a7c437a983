"""Where the grammar of books may be asked for: in the telling, and in speech that is itself in plain English.

A sailor says "we was" and "them boats", and is meant to. Such a voice shows it in more than one way: by
letters left out, by words of no dictionary, by a child's pasts (catched), by two negatives, or by doing
the same thing again. Who speaks as the book does, and once not, has been mistyped.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache

from proofkit.analysis import Analysis
from proofkit.book import Book, Page
from proofkit.checks.grammar._matches import in_dialect
from proofkit.issue import Tier
from proofkit.settings import English
from proofkit.words.dictionary import dictionary
from proofkit.words.forms import irregular_verbs
from proofkit.words.quotations import quotations_of

_VOICE = re.compile(
    r"\b(?:ain['’]?t|ye|yer|yez|youse|thou|thee|thy|hath|doth|y['’]all|reckon|gonna|wanna|gotta|cos|cuz|nowt|owt|summat|aye"
    r"|wuz|sez|git|hev|bain['’]t|nuffin|nuthin|dunno|o['’]|an['’]|th['’]|[Tt]hem (?!who\b|that\b|both\b|all\b)(?:\w+ )?[a-z]+s"
    r"|says I|me (?:own|mum|dad|mother|father|wife|lad|boy|name))\b"
    r"|[a-z]in['’](?![a-z])|(?<!\w)['’](?:em|er|im|ere|ave|un|tis|twas|at|is)\b"
    r"|\b(?:\w+n['’]t|never|not)\s(?:\w+\s){0,3}(?:no|nothing|nobody|none|nowhere|never)\b",
    re.IGNORECASE,
)
# A small child, or a bird that repeats.
_SMALL = re.compile(r"\b(?:baby|toddler|infant|parrot)\b", re.IGNORECASE)
_WORD = re.compile(r"(?<![\w'’-])[a-z]+(?![\w'’-])")
_LETTERS = 3  # shorter ones are sounds
_STRANGE = 1  # a rare word is no voice yet


def tier_at(book: Book, analysis: Analysis, page: Page, at: int) -> Tier | None:
    """How sure one may be that grammar at ``at`` is a slip: None where the voice there may be meant so."""
    if not quotations_of(book).speaks(page.number, at):
        return None if in_dialect(page.prose, at) else Tier.ERROR
    part = next((p for p in page.paragraphs if p.start <= at < p.end), None)
    if part is None:
        return None
    odd = _odd(page.prose[part.start : part.end], analysis.english, analysis.vocabulary.count)
    return None if odd else Tier.QUERY


def _odd(paragraph: str, english: English, count: Callable[[str], int]) -> bool:
    if _VOICE.search(paragraph) or _SMALL.search(paragraph):
        return True
    words, spoken = dictionary(english), _WORD.findall(paragraph)
    if any(word in _childs_pasts() and not words.knows(word) for word in spoken):
        return True
    strange = {
        word
        for word in spoken
        if len(word) > _LETTERS and not words.knows(word) and count(word) < 3
    }
    return len(strange) > _STRANGE


@cache
def _childs_pasts() -> frozenset[str]:
    """Catched, goed, drawed: a child makes every verb a regular one."""
    verbs = (verb.plain for verb in irregular_verbs())
    return frozenset(f"{verb}d" if verb.endswith("e") else f"{verb}ed" for verb in verbs)
