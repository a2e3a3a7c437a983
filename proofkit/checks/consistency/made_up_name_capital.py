"""The Whispering Wood, and the whispering wood.

What it finds
    A name of two or more words (the Whispering Wood, the Great Sneeze) that stands elsewhere without its
    capitals, or with one of them; and an invented word (a Snargle) that has a capital in one place and
    none in another. Only inside sentences, and only where the same article, or none, stands before it.

Why a reader minds
    With capitals it is the one and only; without, it is any wood that whispers.

Example
    Nobody went into the Whispering Wood. The Whispering Wood was dark. One day Bo saw the whispering wood.

Better
    Nobody went into the Whispering Wood. The Whispering Wood was dark. One day Bo saw the Whispering Wood.

When to let it stand
    When another wood is meant, or before it has its name.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.counting import times
from proofkit.habits.mentions import mentions_of
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.dictionary import Dictionary, dialect, dictionary
from proofkit.words.frequency import zipf
from proofkit.words.lists import word_set
from proofkit.words.titles import TITLES
from proofkit.words.vocabulary import opens_sentence

NAME = "consistency/made-up-name-capital"
NEEDS = frozenset({Need.TEXT})

_PLAINLY = 2
_COMMONEST = 6.0  # was, had, said: no name ends so
# Once with capitals and once without shows nothing; and many a phrase has them once for emphasis.
_CAPITALS = 2
_LOWER = 3
_OPENERS = word_set(
    """
    and but or so then when where while what who why how if as for in on at of to from with by
    not no his her its my your our their this that these those very two three four five six
    seven eight nine ten both all being poor dear
    """
)
_SMALL = word_set("of the and a in to for")
_DETERMINERS = word_set(
    "the a an this that these those my your his her its our their some any no every each"
)
_WORD_BEFORE = re.compile(r"([\w’'-]+) $")
_EARSHOT = 24  # characters
Forms = Mapping[str, tuple[Span, ...]]


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for each name, on the forms that the book has less often, or that were decided against."""
    decided = {name.lower(): name for name in settings.style.names}
    phrases = {mention.text.lower() for mention in mentions_of(book, analysis)} | set(decided)
    for phrase in sorted(phrase for phrase in phrases if _is_phrase(phrase)):
        yield from _issue(book, _forms(book, phrase), decided.get(phrase))
    known = dictionary(analysis.english)
    for use in analysis.vocabulary.uses.values():
        if use.lower and use.capitals_inside and _is_invented(use.word, known):
            yield from _issue(book, _alike_placed(book, use.spans), decided.get(use.word))


def _is_phrase(phrase: str) -> bool:
    words = phrase.split()
    hyphened = "-" in phrase
    return (
        (len(words) > 1 or hyphened)
        and words[0] not in _OPENERS
        and (hyphened or zipf(words[-1]) < _COMMONEST)
    )


def _is_invented(word: str, known: Dictionary) -> bool:
    """No word of any English, no dialect, and no sound that chimes: tra-la-la."""
    return (
        word.isalpha()
        and not known.knows(word)
        and not known.knows_elsewhere(word)
        and word not in dialect()
        and f"{word}g" not in known.words
    )


def _forms(book: Book, phrase: str) -> Forms:
    """The ways in which the words of a name stand, where the book's usual article stands before them."""
    pattern = re.compile(rf"(?<![\w'’-])(?i:{re.escape(phrase)})(?![\w-])")
    places = (page.span(*m.span()) for page in book.pages for m in pattern.finditer(page.prose))
    return _alike_placed(book, places)


def _alike_placed(book: Book, places: Iterable[Span]) -> Forms:
    """Each form's places that have what stands most often before the capitals: an article, or none."""
    found: dict[tuple[str, str], list[Span]] = defaultdict(list)
    for span in places:
        prose, form = book.page(span.page).prose, book.quote(span)
        before = _before(prose[max(0, span.start - _EARSHOT) : span.start])
        opens = opens_sentence(prose, span.start)
        if before is not None and not _is_shouted(form) and not (opens and " " not in form):
            found[before, form].append(span)
    capitals = {key: spans for key, spans in found.items() if _is_capital(key[1])}
    if not capitals:
        return {}
    usual = max(capitals, key=lambda key: len(capitals[key]))[0]
    return {form: tuple(spans) for (before, form), spans in found.items() if before == usual}


def _is_shouted(form: str) -> bool:
    """Whether a word of it stands in capitals throughout, as in the first words of a chapter."""
    return any(len(word) > 1 and word.isupper() for word in form.split())


def _before(text: str) -> str | None:
    """The article or owner that ``text`` ends with, "" for none; None after another name."""
    match = _WORD_BEFORE.search(text)
    word = match[1] if match else ""
    if word[:1].isupper() and word.lower() not in _DETERMINERS and word[-2:] not in ("'s", "’s"):
        return None
    owned = word[-2:] in ("'s", "’s")
    return word.lower() if word.lower() in _DETERMINERS else "'s" if owned else ""


def _is_capital(form: str) -> bool:
    return all(word[0].isupper() for word in form.split() if word.lower() not in _SMALL)


def _only_opens(book: Book, span: Span, usual: str) -> bool:
    """Whether the place differs by nothing but the capital that the sentence asks for."""
    form = book.quote(span)
    opens = opens_sentence(book.page(span.page).prose, span.start)
    return opens and form[1:] == usual[1:]


def _issue(book: Book, forms: Forms, decided: str | None) -> Iterator[Issue]:
    if not forms or (len(forms) == 1 and decided in (None, *forms)):
        return
    usual = decided or max(forms, key=lambda form: (len(forms[form]), form[0].isupper()))
    count = len(forms.get(usual, ()))
    least = _CAPITALS if usual[0].isupper() else _LOWER
    half = usual[0].isupper() and not _is_capital(usual)  # "Little pig!" opens a speech
    if decided is None and (count < least or half or usual.split()[0].strip(".") in TITLES):
        return
    odd = [s for form, spans in forms.items() if form != usual for s in spans]
    odd = sorted(span for span in odd if not _only_opens(book, span, usual))
    if not odd:
        return
    first, *others = odd
    plain = decided is not None or count >= _PLAINLY * (len(others) + 1)
    yield issue_at(
        book,
        first,
        check=NAME,
        tier=Tier.ERROR if plain else Tier.QUERY,
        message=f"your style sheet has {usual}"
        if decided
        else f"elsewhere {usual} ({times(count)})",
        suggestions=(usual,),
        confidence=0.75 if plain else 0.55,
        related=others,
    )
