"""The A to Z of a style sheet: words that could be written in another way, and how this book writes them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import replace
from math import log10

from proofkit.book import Span
from proofkit.habits.compounds import BEFORE_NOUN, compound_usages, decided_compound
from proofkit.habits.spellings import decided_spelling, spelling_usages
from proofkit.habits.usage import Usage
from proofkit.stylesheet.capitals import capital_rows
from proofkit.stylesheet.ground import Ground, row_of
from proofkit.stylesheet.sheet import Basis, Row
from proofkit.words.alike import plain
from proofkit.words.frequency import zipf
from proofkit.words.two_spellings import family_by_word
from proofkit.words.vocabulary import WORD, Use

_BEFORE_NOUN = BEFORE_NOUN.strip(" ()")
# A spelling less than a third as common as the book's is not one that anybody would change to.
_SELDOM = log10(3)


def word_rows(ground: Ground, listed: Iterable[Row]) -> tuple[Row, ...]:
    """Every word worth writing down, each once; those of the rows ``listed`` are left out.

    A word that every dictionary has in just this form is not: only compounds with a hyphen or in two
    ways, words with two accepted spellings, with an accent, with and without a capital, and what the
    author decided.
    """
    taken = {_letters(row.form or row.term) for row in listed}
    rows: dict[str, Row] = {}
    found = (
        *_compounds(ground),
        *_spellings(ground),
        *_accented(ground),
        *capital_rows(ground),
        *_decided(ground),
    )
    for row in found:
        letters = _letters(row.form or row.term)
        if letters not in taken:
            rows.setdefault(f"{letters} {row.note == _BEFORE_NOUN}", row)
    return tuple(rows.values())


def in_alphabet(rows: Iterable[Row]) -> list[Row]:
    """The rows by their words, whatever hyphens, capitals and accents these have."""
    return sorted(rows, key=lambda row: (_letters(row.form or row.term), row.term))


def _compounds(ground: Ground) -> Iterator[Row]:
    words = ground.words
    for usage in compound_usages(ground.book, ground.analysis, words):
        decided = decided_compound(usage.matter, words)
        note = _BEFORE_NOUN if usage.matter.endswith(BEFORE_NOUN) else ground.note(decided or "")
        row = row_of(usage, _as_decided(decided, words), note=note)
        if row and row.basis is Basis.OPEN:
            yield replace(row, term=" or ".join(sorted(usage.places)))
        elif row:
            yield row


def _spellings(ground: Ground) -> Iterator[Row]:
    """Words with two accepted spellings; not those of which one is hardly ever seen."""
    # Granny is decided as a name, not as a spelling.
    words = tuple(word for word in ground.words if word.islower())
    for usage in spelling_usages(ground.book, ground.analysis):
        row = row_of(usage, decided_spelling(usage.matter, words))
        rivals = [form for form in family_by_word()[usage.matter].forms if row and form != row.form]
        near = [form for form in rivals if row and zipf(form) > zipf(row.form) - _SELDOM]
        if row and row.basis is Basis.OPEN:
            yield replace(row, term=" or ".join(sorted(usage.places)))
        elif row and (near or len(usage.places) > 1 or row.basis is Basis.DECIDED):
            yield replace(row, note=f"not {' or '.join(near or rivals)}")


def _accented(ground: Ground) -> Iterator[Row]:
    """Words with an accent somewhere in the book, and the same words without it."""
    for word, use in ground.analysis.vocabulary.uses.items():
        if word.isascii() or plain(word) == word or ground.analysis.vocabulary.is_name(word):
            continue
        bare = ground.analysis.vocabulary.use(plain(word))
        forms = {use.word: _sound(ground, use), plain(word): bare.spans if bare else ()}
        places = {form: spans for form, spans in forms.items() if spans}
        decided = next((w for w in ground.words if plain(w.lower()) == plain(word)), None)
        row = row_of(Usage(matter=word, places=places), decided)
        if row:
            yield row


def _sound(ground: Ground, use: Use) -> tuple[Span, ...]:
    """Where the word stands and no check calls it misspelt."""
    return tuple(s for s in use.spans if not ground.issue_at(s, ("spelling", "marks")))


def _decided(ground: Ground) -> Iterator[Row]:
    """The author's words, with their places whatever hyphens, accents and capitals they have there."""
    wanted = {_letters(word): word for word in ground.words}
    places: dict[str, dict[str, list[Span]]] = defaultdict(lambda: defaultdict(list))
    for page in ground.book.pages:
        for match in WORD.finditer(page.prose):
            word = wanted.get(_letters(match.group()))
            if word:
                form = match.group() if _has_own_capitals(word) else match.group().lower()
                places[word][form].append(page.span(*match.span()))
    for word in ground.words:
        found = {form: tuple(spans) for form, spans in places[word].items()}
        note = ground.note(word) if found else "not in this draft"
        row = row_of(Usage(matter=word, places=found), word, note=note)
        if row:
            yield row


def _as_decided(form: str | None, words: tuple[str, ...]) -> str | None:
    """The form with the capitals that the author gave it."""
    return next((word for word in words if word.lower() == form), form)


def _has_own_capitals(word: str) -> bool:
    return word != word.lower()


def _letters(word: str) -> str:
    """What a word is alphabetised by: its letters, without hyphens, spaces, accents and capitals."""
    return "".join(letter for letter in plain(word.lower()) if letter.isalpha())
