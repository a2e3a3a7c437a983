"""The one value that every report on the reading is made from: how a book suits the child it is for.

It is plain data, frozen, and can be remembered as it stands. ``reports/reading`` turns it into a table,
JSON, CSV and a page; ``reports/reading/reading.schema.json`` documents the shape for programs.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from proofkit.book import Book, Page, Role
from proofkit.reading.advice import reasons
from proofkit.reading.bands import AgeBand, Place, band_named
from proofkit.reading.extent import Extent, extents_of
from proofkit.reading.measure import BookReading, Measures, PageReading, SpreadReading
from proofkit.reading.pace import Pace, pace_of, seconds_aloud
from proofkit.reading.phonics import Decodable
from proofkit.reading.places import book_places, spread_places
from proofkit.reading.rhythm.place import RhythmPlace
from proofkit.reading.verse.poem import Verse
from proofkit.reading.words_beyond import HardWord
from proofkit.settings import USUAL_PACE, English


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadPage:
    """A page of story: its measures, where each is in the age band, and its text.

    ``number`` is its 1-based place among the manuscript's pages; ``seconds`` the time it takes aloud;
    ``prose`` the text with all that is not story blanked by spaces.
    """

    number: int
    label: str
    spread: int | None
    role: Role
    text: str
    prose: str
    measures: PageReading
    places: Mapping[str, Place]
    seconds: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadSpread:
    """What lies open at once: a spread, or a page that lies on none.

    ``spread``  its number, or None for a page alone
    ``pages``   the places of its pages among the manuscript's
    ``run``     the spreads (for a page alone, the pages) that its scores belong to, first and last;
        None where they are its own, or there are none
    ``reasons``  why it is worth working on, the gravest first; empty where nothing is
    """

    spread: int | None
    pages: tuple[int, ...]
    measures: Measures
    run: tuple[int, int] | None
    places: Mapping[str, Place]
    seconds: int
    reasons: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingReport:
    """Everything about how one manuscript reads.

    ``title``       as the manuscript or the author's settings give it, or ""
    ``age_band``    the band's short name
    ``paginated``   whether the author marked pages or spreads
    ``words_a_minute``, ``seconds``  the pace of reading aloud, and the time that the book takes
    ``book``        the measures of the whole story, with those of its pages and spreads
    ``places``      where the whole is in its age band, by the name of the measure
    ``steps``       what lies open at once, in order; empty where no pages are marked
    ``pace``        the rhythm of the steps
    ``extents``     how the text fits books of 24, 32 and 40 pages
    ``words_beyond``  the words beyond the band, those that are no gift first
    ``phonics``     for a child who reads alone: how much of the text can be sounded out; else None
    ``rhythm``      where a voice may stumble over the prose
    ``verse``       None where the book is prose
    ``remarks``     sentences that the author should know
    """

    schema_version: int = 1
    path: str
    title: str
    english: English
    age_band: str
    paginated: bool
    words_a_minute: int
    seconds: int
    book: BookReading
    places: Mapping[str, Place]
    pages: tuple[ReadPage, ...]
    steps: tuple[ReadSpread, ...]
    pace: Pace
    extents: tuple[Extent, ...]
    words_beyond: tuple[HardWord, ...] = ()
    phonics: Decodable | None = None
    rhythm: tuple[RhythmPlace, ...] = ()
    verse: Verse | None = None
    remarks: tuple[str, ...] = ()

    @property
    def spreads(self) -> tuple[ReadSpread, ...]:
        """The spreads that carry story; empty where spreads are not known."""
        return tuple(step for step in self.steps if step.spread is not None)


def reading_report_of(  # noqa: PLR0913 - a report is made of that many things
    book: Book,
    reading: BookReading,
    *,
    english: English,
    age_band: str,
    words_a_minute: int = USUAL_PACE,
    words_beyond: Sequence[HardWord] = (),
    phonics: Decodable | None = None,
    rhythm: Sequence[RhythmPlace] = (),
    verse: Verse | None = None,
    remarks: Sequence[str] = (),
) -> ReadingReport:
    """The report of a measured book. Raises Unusable if there is no such age band."""
    band = band_named(age_band)
    laid_out = _laid_out(book, reading)
    pace = pace_of([each.words for each in laid_out], band)
    hard = [word for word in words_beyond if not word.gift]
    steps = tuple(
        _step(each, band, pace, at, words_a_minute, hard) for at, each in enumerate(laid_out)
    )
    return ReadingReport(
        path=book.path,
        title=book.title,
        english=english,
        age_band=band.name,
        paginated=book.paginated,
        words_a_minute=words_a_minute,
        seconds=seconds_aloud(reading.words, words_a_minute),
        book=reading,
        places=book_places(reading, band) if reading.words else {},
        pages=tuple(
            _page(book.page(page.page), page, band, words_a_minute) for page in reading.pages
        ),
        steps=steps,
        pace=pace,
        extents=extents_of(reading.words, _spreads_taken(book), band),
        words_beyond=tuple(words_beyond),
        phonics=phonics,
        rhythm=tuple(rhythm),
        verse=verse,
        remarks=(*book.remarks, *remarks),
    )


def _laid_out(book: Book, reading: BookReading) -> list[SpreadReading | PageReading]:
    if not book.paginated:
        return []
    alone = [page for page in reading.pages if book.page(page.page).spread is None]
    return sorted((*reading.spreads, *alone), key=lambda each: _pages(each)[0])


def _pages(reading: SpreadReading | PageReading) -> tuple[int, ...]:
    return reading.pages if isinstance(reading, SpreadReading) else (reading.page,)


def _spreads_taken(book: Book) -> int:
    """How many spreads the story lies on; two pages to each where only pages are known."""
    if not book.paginated:
        return 0
    return len(book.spreads) or (len(book.story_pages) + 1) // 2


def _page(page: Page, reading: PageReading, band: AgeBand, words_a_minute: int) -> ReadPage:
    return ReadPage(
        number=page.number,
        label=page.label,
        spread=page.spread,
        role=page.role,
        text=page.text,
        prose=page.prose,
        measures=reading,
        places=spread_places(reading, band),
        seconds=seconds_aloud(reading.words, words_a_minute),
    )


def _step(
    reading: SpreadReading | PageReading,
    band: AgeBand,
    pace: Pace,
    at: int,
    words_a_minute: int,
    hard: Sequence[HardWord],
) -> ReadSpread:
    places, pages = spread_places(reading, band), _pages(reading)
    here = [word.word for word in hard if not set(pages).isdisjoint(word.pages)]
    return ReadSpread(
        spread=reading.spread if isinstance(reading, SpreadReading) else None,
        pages=pages,
        measures=reading,
        run=reading.run,
        places=places,
        seconds=seconds_aloud(reading.words, words_a_minute),
        reasons=reasons(reading, places, band, pace, at=at, hard=here),
    )
