"""Is this verse? Lines of verse take capitals and leave out stops as they please."""

from __future__ import annotations

import re

from proofkit.book import Book, Page

FUNCTION_WORDS = (
    "He|She|It|They|We|The|A|An|This|That|These|Those|Then|There|But|And|Or|So|When|If|In|On|At|To|Of|"
    "For|With|From|By|As|His|Her|Their|My|Your|Our|Where|While|Which|Who|Until|Because|Not|No|All|Was|Is"
)
_JOINED_LINE = re.compile(rf", (?:{FUNCTION_WORDS})\b (?=[a-z])")
_LINE = re.compile(r"\n")


def in_verse(book: Book) -> bool:
    """Whether a book's lines were joined from verse: commas before such capitals, on page after page."""
    joined = [len(_JOINED_LINE.findall(page.prose)) for page in book.pages if page.prose.strip()]
    return sum(joined) > 2 and 3 * sum(map(bool, joined)) >= len(joined)


def verse_at(page: Page, start: int, end: int) -> bool:
    """Whether the paragraph from ``start`` to ``end`` is set in lines, or reads like joined lines."""
    prose = page.prose[start:end]
    return bool(_LINE.search(prose.strip())) or len(_JOINED_LINE.findall(prose)) > 1
