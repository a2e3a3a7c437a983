"""A measured picture book, made by hand: heavy, light and empty spreads, a hard word and a gift."""

from __future__ import annotations

import re
from dataclasses import replace

from proofkit.book import Book, Span
from proofkit.reading.measure import measure
from proofkit.reading.phonics import decodable
from proofkit.reading.verse.find import verse_of
from proofkit.reading.words_beyond import HardWord
from proofkit.reading_report import ReadingReport, reading_report_of
from proofkit.settings import English
from tests.marked import book_of

LINE = "The heron stood in the water and waited for a fish. "  # eleven words
LONG = f"The heron {'and the heron ' * 15}waited."  # 48 words
VERSE = (
    "The heron stood beside the pool\nand dipped her toes to keep them cool.\n"
    "She saw a fish, she saw a frog,\nshe saw the moon upon a log."
)


def book(
    *texts: str, spreads: bool = True, paginated: bool = True, title: str = "The Heron"
) -> Book:
    """A book of one page to a spread, or of pages alone."""
    made = replace(book_of(*texts), path="heron draft.docx", title=title, paginated=paginated)
    if not spreads:
        return made
    pages = (replace(p, spread=p.number, label=f"Spread {p.number}") for p in made.pages)
    return replace(made, pages=tuple(pages))


def report(
    of: Book | None = None, *, age_band: str = "picture", remarks: tuple[str, ...] = ()
) -> ReadingReport:
    """The report on the heron's book: three heavy spreads of twelve, an empty one, a long sentence."""
    of = of or book(
        *(LINE * lines for lines in (3, 2, 3)),
        f"{LINE * 8}A sieve hung there.",
        LINE * 7,
        LINE * 7,
        "",
        f"{LONG} {LINE}",
        *(LINE * lines for lines in (2, 3, 1)),
        "The lantern went out.",
    )
    return reading_report_of(
        of,
        measure(of),
        english=English.BRITISH,
        age_band=age_band,
        words_beyond=(
            hard(of, "sieve", ("net",)),
            hard(of, "lantern", gift="a picture can show it"),
        ),
        phonics=decodable(of, 5) if age_band == "early-reader" else None,
        verse=verse_of(of, English.BRITISH),
        remarks=remarks,
    )


def hard(of: Book, word: str, simpler: tuple[str, ...] = (), gift: str = "") -> HardWord:
    """A hard word wherever it stands."""
    spans = tuple(
        Span(page=page.number, start=found.start(), end=found.end())
        for page in of.pages
        for found in re.finditer(rf"\b{word}\b", page.prose)
    )
    pages = tuple(dict.fromkeys(span.page for span in spans))
    return HardWord(
        word=word, spans=spans, pages=pages, simpler=simpler, why="one word in 900,000", gift=gift
    )
