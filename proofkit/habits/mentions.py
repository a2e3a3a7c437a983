"""Where a book names somebody or something: runs of words with capitals that no sentence asks for."""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from proofkit.analysis import Analysis
from proofkit.book import Book, Page, Span
from proofkit.words.alike import plain
from proofkit.words.dictionary import Dictionary, dictionary
from proofkit.words.frequency import zipf
from proofkit.words.lists import word_set
from proofkit.words.titles import KIN_NAMES, TITLES
from proofkit.words.vocabulary import WORD, Vocabulary, opens_sentence

# Capitals that English gives to other words than names, or that only call out.
_NO_NAMES = word_set(
    """
    i i'm i'll i'd i've monday tuesday wednesday thursday friday saturday sunday january february
    march april may june july august september october november december christmas easter
    god lord heaven english french german spanish italian dutch latin greek russian american
    british african indian chinese japanese irish welsh scottish scotch european swahili zulu
    oh o ah aha ha hey hi hello ok okay yes no yeah well please sir madam miss ma'am amen hurrah
    hooray bravo goodbye tv mr mrs ms dr the a an chapter part
    """
)
_WITH_POINT = word_set("mr mrs ms dr st prof capt rev")
_CLOSED = frozenset("INTJ PRON DET ADP CCONJ SCONJ AUX NUM PART".split())
_JOINS = re.compile(r" | (?:of|of the|the|of a) |\. ?")
_POSSESSIVE = re.compile(r"['’]s$")
_COMMON = 3.5
_TWICE = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Mention:
    """One place where a name stands; a possessive's ending is left off.

    ``words``  its words as written, small ones (of, the) included
    """

    words: tuple[str, ...]
    span: Span

    @property
    def text(self) -> str:
        """The name as it stands here."""
        return " ".join(self.words)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Run:
    words: tuple[re.Match[str], ...]
    opens: bool  # whether its first capital may be the sentence's

    @property
    def key(self) -> tuple[str, ...]:
        return tuple(_bare(word.group()) for word in self.words)


def mentions_of(book: Book, analysis: Analysis) -> tuple[Mention, ...]:
    """Every mention, in the book's order.

    A word at a sentence's beginning counts where the book shows elsewhere that it is a name, where it is
    a kin word (Grandpa) without an article, or no English word at all and comes again.
    """
    names = _Names(analysis)
    runs = [(page, run) for page in book.pages for run in _runs(page.prose)]
    sure = {run.key for _, run in runs if not run.opens}
    found = (mention for page, run in runs for mention in _read(page, run, sure, names))
    return tuple(sorted(found, key=lambda mention: mention.span))


class _Names:
    """What the book and the dictionary know of single words with a capital."""

    def __init__(self, analysis: Analysis) -> None:
        self._vocabulary: Vocabulary = analysis.vocabulary
        self._dictionary: Dictionary = dictionary(analysis.english)
        self._closed = _closed_words(analysis)
        self._plain = frozenset(
            plain(use.word) for use in analysis.vocabulary.names if plain(use.word) != use.word
        )

    def takes(self, word: str) -> bool:
        """Whether the word alone can be a name in this book."""
        lower = word.lower()
        use = self._vocabulary.use(word)
        if use is None or lower in _NO_NAMES or len(word) < _TWICE or word.isupper():
            return False
        if lower in self._closed and self._is_common(lower):
            return False
        if use.capitals_inside:
            return use.capitals_inside > use.lower
        if lower in KIN_NAMES or plain(lower) in self._plain:
            return not use.lower
        return (
            not use.lower
            and use.count >= _TWICE
            and not self._is_common(lower)
            and re.search(r"(.)\1\1", lower) is None
            and (self._dictionary.is_name(word) or not self._dictionary.knows(word))
        )

    def _is_common(self, word: str) -> bool:
        return word in self._dictionary.words and zipf(word) >= _COMMON


def _closed_words(analysis: Analysis) -> frozenset[str]:
    """Words that the language model mostly takes for small words or calls, whatever their capitals."""
    kinds: dict[str, Counter[bool]] = defaultdict(Counter)
    for page in analysis.pages:
        for token in page.tokens:
            if token.text[:1].isupper():
                kinds[token.text.lower()][token.pos in _CLOSED] += 1
    return frozenset(word for word, kind in kinds.items() if kind[True] > kind[False])


def _runs(prose: str) -> Iterator[_Run]:
    """Capitalised words side by side: Old Mr. Tock, Winnie of the Wood. A possessive ends a run."""
    run: list[re.Match[str]] = []
    for word in WORD.finditer(prose):
        if not word.group()[0].isupper():
            continue
        if run and not _goes_on(prose, run[-1], word):
            yield _Run(words=tuple(run), opens=opens_sentence(prose, run[0].start()))
            run = []
        run.append(word)
    if run:
        yield _Run(words=tuple(run), opens=opens_sentence(prose, run[0].start()))


def _goes_on(prose: str, last: re.Match[str], word: re.Match[str]) -> bool:
    between = prose[last.end() : word.start()]
    if _POSSESSIVE.search(last.group()) or not _JOINS.fullmatch(between):
        return False
    if between.startswith("."):
        return last.group().lower() in _WITH_POINT or len(last.group()) == 1
    return True


def _read(page: Page, run: _Run, sure: set[tuple[str, ...]], names: _Names) -> Iterator[Mention]:
    """The run as one mention, without what is only a sentence's capital; nothing if no name is left."""
    words = list(run.words)
    if run.opens and run.key not in sure:
        while words and not _begins_a_name(words, names):
            words = words[1:]
    words = _without_strays(words)
    if not words:
        return
    if len(words) == 1 and not names.takes(_bare(words[0].group())):
        return
    start, end = words[0].start(), words[-1].end()
    text = page.prose[start:end]
    text = _POSSESSIVE.sub("", text)
    yield Mention(words=tuple(text.split()), span=page.span(start, start + len(text)))


def _begins_a_name(words: Sequence[re.Match[str]], names: _Names) -> bool:
    word = _bare(words[0].group())
    if len(words) > 1 and word.lower() in TITLES | KIN_NAMES:
        return True
    return names.takes(word)


def _without_strays(words: list[re.Match[str]]) -> list[re.Match[str]]:
    """Calls and the like cut from the ends: "Oh Tom", "English Tom"."""
    while words and _strays(words[0]) and not (len(words) > 1 and _is_title(words[0])):
        words = words[1:]
    while words and _strays(words[-1]):
        words = words[:-1]
    return words


def _strays(word: re.Match[str]) -> bool:
    bare = _bare(word.group())
    return bare.lower() in _NO_NAMES or (bare.isupper() and len(bare) > 1)


def _is_title(word: re.Match[str]) -> bool:
    return word.group().lower() in TITLES


def _bare(word: str) -> str:
    return _POSSESSIVE.sub("", word)
