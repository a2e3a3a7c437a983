"""In whose voice a word stands, and whether that voice is written as somebody speaks: dialect, an accent."""

from __future__ import annotations

import re
from bisect import bisect_left, bisect_right
from dataclasses import dataclass

from proofkit.book import Book, Page, Span, blanked
from proofkit.words.dictionary import dialect
from proofkit.words.quotations import quotations_of
from proofkit.words.vocabulary import WORD

# Letters left off before a word ('em, 'ome) or after it (goin', o', wi', yersel').
_CLIPPED = re.compile(
    r"(?:^|[\s\"“‘—-])['’‘](?:em|im|er|is|ere|ad|ave|e|ow|ome|ead|bout|cause|tis|twas|ouse|old|round)\b"
    r"|\b(?:an|o|th|wi|ol|t|no|fu|a|han|cap|awfu|\w+sel|\w\w+in)['’](?=[\s.,!?—]|n\b)",
    re.IGNORECASE,
)
_OWN_WORDS = re.compile(
    r"\b(?:h?ain['’]t|thou|thee|thy|thine|ye|yer|yez|ter|meself|mesel|hisself|oi|ee|git|wot|allus|aye|och|nae"
    r"|wee|lassie|laddie|bairns?|bonny|kirk|frae|auld|oot|aboot|doon|muckle|gude|guid|sair|yus|y['’]all|avast|naw|mon"
    r"|(?:di|ca|was|would|could|is|wi|should|do|does|have|has)nn?a[e]?"
    # Accents: th as d or z, w as v, i as ee.
    r"|d(?:is|at|ey|e|ere|em|ose)|z(?:is|at|e|ey|ere|ose)|v(?:ot|at|as|e|ill|ish|ith|ere|ant)|und|ees|eet)\b",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Voice:
    """What one voice says around a place: all speech of its paragraph, or all that is no speech.

    ``text`` is the paragraph with the other voice blanked; ``at`` and ``end`` are the place in it.
    """

    text: str
    at: int
    end: int
    spoken: bool


def voice_at(book: Book, span: Span) -> Voice:
    """The voice that a place of the story stands in."""
    page, quotations = book.page(span.page), quotations_of(book)
    start, end = _paragraph(page, span.start)
    first = bisect_left(quotations.spoken, Span(page=span.page, start=start, end=0))
    last = bisect_right(quotations.spoken, Span(page=span.page, start=end, end=0))
    spoken = [
        (max(part.start - start, 0), min(part.end, end) - start)
        for part in quotations.spoken[first:last]
    ]
    in_speech = quotations.speaks(span.page, span.start)
    text = page.prose[start:end]
    return Voice(
        text=blanked(text, tuple(_between(spoken, len(text)) if in_speech else spoken)),
        at=span.start - start,
        end=span.end - start,
        spoken=in_speech,
    )


def is_dialect(voice: Voice) -> bool:
    """Whether the voice is somebody's way of speaking.

    A word that novels have only in their characters' mouths is so by itself, but only in speech.
    """
    if _CLIPPED.search(voice.text) or _OWN_WORDS.search(voice.text):
        return True
    return any(
        match.group().lower() in dialect()
        for match in WORD.finditer(voice.text)
        if voice.spoken or match.start() != voice.at
    )


def _paragraph(page: Page, at: int) -> tuple[int, int]:
    place = bisect_right(page.paragraphs, at, key=lambda paragraph: paragraph.start) - 1
    if place < 0:
        return 0, len(page.text)
    return page.paragraphs[place].start, page.paragraphs[place].end


def _between(ranges: list[tuple[int, int]], length: int) -> list[tuple[int, int]]:
    """What the ranges leave over."""
    edges = [0, *(edge for pair in ranges for edge in pair), length]
    return list(zip(edges[::2], edges[1::2], strict=True))
