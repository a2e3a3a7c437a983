"""What a check is.

A check is a module ``proofkit/checks/<family>/<pattern>.py`` with

- a docstring, the page its user reads, under these headings: What it finds, Why a reader minds,
  Example, Better, When to let it stand;
- ``NEEDS``, what it reads: ``frozenset({Need.TEXT})`` and the like;
- ``find(book, analysis, settings)``, which yields issues named ``NAME``.

Its name says the pattern found, in words: ``spacing/space-before-stop``.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from enum import StrEnum

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.issue import Issue
from proofkit.settings import Settings


class Need(StrEnum):
    """What a check reads, so that only what is needed is started."""

    TEXT = "text"
    LANGUAGE_MODEL = "language model"
    GRAMMAR_ENGINE = "grammar engine"


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """A check, ready to run. ``handbook`` is the page that its user reads."""

    name: str
    needs: frozenset[Need]
    find: Callable[[Book, Analysis, Settings], Iterable[Issue]]
    handbook: str

    @property
    def family(self) -> str:
        """The folder it lives in: spelling, spacing, speech, …"""
        return self.name.partition("/")[0]
