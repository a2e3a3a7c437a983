"""A hyphen after an adverb in -ly: a brightly-painted cart.

What it finds
    An adverb in -ly that is joined to the word after it. Adjectives in -ly (a friendly-looking bear,
    an early-morning walk) keep their hyphens.

Why a reader minds
    An adverb belongs to the next word without any help: New Hart's Rules 3.3 and the MHRA guide 2.3
    have "a highly contentious argument", no hyphen.

Example
    They rode in a brightly-painted cart.

Better
    They rode in a brightly painted cart.

When to let it stand
    Hardly ever; older books have many.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.dictionary import dictionary
from proofkit.words.lists import word_set

NAME = "consistency/hyphen-after-adverb"
NEEDS = frozenset({Need.TEXT})

_JOINED = re.compile(r"(?<![\w’'‑-])([^\W\d_]+ly)[-‑]([^\W\d_]+)(?![\w’'‑-])", re.IGNORECASE)
# Adjectives, nouns and verbs in -ly, some of which are adverbs as well.
_NO_ADVERB = word_set(
    """
    bubbly bully burly chilly cuddly curly comely costly cowardly crinkly crumbly daily deadly drizzly
    early elderly family fatherly fly friendly frilly ghastly ghostly giggly godly goodly grisly gangly
    grizzly heavenly hilly hourly homely holly jelly jolly july kindly kingly knightly leisurely likely
    lily lively lonely lovely lowly manly melancholy monthly motherly nightly oily only orderly pearly
    ply pebbly prickly princely quarterly rally reply roly poly scholarly scraggly seemly sickly silly
    slovenly sly smelly sparkly spindly sprightly squiggly stately straggly supply surly tally tickly
    timely treacly tingly ugly unfriendly unlikely unruly weakly weekly wiggly wobbly wily wooly woolly
    worldly wriggly wrinkly yearly belly billy dolly molly polly sally willy wally telly jolly ally
    butterfly dragonfly assembly anomaly brotherly sisterly
    """
)
_PARTICIPLE = re.compile(r"(?:ed|en|ing|own|orn|ept|ght|old|ade|ung|ead|it|ut)$")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for each place where the adverb's adjective is a word and so is the one it is joined to."""
    words = dictionary(analysis.english).words
    for page in book.pages:
        for match in _JOINED.finditer(page.prose):
            adverb, other = match[1].lower(), match[2].lower()
            if not _is_adverb(adverb, words) or not _PARTICIPLE.search(other) or other not in words:
                continue
            yield issue_at(
                book,
                page.span(*match.span()),
                check=NAME,
                tier=Tier.QUERY,
                message="no hyphen after an adverb in -ly",
                suggestions=(f"{match[1]} {match[2]}",),
                confidence=0.7,
            )


def _is_adverb(word: str, words: frozenset[str]) -> bool:
    """Whether the word is made of an adjective: nicely, prettily, gently, fully; not mealy, jelly."""
    stem = word[:-2]
    made_of = {stem, stem + "e", stem + "le", stem.removesuffix("al")}
    if stem.endswith("l"):
        made_of.add(stem + "l")
    if stem.endswith("i"):
        made_of = {stem[:-1] + "y"}
    return word in words and word not in _NO_ADVERB and bool(made_of & words)
