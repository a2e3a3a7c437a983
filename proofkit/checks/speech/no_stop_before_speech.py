"""No stop before a new speech.

What it finds
    The words that say who spoke, or a sentence of the story, running straight into the next speech
    with nothing between: *said the fox "Come in."* A speech that the words before it bring in (*he
    said "Come"*) wants a comma and is another matter; words in marks that belong to the sentence
    (*a sign with "No Geese" on it*) are left alone.

Why a reader minds
    The voice needs the stop to change from the narrator to the speaker.

Example
    "It is cold," said the fox "Come in."

Better
    "It is cold," said the fox. "Come in."

When to let it stand
    Where the words in marks are part of the sentence.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.sentences._stops import stop_for
from proofkit.checks.spacing._gaps import undisturbed
from proofkit.checks.speech._seams import Seam, seams
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.lists import word_set
from proofkit.words.persons import tells
from proofkit.words.reporting import has_reporting_verb, reports

NAME = "speech/no-stop-before-speech"
NEEDS = frozenset({Need.TEXT})

_UNSTOPPED = re.compile(r"(?P<word>[\w'’-]*[^\W_])(?P<gap>[ \u00a0]+)$")
# A sentence does not end in one of these: what stands in marks belongs to it.
_LEADS_ON = word_set(
    "a an the my your his her its our their this that these those and but or nor if as of with for from to at by in "
    "on into like than called named reading read reads word words title book song poem sign label note game "
    "cry cries shout shouts sound sounds voice is was were are be been going goes went go sings sang name answer "
    "nickname written wrote means meant meaning very so loud began begins"
)
_LEAST = 3  # words in marks: less may be a name or a title
_NEAR = 4  # words
_EARSHOT = 300  # characters to look back; a page may hold a whole novel


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each speech that a finished sentence runs into without a stop."""
    for seam in seams(book):
        ended = _UNSTOPPED.search(seam.before[-_EARSHOT:])
        if ended is None or not _begins_new(seam) or ended["word"] in _LEADS_ON:
            continue
        if _clause_of(seam):
            yield from _issue(book, seam, ended, stop=".", confidence=0.85)
        elif _told(seam):
            yield from _issue(
                book, seam, ended, stop=stop_for(seam.before[-_EARSHOT:]), confidence=0.7
            )


def _begins_new(seam: Seam) -> bool:
    """Whether the words in the marks are a sentence that somebody says."""
    inner = seam.inner.strip()
    return inner[:1].isupper() and seam.words >= _LEAST and inner[-1:] in ".!?,…—–"


def _clause_of(seam: Seam) -> bool:
    """Whether the words before say who spoke the speech before: *said the fox*."""
    return (
        seam.previous is not None
        and seam.previous.inner.rstrip()[-1:] in ",!?…"
        and reports(seam.before)
        and len(seam.before.split()) > 1
        and re.search(r"[.!?]", seam.before) is None
    )


def _told(seam: Seam) -> bool:
    """Whether the words before are a whole sentence of the story that brings no speech in."""
    sentence = re.split(r"[.!?…]['’\"”)]*\s", seam.before[-_EARSHOT:])[-1]
    words = sentence.split()
    near = " ".join(words[-_NEAR:])
    return len(words) > 2 and tells(sentence) and not has_reporting_verb(near, loosely=True)


def _issue(
    book: Book, seam: Seam, ended: re.Match[str], *, stop: str, confidence: float
) -> Iterable[Issue]:
    page, opening = book.page(seam.opening.span.page), seam.opening.span
    start = opening.start - len(ended.group())
    if undisturbed(page, start, opening.end):
        yield issue_at(
            book,
            page.span(start, opening.end),
            check=NAME,
            tier=Tier.ERROR,
            message="no full stop before the speech",
            suggestions=[f"{ended['word']}{stop}{ended['gap']}{seam.opening.text}"],
            confidence=confidence,
        )
