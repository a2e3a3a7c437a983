"""Runs that twist the tongue: “she sees cheese she”, “the sixth sheep’s shears”.

What trips a tongue is not one sound again and again (alliteration) but two that are made in nearly the
same place and take turns: s and sh, s or f and th, r and l. Counted are the sounds that begin words and
stressed syllables; of words of one syllable the hisses that end them, too, but for the faint ones of
*is* and *was*. A run ends with its sentence, where the reader takes breath. Silent in verse, where it is
sport, in speech, and where the book makes sounds.
"""

from __future__ import annotations

import re
from collections.abc import Container, Iterator, Sequence
from itertools import pairwise

from proofkit.book import Book, Page, Span
from proofkit.reading.rhythm.place import RhythmPlace, Stumble, prose_paragraphs
from proofkit.reading.sentences import sentences
from proofkit.settings import English
from proofkit.words.lists import word_set
from proofkit.words.pronunciations import is_vowel, pronunciations
from proofkit.words.quotations import Quotations

_WORD = re.compile(r"[^\W\d_]+(?:['’][^\W\d_]+)*")
_HISSES = frozenset({"S", "Z", "SH", "CH"})
# Two groups that take turns; sounds of one group are as good as one.
_RIVALS = (
    (frozenset({"S", "Z"}), frozenset({"SH", "CH"})),
    (frozenset({"S", "F"}), frozenset({"TH"})),
    (frozenset({"R"}), frozenset({"L"})),
)
_FAINT = word_set("is was as his has this us")
_TURNS = 3  # from the one to the other and back
_REACH = 6  # words in which they must come
_LEAST = 5  # sounds of both groups


def twisters(
    book: Book, english: English, speech: Quotations, noises: Container[Span] = ()
) -> Iterator[RhythmPlace]:
    """Each run, with the words that hold its sounds. ``noises`` are the sounds that the book makes."""
    for page, start, end in prose_paragraphs(book):
        for first, last in sentences(page.prose[start:end]):
            words = [
                match.span() for match in _WORD.finditer(page.prose, start + first, start + last)
            ]
            yield from _in_sentence(page, words, english, speech, noises)


def _in_sentence(
    page: Page,
    words: Sequence[tuple[int, int]],
    english: English,
    speech: Quotations,
    noises: Container[Span],
) -> Iterator[RhythmPlace]:
    silent = [speech.speaks(page.number, at) or page.span(at, end) in noises for at, end in words]
    sounds = [
        () if mute else _heard(page.prose[at:end], english)
        for mute, (at, end) in zip(silent, words, strict=True)
    ]
    at = 0
    while at < len(words):
        run = _run(sounds, at)
        if run:
            yield _place(page, [words[place] for place in run])
            at = run[-1]
        at += 1


def _heard(word: str, english: English) -> tuple[str, ...]:
    """The consonants of a word that a tongue trips over."""
    ways = pronunciations(word, english)
    if not ways:
        return ()
    sounds = ways[0]
    ends = sum(map(is_vowel, sounds)) == 1 and word.lower() not in _FAINT
    return tuple(
        sound
        for place, sound in enumerate(sounds)
        if not is_vowel(sound)
        and (place == 0 or (ends and sound in _HISSES) or _begins_stressed(sounds, place))
    )


def _begins_stressed(sounds: Sequence[str], place: int) -> bool:
    return any(after[-1] in "12" for after in sounds[place + 1 : place + 2])


def _run(sounds: Sequence[tuple[str, ...]], at: int) -> list[int]:
    """The places of the words of a twister that begins at ``at``; none if none does."""
    for one, other in _RIVALS:
        heard = [
            (place, sound in one)
            for place in range(at, min(at + _REACH, len(sounds)))
            for sound in sounds[place]
            if sound in one or sound in other
        ]
        turns = sum(before[1] != after[1] for before, after in pairwise(heard))
        if heard and heard[0][0] == at and turns >= _TURNS and len(heard) >= _LEAST:
            return list(dict.fromkeys(place for place, _ in heard))
    return []


def _place(page: Page, words: Sequence[tuple[int, int]]) -> RhythmPlace:
    return RhythmPlace(
        kind=Stumble.TWISTER,
        span=page.span(words[0][0], words[-1][1]),
        words=tuple(page.span(*word) for word in words),
    )
