"""Ask the engines about books: only what the memory lacks, and both engines at the same time."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from types import TracebackType
from typing import Self

from proofkit.analysis import Analysis, Match
from proofkit.book import Book
from proofkit.engines.consult import GrammarConsultation, LanguageConsultation
from proofkit.engines.grammar_engine import GrammarEngine
from proofkit.engines.language_model import LanguageModel
from proofkit.engines.memory import Memory
from proofkit.engines.note import EngineNote
from proofkit.problem import Notice
from proofkit.progress import Progress, silent
from proofkit.settings import English
from proofkit.words.vocabulary import vocabulary_of


class Analyst:
    """Analyses books. A context manager: on leaving it, what was started is ended.

    ``grammar_server`` is the address of a grammar engine that already runs, or None for our own.
    Raises Unusable if that can't be an address. ``progress`` may be called from other threads.
    """

    def __init__(
        self, *, memory: Memory, grammar_server: str | None = None, progress: Progress = silent
    ) -> None:
        self._memory, self._progress = memory, progress
        self._engine = GrammarEngine(address=grammar_server, progress=progress)
        self._model = LanguageModel()
        self._grammar: GrammarConsultation | None = None
        self._asked: Sequence[tuple[Book, English]] | None = None
        self._language: LanguageConsultation | None = None

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        problem: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self._engine.close()
        self._model.close()

    @property
    def engines(self) -> tuple[EngineNote, ...]:
        """What each engine that was asked for did."""
        return tuple(consulted.note for consulted in self._consulted())

    @property
    def notices(self) -> tuple[Notice, ...]:
        """What the author should know about the engines in this run."""
        return tuple(
            Notice(text=f"{consulted.missed} {consulted.trouble}", unchecked=True)
            for consulted in self._consulted()
            if consulted.trouble
        )

    def ask(self, books: Sequence[tuple[Book, English]]) -> None:
        """Send the grammar engine what it must be asked of the books, and return at once.

        ``analyse`` does it too; whoever has something to load meanwhile may ask first.
        """
        self._grammar, self._asked = self._ask_grammar(books), books

    def analyse(
        self, books: Sequence[tuple[Book, English]], *, language_model: bool, grammar_engine: bool
    ) -> list[Analysis]:
        """The books' analyses, in order. What is remembered is not asked, and starts no engine.

        If an engine fails, the analyses lack its part, and ``notices`` says so.
        """
        # The grammar engine works on its own while the language model works here.
        if grammar_engine and self._asked != books:
            self.ask(books)
        self._language = self._ask_language(books) if language_model else None
        if self._grammar:
            self._grammar.wait()
        return [self._analysis(book, english) for book, english in books]

    def _ask_grammar(self, books: Sequence[tuple[Book, English]]) -> GrammarConsultation:
        grammar = GrammarConsultation(self._engine, self._memory, self._progress)
        for english in dict.fromkeys(english for _, english in books):
            pages = [page for book, its in books if its is english for page in book.pages]
            grammar.ask([page.prose for page in pages], english)
        return grammar

    def _ask_language(self, books: Sequence[tuple[Book, English]]) -> LanguageConsultation:
        language = LanguageConsultation(self._model, self._memory, self._progress)
        language.ask([page.prose for book, _ in books for page in book.pages])
        return language

    def _analysis(self, book: Book, english: English) -> Analysis:
        language = self._language
        return Analysis(
            english=english,
            vocabulary=vocabulary_of(book),
            pages=tuple(language.page(page.prose) for page in book.pages) if language else (),
            matches=tuple(self._matches(book, english)),
        )

    def _matches(self, book: Book, english: English) -> Iterator[Match]:
        if self._grammar is None:
            return
        for page in book.pages:
            for remark in self._grammar.remarks(page.prose, english):
                yield Match(
                    page=page.number,
                    start=remark.start,
                    end=remark.end,
                    rule=remark.rule,
                    category=remark.category,
                    message=remark.message,
                    replacements=remark.replacements,
                )

    def _consulted(self) -> Iterator[GrammarConsultation | LanguageConsultation]:
        yield from (consulted for consulted in (self._grammar, self._language) if consulted)
