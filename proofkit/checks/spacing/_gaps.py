"""What the checks of spacing share."""

from __future__ import annotations

import re

from proofkit.book import Page

_GAP = re.compile(r"(?<=[^\W\d_])([,;:!?]+)(?=[^\W\d_])")
_SENTENCE_GAP = re.compile(r"(?<=[^\W\d_]{2})\.(?=[^\W\d_]{2}|[AI]\b)")


def undisturbed(page: Page, start: int, end: int) -> bool:
    """Whether these characters are all story: no note was blanked among them."""
    return page.text[start:end] == page.prose[start:end]


def spaced(chunk: str) -> str:
    """A run of letters and marks with the spaces it lacks; a sentence after a stop gets its capital."""
    parts = _SENTENCE_GAP.split(_GAP.sub(r"\1 ", chunk))
    return ". ".join([parts[0], *(capitalised(part) for part in parts[1:])])


def capitalised(words: str) -> str:
    """The words with a capital first letter."""
    return words[:1].upper() + words[1:]


def gaps(chunk: str) -> list[int]:
    """Where in the chunk spaces are missing, as places of the marks before them."""
    found = [m.end() - 1 for m in _GAP.finditer(chunk)]
    found += [m.start() for m in _SENTENCE_GAP.finditer(chunk)]
    return sorted(found)
