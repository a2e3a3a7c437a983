"""A speech that opens and never closes.

What it finds
    An opening quotation mark that no closing one answers before the next speech opens or the
    paragraph ends, looked for over pages too. A speech of several paragraphs, each with its opening
    mark and only the last with a closing one, is right and left alone. Where the mark belongs is a
    question of sense: the likeliest place is shown. A short speech that opens again in the next
    paragraph is asked about.

Why a reader minds
    Whoever reads aloud does not know when to change back to the narrator's voice.

Example
    "I am coming, said the goat.

Better
    "I am coming," said the goat.

When to let it stand
    When the speech goes on in a later paragraph that you want without an opening mark.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Page, Span
from proofkit.checks.check import Need
from proofkit.checks.speech._extent import reported_length, spoken_length
from proofkit.checks.speech._seams import paragraph_at
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.persons import told_in_past
from proofkit.words.quotation_marks import Mark, closing_for
from proofkit.words.quotations import Quotation, quotations_of
from proofkit.words.reporting import reports

NAME = "speech/unclosed-quotation"
NEEDS = frozenset({Need.TEXT})

# Characters: long speeches are told in several paragraphs, short ones are answered.
_LONG, _SHORT = 250, 130
_GOES_ON = re.compile(r"\b(?:added|continued|went on|finished|concluded|resumed|ended)\b")
_ENDS = (".", "!", "?", "…", ",")
_NESTED = re.compile(r"(?:^|\s)(?:['‘\"“]|'')\w")
_LAST_WORD = re.compile(r"\S+\s*$")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each speech without its closing mark, at the likeliest place for it."""
    past = told_in_past(book)
    for quotation in quotations_of(book).speech:
        if quotation.opening is None or not quotation.parts:
            continue
        reported = next((p for p in quotation.parts[:-1] if _plain_end(book, p)), None)
        if reported is not None and quotation.reopenings:
            yield from _unclosed(book, quotation.opening, reported, past=past)
        elif quotation.closing is None:
            yield from _unclosed(book, quotation.opening, quotation.parts[-1], past=past)
        elif len(quotation.reopenings) == 1:
            yield from _opened_twice(
                book, quotation, quotation.opening, quotation.closing, past=past
            )


def _plain_end(book: Book, part: Span) -> bool:
    """Whether words that say who spoke end the speech in this paragraph, and it tells of no other."""
    words = book.quote(part)
    return reported_length(words) is not None and _NESTED.search(words) is None


def _opened_twice(
    book: Book, quotation: Quotation, opening: Mark, closing: Mark, *, past: bool
) -> Iterator[Issue]:
    """A short speech and another in the next paragraph: two speakers rather than one long speech."""
    first, page = quotation.parts[0], book.page(closing.span.page)
    words = book.quote(first).rstrip()
    if "\n" in words or len(words) > _LONG or words[-1:] not in _ENDS:
        return
    again = quotation.reopenings[0]
    if book.page(again.span.page).prose[again.span.end : again.span.end + 1] in (*"'\"‘“",):
        return
    after = page.prose[closing.span.end : paragraph_at(page, closing.span.start)[1]]
    if _GOES_ON.search(after[:60]) or "\n" in book.quote(quotation.parts[1]):
        return
    length, _ = spoken_length(words, past=past, to_paragraph_end=True)
    answered = reports(after) or length < len(words)
    if not answered and len(words) > _SHORT:
        return
    words = words[:length].rstrip()
    last = words.split()[-1]
    end = first.start + len(words)
    yield issue_at(
        book,
        Span(page=first.page, start=end - len(last), end=end),
        check=NAME,
        tier=Tier.QUERY,
        message="speech opens again before it has closed",
        suggestions=[last + closing_for(opening.text)],
        confidence=0.7 if answered else 0.5,
        related=[opening.span, again.span],
    )


def _unclosed(book: Book, opening: Mark, part: Span, *, past: bool) -> Iterator[Issue]:
    page = book.page(part.page)
    end = part.end if _next_is_mark(page, part.end) else paragraph_at(page, part.start)[1]
    inner = page.prose[part.start : end]
    length, sure = spoken_length(inner, past=past, to_paragraph_end=end == part.end)
    said = inner[:length].rstrip()
    word = _LAST_WORD.search(said)
    if word is None:
        return
    mark = closing_for(opening.text)
    last = word.group()
    start = part.start + word.start()
    comma = length < len(inner) and last[-1].isalnum() and reports(inner[length:])
    if last.endswith(("?,", "!,")):
        last = last[:-1]
    if mark in ('"', "”") and last[-1] in "'’" and not last[-2:-1].isalnum():
        last = last[:-1]
    yield issue_at(
        book,
        page.span(start, part.start + len(said)),
        check=NAME,
        tier=Tier.ERROR,
        message="speech opens and does not close",
        suggestions=[last + ("," if comma else "") + mark],
        confidence=0.85 if sure else 0.6,
        related=[opening.span],
    )


def _next_is_mark(page: Page, at: int) -> bool:
    return page.prose[at : at + 1] != "" and page.prose[at] in "\"“”'‘’«»„"
