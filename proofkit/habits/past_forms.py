"""Past forms in -t or in -ed: learnt or learned, burnt or burned.

British English has both (New Hart's Rules asks only that one be kept to), American English has -ed, and
leapt beside leaped (VarCon 2020.12.07; licence: ``wordlists/varcon-README.txt``). Before a noun the forms are
adjectives with habits of their own: burnt toast, spilt milk, a learned owl. They don't count.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from proofkit.analysis import Analysis
from proofkit.book import Book, Page, Span
from proofkit.habits.usage import Usage
from proofkit.words.lists import word_set
from proofkit.words.vocabulary import Use, opens_sentence

MATTER = "past forms"
T, ED = "-t", "-ed"
FORMS = (T, ED)

# Each verb with its past in -t and its past in -ed.
VERBS: Mapping[str, tuple[str, str]] = {
    "burn": ("burnt", "burned"),
    "dream": ("dreamt", "dreamed"),
    "lean": ("leant", "leaned"),
    "leap": ("leapt", "leaped"),
    "learn": ("learnt", "learned"),
    "misspell": ("misspelt", "misspelled"),
    "smell": ("smelt", "smelled"),
    "spell": ("spelt", "spelled"),
    "spill": ("spilt", "spilled"),
    "spoil": ("spoilt", "spoiled"),
    "unlearn": ("unlearnt", "unlearned"),
}
WORDS = frozenset(form for pair in VERBS.values() for form in pair)

_REACH = 40  # characters
# What stands before an adjective, and never before a past tense.
_BEFORE_ADJECTIVE = re.compile(
    r"(?i)\b(?:a|an|the|this|that|these|those|my|your|his|her|its|our|their|some|any|no|every|of|with|from|"
    r"like|in|by|for|over|about|very|most|too|quite|rather) (?:(?:very|most|badly|half|slightly|old|big|little) )?$"
)
_AFTER = re.compile(r" ([^\W\d_]+)")
# After a verb there may stand one of these; after an adjective there is its noun.
_NO_NOUN = word_set(
    """
    a an the this that these those my your his her its our their me you him it us them to in from of how and
    or but with by on off up out over like at into down away so as when until till for what why where who
    about through across against again too very all everything something nothing there here back forward
    badly well fast slowly quickly
    """
)
# The grain, the fish and the making of metal.
_ANOTHER = re.compile(
    r"(?i)^ (?:flour|bread|loa(?:f|ves)|grain|wheat|iron|copper|ore|tin|silver|gold)\b"
)


def usage(book: Book, analysis: Analysis) -> Usage:
    """The places of either form, all verbs together."""
    places: dict[str, list[Span]] = {}
    for verb in verbs(book, analysis):
        for form, spans in verb.places.items():
            places.setdefault(form, []).extend(spans)
    return Usage(
        matter=MATTER, places={form: tuple(sorted(spans)) for form, spans in places.items()}
    )


def verbs(book: Book, analysis: Analysis) -> tuple[Usage, ...]:
    """For each verb that the book has in the past, the places of "-t" and "-ed"; ``matter`` is the verb."""
    found = []
    for verb, pair in VERBS.items():
        places = {
            form: spans
            for form, word in zip(FORMS, pair, strict=True)
            if (spans := tuple(_as_verb(book, analysis, word)))
        }
        if places:
            found.append(Usage(matter=verb, places=places))
    return tuple(found)


def _as_verb(book: Book, analysis: Analysis, word: str) -> Iterator[Span]:
    use: Use | None = analysis.vocabulary.use(word)
    if use and not analysis.vocabulary.is_name(word):
        for span in use.spans:
            if not _is_adjective(book.page(span.page), analysis, span):
                yield span


def _is_adjective(page: Page, analysis: Analysis, span: Span) -> bool:
    """By the words beside it, and by the language model where it ran."""
    before = page.prose[max(0, span.start - _REACH) : span.start]
    after = page.prose[span.end : span.end + _REACH]
    noun = _AFTER.match(after)
    if _ANOTHER.match(after) or page.prose[span.end : span.end + 1] == "-" or before.endswith("-"):
        return True
    if _BEFORE_ADJECTIVE.search(before) or opens_sentence(page.prose, span.start):
        return noun is not None and noun[1].lower() not in _NO_NOUN
    return any(
        token.start == span.start and (token.pos == "NOUN" or token.dep == "amod")
        for token in analysis.page(page.number).tokens
    )
