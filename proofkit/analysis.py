"""What the engines found out about a book, as plain values that checks can read and tests can build."""

from __future__ import annotations

from dataclasses import dataclass

from proofkit.settings import English
from proofkit.words.vocabulary import Vocabulary


@dataclass(frozen=True, slots=True, kw_only=True)
class Token:
    """A word or a mark as the language model sees it; ``start`` and ``end`` count in the page's text.

    ``lemma``  its dictionary form
    ``tag``    its Penn Treebank tag (VBD, NNP, …)
    ``pos``    its Universal part of speech (VERB, PROPN, …)
    ``dep``    its relation to its head, as the model names it (nsubj, conj, …)
    ``head``   the place of its head among the page's tokens; a root is its own head
    """

    text: str
    start: int
    end: int
    lemma: str
    tag: str
    pos: str
    dep: str
    head: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Sentence:
    """A sentence: characters ``start`` to ``end`` of the page, tokens ``first`` up to, not with, ``last``."""

    start: int
    end: int
    first: int
    last: int


@dataclass(frozen=True, slots=True, kw_only=True)
class PageAnalysis:
    """The tokens (marks included, white space not) and sentences of one page's prose."""

    tokens: tuple[Token, ...] = ()
    sentences: tuple[Sentence, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Match:
    """Something that the grammar engine remarks on one page.

    ``rule`` and ``category`` are the engine's own names, ``message`` its own words; checks sort
    them and speak in ours.
    """

    page: int
    start: int
    end: int
    rule: str
    category: str
    message: str
    replacements: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Analysis:
    """All that checks may know beside the book itself.

    ``pages`` runs beside ``book.pages``; where the language model did not run, every entry is empty.
    """

    english: English
    vocabulary: Vocabulary
    pages: tuple[PageAnalysis, ...] = ()
    matches: tuple[Match, ...] = ()

    def page(self, number: int) -> PageAnalysis:
        """What is known of the page at 1-based place ``number``."""
        return self.pages[number - 1] if number <= len(self.pages) else PageAnalysis()
