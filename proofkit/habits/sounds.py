"""How the book spells its sounds: Whoosh or Woosh, tick-tock or tick tock."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass

from proofkit.analysis import Analysis
from proofkit.book import Book, Page, Span
from proofkit.habits._sound_words import (
    LONG_SOUNDS,
    SOUNDS,
    is_echo,
    is_felt,
    sound_key,
    sound_keys,
)
from proofkit.habits.usage import Usage
from proofkit.words.dictionary import Dictionary, dictionary
from proofkit.words.frequency import zipf
from proofkit.words.two_spellings import family_by_word
from proofkit.words.vocabulary import Vocabulary

_WORD = re.compile(r"(?<![\w'’‑-])[^\W\d_]+(?:[-‑][^\W\d_]+)*(?![\w'’‑-])")
_DRAWN_OUT = re.compile(r"([a-z])\1\1")
_MARKS = re.compile(r"[-‑ \u00a0]+")
# A word that has a sound's key and is used as often is a word of its own: hot, hoot.
_RARE = 2.8


def sound_usages(book: Book, analysis: Analysis) -> tuple[Usage, ...]:
    """Each sound that the book has, with its spellings in lower case and their places.

    ``matter`` is the spelling that the book has most. Exclamations that a voice draws out at will (oh,
    ah, no) are left out; so is a sound that is an ordinary word elsewhere in the book's English, unless
    it is among the known sounds. "Tick tock" is one sound where the book has it joined too.
    """
    finder = _Finder(
        analysis=analysis, known=dictionary(analysis.english), chains=_chains(analysis.vocabulary)
    )
    places: dict[str, dict[str, list[Span]]] = defaultdict(lambda: defaultdict(list))
    for page in book.pages:
        for key, match in finder.on_page(page):
            places[key][_form(match[0])].append(page.span(*match.span()))
    return tuple(
        Usage(
            matter=max(sorted(forms), key=lambda form: len(forms[form])),
            places={form: tuple(sorted(spans)) for form, spans in forms.items()},
        )
        for _, forms in sorted(places.items())
    )


def grows(one: str, other: str) -> bool:
    """Whether the two spellings differ in how long their letters last only: whoosh, whooosh."""
    return one != other and _single(one) == _single(other)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Finder:
    """Looks for sounds; ``chains`` are the echoes that the book joins, without their marks."""

    analysis: Analysis
    known: Dictionary
    chains: frozenset[str]

    def on_page(self, page: Page) -> Iterator[tuple[str, re.Match[str]]]:
        """The page's sounds, each with the key that its other spellings share."""
        for match in LONG_SOUNDS.finditer(page.prose):
            yield sound_key(match[0]), match
        for match in _WORD.finditer(page.prose):
            if LONG_SOUNDS.fullmatch(match[0]):
                continue
            joined = _joined(match[0])
            if joined in self.chains and not self._is_named(match[0]):
                yield joined, match
            elif self._is_sound(match[0]) and not _is_row(match[0]):
                yield sound_key(match[0]), match
        for match in _open_chains(page, self.chains):
            yield _joined(match[0]), match

    def _is_named(self, word: str) -> bool:
        """Whether it is somebody's name: Tik-Tok."""
        parts = _MARKS.split(word.lower())
        return self.analysis.vocabulary.is_name(word) and not set(parts) <= SOUNDS

    def _is_sound(self, word: str) -> bool:
        lower = word.lower()
        if len(lower) < 2 or lower in family_by_word() or is_felt(lower):
            return False
        if lower in SOUNDS:
            return True
        if self.analysis.vocabulary.is_name(word):
            return False
        drawn = _DRAWN_OUT.search(lower) is not None
        if sound_key(lower) in sound_keys():
            return drawn or lower not in self.known.words or zipf(lower) < _RARE
        return drawn and not _is_drawn_word(lower, self.known)


def _is_row(word: str) -> bool:
    """Whether sounds stand in a row with hyphens: zzz-zzz-zzz; not ka-boom, a-choo."""
    first, hyphen, others = word.replace("‑", "-").partition("-")
    return bool(hyphen) and ("-" in others or sound_key(first) in sound_keys() or is_felt(first))


def _is_drawn_word(lower: str, known: Dictionary) -> bool:
    """Whether an ordinary word is drawn out: "pleeease", "sooo"; as long as the speaker feels it."""
    double = re.sub(r"(.)\1{2,}", r"\1\1", lower)
    return _single(lower) in known.words or double in known.words


def _chains(vocabulary: Vocabulary) -> frozenset[str]:
    """All echoes that the book has joined, with a hyphen or as one word: tick-tock, heehee, clip-clop."""
    return frozenset("".join(parts) for word in vocabulary.uses for parts in _echo(word))


def _echo(word: str) -> Iterator[tuple[str, ...]]:
    parts = tuple(_MARKS.split(word))
    if len(parts) > 1:
        if min(map(len, parts)) > 1 and is_echo(parts):
            yield parts
        return
    half = len(word) // 2
    both = word[:half] in SOUNDS and word[half:] in SOUNDS and is_echo((word[:half], word[half:]))
    if len(word) > 3 and len(set(word)) > 1 and (word[:half] == word[half:] or both):
        yield word[:half], word[half:]


def _open_chains(page: Page, chains: frozenset[str]) -> Iterator[re.Match[str]]:
    """The echoes among ``chains`` that the page has apart."""
    if not chains:
        return
    lengths = {len(chain) for chain in chains}
    words = list(re.finditer(r"(?<![\w'’‑-])[^\W\d_]{2,}(?![\w'’‑-])", page.prose))
    for at, first in enumerate(words):
        for last in words[at + 1 : at + 4]:
            between = page.prose[first.start() : last.end()]
            if len(between) > max(lengths) + 3 or not re.fullmatch(r"[\w \u00a0]+", between):
                break
            if _joined(between) in chains:
                whole = re.compile(re.escape(between)).match(page.prose, first.start())
                if whole and not _is_part_of_longer(page.prose, first.start(), last.end()):
                    yield whole


def _is_part_of_longer(text: str, start: int, end: int) -> bool:
    """Whether the first or last word goes on outside: "tick tock tick tock" is no single tick tock."""
    words = text[start:end].lower().split()
    first, last = words[0], words[-1]
    before, after = text[max(0, start - 12) : start].lower(), text[end : end + 12].lower()
    return bool(
        re.search(rf"\b{re.escape(last)} $", before) or re.match(rf" {re.escape(first)}\b", after)
    )


def _joined(text: str) -> str:
    return _MARKS.sub("", text.lower())


def _form(text: str) -> str:
    return re.sub(r"[\u00a0]", " ", text.lower().replace("‑", "-"))


def _single(word: str) -> str:
    """The word with each letter as long as the others."""
    return re.sub(r"(.)\1+", r"\1", word)
