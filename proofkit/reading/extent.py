"""Whether the text fits a picture book of 24, 32 or 40 pages.

Books are printed in sheets of 8 or 16 pages, so they have 24, 32 or 40, and 32 is the standard (SCBWI
British Isles, Words & Pictures, 2019; Lerner Books, 2018). Page 1 and the last page stand alone, so 32
pages have 15 full spreads. Title, imprint and endpapers take their share of them: British publishers
usually leave 12 to the story, 13 at a push (a writer's account of 2009; Norwich University of the Arts);
with separate endpapers it is up to 14½, and 15 where title and imprint have pages 1 and 2. For 24 and 40
pages the same three spreads are taken off: derived.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from proofkit.reading.bands import AgeBand, Place

_FRONT_MATTER = 3  # spreads, where title, imprint and endpapers are inside


class Fit(StrEnum):
    """How a text fits so many pages."""

    FITS = "fits"
    ROOM = "leaves room"
    TOO_LONG = "too long"


@dataclass(frozen=True, slots=True, kw_only=True)
class Extent:
    """A book of so many ``pages``, and how the story fits it.

    ``least``, ``most``  how many spreads are the story's, with much front matter and with little
    ``spreads``  the story's own, or as many as are usual where they are not known
    ``over``     how many of them are too many; below 0, how many are left empty
    ``words_a_spread``  on average, and ``place`` where that is in the band
    """

    pages: int
    least: int
    most: int
    spreads: int
    over: int
    words_a_spread: float
    place: Place
    fit: Fit


def extents_of(words: int, spreads: int, band: AgeBand) -> tuple[Extent, ...]:
    """The fit of a story for every extent of its band; none for a story without words.

    ``spreads`` is 0 where the author marked none.
    """
    return tuple(_extent(pages, words, spreads, band) for pages in band.extents if words)


def _extent(pages: int, words: int, spreads: int, band: AgeBand) -> Extent:
    most = pages // 2 - 1
    least = most - _FRONT_MATTER
    taken = spreads or least
    over = max(0, taken - most) or min(0, taken - least)
    # A story may be dealt out anew over the spreads that the book has.
    each = words / min(max(taken, least), most)
    place = band.spread_words.place(each)
    return Extent(
        pages=pages,
        least=least,
        most=most,
        spreads=taken,
        over=over,
        words_a_spread=each,
        place=place,
        fit=_fit(over, place),
    )


def _fit(over: int, place: Place) -> Fit:
    if over > 0 or place is Place.WELL_ABOVE:
        return Fit.TOO_LONG
    return Fit.ROOM if over < 0 else Fit.FITS
