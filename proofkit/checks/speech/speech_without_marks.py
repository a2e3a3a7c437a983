"""Speech that has no quotation marks.

What it finds
    A verb of saying, a colon or comma, and then words in the first or second person or a cry, without
    marks, in a book that has marks elsewhere. A few places are one issue each; more than that is a way of writing,
    asked about once.

Why a reader minds
    The narrator seems to be talking, and says *I*.

Example
    The hare shouted: Stop! Stop!

Better
    The hare shouted: "Stop! Stop!"

When to let it stand
    Where thoughts or songs are set in italics instead of marks.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Page, Span
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.persons import sentence_spans, speaks_in_person
from proofkit.words.quotations import quotations_of
from proofkit.words.reporting import has_reporting_verb

NAME = "speech/speech-without-marks"
NEEDS = frozenset({Need.TEXT})

_MANY = 3
_REACH = 600  # characters of an unmarked speech
_VERB = r"(?:said|says|asked|asks|shouted|shouts|cried|cries|replied|replies|answered|answers|called out|yelled|whispered|sang|sings|screamed|exclaimed)"
_BROUGHT_IN = re.compile(
    rf"\b{_VERB}(?: (?:to )?(?:him|her|them|it|the \w+|his \w+|her \w+|[A-Z]\w+))?(?::|(?<=\w),) (?=[A-Z][a-z'’]*\b)"
)
_FOLLOWED = re.compile(
    r"(?<=[^\W\d_]),(?= ?(?:said|asked|replied|answered|cried|shouted) (?:the|a|his|her|[Mm]rs?\b|[A-Z]))"
)
_MARK = re.compile("[\"“”‘„«]|(?<!\\w)'|''")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each speech without marks; many of them as one query."""
    quotations = quotations_of(book)
    whole = [q for q in quotations.speech if q.whole]
    places = [span for span in _places(book) if not quotations.speaks(span.page, span.start)]
    if not places:
        return
    many = len(places) > _MANY or not whole
    opener, closer = ('"', '"')
    if whole and whole[0].opening and whole[0].closing:
        opener, closer = whole[0].opening.text, whole[0].closing.text
    for span in places[:1] if many else places:
        yield issue_at(
            book,
            span,
            check=NAME,
            tier=Tier.QUERY if many else Tier.ERROR,
            message="speech without quotation marks",
            suggestions=[f"{opener}{book.quote(span)}{closer}"],
            confidence=0.5 if many else 0.65,
            related=places[1:] if many else (),
        )


def _places(book: Book) -> Iterator[Span]:
    """Words in person that a reporting clause brings in, or that one follows."""
    for page in book.pages:
        prose = page.prose
        yield from _followed(page)
        for match in _BROUGHT_IN.finditer(prose):
            spans = sentence_spans(prose[match.end() : match.end() + _REACH].split("\n\n")[0])
            if not spans or not speaks_in_person(prose[match.end() : match.end() + spans[0][1]]):
                continue
            end = spans[0][1]
            for start, stop in spans[1:]:
                sentence = prose[match.end() + start : match.end() + stop]
                if not speaks_in_person(sentence) or has_reporting_verb(sentence):
                    break
                end = stop
            words = prose[match.end() : match.end() + end].rstrip()
            if not _MARK.search(words):
                yield page.span(match.end(), match.end() + len(words))


def _followed(page: Page) -> Iterator[Span]:
    """Sentences without any mark, in the first or second person, before *said the fox*."""
    for match in _FOLLOWED.finditer(page.prose):
        line = page.prose[max(0, match.end() - _REACH) : match.end()].rpartition("\n")[2]
        begins, _ = sentence_spans(line)[-1]
        words = line[begins:]
        start = match.end() - len(words)
        if speaks_in_person(words) and not _MARK.search(words) and '"' not in words:
            yield page.span(start, match.end())
