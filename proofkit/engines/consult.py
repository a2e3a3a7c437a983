"""One run's talk with an engine: what is remembered, what must be asked, and how that went."""

from __future__ import annotations

from collections.abc import Sequence
from concurrent.futures import Future
from dataclasses import dataclass

from proofkit.analysis import PageAnalysis
from proofkit.engines import grammar_engine, language_model
from proofkit.engines.answers import Answers
from proofkit.engines.codec import (
    LAYOUT,
    decoded_page,
    decoded_remarks,
    encoded_page,
    encoded_remarks,
)
from proofkit.engines.grammar_engine import DISABLED_RULES, GrammarEngine
from proofkit.engines.joined import Remark, batches
from proofkit.engines.language_model import LanguageModel, model_version
from proofkit.engines.memory import Memory
from proofkit.engines.note import EngineNote
from proofkit.engines.trouble import EngineTrouble
from proofkit.progress import Progress
from proofkit.settings import English

GRAMMAR_STAGE = "Reading the grammar"
LANGUAGE_STAGE = "Reading the sentences"
REMEMBERED = "remembered from an earlier check"

_BATCH = 64  # pages: an interrupted run remembers those before


class LanguageConsultation:
    """What the language model says of pages. ``trouble`` is the sentence that says why it failed, or ""."""

    missed = "What needs the language model was not checked everywhere."

    def __init__(self, model: LanguageModel, memory: Memory, progress: Progress) -> None:
        self._model, self._progress = model, progress
        self._version = model_version()
        self._ran, self.trouble = False, ""
        self._answers = Answers[PageAnalysis](
            memory=memory,
            kind=language_model.NAME,
            edition=f"{self._version} {LAYOUT}",
            encode=encoded_page,
            decode=decoded_page,
        )

    @property
    def note(self) -> EngineNote:
        """What the model did."""
        return _note(language_model.NAME, self._version, ran=self._ran, trouble=self.trouble)

    def ask(self, texts: Sequence[str]) -> None:
        """Have every text answered, from memory or by the model."""
        lacking = self._answers.lacking(texts)
        try:
            for at in range(0, len(lacking), _BATCH):
                self._progress(LANGUAGE_STAGE, at, len(lacking))
                batch = lacking[at : at + _BATCH]
                self._answers.learn(batch, list(self._model.analyse(batch)))
                self._ran = True
        except EngineTrouble as trouble:
            self.trouble = str(trouble)

    def page(self, text: str) -> PageAnalysis:
        """The analysis of that text; an empty one if the model failed."""
        return self._answers.to(text, PageAnalysis())


@dataclass(frozen=True, slots=True, kw_only=True)
class _Asked:
    """Texts on their way through the grammar engine."""

    texts: Sequence[str]
    answers: Answers[list[Remark]]
    future: Future[list[list[Remark]]]


class GrammarConsultation:
    """What the grammar engine says of pages. ``trouble`` is the sentence that says why it failed, or ""."""

    missed = "Grammar was not checked everywhere."

    def __init__(self, engine: GrammarEngine, memory: Memory, progress: Progress) -> None:
        self._engine, self._memory, self._progress = engine, memory, progress
        self._version = ""
        self._ran, self.trouble = False, ""
        self._answers: dict[English, Answers[list[Remark]]] = {}
        self._asked: list[_Asked] = []

    @property
    def note(self) -> EngineNote:
        """What the engine did."""
        return _note(grammar_engine.NAME, self._version, ran=self._ran, trouble=self.trouble)

    def ask(self, texts: Sequence[str], english: English) -> None:
        """Hand in what is not remembered; ``wait`` brings the answers."""
        try:
            answers = self._answers_in(english)
        except EngineTrouble as trouble:
            self.trouble = str(trouble)
            return
        for batch in batches(answers.lacking(texts)):
            future = self._engine.check(batch, english)
            self._asked.append(_Asked(texts=batch, answers=answers, future=future))

    def wait(self) -> None:
        """Wait for all answers that are on their way."""
        total = sum(len(asked.texts) for asked in self._asked)
        done = 0
        for asked in self._asked:
            self._progress(GRAMMAR_STAGE, done, total)
            try:
                asked.answers.learn(asked.texts, asked.future.result())
                self._ran = True
            except EngineTrouble as trouble:
                self.trouble = str(trouble)
            done += len(asked.texts)
        self._asked.clear()

    def remarks(self, text: str, english: English) -> list[Remark]:
        """The remarks on that text; none if the engine failed."""
        answers = self._answers.get(english)
        return answers.to(text, []) if answers else []

    def _answers_in(self, english: English) -> Answers[list[Remark]]:
        if english not in self._answers:
            self._version = self._version or self._engine.version()
            asked_for = f"{english.code} without {','.join(DISABLED_RULES)}"
            self._answers[english] = Answers[list[Remark]](
                memory=self._memory,
                kind=grammar_engine.NAME,
                edition=f"{self._version} {LAYOUT} {asked_for}",
                encode=encoded_remarks,
                decode=lambda value, _text: decoded_remarks(value),
            )
        return self._answers[english]


def _note(name: str, version: str, *, ran: bool, trouble: str) -> EngineNote:
    return EngineNote(
        name=name, version=version, ran=ran, note=trouble or ("" if ran else REMEMBERED)
    )
