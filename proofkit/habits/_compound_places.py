"""Where the book has words joined, hyphened or apart that may be one compound."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterator, Mapping, Sequence, Set
from dataclasses import dataclass
from itertools import pairwise

from proofkit.analysis import Analysis, PageAnalysis, Token
from proofkit.book import Book, Page, Span
from proofkit.habits._compound_keys import (
    MARKS,
    PREFIXES,
    closed_and_apart,
    hyphened_in,
    key_of,
    not_ours,
    singular,
)
from proofkit.words.dictionary import dictionary
from proofkit.words.lists import word_set

_CHAIN = re.compile(r"(?<![\w'’‑-])[^\W\d_]+(?:[-‑][^\W\d_]+)*(?![\w‑-])")
# After these the two words are a verb and its particle: "look out" beside "a look-out".
_PARTICLES = word_set(
    "up off out in on down away over by back through round around along together ahead about to"
)
_GREETINGS = frozenset({("good", "night"), ("good", "morning"), ("good", "bye"), ("bye", "bye")})
_DETERMINERS = word_set(
    """
    a an the this that these those my your his her its our their every each some any no one two three
    another
    """
)
# An adjective and a noun that also exist as one word with its own sense: a black bird, a blackbird.
_ADJECTIVES = word_set(
    """
    black blue brown green grey gray red white yellow big small high low long short hot cold dark light
    free fresh hard soft sweet wild old young good dead strong common great grand every some any no
    other half single double full dry wet wide deep thick thin fat
    """
)
# These two words never mean an adjective and a noun.
_ALWAYS_ONE = word_set(
    """
    hotdog highchair sweetcorn blackboard whiteboard shortcut sweetheart grandmother grandfather grandma
    grandpa grandson granddaughter grandchild halfway
    """
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """One place of a compound: ``key`` its letters in the singular, ``form`` as it is written there.

    ``shape`` is what stands between its words: "", "-" or " ".
    """

    key: str
    form: str
    shape: str
    span: Span
    before_noun: bool


def places_in(book: Book, analysis: Analysis, wanted: Set[str]) -> Iterator[Place]:
    """Every place of a compound that the book has with a hyphen, or as one word and as two.

    ``wanted`` are keys of compounds that the author decided on: these count wherever they stand.
    """
    known = dictionary(analysis.english)
    hyphened = hyphened_in(analysis.vocabulary, known)
    closed = closed_and_apart(analysis.vocabulary, known)
    keys = {*hyphened, *closed, *(wanted - not_ours())}
    for page in book.pages:
        finder = _Finder(
            page=page,
            own=analysis.page(page.number),
            keys=keys,
            hyphened=hyphened,
            known=known.words,
        )
        yield from finder.places()


@dataclass(frozen=True, slots=True, kw_only=True)
class _Finder:
    """Looks for the compounds ``keys`` on one page."""

    page: Page
    own: PageAnalysis
    keys: Set[str]
    hyphened: Mapping[str, tuple[str, ...]]
    known: Set[str]

    def places(self) -> Iterator[Place]:
        """The page's places, in order; open ones only where the model sees a compound in them."""
        starts = {token.start: at for at, token in enumerate(self.own.tokens)}
        chains = list(_CHAIN.finditer(self.page.prose))
        longest = max((len(parts) for parts in self.hyphened.values()), default=2)
        for at, chain in enumerate(chains):
            if key_of(chain[0]) in self.keys and not _is_shouted_name(chain[0]):
                shape = "-" if "-" in chain[0] or "‑" in chain[0] else ""
                yield self._place(chain.start(), chain.end(), shape)
            for count in range(2, longest + 1):
                run = chains[at : at + count]
                if len(run) == count and self._is_open(run, starts):
                    yield self._place(run[0].start(), run[-1].end(), " ")

    def _place(self, start: int, end: int, shape: str) -> Place:
        text = self.page.text[start:end]
        last = bisect_left(self.own.tokens, end, key=lambda token: token.start) - 1
        return Place(
            key=key_of(text),
            form=singular(MARKS.sub("-" if shape == "-" else " ", text.lower())),
            shape=shape,
            span=self.page.span(start, end),
            # Of three words and more, open ones count only where they are a noun or before one.
            before_noun=len(MARKS.findall(text)) < 2 and last >= 0 and self._is_before_noun(last),
        )

    def _is_before_noun(self, last: int) -> bool:
        tokens = self.own.tokens
        if last + 1 >= len(tokens) or tokens[last + 1].start - tokens[last].end != 1:
            return False
        after = tokens[last + 1]
        # The model may take a word in lower case for a name.
        noun = after.tag in ("NN", "NNS") or (after.pos == "PROPN" and after.text.islower())
        return noun or (after.pos == "ADJ" and self._is_before_noun(last + 1))

    def _is_open(self, run: list[re.Match[str]], starts: Mapping[int, int]) -> bool:
        """Whether the words of ``run``, with single spaces between them, are one compound."""
        text = self.page.prose[run[0].start() : run[-1].end()]
        if "-" in text or "‑" in text or not re.fullmatch(r"\w+(?:[ \u00a0\n]\w+)+", text):
            return False
        key = key_of(text)
        if key not in self.keys:
            return False
        at = [starts.get(match.start()) for match in run]
        if None in at or any(b != a + 1 for a, b in pairwise(at) if a is not None):
            return False
        first = at[0] or 0
        words = tuple(match[0].lower() for match in run)
        return self._does_its_work(words, first)

    def _does_its_work(self, words: tuple[str, ...], first: int) -> bool:
        tokens = self.own.tokens[first : first + len(words)]
        if words[0] in PREFIXES and len(words) == 2:
            return words[0] in ("re", "co", "non", "anti", "pre", "semi", "ultra")
        if words in _GREETINGS:
            return not self._after_determiner(first) and not self._goes_on(first + 1)
        if len(words) > 2:
            return self._after_determiner(first)
        return self._describes(words, first) or self._is_noun(words, tokens, first)

    def _is_noun(self, words: tuple[str, ...], tokens: Sequence[Token], first: int) -> bool:
        """Whether two words are one noun."""
        if words[1] in _PARTICLES or tokens[1].pos not in ("NOUN", "PROPN"):
            return False
        if words[0] in _ADJECTIVES and key_of("".join(words)) not in _ALWAYS_ONE:
            # A black-bird is a blackbird; a black bird need not be, unless the book hyphens it.
            return key_of("".join(words)) in self.hyphened and "".join(words) in self.known
        both_nouns = all(token.tag in ("NN", "NNS", "NNP") for token in tokens)
        return _is_noun_compound(tokens[0], first + 1, self.own) or (
            both_nouns and self._after_determiner(first)
        )

    def _describes(self, words: tuple[str, ...], first: int) -> bool:
        """Whether two words describe a noun after them, as their hyphened like does: a well known tale."""
        last = self.own.tokens[first + 1]
        return (
            key_of("".join(words)) in self.hyphened
            and (last.tag in ("VBN", "VBG", "VBD", "JJ", "NN") or words[1] == "away")
            and self._is_before_noun(first + 1)
            and self._after_determiner(first)
        )

    def _goes_on(self, last: int) -> bool:
        """Whether the words are no greeting but a noun: "good night for owls"."""
        after = self.own.tokens[last + 1] if last + 1 < len(self.own.tokens) else None
        return after is not None and after.pos == "ADP" and after.text.lower() != "to"

    def _after_determiner(self, at: int) -> bool:
        """Whether an article, an owner or a describing word stands before."""
        if at == 0:
            return False
        before = self.own.tokens[at - 1]
        return (
            before.text.lower() in _DETERMINERS
            or before.tag == "POS"
            or before.pos in ("ADJ", "NUM")
        )


def _is_noun_compound(one: Token, on: int, own: PageAnalysis) -> bool:
    """Whether the first noun leans on the second, and is no adjective."""
    return (
        one.tag in ("NN", "NNP", "JJ", "VBG", "VB", "UH")
        and one.dep in ("compound", "nmod", "amod")
        and (one.head == on or own.tokens[on].head == one.head)
    )


def _is_shouted_name(word: str) -> bool:
    """Capitals on the second word too: Far-Away, and not BED-TIME."""
    parts = re.split("[-‑]", word)
    return len(parts) > 1 and parts[1][:1].isupper() and not word.isupper()
