"""How the book spells its sounds: Whoosh or Woosh, tick-tock or tick tock."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Page, Span
from proofkit.habits._sound_words import SOUNDS, is_echo, is_felt, sound_key
from proofkit.habits.usage import Usage
from proofkit.words.dictionary import Dictionary, dictionary
from proofkit.words.two_spellings import family_by_word

_WORD = re.compile(r"(?<![\w'’‑-])[^\W\d_]+(?:[-‑][^\W\d_]+)*(?![\w'’‑-])")
_DRAWN_OUT = re.compile(r"([a-z])\1\1")
_PARTS = re.compile(r"[-‑ \u00a0]+")


def sound_usages(book: Book, analysis: Analysis) -> tuple[Usage, ...]:
    """Each sound that the book has, with its spellings in lower case and their places.

    ``matter`` is the spelling that the book has most. Exclamations that a voice draws out at will (oh,
    ah, no) are left out; so is a sound that is an ordinary word elsewhere in the book's English, unless
    it is among the known sounds. "Tick tock" is one sound where the book has it with a hyphen too.
    """
    known = dictionary(analysis.english)
    keys = {sound_key(sound) for sound in SOUNDS}
    chains = _chains(book)
    places: dict[str, dict[str, list[Span]]] = defaultdict(lambda: defaultdict(list))
    for page in book.pages:
        for key, match in _on_page(page, keys, chains, known, analysis):
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
    return re.sub(r"(.)\1+", r"\1", one) == re.sub(r"(.)\1+", r"\1", other)


def _on_page(
    page: Page, keys: set[str], chains: set[str], known: Dictionary, analysis: Analysis
) -> Iterator[tuple[str, re.Match[str]]]:
    for match in _WORD.finditer(page.prose):
        if _PARTS.search(match[0]):
            if _chain_key(match[0]) in chains:
                yield _chain_key(match[0]), match
        elif _is_sound(match[0], keys, known, analysis):
            yield sound_key(match[0]), match
        elif match[0].lower() in chains:
            yield match[0].lower(), match
    for match in _open_chains(page, chains):
        yield _chain_key(match[0]), match


def _is_sound(word: str, keys: set[str], known: Dictionary, analysis: Analysis) -> bool:
    lower = word.lower()
    if len(lower) < 2 or lower in family_by_word() or is_felt(lower):
        return False
    if analysis.vocabulary.is_name(word) and lower not in SOUNDS:
        return False
    if lower in SOUNDS:
        return True
    drawn = _DRAWN_OUT.search(lower) is not None
    if sound_key(lower) in keys:
        return drawn or lower not in known.words
    return drawn and not _is_drawn_word(lower, known)


def _is_drawn_word(lower: str, known: Dictionary) -> bool:
    """Whether an ordinary word is drawn out: "pleeease", "sooo"; as long as the speaker feels it."""
    single = re.sub(r"(.)\1+", r"\1", lower)
    double = re.sub(r"(.)\1{2,}", r"\1\1", lower)
    return single in known.words or double in known.words


def _chains(book: Book) -> set[str]:
    """Keys of all echoes that the book has with a hyphen: tick-tock, choo-choo, clip-clop."""
    found = set()
    for page in book.pages:
        for match in _WORD.finditer(page.prose):
            parts = tuple(_PARTS.split(match[0].lower()))
            if len(parts) > 1 and min(map(len, parts)) > 1 and is_echo(parts):
                found.add("".join(parts))
    return found


def _open_chains(page: Page, chains: set[str]) -> Iterator[re.Match[str]]:
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
            if _chain_key(between) in chains:
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


def _chain_key(text: str) -> str:
    return _PARTS.sub("", text.lower())


def _form(text: str) -> str:
    return re.sub(r"[\u00a0]", " ", text.lower().replace("‑", "-"))
