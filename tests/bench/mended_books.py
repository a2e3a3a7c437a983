"""Print what the drafts say while the marked errors of the forty books are mended one at a time.

    python -m tests.bench.mended_books [--books N] [--wrong]

Each mended error is a draft of its own. Since it is known to the character what was changed, it is known
which issues stand in untouched text: by check and place, moved on by what the change made longer or
shorter. Those must be still there, and only what the mending took away, there or in a matter that spans
the book, may be called fixed. The grammar engine is left out.
"""

from __future__ import annotations

import argparse
import json
import re
import sys
import tempfile
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from pathlib import Path

from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.registry import all_checks
from proofkit.drafts.draft import Draft, DraftIssue
from proofkit.drafts.matching import compared_with_last
from proofkit.drafts.status import Comparison, Status
from proofkit.engines.analyse import Analyst
from proofkit.engines.memory import Memory
from proofkit.issue import with_keys
from proofkit.ranking import asked_where_unsure, without_rivals
from proofkit.readers.read import read
from proofkit.settings import Settings
from proofkit.track_record import tempered
from proofkit.words.english import english_of
from proofkit.words.vocabulary import vocabulary_of
from tests.bench._texts import BOOKS, SHARED
from tests.drafts.making import drafted

_PAGE = re.compile(r"(?m)^##\s*$")


@dataclass
class Tally:
    """What became of all issues of all drafts.

    ``mended``     errors mended; ``seen`` those of them that an issue of ours was about
    ``fixed``      issues called fixed
    ``exact``      drafts whose counts changed by just what the mending took and brought
    ``elsewhere``  issues that came or went in untouched text, in matters that span the book
    """

    mended: int = 0
    seen: int = 0
    fixed: int = 0
    exact: int = 0
    right: int = 0
    elsewhere: int = 0
    wrong: list[str] = field(default_factory=list)


@dataclass(frozen=True)
class Edit:
    """The one place where two drafts differ: characters ``start`` to ``old`` of a page became ``new``."""

    page: int
    start: int
    old: int
    new: int

    def touches(self, issue: DraftIssue, *, now: bool) -> bool:
        """Whether a place of the issue lies in what was changed, or beside it."""
        end = self.new if now else self.old
        return any(
            place.page == self.page and place.start <= end + 1 and self.start - 1 <= place.end
            for place in issue.places
        )

    def moved_on(self, span: Span) -> Span:
        """Where an untouched place of the older draft is in the newer one."""
        by = self.new - self.old if span.page == self.page and span.start >= self.old else 0
        return Span(page=span.page, start=span.start + by, end=span.end + by)


def main() -> None:
    """Run and print."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--books", type=int, default=40)
    parser.add_argument("--wrong", action="store_true", help="print every status that is wrong")
    asked = parser.parse_args()
    if not BOOKS.exists():
        sys.exit("The forty books are not beside the project: nothing to measure.")
    tally = mended(sorted(BOOKS.glob("*.md"))[: asked.books])
    print(f"{tally.mended} errors mended, {tally.seen} of them with an issue about them")
    print(f"drafts whose counts change by exactly what was mended: {tally.exact} of {tally.mended}")
    print(f"statuses right {tally.right}, wrong {len(tally.wrong)}; called fixed {tally.fixed}")
    print(f"issues that came or went elsewhere, in matters that span the book: {tally.elsewhere}")
    for line in tally.wrong if asked.wrong else ():
        print(" ", line)


def mended(paths: Sequence[Path]) -> Tally:
    """The books, their marked errors mended one at a time, and what the drafts say of it."""
    tally, series = Tally(), [books for path in paths for books in _series_of(path)]
    found = _found([book for books in series for book in books])
    for books in series:
        drafts = [next(found) for _book in books]
        past = Comparison(issues=())
        for last, now in pairwise(drafts):
            past = compared_with_last(last, now, past=past.past)
            _judge(tally, (last, now), past)
    return tally


def _series_of(path: Path) -> Iterator[list[Book]]:
    """The book as it is and with one more of its marked errors mended each time.

    They are mended from the end of the book to its beginning, so that none moves the next. Of two marks
    that lie across one another the second is mended alone.
    """
    text = path.read_text("utf-8")
    first = _read(path.name, text)
    series, mended_text, above = [first], text, len(text)
    for start, end, words in sorted(_mendings(path.name, text), reverse=True):
        if end <= above:
            mended_text, above = mended_text[:start] + words + mended_text[end:], start
            series.append(_read(path.name, mended_text))
        else:
            yield [first, _read(path.name, text[:start] + words + text[end:])]
    yield series


def _mendings(name: str, text: str) -> Iterator[tuple[int, int, str]]:
    """For each marked error the characters of the file that are wrong, and what they should be."""
    starts = [0, *(heading.end() for heading in _PAGE.finditer(text)), len(text)]
    for mark in json.loads((SHARED / "books" / "dev-marks.json").read_text("utf-8")):
        if mark["book"] == name and mark["tier"] == "error":
            start, end = starts[mark["page"]], starts[mark["page"] + 1]
            # The lines of a page are the layout's, and a quotation may run over their ends.
            words = r"\s+".join(map(re.escape, mark["quote"].split()))
            (found,) = re.finditer(words, text[start:end])
            yield _shortest(start + found.start(), found.group(), mark["fix"])


def _shortest(at: int, quote: str, fix: str) -> tuple[int, int, str]:
    """The words of a quotation at ``at`` that its fix has otherwise, by place, and what they should be."""
    spans, new = [word.span() for word in re.finditer(r"\S+", quote)], fix.split()
    old = quote.split()
    most = min(len(old), len(new)) - 1  # so that a word put in has one beside it to be put to
    first = min(_in_common(old, new), most)
    last = min(_in_common(old[first:][::-1], new[first:][::-1]), most - first)
    start, end = spans[first][0], spans[len(spans) - last - 1][1]
    return at + start, at + end, " ".join(new[first : len(new) - last])


def _read(name: str, text: str) -> Book:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / name
        path.write_text(text, encoding="utf-8")
        return read(path)


def _found(books: Sequence[Book]) -> Iterator[Draft]:
    """The drafts with all that is found in them, but for the grammar engine."""
    named = [(book, english_of(book, vocabulary_of(book))) for book in books]
    with Analyst(memory=Memory(None)) as analyst:
        analyses = analyst.analyse(named, language_model=True, grammar_engine=False)
        if analyst.notices:
            sys.exit(analyst.notices[0].text)
    checks = [check for check in all_checks() if Need.GRAMMAR_ENGINE not in check.needs]
    for book, analysis in zip(books, analyses, strict=True):
        issues = [i for check in checks for i in check.find(book, analysis, Settings())]
        yield drafted(book, with_keys(book, asked_where_unsure(without_rivals(tempered(issues)))))


def _judge(tally: Tally, pair: tuple[Draft, Draft], result: Comparison) -> None:
    """Count what is called fixed, new and still there against what the edit did."""
    last, now = pair
    edit = _edit(last.texts, now.texts)
    statuses = [*_statuses_of_old(edit, pair, result), *_statuses_of_new(edit, pair, result)]
    wrong = [
        f"{issue.check} “{issue.quote[:40]}” should be {true}, is {called}"
        for issue, true, called in statuses
        if true is not None and called is not true
    ]
    counts = result.counts()
    tally.mended += 1
    tally.seen += any(edit.touches(issue, now=False) for issue in last.issues)
    tally.fixed += counts.fixed
    tally.elsewhere += sum(true is None for _issue, true, _called in statuses)
    tally.right += sum(true is called for _issue, true, called in statuses)
    tally.wrong += wrong
    gone, come = counts.fixed + counts.gone_with_text, counts.new + counts.back_again
    adds_up = len(now.issues) == len(last.issues) - gone + come
    tally.exact += adds_up and not wrong


# An issue, what became of it (None: something in a matter that spans the book), what it is called.
_Told = tuple[DraftIssue, Status | None, Status]


def _statuses_of_old(edit: Edit, pair: tuple[Draft, Draft], result: Comparison) -> Iterator[_Told]:
    last, now = pair
    ended = {id(each.issue): each.status for each in result.ended}
    here = {(issue.check, place) for issue in now.issues for place in issue.places}
    touched = {issue.check for issue in now.issues if edit.touches(issue, now=True)}
    for issue in last.issues:
        called = ended.get(id(issue), Status.STILL_THERE)
        if any((issue.check, edit.moved_on(place)) in here for place in issue.places):
            yield issue, Status.STILL_THERE, called
        elif edit.touches(issue, now=False):
            yield issue, called if issue.check in touched else Status.FIXED, called
        else:
            yield issue, None, called


def _statuses_of_new(edit: Edit, pair: tuple[Draft, Draft], result: Comparison) -> Iterator[_Told]:
    last, _now = pair
    before = {
        (issue.check, edit.moved_on(place)) for issue in last.issues for place in issue.places
    }
    touched = {issue.check for issue in last.issues if edit.touches(issue, now=False)}
    for each in result.issues:
        issue, called = each.issue, each.status
        if any((issue.check, place) in before for place in issue.places):
            yield issue, Status.STILL_THERE, called
        elif edit.touches(issue, now=True):
            yield issue, called if issue.check in touched else Status.NEW, called
        else:
            yield issue, None, called


def _edit(was: Sequence[str], now: Sequence[str]) -> Edit:
    """Where two drafts of as many pages differ."""
    page = next(n for n, (a, b) in enumerate(zip(was, now, strict=True), 1) if a != b)
    old, new = was[page - 1], now[page - 1]
    start = _in_common(old, new)
    shared = _in_common(old[start:][::-1], new[start:][::-1])
    return Edit(page=page, start=start, old=len(old) - shared, new=len(new) - shared)


def _in_common(one: Sequence[str], other: Sequence[str]) -> int:
    """How many characters or words two texts begin with alike."""
    pairs = zip(one, other, strict=False)
    return next((at for at, (a, b) in enumerate(pairs) if a != b), min(len(one), len(other)))


if __name__ == "__main__":
    main()
