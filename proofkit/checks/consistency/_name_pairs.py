"""How likely it is that two spellings are one name: by their letters, their sound, and who acts where."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from rapidfuzz.distance import OSA

from proofkit.book import Book, Span
from proofkit.words.alike import alike, plain, same_but_for_accents, sounds_alike
from proofkit.words.dictionary import Dictionary
from proofkit.words.frequency import zipf
from proofkit.words.lists import word_set
from proofkit.words.reporting import SAYING
from proofkit.words.vocabulary import Use

_SHORTEST = 3
_SEVERAL = 3
_OFTEN = 5
# Rarer words and names, by how often English has them, are no more than slips.
_KNOWN_WORD = 2.5
_KNOWN_NAME = 2.9
# Rhyming friends (Tilly, Milly) are told from slips by their first letter, unless it may sound the same.
_SAME_FIRST = (frozenset("ck"), frozenset("jg"), frozenset("sc"), frozenset("sz"), frozenset("pf"))
_MADE_OF = re.compile(r"(?:s|es|n|an|ian|ish|[a-z]?y|[a-z]?ie|[a-z]?ee|[a-z]?o|in|ina|ita|ette)$")
_DETERMINERS = word_set(
    "the a an this that these those my your his her its our their whose some any no every each of"
)
_WORD = re.compile(r"[^\W\d_]+(?:['’\-][^\W\d_]+)*")
_DASHES = tuple("—–-…")
_EARSHOT = 40  # characters


def similar(names: Iterable[Use]) -> Iterator[tuple[Use, Use]]:
    """All pairs that may be one name, by letters alone. Lengths that differ by two are the most."""
    by_length: dict[int, list[Use]] = {}
    for use in names:
        by_length.setdefault(len(use.word), []).append(use)
    for length, group in by_length.items():
        for n, one in enumerate(group):
            for other in (
                *group[n + 1 :],
                *by_length.get(length + 1, ()),
                *by_length.get(length + 2, ()),
            ):
                if may_be_one_name(one.word, other.word):
                    yield one, other


def likelihood(
    book: Book, seldom: Use, usual: Use, words: Dictionary, *, decided: bool = False
) -> float:
    """The share of such pairs that are one name misspelt; 0 where nothing speaks for it.

    ``decided``: the author has decided on ``usual``, which then may be the rarer one.
    """
    if _are_together(book, seldom, usual) or _is_shout(usual):
        return 0.0
    if same_but_for_accents(seldom.word, usual.word):
        return 0.85
    often = decided or usual.count >= max(2, _SEVERAL * seldom.count - 1)
    if not often or _is_made_of(seldom.word, usual.word):
        return 0.0
    if _is_one_of_many(seldom.word, usual.word, words) or _is_broken_off(book, seldom, usual):
        return 0.0
    if is_known(seldom.usual_form, words):
        return _of_a_known_word(book, seldom, usual, words)
    return _of_an_unknown_word(seldom, usual)


def is_known(name: str, words: Dictionary) -> bool:
    """Whether English has the name, or a word that is written so."""
    word = name.lower()
    if words.is_name(name):
        return True
    if word in words.words:
        return zipf(word) >= _KNOWN_WORD
    return len(word) >= _SHORTEST and zipf(word) >= _KNOWN_NAME


def _of_an_unknown_word(seldom: Use, usual: Use) -> float:
    if seldom.count > 1 and not alike(seldom.word, usual.word):
        return 0.0
    long = len(seldom.word) > _SHORTEST
    return 0.8 if seldom.count == 1 and usual.count >= _SEVERAL and long else 0.6


def _of_a_known_word(book: Book, seldom: Use, usual: Use, words: Dictionary) -> float:
    """A name that people really have may be another person, and a word may have its capital by chance."""
    if _has_other_last_vowel(seldom.word, usual.word):
        return 0.0
    apart = not set(seldom.pages) & set(usual.pages)
    if seldom.word not in words.words and sounds_alike(seldom.word, usual.word):
        return 0.5 if apart or seldom.count == 1 else 0.0
    if seldom.count > 1 or not seldom.capitals_inside or usual.count < _SEVERAL:
        return 0.0
    if seldom.word in words.words:
        if _stand_alike(book, seldom, usual):
            return 0.5
        return 0.4 if usual.count >= _OFTEN and _is_bare(book, seldom.spans[0]) else 0.0
    told = apart if words.is_name(seldom.usual_form) else apart or usual.count >= 2 * _OFTEN
    return 0.4 if told and usual.count >= _OFTEN else 0.0


def _is_shout(use: Use) -> bool:
    """Whether it is wholly in capitals, or a drawn-out sound: Aaargh, Brrr."""
    return use.usual_form.isupper() or re.search(r"(.)\1\1", use.word) is not None


def may_be_one_name(one: str, other: str) -> bool:
    """Whether two names in lower case differ by one letter, by accents only, or by two letters that sound alike."""
    if max(len(one), len(other)) < _SHORTEST or one.count("-") != other.count("-"):
        return False
    if same_but_for_accents(one, other):
        return True
    return _same_first(plain(one), plain(other)) and (
        OSA.distance(one, other) == 1
        or (OSA.distance(one, other) == 2 and sounds_alike(one, other))
    )


def _same_first(one: str, other: str) -> bool:
    first = {one[0], other[0]}
    return len(first) == 1 or any(first == same for same in _SAME_FIRST)


def _is_made_of(seldom: str, usual: str) -> bool:
    """Whether the seldom one may be the other's plural, its people or its pet form."""
    if not seldom.startswith(usual):
        return False
    ending = seldom[len(usual) :]
    return _MADE_OF.fullmatch(ending) is not None and ending != usual[-1]


def _is_one_of_many(seldom: str, usual: str, words: Dictionary) -> bool:
    """A pterodactyl among Pterodactyls, and princes beside a Princess."""
    single = seldom.removesuffix("s") if seldom.endswith("s") else seldom
    return usual == seldom + "s" and single in words.words


def _is_broken_off(book: Book, seldom: Use, usual: Use) -> bool:
    """Jo— where Joey is meant."""
    if seldom.count > 1 or not usual.word.startswith(seldom.word):
        return False
    span = seldom.spans[0]
    return book.page(span.page).prose[span.end : span.end + 1] in _DASHES


def _has_other_last_vowel(seldom: str, usual: str) -> bool:
    """Another last vowel makes a man of a woman: Mario, Maria."""
    vowels = {seldom[-1], usual[-1]} <= set("aeioy")
    return vowels and seldom[:-1] == usual[:-1]


def _is_bare(book: Book, span: Span) -> bool:
    """Whether a plain word, and no article or owner, stands before it, as before a name."""
    prose = book.page(span.page).prose
    before = _WORD.findall(prose[max(0, span.start - _EARSHOT) : span.start])
    beside = prose[span.start - 1 : span.start] == " " and prose[span.start - 2 : span.start - 1]
    return bool(before and beside) and before[-1].islower() and before[-1] not in _DETERMINERS


def _stand_alike(book: Book, seldom: Use, usual: Use) -> bool:
    """Whether both have the same neighbour: a title, another name, a verb of speech."""
    return bool(_neighbours(book, seldom.spans) & _neighbours(book, usual.spans))


def _neighbours(book: Book, spans: Iterable[Span]) -> set[tuple[str, str]]:
    """Names and titles before or after, and verbs of speech."""
    found: set[tuple[str, str]] = set()
    for span in spans:
        prose = book.page(span.page).prose
        before = _WORD.findall(prose[max(0, span.start - _EARSHOT) : span.start].rstrip(" ."))
        after = _WORD.findall(prose[span.end : span.end + _EARSHOT])
        beside = (("before", before[-1:]), ("after", after[:1]))
        found |= {
            ("said" if word.lower() in SAYING else side, word.lower())
            for side, words in beside
            for word in words
            if word[0].isupper() or word.lower() in SAYING
        }
    return {("said", "") if side == "said" else (side, word) for side, word in found}


def _are_together(book: Book, one: Use, other: Use) -> bool:
    """Whether they are joined ("Demi and Demo"), or share more than one page."""
    pair = "|".join(re.escape(use.word) for use in (one, other))
    joined = re.compile(rf"(?i)\b({pair})(?:,| and| or|,? and| &| to| with)+ (?:{pair})\b")
    for page in one.pages:
        match = joined.search(book.page(page).prose)
        if match and match[1].lower() != match[0].lower().split()[-1]:
            return True
    return len(set(one.pages) & set(other.pages)) > 1 and min(one.count, other.count) > 1
