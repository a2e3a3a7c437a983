"""Two verbs side by side, with the "and" or the comma between them lost.

What it finds
    "The mouse ran hid", "she sat cried": two past forms after one subject. A clause of its own
    ("all he saw frightened him", "the boy who ran fell") is left alone.

Why a reader minds
    The reader's voice has nowhere to go between the two.

Example
    The mouse ran hid under the bed.

Better
    The mouse ran and hid under the bed.

When to let it stand
    In verse, where two quick verbs may stand side by side for speed.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from proofkit.analysis import Analysis, Token
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "grammar/two-verbs"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

# Forms that can only be a past tense, never a participle: "she has hid" is no longer usual English.
_PAST_ONLY_WORDS = """
went ran hid saw took gave came began sang swam drank ate rode wrote flew grew threw knew
blew drew fell broke spoke stole chose froze drove shook sprang sank rang shrank tore wore
swore woke rose
"""
_PAST_ONLY = frozenset(_PAST_ONLY_WORDS.split())
_PAST_WORDS = """
sat stood slept wept crept leapt jumped turned looked walked climbed cried laughed smiled
danced hopped skipped stopped rushed hurried sneezed yawned bowed knelt crawled waved nodded
lay slid
"""
_PAST = _PAST_ONLY | frozenset(_PAST_WORDS.split())
_CLAUSE_WORDS = """
who which that what whatever whoever where when as if all everything than how
"""
_CLAUSE = frozenset(_CLAUSE_WORDS.split())
_NOUNS = frozenset({"NOUN", "PROPN", "PRON"})
_MARKS = frozenset('.!?;:,…—–"“”')
_LOOK_BACK = 8


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each pair of past verbs that nothing joins."""
    for page in book.pages:
        tokens = analysis.page(page.number).tokens
        if "\n" in page.prose.strip().replace("\n\n", " "):
            continue
        for at in range(1, len(tokens) - 1):
            if _side_by_side(tokens, at) and _one_subject(tokens, at):
                first, second = tokens[at], tokens[at + 1]
                yield issue_at(
                    book,
                    page.span(first.start, second.end),
                    check=NAME,
                    tier=Tier.ERROR,
                    message="two verbs, and nothing joins them",
                    confidence=0.7,
                    suggestions=[f"{first.text} and {second.text}"],
                )


def _side_by_side(tokens: Sequence[Token], at: int) -> bool:
    first, second = tokens[at], tokens[at + 1]
    return (
        first.text in _PAST
        and second.text in _PAST
        and (first.text in _PAST_ONLY or second.text in _PAST_ONLY)
        and first.text != second.text
        and second.start == first.end + 1
    )


def _one_subject(tokens: Sequence[Token], at: int) -> bool:
    """Whether the two share a subject: no clause of its own opens a little before them."""
    before: list[Token] = []
    for place in range(at - 1, max(0, at - _LOOK_BACK) - 1, -1):
        token = tokens[place]
        after_noun = place > 0 and tokens[place - 1].pos in _NOUNS
        if token.text in _MARKS or (token.text == "that" and not after_noun):
            break
        before.append(token)
    if not before or any(token.text.lower() in _CLAUSE for token in before):
        return False
    nouns = [token for token in before if token.pos in _NOUNS]
    return before[0].pos in _NOUNS and len(nouns) == 1
