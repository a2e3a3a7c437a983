"""What there is to ask about each spread, the gravest alone: an author who is asked one thing hears it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache
from itertools import groupby
from statistics import median

from proofkit.book import Book, Page, Span, count_words
from proofkit.checks.reading._amount import far_longer, far_shorter, opening
from proofkit.issue import Issue, Tier, issue_at
from proofkit.reading.bands import AgeBand
from proofkit.reading.pace import pace_of
from proofkit.reading.sentences import sentences
from proofkit.words.vocabulary import WORD

FAR_ABOVE_THE_BOOK = 3
_FAR_ABOVE_THE_BAND = 2
_ABOVE_THE_BOOK = 1.25
_LONG_SENTENCE = 1.25
_VERSE_BREAKS = 2  # line breaks that the author set inside one sentence
_MOSTLY_NEW = 2 / 3

_Triple = tuple[str, str, str]


class Matter(StrEnum):
    """What is asked about, the gravest first: a lighter spread has shorter sentences, too."""

    HEAVY = "heavy"
    LONG_SENTENCE = "long sentence"
    IN_A_ROW = "in a row"


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """What lies open at once: the pages of a spread, or one page; ``kind`` is "spread" or "page"."""

    kind: str
    pages: tuple[Page, ...]
    words: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Claim:
    """One thing to ask about one step, at ``span``.

    ``amount``  words of the step, words of the sentence, or how many in a row
    ``gravity`` the words as a part of what the band allows at most
    """

    matter: Matter
    step: Step
    span: Span
    amount: int
    gravity: float


@lru_cache(maxsize=4)
def claims(book: Book, band: AgeBand) -> tuple[Claim, ...]:
    """At most one claim to a step, the weightiest first; none where the book as a whole is of another band.

    Where no pages are marked there is one step, and each sentence of it may be asked about.
    """
    if far_longer(book, band) or far_shorter(book, band):
        return ()
    every = [*_long(book, band)]
    if book.paginated:
        laid = steps(book)
        heavy = list(_heavy(laid, band))
        every += [*heavy, *_in_a_row(laid, band, heavy)]
        every = _one_to_a_step(every)
    return tuple(sorted(every, key=lambda claim: (-claim.gravity, claim.span)))


def asked(
    book: Book, found: Sequence[Claim], *, check: str, message: str, confidence: float
) -> Issue:
    """One issue for all claims of one matter: at the gravest, with the others related."""
    return issue_at(
        book,
        found[0].span,
        check=check,
        tier=Tier.QUERY,
        message=message,
        confidence=confidence,
        related=sorted(claim.span for claim in found[1:]),
    )


def steps(book: Book) -> list[Step]:
    """What lies open at once, in order, blank steps included."""
    by_place = groupby(book.story_pages, key=lambda p: (p.spread, 0 if p.spread else p.number))
    return [
        _step("page" if spread is None else "spread", tuple(pages))
        for (spread, _), pages in by_place
    ]


def usual_words(book: Book) -> float:
    """The median of the words of the steps that have any."""
    return median([step.words for step in steps(book) if step.words] or [0])


def _step(kind: str, pages: tuple[Page, ...]) -> Step:
    return Step(kind=kind, pages=pages, words=sum(page.words for page in pages))


def _one_to_a_step(every: Iterable[Claim]) -> list[Claim]:
    gravest: dict[int, Claim] = {}
    graver = list(Matter).index
    for claim in sorted(every, key=lambda claim: (graver(claim.matter), -claim.gravity)):
        gravest.setdefault(claim.step.pages[0].number, claim)
    return list(gravest.values())


def _heavy(laid: Sequence[Step], band: AgeBand) -> Iterator[Claim]:
    allowed = band.spread_words.most
    usual = median([step.words for step in laid if step.words] or [0])
    for step in laid:
        far = step.words > _FAR_ABOVE_THE_BAND * allowed
        if far or (step.words > allowed and step.words >= FAR_ABOVE_THE_BOOK * usual):
            yield _about(step, Matter.HEAVY, step.words, step.words / allowed)


def _in_a_row(laid: Sequence[Step], band: AgeBand, heavy: Sequence[Claim]) -> Iterator[Claim]:
    """The steps of every three and more in a row that are above what is usual, but none by far."""
    taken = {claim.step for claim in heavy}
    full = _ABOVE_THE_BOOK * median([step.words for step in laid if step.words] or [0])
    for first, last in pace_of([step.words for step in laid], band).in_a_row:
        run = laid[first : last + 1]
        if any(step in taken or step.words < full for step in run):
            continue  # there the heaviest is asked about, or the book is of one weight
        for step in run:
            gravity = step.words / band.spread_words.most
            yield _about(step, Matter.IN_A_ROW, len(run), gravity)


def _about(step: Step, matter: Matter, amount: int, gravity: float) -> Claim:
    first = next(page for page in step.pages if page.words)
    return Claim(matter=matter, step=step, span=opening(first), amount=amount, gravity=gravity)


def _long(book: Book, band: AgeBand) -> Iterator[Claim]:
    """Sentences far longer than the band's, that neither grow by repeating nor stand in lines."""
    allowed = band.longest_sentence.most
    heard: set[_Triple] = set()
    by_page = {page.number: step for step in steps(book) for page in step.pages}
    for page in book.story_pages:
        for start, end in sentences(page.prose):
            text = page.prose[start:end]
            triples, words = _triples(text), count_words(text)
            new = len(set(triples) - heard) / max(1, len(triples))
            heard.update(triples)
            plain = text.count("\n") < _VERSE_BREAKS and new >= _MOSTLY_NEW
            if plain and words >= _LONG_SENTENCE * allowed:
                yield Claim(
                    matter=Matter.LONG_SENTENCE,
                    step=by_page[page.number],
                    span=opening(page, start),
                    amount=words,
                    gravity=words / allowed,
                )


def _triples(text: str) -> list[_Triple]:
    words = [word.lower() for word in WORD.findall(text)]
    return list(zip(words, words[1:], words[2:], strict=False))
