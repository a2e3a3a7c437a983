"""The sounds and the invented words of a style sheet."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Set
from dataclasses import replace

from proofkit.book import Span
from proofkit.habits.sounds import sound_usages
from proofkit.habits.usage import Usage
from proofkit.stylesheet.ground import Ground, row_of
from proofkit.stylesheet.own_sounds import alone, cried, own_sounds
from proofkit.stylesheet.sheet import Basis, Row
from proofkit.words.confirm import words_to_confirm
from proofkit.words.dictionary import dictionary
from proofkit.words.vocabulary import Use


def sound_rows(ground: Ground) -> tuple[Row, ...]:
    """Every sound with its spelling, in alphabetical order.

    A sound that dictionaries have too (buzz) counts only where it stands alone: "Buzz! Buzz!"
    """
    usages = sound_usages(ground.book, ground.analysis)
    heard = {span for usage in usages for spans in usage.places.values() for span in spans}
    stands_alone = {span for page in ground.book.pages for _word, span in alone(page)}
    names = _names(ground)
    own = own_sounds(ground, heard)
    sounds = [
        *(usage for usage in usages if _is_heard(ground, usage, stands_alone, names)),
        *(Usage(matter=word, places={word: spans}) for word, spans in own.items()),
    ]
    rows = (_sound(ground, usage) for usage in sounds)
    return tuple(sorted((row for row in rows if row), key=lambda row: row.term))


def _names(ground: Ground) -> Set[str]:
    """The names, in lower case; what is only ever cried (Pop!) may as well be a sound."""
    cries = {span for page in ground.book.pages for _word, span in cried(page)}
    return {
        form.lower()
        for one in ground.named
        for form, spans in one.forms.items()
        if not cries.issuperset(spans)
    }


def _is_heard(ground: Ground, usage: Usage, stands_alone: Set[Span], names: Set[str]) -> bool:
    """Whether it is a sound here, and not an ordinary word or a name."""
    if set(usage.places) & names:
        return False
    spans = (span for own in usage.places.values() for span in own)
    return (
        len(usage.places) > 1
        or not dictionary(ground.analysis.english).knows(usage.matter)
        or not stands_alone.isdisjoint(spans)
    )


def _sound(ground: Ground, usage: Usage) -> Row | None:
    words = {word.lower(): word for word in ground.words}
    decided = next((words[form] for form in usage.places if form in words), None)
    row = row_of(usage, decided)
    if row and row.basis is Basis.OPEN:
        return replace(row, term=" or ".join(sorted(usage.places)))
    return row


def invented_rows(ground: Ground, listed: Iterable[Row]) -> tuple[Row, ...]:
    """The words that no dictionary has and that are no names, most used first.

    What stands at a place of the rows ``listed`` is a sound, or a matter of its own.
    """
    vocabulary = ground.analysis.vocabulary
    names = {part.lower() for one in ground.named for form in one.forms for part in form.split()}
    heard = {span for row in listed for span in _all_places(row)}
    found = words_to_confirm(
        ground.book,
        vocabulary,
        dictionary(ground.analysis.english),
        raised=[issue.span for issue in ground.issues],
    )
    uses = ((word.word, vocabulary.use(word.word.strip("'’‘"))) for word in found)
    return tuple(
        _invented(ground, word, use)
        for word, use in uses
        if use
        and not {use.word, use.word.removesuffix("s")} & names
        and heard.isdisjoint(use.spans)
    )


def _invented(ground: Ground, word: str, use: Use) -> Row:
    decided = next((own for own in ground.words if own.lower() == use.word), None)
    return Row(
        term=decided or word,
        form=decided or word,
        basis=Basis.DECIDED if decided else Basis.ALWAYS,
        places=use.spans,
        note=ground.note(decided) if decided else "",
    )


def _all_places(row: Row) -> Iterator[Span]:
    yield from row.places
    for other in row.others:
        yield from other.places
