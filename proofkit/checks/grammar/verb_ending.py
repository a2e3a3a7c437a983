"""A verb with an s too few, or an s too many, for its subject.

What it finds
    "The goat eat the grass", "the boys runs home": a verb right after a noun, in the form that goes with
    the other number. (Was and were, has and have are looked at by grammar/verb-and-subject.) In
    speech it is asked about, but not in dialect. Left alone are verbs that a word before them keeps bare
    ("made the boy laugh", "did the goat eat").

Why a reader minds
    One letter, and the reader's tongue stops to put it right.

Example
    The goat eat the grass.

Better
    The goat eats the grass.

When to let it stand
    When the one who tells the story talks so, from the first page to the last.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from proofkit.analysis import Analysis, Token
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.grammar._clauses import clause_before, kept_bare, last_of_list, phrase_start
from proofkit.checks.grammar._narrative import narrative_of
from proofkit.checks.grammar._numbers import Number, number_of
from proofkit.checks.grammar._subjects import subject_of
from proofkit.checks.grammar._voices import tier_at
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.dictionary import Dictionary, dictionary
from proofkit.words.forms import past_forms, past_of, third_person_of
from proofkit.words.lists import word_set

NAME = "grammar/verb-ending"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_OTHER_CHECK = word_set("be is are was were am has have does do")
# Wishes ("long live the queen"), and words that are small words as well.
_NO_PROOF = word_set(
    "bless save forbid help live come need dare round like near open down square clear suppose say sate"
)
# "Though he call himself a king": after these an old verb stands bare.
_DOUBTS = word_set("if though although whether until till unless lest before")
_ADVERBS = word_set(
    "never always also only still just often sometimes soon now then already really"
)
_POINTING = word_set("this that these those")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each such verb; in speech a query, where the book has only one."""
    words = dictionary(analysis.english)
    spoken = []
    for page in book.pages:
        tokens = analysis.page(page.number).tokens
        for at, reading, plain in _on_page(tokens, words):
            tier = tier_at(book, analysis, page, tokens[at].start)
            called = tier is Tier.QUERY and tokens[at - 1].tag == "NNP"  # "Now, Pip run home"
            if tier is None or called:
                continue
            readings = [reading, past_of(plain)]
            if tier is Tier.ERROR and narrative_of(book, analysis).told_in_past:
                readings.reverse()
            issue = issue_at(
                book,
                page.span(tokens[at].start, tokens[at].end),
                check=NAME,
                tier=tier,
                message="the verb's ending doesn't go with its subject",
                confidence=0.65 if tier is Tier.ERROR else 0.5,
                suggestions=readings,
            )
            if tier is Tier.ERROR:
                yield issue
            else:
                spoken.append(issue)
    if len(spoken) == 1:
        yield from spoken


def _on_page(tokens: Sequence[Token], words: Dictionary) -> Iterator[tuple[int, str, str]]:
    for at in range(1, len(tokens)):
        token = tokens[at]
        if (
            token.tag not in ("VBP", "VB", "VBZ")
            or token.text in _OTHER_CHECK
            or not token.text.islower()
        ):
            continue
        plain = _plain(token, words)
        if plain is None or plain in past_forms() or plain in _NO_PROOF:
            continue
        number = _number(tokens, at, words)
        if token.text == plain and number is Number.ONE and not _bare(tokens, at):
            yield at, third_person_of(plain), plain
        elif token.text != plain and number in (Number.MANY, Number.SPEAKER):
            yield at, plain, plain


def _bare(tokens: Sequence[Token], at: int) -> bool:
    doubted = any(token.text.lower() in _DOUBTS for token in clause_before(tokens, at))
    return doubted or kept_bare(tokens, at)


def _plain(token: Token, words: Dictionary) -> str | None:
    """The verb's plain form, if by its form the word is a verb in the present."""
    plain = token.text if token.tag != "VBZ" else token.lemma
    regular = words.knows(past_of(plain)) and words.knows(third_person_of(plain))
    return plain if regular and token.text in (plain, third_person_of(plain)) else None


def _number(tokens: Sequence[Token], at: int, words: Dictionary) -> Number | None:
    """How many the noun right before the verb is, if that is its subject and stands alone."""
    subject = subject_of(tokens, at)
    if subject is None or subject < at - 2 or tokens[subject].text.lower() in _POINTING:
        return None
    if subject == at - 2 and tokens[at - 1].text.lower() not in _ADVERBS:
        return None
    number = number_of(tokens, subject, at, words)
    first = phrase_start(tokens, subject)
    previous = tokens[first - 1].text.lower() if first else ""
    if previous in ("of", "let", "than", "except", "that") and number is Number.ONE:
        return None
    return None if number is Number.ONE and last_of_list(tokens, first) else number
