"""An engine's answers to texts: those given in this run, and those remembered from earlier ones."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Iterable, Sequence
from typing import Generic, TypeVar

import msgspec

from proofkit.engines.memory import Memory

_Answer = TypeVar("_Answer")


class Answers(Generic[_Answer]):
    """What one engine said about texts.

    ``edition`` names all that an answer hangs on beside the text: the engine, its version, what it
    was asked to look for, the English.
    """

    def __init__(
        self,
        *,
        memory: Memory,
        kind: str,
        edition: str,
        encode: Callable[[_Answer], bytes],
        decode: Callable[[bytes, str], _Answer],
    ) -> None:
        self._memory, self._kind = memory, kind
        self._seed = hashlib.sha256(edition.encode())
        self._encode, self._decode = encode, decode
        self._known: dict[str, _Answer] = {}

    def lacking(self, texts: Iterable[str]) -> list[str]:
        """Recall what is remembered; return the texts still to be asked, each once.

        A text without a visible character has nothing to be asked about.
        """
        keys = {text: self._key(text) for text in texts if text.strip()}
        kept = self._memory.recall_many(self._kind, keys.values())
        for text, key in keys.items():
            if key in kept:
                self._recall(text, kept[key])
        return [text for text in keys if text not in self._known]

    def learn(self, texts: Sequence[str], answers: Sequence[_Answer]) -> None:
        """Take in the engine's answers to some texts, and remember them."""
        new = dict(zip(texts, answers, strict=True))
        self._known |= new
        self._memory.remember_many(
            self._kind, {self._key(text): self._encode(answer) for text, answer in new.items()}
        )

    def to(self, text: str, otherwise: _Answer) -> _Answer:
        """The answer to that text; ``otherwise`` if there is none."""
        return self._known.get(text, otherwise)

    def _recall(self, text: str, value: bytes) -> None:
        try:
            self._known[text] = self._decode(value, text)
        except (msgspec.MsgspecError, LookupError, ValueError):
            return  # damaged: it is asked again

    def _key(self, text: str) -> bytes:
        key = self._seed.copy()
        key.update(text.encode("utf-8", "surrogatepass"))
        return key.digest()
