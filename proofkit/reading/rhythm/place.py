"""A place that a reader's voice may stumble over, and the stretches of prose to look for it in."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from proofkit.book import Book, Page, Span

WORD = re.compile(r"[^\W\d_]+(?:['’\-‑][^\W\d_]+)*")
_PARAGRAPH = re.compile(r"(?:[^\n]|\n(?![ \t]*\n))+")


class Stumble(StrEnum):
    """What makes a voice stumble."""

    BEGINNINGS = "three sentences in a row begin alike"
    ECHO = "the same word again, close by"
    TWISTER = "a run that twists the tongue"


@dataclass(frozen=True, slots=True, kw_only=True)
class RhythmPlace:
    """One such place: ``span`` is the whole stretch, ``words`` the words in it that do it, in order."""

    kind: Stumble
    span: Span
    words: tuple[Span, ...]


def prose_paragraphs(book: Book) -> Iterator[tuple[Page, int, int]]:
    """Every paragraph of story that runs on, as its page, start and end.

    One that the author broke into lines is verse, a list or a label, and has a rhythm of its own.
    """
    for page in book.story_pages:
        for paragraph in _PARAGRAPH.finditer(page.prose):
            if "\n" not in paragraph.group().strip():
                yield page, *paragraph.span()
