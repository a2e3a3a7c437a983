"""In what dress some words of a page stand: italics, quotation marks, or plain."""

from __future__ import annotations

from proofkit.book import Page

ITALICS, MARKS, PLAIN = FORMS = ("italics", "marks", "plain")

_OPENING = "\"'“‘«"
_CLOSING = "\"'”’»"
_STOPS = ",.!?…—"


def dress_of(page: Page, start: int, end: int) -> str:
    """The dress of the characters ``start`` to ``end``; a stop may stand between them and a closing mark."""
    if any(first < end and start < last for first, last in page.emphasis):
        return ITALICS
    after = page.prose[end : end + 3].lstrip(_STOPS)[:1]
    if start and page.prose[start - 1] in _OPENING and after and after in _CLOSING:
        return MARKS
    return PLAIN
