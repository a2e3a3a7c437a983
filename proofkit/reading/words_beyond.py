"""The words of a book that are beyond its age band, each with what may be done about it.

Left out are names, sounds and the book's own words: those that no dictionary has. A hard word is no
fault in itself. Children learn words from books that are read to them, a word at a time, and one that
is met three times or more, or that the text makes plain, is a gift: ``gift`` says which.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from proofkit.analysis import Analysis, Token
from proofkit.book import Book, Span
from proofkit.habits.sounds import sound_usages
from proofkit.reading.bands import AgeBand
from proofkit.reading.known_words import KnownWords, is_thing, known_words, school_years
from proofkit.reading.shown import is_shown
from proofkit.reading.simpler import simpler_words
from proofkit.settings import English
from proofkit.words.dictionary import dictionary
from proofkit.words.frequency import zipf
from proofkit.words.vocabulary import Use

# How often a child must meet a word to make it their own (a common rule of thumb of teachers).
MET_OFTEN = 3
_SHORTEST = 3  # letters; shorter ones are abbreviations and sounds
_PART = re.compile(r"[^\W\d_]+")
_WORDS = frozenset({"NOUN", "VERB", "ADJ", "ADV"})


@dataclass(frozen=True, slots=True, kw_only=True)
class HardWord:
    """A word that most children of the band don't know.

    ``word``     as the book has it most often, in lower case
    ``spans``    every place of the word in any of its forms, in order
    ``pages``    the pages it stands on, each once
    ``simpler``  words of the same sense and form that the band knows, the best first; often none
    ``why``      what makes it hard, for the author
    ``gift``     why it may well stay: "met 4 times", "shown by its context", "a picture can show it";
                 "" where nothing says so
    """

    word: str
    spans: tuple[Span, ...]
    pages: tuple[int, ...]
    simpler: tuple[str, ...]
    why: str
    gift: str

    @property
    def count(self) -> int:
        """How often the book has it."""
        return len(self.spans)


def words_beyond(book: Book, analysis: Analysis, band: AgeBand) -> tuple[HardWord, ...]:
    """The words beyond the band, those that are no gift first, and of these the rarest.

    Without the language model's tokens the words are found, but none is offered for them.
    """
    known = known_words(band.name)
    tokens = _tokens(analysis)
    lemmas: dict[str, list[Use]] = defaultdict(list)
    for use in _candidates(book, analysis, tokens):
        lemma = _lemma(use, tokens)
        if not known.knows(lemma) and not known.knows(use.word):
            lemmas[lemma].append(use)
    found = [
        _hard_word(book, analysis.english, band, known, lemma, uses, tokens)
        for lemma, uses in lemmas.items()
    ]
    return tuple(sorted(found, key=lambda hard: (hard.gift != "", zipf(hard.word), hard.word)))


def _tokens(analysis: Analysis) -> Mapping[Span, Token]:
    return {
        Span(page=number, start=token.start, end=token.end): token
        for number, page in enumerate(analysis.pages, 1)
        for token in page.tokens
    }


def _candidates(book: Book, analysis: Analysis, tokens: Mapping[Span, Token]) -> Iterator[Use]:
    """The words that a child may be expected to know or not: neither names nor sounds nor inventions."""
    words = dictionary(analysis.english)
    sounds = {form for usage in sound_usages(book, analysis) for form in usage.places}
    for word, use in analysis.vocabulary.uses.items():
        if len(word) < _SHORTEST or not word.isalpha() or word in sounds:
            continue
        if analysis.vocabulary.is_name(word) or not words.knows(word):
            continue
        if _is_word(use, tokens):
            yield use


def _is_word(use: Use, tokens: Mapping[Span, Token]) -> bool:
    """Whether it does a word's work in most places, as far as the language model can tell."""
    found = [token for span in use.spans if (token := tokens.get(span))]
    # What is written in lower case is no name, whatever the model says.
    work = [t.pos in _WORDS or (t.pos == "PROPN" and t.text.islower()) for t in found]
    return not work or sum(work) * 2 > len(work)


def _lemma(use: Use, tokens: Mapping[Span, Token]) -> str:
    lemmas = Counter(token.lemma.lower() for span in use.spans if (token := tokens.get(span)))
    return max(lemmas, key=lambda lemma: (lemmas[lemma], lemma), default=use.word)


def _hard_word(
    book: Book,
    english: English,
    band: AgeBand,
    known: KnownWords,
    lemma: str,
    uses: Iterable[Use],
    tokens: Mapping[Span, Token],
) -> HardWord:
    usual = max(uses, key=lambda use: (use.count, use.word))
    spans = tuple(sorted(span for use in uses for span in use.spans))
    return HardWord(
        word=usual.word,
        spans=spans,
        pages=tuple(dict.fromkeys(span.page for span in spans)),
        simpler=_simpler(book, english, known, usual, tokens),
        why=_why(usual.word, lemma),
        gift=_gift(book, band, lemma, spans),
    )


def _simpler(
    book: Book, english: English, known: KnownWords, use: Use, tokens: Mapping[Span, Token]
) -> tuple[str, ...]:
    """What fits in the first place where it stands in its usual form."""
    span = next((span for span in use.spans if span in tokens), None)
    if span is None:
        return ()
    return simpler_words(tokens[span], book.page(span.page).prose, english, known)


def _why(word: str, lemma: str) -> str:
    years = school_years(lemma) or school_years(word)
    if years:
        return f"on England’s spelling list for {years}"
    share = 10 ** (9 - max(zipf(word), zipf(lemma), 1.0))
    places = len(str(round(share))) - 2
    return f"one word in {round(share, -places):,.0f} of English"


def _gift(book: Book, band: AgeBand, lemma: str, spans: tuple[Span, ...]) -> str:
    if len(spans) >= MET_OFTEN:
        return f"met {len(spans)} times"
    if any(is_shown(book.page(span.page).prose, span, lemma) for span in spans):
        return "shown by its context"
    return "a picture can show it" if band.reading == "read to" and is_thing(lemma) else ""
