"""A small word lost, added or changed in a phrase that allows no choice.

What it finds
    "Long time ago", "Few days later", "once upon time", "in middle of the night", "a lot food", "able to
    her", "wanted to the park", "he could the ball", "they went the park", "listened the music", "made him to laugh", "proud with his hat". Phrases
    of our own, kept to those that can only be read one way.

Why a reader minds
    These are the words that stories are made with; a child knows them by heart.

Example
    Long time ago a king lived by the sea.

Better
    A long time ago a king lived by the sea.

When to let it stand
    In the speech of somebody who talks like that.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.quotations import quotations_of

NAME = "grammar/small-word"
NEEDS = frozenset({Need.TEXT})

_LOST, _ADDED, _CHANGED = (
    "a small word is missing",
    "a small word too many",
    "another small word is usual",
)
_NO_VERB = "a verb seems to be missing after this"
_OWN = "my|your|his|her|its|our|their"
_TIMES = "seconds|minutes|moments|hours|days|weeks|months|years|nights|mornings"
_BE = "am|is|are|was|were|be|been|I['’]m|he['’]s|she['’]s|they['’]re|we['’]re|you['’]re"
_COUNTED = (
    "food|water|money|rain|noise|fun|time|work|trouble|help|love|snow|sand|mud|cake|milk|honey|bread|fruit"
    "|meat|fish|grass|wood|gold|people|things|children|friends|animals|birds|trees|flowers|toys|books"
    "|questions|sweets|games"
)
_PLACES = (
    "park|shops?|beach|zoo|market|forest|river|school|town|village|castle|hospital|library|lake|well|pond"
    "|playground|station|fair|circus|mountains?|museum"
)
_DEEDS = (
    "buy|eat|play|sleep|see|find|make|get|take|fly|swim|help|build|cook|sing|visit|tell|win|catch|bake|jump"
    "|fall|go|leave|cry|say|start|give|run|come|sit|stay|wait|stop|dance|laugh|smile|work|think|feel"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Phrase:
    """A phrase at fault (group 1) and how it should read: "{}" is the phrase; None where it can't be told."""

    pattern: re.Pattern[str]
    reading: str | None
    why: str


def _phrase(pattern: str, reading: str | None, why: str = _LOST) -> _Phrase:
    return _Phrase(pattern=re.compile(pattern.replace(" ", r"\s+")), reading=reading, why=why)


# Where a sentence, a speech or a line begins.
_OPENS = r"(?:^|(?<=[.!?:]\s)|(?<=[\"“‘'\n]))"
_PHRASES = (
    _phrase(_OPENS + r"(Long(?:,? long)? (?:time ago|time back|ago time))\b", "a {}"),
    _phrase(
        _OPENS + rf"(Few (?:{_TIMES}))(?= (?:later|ago|after|before|passed|went by)\b)", "a {}"
    ),
    _phrase(_OPENS + rf"(Couple of (?:{_TIMES}))\b", "a {}"),
    _phrase(rf"\b[Aa]fter (few (?:{_TIMES}))\b", "a {}"),
    _phrase(r"\b([Oo]nce upon time)\b", "once upon a time"),
    _phrase(r"\b[Ii]n (middle of)(?= (?:the|a|his|her|their)\b)", "the {}"),
    _phrase(
        r"\b[Aa]t (end of)(?= (?:the|his|her|their) (?:day|story|road|year|week|race|line)\b)",
        "the {}",
    ),
    _phrase(rf"\b[Aa] (lot)(?= (?:{_COUNTED})\b)", "{} of"),
    _phrase(r"\b(?:had|has|have|was|were|saw|ate|made) (lot of)\b", "a {}"),
    _phrase(
        rf"\b(?:went|goes|returned|hurried) (?:back )?((?:the|his|her|their) (?:{_PLACES}))\b(?! way)",
        "to {}",
    ),
    _phrase(rf"\b(?:{_BE}) (going)(?= (?:{_DEEDS})\b(?!-))", "{} to"),
    _phrase(
        rf"\b(?:{_BE}) (about)(?= (?:eat|go|leave|jump|fall|give|say|take|get|make|see|tell|begin|become)\b)",
        "{} to",
    ),
    _phrase(
        r"\b(?:asked|told|wanted) (him|them|me|us)(?= (?:sit|go|stay|wait|stop) (?:down|home|here|there|away|still)\b)",
        "{} to",
    ),
    _phrase(
        r"\b(listen(?:ed|ing|s)?)(?= (?:the|his|her|their) (?:music|song|story|stories|birds|wind|radio|sea|rain)\b)",
        "{} to",
    ),
    _phrase(
        r"\b(wait(?:ed|ing|s)?)(?= (?:the|his|her) (?:bus|train|boat|school bus|rain|sun|moon)[.!?,])",
        "{} for",
    ),
    _phrase(
        r"\b(?:am|is|are|was|were) (?:very |so |not )?(afraid)(?= (?:the|his|her) \w+[.!?])",
        "{} of",
    ),
    _phrase(
        rf"\b(?:am|is|are|was|were|be|been|not) (able to)(?= (?:{_OWN}|the) \w)", None, _NO_VERB
    ),
    # What somebody wants or can is a deed: "she wanted to the shop", "he could the ball".
    _phrase(
        r"\b((?:wants?|wanted|decided?|decides|managed?|manages|tried|hoped?|hopes|wished|began|begins) to)"
        r"(?= (?:the|an?|my|your|his|its|our|their) (?!very|end|last|full|utmost|hilt|heart)\w|(?: her (?!heart)\w+))",
        None,
        _NO_VERB,
    ),
    _phrase(
        r"(?<!as\s)(?<!than\s)(?<!like\s)(?<!what\s)"
        r"\b((?:[Hh]e|[Ss]he|[Tt]hey|[Ww]e|I) (?:could|would|can|will|must|should))"
        r"(?= (?:the|an?|his|their|our|your) (?!first|second|third|last|more|less|better|bit|next|other|whole|same|very|moment|lot|\w+er )\w)",
        None,
        _NO_VERB,
    ),
    # Verbs that take nothing without their preposition.
    *(
        _phrase(
            rf"\b(?:[Hh]e|[Ss]he|[Ii]t|[Tt]hey|[Ww]e|I) ({verb})(?= (?:the|his|her|their) "
            rf"(?!next|other|same|very|whole|first|last|day|night|week|minute|moment|second|evening|morning"
            rf"|year|summer|winter|following|previous|instant|hour|afternoon)\w)",
            f"{{}} {preposition}",
        )
        for verb, preposition in (
            ("arrived", "at"),
            ("belong(?:s|ed)", "to"),
            ("listened", "to"),
            ("apologi[sz]ed", "to"),
        )
    ),
    _phrase(
        rf"\b(?:[Hh]e|[Ss]he|[Tt]hey|[Ww]e|I) (?:came|crept|rushed) (?:back )?((?:the|his|her|their) (?:{_PLACES}))\b(?! way)",
        "to {}",
    ),
    _phrase(r"\b([Oo]ut the of)\b", "out of the", "two small words have changed places"),
    _phrase(rf"\b(?:made|makes|make) (?:him|her|them|me|us) (to )(?=(?:{_DEEDS})\b)", "", _ADDED),
    _phrase(r"\b(at the middle)(?= of\b)", "in the middle", _CHANGED),
    _phrase(
        r"\b(?:more|very|so|was|were|is|are) (interested (?:on|about|at))(?= (?:the|a|his|her|it|them|\w+ing)\b)",
        "interested in",
        _CHANGED,
    ),
    _phrase(
        r"\b(?:was|were|is|are|so|very) (proud (?:with|from))(?= (?:his|her|the|their|my|your)\b)",
        "proud of",
        _CHANGED,
    ),
    _phrase(
        r"\b(arrived to)(?= (?:the|his|her|their) (?!sound|rescue|news|cheers|noise|tune|music|shouts|same|full))",
        "arrived at",
        _CHANGED,
    ),
)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each phrase at fault; a query where somebody speaks."""
    found = list(_found(book))
    if not found:
        return
    quotations = quotations_of(book)
    alike: dict[tuple[str, str, Tier], list[tuple[Span, str | None]]] = defaultdict(list)
    for span, reading, why in found:
        tier = Tier.QUERY if quotations.speaks(span.page, span.start) else Tier.ERROR
        alike[book.quote(span).lower(), why, tier].append((span, reading))
    for (_, why, tier), places in alike.items():
        (first, reading), *others = places
        yield issue_at(
            book,
            first,
            check=NAME,
            tier=tier,
            message=why,
            confidence=0.85 if tier is Tier.ERROR else 0.55,
            suggestions=[] if reading is None else [reading],
            related=[span for span, _ in others],
        )


def _found(book: Book) -> Iterator[tuple[Span, str | None, str]]:
    for page in book.pages:
        prose = page.prose
        for phrase in _PHRASES:
            for match in phrase.pattern.finditer(prose):
                yield page.span(*match.span(1)), _reading(phrase, match.group(1)), phrase.why


def _reading(phrase: _Phrase, quote: str) -> str | None:
    if phrase.reading is None:
        return None
    reading = phrase.reading.format(quote[0].lower() + quote[1:])
    return reading[:1].upper() + reading[1:] if quote[0].isupper() else reading
