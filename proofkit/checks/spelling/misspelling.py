"""A word spelt wrong.

What it finds
    A word that no dictionary has and that is a slip or two from a word everybody knows: letters left
    out, doubled, changed round, or written as they sound. Not names, sounds, words in another
    language or words that the book makes up: those are listed once, for you to confirm. The book
    shows which they are: they come again, have a capital inside sentences, or stand apart.

Why a reader minds
    It is the slip that everybody sees, and a child learns the word from the page.

Example
    The geese were realy hungry.

Better
    The geese were really hungry.

When to let it stand
    In a word you made up, in somebody's way of speaking, in a letter that a child in the story wrote.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace

from proofkit.analysis import Analysis
from proofkit.book import Book, Role, Span
from proofkit.checks.check import Need
from proofkit.checks.spelling._calendar import day_or_month
from proofkit.checks.spelling._child_past import usual_past
from proofkit.checks.spelling._on_purpose import (
    has_no_vowel,
    is_among_strangers,
    is_derived,
    is_inflected,
    is_loan,
    is_playful,
    is_set_apart,
    is_sound,
)
from proofkit.checks.spelling._run_together import parts
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.dictionary import Dictionary, dictionary, familiar
from proofkit.words.forms import plain_of
from proofkit.words.frequency import zipf
from proofkit.words.quotations import quotations_of
from proofkit.words.suggest import Candidate, candidates, in_case_of
from proofkit.words.vocabulary import WORD, Use, Vocabulary

NAME = "spelling/misspelling"
NEEDS = frozenset({Need.TEXT})

_BETWEEN_WORDS = re.compile(r"(?<=[\w,]) [^\W\d_]+ (?=\w)")
_LETTERS = re.compile(r"[A-Za-z]+(?:['’][A-Za-z]+)?")
_SUGGESTIONS = 3
# What was meant must be a word that everybody knows, and far more frequent than what was written
# (Zipf values: powers of ten).
_KNOWN_TO_ALL = 3.2
_KNOWN = 2.4
_FAR_MORE = 1.5
_OF_ANOTHER_FORM = 0.5
_SURE_COST = 0.65
_SURE_LETTERS = 6
_LONG = 8
# A doubled letter missing or too many is a slip even where the word might be made up (realy); two
# letters changed round, even where it might be a child's grammar or another language's.
_DOUBLED = 0.4
_LEAST_COST = 0.55
_LETTER_LEFT_OUT = 0.65
_KEY_BESIDE = 0.9
# A word of the book itself is this many powers of ten likelier to be meant.
_IN_BOOK = 1.0
# What stories have at least three times as often, they have about six times as often.
_IN_STORIES = 0.8
_HARDLY_LESS = 2.0
_SMALL_WORD = 5.5
_FREQUENT = 4.5
_MOST_TIMES = 3
_ASIDE = (Role.BACK_MATTER, Role.DEDICATION)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each place of a misspelt word."""
    known = dictionary(analysis.english)
    for use in analysis.vocabulary.uses.values():
        form = use.usual_form
        if not _is_strange(form, known):
            continue
        meant = day_or_month(use)
        if not meant and not _is_on_purpose(book, use, analysis.vocabulary, known):
            meant = _childs_past(use) or _meant(use, known, analysis.vocabulary)
        if meant:
            yield from (_issue(book, span, use.count, meant) for span in use.spans)
    yield from _outside_the_story(book, analysis, known)


def _is_strange(form: str, known: Dictionary) -> bool:
    return (
        len(form) > 2
        and _LETTERS.fullmatch(form) is not None
        and not known.knows(form)
        and not known.knows_elsewhere(form)
        and not known.knows(form.capitalize())
        and parts(form, known) is None
    )


def _is_on_purpose(book: Book, use: Use, vocabulary: Vocabulary, known: Dictionary) -> bool:
    """Whether the word is there on purpose, as its look or its surroundings show."""
    if use.capitals_inside or is_sound(use.word) or use.count > _MOST_TIMES:
        return True
    plain = _is_plain_slip(use.word, known)
    for span in use.spans:
        text = book.page(span.page).prose
        if is_set_apart(text, span.start, span.end, plain=plain):
            return True
        if has_no_vowel(use.word) and not _BETWEEN_WORDS.match(text, max(0, span.start - 1)):
            return True
        if is_among_strangers(book, span, vocabulary, known, plain=plain):
            return True
        if usual_past(use.word) and quotations_of(book).speaks(span.page, span.start):
            return True
    return False


def _is_plain_slip(word: str, known: Dictionary) -> bool:
    """Whether a frequent word was meant and just a letter doubled, halved, changed round or a vowel is off."""
    likely = candidates(word, known)[:1]
    return any(c.cost <= _LEAST_COST and zipf(c.word) >= _FREQUENT for c in likely)


def _childs_past(use: Use) -> tuple[Candidate, ...]:
    """Outside speech, "goed" and "sayed" are slips; a story that a child tells has them again and again."""
    past = usual_past(use.word)
    return (Candidate(word=past, cost=_DOUBLED, score=0.0),) if past else ()


def _meant(use: Use, known: Dictionary, vocabulary: Vocabulary) -> tuple[Candidate, ...]:
    """The word that was meant and then others hardly less likely; none where it is anybody's guess."""
    found = _by_likelihood(candidates(use.word, known), vocabulary)
    if not found:
        return ()
    best = found[0]
    lower = use.lower == use.count
    sure = best.cost <= _sure_cost(use.word)
    if best.cost > _most_cost(use.word, best, vocabulary):
        return ()
    if not (sure or (lower and use.count == 1)):
        return ()
    if best.cost > _LEAST_COST and (is_inflected(use.word, known) or is_loan(use.word, best.word)):
        return ()
    if best.cost > _DOUBLED and (is_playful(use.word, best, known) or is_derived(use.word, known)):
        return ()
    return found if _is_plain(use.word, best, known, vocabulary) else ()


def _by_likelihood(found: Iterable[Candidate], vocabulary: Vocabulary) -> tuple[Candidate, ...]:
    """A word that the book has, or that stories have oftener than other texts, is the likelier one."""
    scored = [
        replace(c, score=c.score - _told_by_book(c.word, vocabulary) - _told_by_stories(c.word))
        for c in found
    ]
    scored.sort(key=lambda c: c.score)
    return tuple(c for c in scored if c.score <= scored[0].score + _HARDLY_LESS)


def _sure_cost(word: str) -> float:
    """What a slip may cost to be plain even in a word that comes again or opens a sentence."""
    if len(word) < _SURE_LETTERS:
        return 0.0
    return _SURE_COST if len(word) < _LONG else 0.8


def _told_by_book(word: str, vocabulary: Vocabulary) -> float:
    """What the book's having the word adds to its likelihood; every book has "was" and "were"."""
    return _IN_BOOK if vocabulary.count(word) and zipf(word) < _SMALL_WORD else 0.0


def _told_by_stories(word: str) -> float:
    return _IN_STORIES if word in familiar() else 0.0


def _is_plain(word: str, best: Candidate, known: Dictionary, vocabulary: Vocabulary) -> bool:
    plain = plain_of(best.word, known)
    # Who knows wobble knows wobbled, though it is met less often.
    by_form = zipf(plain) - _OF_ANOTHER_FORM if plain else 0.0
    often = max(zipf(best.word), by_form) + _told_by_book(best.word, vocabulary)
    least = _KNOWN if best.cost <= _DOUBLED else _KNOWN_TO_ALL
    return (
        " " not in best.word
        and ("'" in best.word or ("'" not in word and "’" not in word))
        and best.word.replace("'", "") != word
        and (often >= least or best.word in familiar())
        and often - zipf(word) >= _FAR_MORE
    )


def _most_cost(word: str, meant: Candidate, vocabulary: Vocabulary) -> float:
    """A longer word bears more slips, and so does a more frequent one, and is still plainly meant."""
    letters = len(word)
    if letters <= 3 and zipf(meant.word) >= _SMALL_WORD:
        return _KEY_BESIDE
    if has_no_vowel(word):
        return _LETTER_LEFT_OUT if zipf(meant.word) >= _FREQUENT else 0.0
    if letters <= 3:
        return _KEY_BESIDE if _told_by_book(meant.word, vocabulary) else 0.0
    by_length = 0.7 if letters <= 4 else 0.9 if letters <= 6 else 1.25 if letters <= 8 else 1.6
    return by_length + min(max(zipf(meant.word) - 4, 0.0) / 3, 0.5)


def _issue(book: Book, span: Span, times: int, meant: tuple[Candidate, ...]) -> Issue:
    form = book.quote(span)
    confidence = _confidence(len(form), meant[0].cost, once=times == 1)
    return issue_at(
        book,
        span,
        check=NAME,
        tier=Tier.ERROR if confidence >= 0.6 else Tier.QUERY,
        message="no dictionary has this word",
        suggestions=[in_case_of(form, c.word) for c in meant[:_SUGGESTIONS]],
        confidence=confidence,
    )


def _confidence(letters: int, cost: float, *, once: bool) -> float:
    sure = 0.95 - 0.25 * cost - (0.1 if letters <= 4 else 0.0) - (0.0 if once else 0.15)
    return round(sure, 2)


def _outside_the_story(book: Book, analysis: Analysis, known: Dictionary) -> Iterator[Issue]:
    """Plain slips in the dedication and the back matter; never in notes or the imprint's names."""
    for page in book.pages:
        for paragraph in page.paragraphs:
            if paragraph.role in _ASIDE:
                for match in WORD.finditer(page.text, paragraph.start, paragraph.end):
                    span, form = page.span(*match.span()), match.group()
                    meant = _plainly_meant(page.text, span, form, known, analysis.vocabulary)
                    if meant:
                        yield _issue(book, span, 1, meant)


def _plainly_meant(
    text: str, span: Span, form: str, known: Dictionary, vocabulary: Vocabulary
) -> tuple[Candidate, ...]:
    if not form.islower() or len(form) < _SURE_LETTERS or not _is_strange(form, known):
        return ()
    if is_set_apart(text, span.start, span.end):
        return ()
    alone = Use(word=form, forms={form: 1}, spans=(span,), capitals_inside=0)
    meant = _meant(alone, known, vocabulary)
    return meant if meant and meant[0].cost <= _sure_cost(form) else ()
