"""One name in two spellings.

What it finds
    A name used once or seldom that differs in a letter, an accent or a capital from one the book
    uses often: Nozibelle beside Nozibele. Two names that each act often, or together, are two people.

Why a reader minds
    The child asks who that is.

Example
    Tibbs ran home. Tibbs was hungry, and Mother called Tibbs. "Eat, Tibs," said Mother.

Better
    Tibbs ran home. Tibbs was hungry, and Mother called Tibbs. "Eat, Tibbs," said Mother.

When to let it stand
    When they are two people, or one is a pet name for the other.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator
from itertools import combinations

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.words.alike import alike, plain, same_but_for_accents, sounds_alike
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import English, Settings
from proofkit.words.dictionary import dictionary
from proofkit.words.frequency import zipf
from proofkit.words.vocabulary import Use

NAME = "consistency/name-spelt-two-ways"
NEEDS = frozenset({Need.TEXT})

_SEVERAL = 3
_SHORTEST = 3
_COMMON_WORD = 2.5


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for each seldom spelling, with its other places as related."""
    names = [use for use in analysis.vocabulary.uses.values() if _is_name(use)]
    best: dict[str, tuple[float, int, Use, Use]] = {}
    for pair in _similar(names):
        seldom, usual = sorted(pair, key=lambda use: (use.count, -use.spans[0].page))
        found = (_likelihood(book, seldom, usual, analysis.english), usual.count, seldom, usual)
        if found[0] and found[:2] > best.get(seldom.word, (0.0, 0))[:2]:
            best[seldom.word] = found
    for confidence, count, seldom, usual in best.values():
        yield _issue(book, seldom.spans, usual.usual_form, count, confidence)
    for use in names:
        yield from _odd_capitals(book, use)


def _similar(names: Iterable[Use]) -> Iterator[tuple[Use, Use]]:
    """All pairs that may be one name; only names with the same first letter are compared."""
    by_letter: dict[str, list[Use]] = defaultdict(list)
    for use in names:
        by_letter[plain(use.word)[0]].append(use)
    for same in by_letter.values():
        for one, other in combinations(same, 2):
            if abs(len(one.word) - len(other.word)) <= 2 and (
                same_but_for_accents(one.word, other.word) or alike(one.word, other.word)
            ):
                yield one, other


def _issue(book: Book, spans: tuple[Span, ...], usual: str, count: int, confidence: float) -> Issue:
    times = "once" if count == 1 else f"{count} times"
    return issue_at(
        book,
        spans[0],
        check=NAME,
        tier=Tier.ERROR if confidence >= 0.7 else Tier.QUERY,
        message=f"elsewhere the book has {usual} ({times})",
        suggestions=(usual,),
        confidence=confidence,
        related=spans[1:],
    )


def _is_name(use: Use) -> bool:
    """Always with a capital, and no contraction; the usual spelling of a pair must also show one inside a sentence."""
    return (
        use.lower == 0
        and len(use.word) >= _SHORTEST
        and use.usual_form[0].isupper()
        and not set("'’") & set(use.word)
    )


def _is_shout(use: Use) -> bool:
    """Whether it is wholly in capitals, or a drawn-out sound: Aaargh, Brrr."""
    return use.usual_form.isupper() or re.search(r"(.)\1\1", use.word) is not None


def _likelihood(book: Book, seldom: Use, usual: Use, english: English) -> float:
    """How likely it is that both are one name; 0 where nothing speaks for it."""
    if not usual.capitals_inside or _is_shout(usual) or _are_together(book, seldom, usual):
        return 0.0
    if same_but_for_accents(seldom.word, usual.word):
        return 0.85
    if usual.count < max(2, _SEVERAL * seldom.count - 1):
        return 0.0
    words = dictionary(english)
    if zipf(seldom.word) >= _COMMON_WORD and seldom.word in words.words:
        return 0.0
    if words.is_name(seldom.usual_form):
        strangers = not set(seldom.pages) & set(usual.pages)
        return 0.5 if sounds_alike(seldom.word, usual.word) and strangers else 0.0
    return 0.8 if seldom.count == 1 and usual.count >= _SEVERAL else 0.6


def _are_together(book: Book, one: Use, other: Use) -> bool:
    """Whether they are joined ("Demi and Demo"), or share more than one page."""
    pair = "|".join(re.escape(use.word) for use in (one, other))
    joined = re.compile(rf"(?i)\b({pair})(?:,| and| or|,? and| &| to| with)+ (?:{pair})\b")
    for page in one.pages:
        match = joined.search(book.page(page).prose)
        if match and match[1].lower() != match[0].lower().split()[-1]:
            return True
    return len(set(one.pages) & set(other.pages)) > 1


def _odd_capitals(book: Book, use: Use) -> Iterator[Issue]:
    """McTavish and Mctavish."""
    forms = [form for form in use.forms if not form.isupper()]
    if len(forms) == 2 and all(form[0].isupper() for form in forms):
        usual = max(forms, key=lambda form: use.forms[form])
        if use.forms[usual] > min(use.forms[form] for form in forms):
            odd = tuple(
                span for span in use.spans if book.quote(span) not in (usual, usual.upper())
            )
            yield _issue(book, odd, usual, use.forms[usual], 0.8)
