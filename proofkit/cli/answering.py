"""The work of ``proofkit rulings-from``: from the comments of a Word copy to rulings in the book's own file."""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterable, Iterator, Sequence
from contextlib import closing
from dataclasses import dataclass, field
from pathlib import Path

from proofkit.book import Book
from proofkit.cli.guard import Exit
from proofkit.cli.progress_bar import fetch_explained, progress_bar
from proofkit.engines.folders import memory_file
from proofkit.engines.memory import Memory
from proofkit.issue import Issue
from proofkit.pipeline import check_manuscripts
from proofkit.problem import Unusable
from proofkit.readers.word_comments import Comment, comments_in
from proofkit.report import RankedIssue, Report
from proofkit.reports.excerpt import excerpt
from proofkit.reports.keys import all_issues
from proofkit.reports.phrases import counted, quoted
from proofkit.reports.places import place
from proofkit.rulings.entry import Entry, entry_for
from proofkit.rulings.judging import equals
from proofkit.rulings.keeping import add
from proofkit.settings import Choices, own_file_of

# Word signs every comment "Author" where it was asked to leave names out of the file.
_AUTHORS = {"proofkit", "Author"}
_KEYED = re.compile(r"(?s).*\[(?P<key>[2-9bcdfghjkmnpqrstvwxz]{4,7})\](?P<more>.*)")
_STET = re.compile(r"(?is)\s*[“\"'‘]?stet\b[”\"'’]?[\s.,:;–—-]*(?P<reason>.*)")
_WIDTH = 60  # characters of a line that are said back


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """A comment of proofkit's with what became of it: whether its words are to stand, and the reason."""

    key: str
    words: str
    stet: bool
    because: str


@dataclass(slots=True)
class _Sorted:
    """What the answers come to."""

    stand: list[tuple[Answer, RankedIssue]] = field(default_factory=list)
    mended: int = 0
    open: int = 0


def take_in(copy: Path) -> Exit:
    """Let stand what the author answered so. Raises Unusable if the file is no copy that proofkit made."""
    answers = tuple(answers_in(comments_in(copy)))
    if not answers:
        raise Unusable(
            f"“{copy.name}” has no comments of proofkit's. Name the copy that you worked in, as "
            "proofkit check MANUSCRIPT --format word made it."
        )
    report, book, issues = _checked(copy)
    found = _sorted(answers, report)
    standing = {each.issue.key for each in report.let_stand}
    entries = [
        _entry(book, issues, report, answer, row)
        for answer, row in found.stand
        if row.key not in standing
    ]
    file = own_file_of(copy)
    added = add(file, entries) if entries else ()
    for _, row in found.stand:
        new = any(entry.key == row.key for entry in added)
        line = excerpt(report.pages[row.page - 1].text, row, _WIDTH)
        where = place(report, row.page, row.start)
        print(f"{'Let stand' if new else 'Stands already'}: {line} ({where}; {row.message})")
    print(_tally(found, complete=report.complete))
    if added:
        see = f"proofkit check {quoted(str(copy))} --show-stet"
        print(f"Written to {file}. To see what stands: {see}")
    return Exit.CLEAN if report.complete else Exit.INCOMPLETE


def answers_in(comments: Iterable[Comment]) -> Iterator[Answer]:
    """Those of the comments that are proofkit's, as they were answered, below them or at their end."""
    for comment in comments:
        keyed = _KEYED.fullmatch(comment.text)
        if comment.author not in _AUTHORS or keyed is None:
            continue
        said = [text.strip() for text in (keyed["more"], *comment.answers) if text.strip()]
        stets = [found for text in said if (found := _STET.fullmatch(text))]
        reasons = [found["reason"] for found in stets] or (said if comment.resolved else [])
        yield Answer(
            key=keyed["key"],
            words=comment.words,
            stet=bool(stets) or comment.resolved,
            because=" ".join(" ".join(reasons).split()),
        )


def _checked(copy: Path) -> tuple[Report, Book, tuple[Issue, ...]]:
    with closing(Memory(memory_file())) as memory, progress_bar(fetch_explained()) as bar:
        (outcome,) = check_manuscripts([copy], Choices(), memory=memory, progress=bar)
    if outcome.report is None or outcome.book is None:
        raise Unusable(outcome.problem or f"{copy} could not be checked.")
    return outcome.report, outcome.book, outcome.issues


def _sorted(answers: Sequence[Answer], report: Report) -> _Sorted:
    rows = tuple(all_issues(report))
    by_key = {answer.key: _with_key(rows, answer.key) for answer in answers}
    taken = {row.key for row in by_key.values() if row}
    found = _Sorted()
    for answer in answers:
        row = by_key[answer.key] or _with_words(rows, answer.words, taken)
        if row is None:
            found.mended += 1
        elif answer.stet:
            found.stand.append((answer, row))
        else:
            found.open += 1
    return found


def _with_key(rows: Sequence[RankedIssue], key: str) -> RankedIssue | None:
    found = [row for row in rows if row.key.startswith(key)]
    return found[0] if len(found) == 1 else None


def _with_words(rows: Sequence[RankedIssue], words: str, taken: set[str]) -> RankedIssue | None:
    """The one row of no other comment's that is about these words.

    A key changes with the words beside, and an author may have mended those.
    """
    found = [r for r in rows if r.key not in taken and words and " ".join(r.quote.split()) == words]
    return found[0] if len(found) == 1 else None


def _entry(
    book: Book, issues: Sequence[Issue], report: Report, answer: Answer, row: RankedIssue
) -> Entry:
    issue = next(issue for issue in issues if issue.key == row.key)
    return entry_for(
        book,
        issue,
        equals=equals(book, issues, issue),
        page=place(report, row.page, row.start),
        because=answer.because,
        date=datetime.datetime.now().astimezone().date(),
    )


def _tally(found: _Sorted, *, complete: bool) -> str:
    """How many comments came to what."""
    mended = f"{found.mended} mended" if complete else f"{found.mended} not found"
    whole = counted(len(found.stand) + found.mended + found.open, "comment")
    line = f"{whole}: {len(found.stand)} to stand, {mended}, {found.open} still open."
    return line if complete else f"{line} Not everything was checked: try again for what is mended."
