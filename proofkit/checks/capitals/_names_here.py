"""Which words are names in this book, and where one of them stands without its capital."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.capitals._place import Place, every_place, places_of
from proofkit.words.bare_nouns import bare_nouns
from proofkit.words.dictionary import Dictionary, dictionary
from proofkit.words.frequency import zipf
from proofkit.words.lists import word_set
from proofkit.words.vocabulary import Use

_TIMES = 3  # as often with the capital as without
_LETTERS = 3
_RARE = 2.6  # Zipf value
# A noun met so often with an article, and so seldom without, wants one: the exception is a name.
_MET = 30
_SELDOM = 0.05
_DETERMINERS = word_set(
    "a an the this that these those my your his her its our their some any no every each another"
)
# Adjectives that books set before names either way: poor Pip, Old Pip.
_EITHER_WAY = word_set(
    "old ole poor dear little good great big young new the a an my your his her our their and or of in on to at"
    " for with by from said cried asked oh o ah yes no but then so if when as is was are were saint mr mrs"
)
_NOUNS = frozenset(("NN", "NNP"))
_BEFORE_BARE = frozenset(("IN", "CC", "VBD", "VBZ", "VBP", "VB", "RB", "UH", "WRB", "WP", "MD"))
_JOINED = frozenset(("NN", "NNS", "NNP", "NNPS", "JJ"))  # salt and pepper
_FINITE = frozenset(("VBD", "VBZ", "MD"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Slip:
    """A place without its capital, how it should read, and the name that the book has elsewhere."""

    span: Span
    reading: str
    elsewhere: str
    times: int
    sure: float


def strangers(book: Book, analysis: Analysis) -> Iterator[Slip]:
    """Words that are names in this book and no ordinary words."""
    known = dictionary(analysis.english)
    for use in analysis.vocabulary.uses.values():
        capital = sum(
            n for form, n in use.forms.items() if form[0].isupper() and not form.isupper()
        )
        name = known.as_name(use.word) is not None
        if not use.lower or capital < max(1 if name else 2, _TIMES * use.lower - 1 - name):
            continue
        if len(use.word) < _LETTERS or _is_ordinary(use.word, known):
            continue
        yield from _of_stranger(book, analysis, use, capital)


def _is_ordinary(word: str, known: Dictionary) -> bool:
    """Whether people use it as a word: the dictionary has some that hardly anybody does (*jip*)."""
    return (word in known.words or word in known.elsewhere) and (
        zipf(word) > _RARE or bare_nouns().knows(word)
    )


def _of_stranger(book: Book, analysis: Analysis, use: Use, capital: int) -> Iterator[Slip]:
    places = list(places_of(book, analysis, use.word))
    with_article = [p for p in places if p.token.text[0].isupper() and p.before in _DETERMINERS]
    for place in places:
        if not place.token.text.islower() or not place.alone():
            continue
        if place.before in _DETERMINERS and not with_article:
            continue
        if not use.capitals_inside and not _is_subject_of(place, 1):
            continue
        name = use.word.capitalize()
        yield Slip(
            span=place.span,
            reading=name,
            elsewhere=name,
            times=capital,
            sure=0.9 if capital > 2 else 0.75,
        )


def pairs(book: Book, analysis: Analysis) -> Iterator[Slip]:
    """Names of two words, with one of the two capitals missing."""
    both: Counter[tuple[str, str]] = Counter()
    half: dict[tuple[str, str], list[tuple[Place, bool]]] = defaultdict(list)
    for place in every_place(book, analysis):
        if (pair := _pair_at(place)) is None:
            continue
        first, second = place.token.text.istitle(), place.tokens[place.at + 1].text.istitle()
        if first and second:
            both[pair] += 1
        elif first or second:
            half[pair].append((place, second))
    for pair, places in half.items():
        if both[pair] < 1 or both[pair] < 2 * len(places) - 1:
            continue
        for place, first_small in places:
            yield _of_pair(place, pair, first_small=first_small, times=both[pair])


def _pair_at(place: Place) -> tuple[str, str] | None:
    """Two words that may be one name here, in lower case; a capital that a sentence asks for is no sign."""
    after = place.near(1)
    if after is None or not (place.token.text.isalpha() and after.text.isalpha()):
        return None
    first, second = place.token.text, after.text
    pair = first.lower(), second.lower()
    if _EITHER_WAY & set(pair) or min(map(len, pair)) < _LETTERS:
        return None
    if place.opens and not (second.islower() and _is_subject_of(place, 2)):
        return None
    return None if first.islower() and _describes(place) else pair


def _describes(place: Place) -> bool:
    """A big brown Rat: the word says what somebody is like, who needn't be the Brown Rat."""
    before = place.near(-1)
    return before is not None and (before.tag == "JJ" or before.text.lower() in ("a", "an"))


def _is_subject_of(place: Place, by: int) -> bool:
    """Whether a finite verb stands so many words on."""
    after = place.near(by)
    return after is not None and after.tag in _FINITE


def _of_pair(place: Place, pair: tuple[str, str], *, first_small: bool, times: int) -> Slip:
    token = place.token if first_small else place.tokens[place.at + 1]
    return Slip(
        span=place.page.span(token.start, token.end),
        reading=token.text.capitalize(),
        elsewhere=" ".join(word.capitalize() for word in pair),
        times=times,
        sure=0.85 if times > 1 else 0.55,
    )


def kinds(book: Book, analysis: Analysis) -> Iterator[Slip]:
    """Ordinary nouns that name a character here, where grammar says that he is meant."""
    known = dictionary(analysis.english)
    for use in analysis.vocabulary.uses.values():
        if not use.lower or use.capitals_inside < 2 or use.word not in known.words:
            continue
        places = [p for p in places_of(book, analysis, use.word) if p.alone()]
        for with_the in (True, False):
            yield from _of_kind([p for p in places if _stands(p) is with_the], with_the=with_the)


def _of_kind(places: Sequence[Place], *, with_the: bool) -> Iterator[Slip]:
    capital = [p for p in places if p.token.text.istitle() and not p.opens]
    small = [p for p in places if p.token.text.islower()]
    if not with_the:
        small = [p for p in small if _only_a_name(p)]
    if not small or len(capital) < max(2, _TIMES * len(small) - 1):
        return
    for place in small:
        name = place.token.text.capitalize()
        yield Slip(
            span=place.span,
            reading=name,
            elsewhere=f"the {name}" if with_the else name,
            times=len(capital),
            sure=0.7 if len(capital) > 3 else 0.55,
        )


def _stands(place: Place) -> bool | None:
    """True after "the", False with nothing that says which before it, None elsewhere."""
    before, after = place.near(-1), place.near(1)
    if after is not None and (after.tag.startswith("NN") or after.text == "of"):
        return None
    if before is None:
        return False
    if before.text.lower() == "the":
        return True
    bare = before.text.lower() not in _DETERMINERS and before.tag in _BEFORE_BARE
    return False if bare else None


def _only_a_name(place: Place) -> bool:
    """Whether a bare noun here can only be a name: one that acts alone, or a noun that wants an article."""
    before = place.near(-1)
    if place.token.tag not in _NOUNS or (before is not None and before.tag in ("NNS", "NNP")):
        return False
    if before is not None and before.tag == "CC" and place.tokens[place.at - 2].tag in _JOINED:
        return False
    if _is_subject_of(place, 1):
        return before is None or before.tag not in ("IN", "TO")
    bare, determined = bare_nouns().counts.get(("noun", place.token.text), (0, 0))
    return determined > _MET and bare < _SELDOM * determined
