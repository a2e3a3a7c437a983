"""The sentences of a report, the same wherever it is shown."""

from __future__ import annotations

from pathlib import PurePath

from proofkit.reading.bands import band_named
from proofkit.report import RankedIssue, Report, WordToConfirm
from proofkit.reports.places import pages_named
from proofkit.settings import English

_ENGLISH = {English.BRITISH: "British English", English.AMERICAN: "American English"}
_NOT_ALL = "not everything was checked"
_LAST_WORD = (
    "It can't tell whether the story is true to itself, or agrees with the pictures, or sings. "
    "A human proofreader comes next."
)


def title(report: Report) -> str:
    """The book's title, or its file's name where the manuscript gives none."""
    return report.manuscript.title or PurePath(report.manuscript.path).stem


def about(report: Report) -> str:
    """The first line, without the title: how long, which English, for whom."""
    book = report.manuscript
    english, band = _ENGLISH[book.english], band_named(book.age_band).phrase
    words = counted(book.words, "word")
    if not book.paginated:
        line = f"{words}, {english}, {band}; no pages are marked, so places are given by paragraph"
    elif book.spreads:
        line = f"{words} on {counted(book.spreads, 'spread')}, {english}, {band}"
    else:
        line = f"{words} on {counted(book.pages, 'page')}, {english}, {band}"
    return line if report.complete else f"{line}; {_NOT_ALL}"


def tally(report: Report) -> str:
    """How much was found, in both tiers."""
    errors, queries = len(report.errors), len(report.queries)
    if not errors and not queries:
        return "No errors to mend, no queries to think about"
    line = f"{_or_no(errors, 'error')} to mend, {_or_no(queries, 'query')} to think about"
    return line[0].upper() + line[1:]


def held_back(hidden: tuple[RankedIssue, ...], report: Report) -> str:
    """How many rows a long table keeps back, and how to see them."""
    return (
        f"{counted(len(hidden), 'more row')} held back. "
        f"To see all: proofkit check {quoted(report.manuscript.path)} --limit 0"
    )


def confirmable(report: Report, word: WordToConfirm) -> str:
    """A word that is taken for the book's own, how often it stands there, and where."""
    where = pages_named(report, word.pages)
    return f"{word.word} ({word.count}{', on ' + where if where else ''})"


def next_step(report: Report) -> str:
    """The last line: what to do now."""
    if report.complete:
        return _next_when_complete(report)
    return f"Next: see the {_notes(report)} above, for {_NOT_ALL}; then check again. " + (
        "What is listed can be mended meanwhile." if report.issues else "What was checked is clean."
    )


def _next_when_complete(report: Report) -> str:
    if report.errors:
        first = report.errors[0]
        return (
            f"Next: mend {_numbers(report.errors)} in your manuscript, save it, then check it again. "
            f"More about no. {first.rank}: proofkit explain {first.check}"
        )
    if report.queries:
        return f"Next: nothing must change. Decide {_numbers(report.queries)} as the story wants it. {_LAST_WORD}"
    return f"Next: proofkit has nothing more to ask. {_LAST_WORD}"


def counted(number: int, noun: str) -> str:
    """A number and its noun: "1 query", "1,204 words"."""
    if number == 1:
        return f"1 {noun}"
    plural = f"{noun[:-1]}ies" if noun.endswith("y") else f"{noun}s"
    return f"{number:,} {plural}"


def quoted(path: str) -> str:
    """A path as it must be typed at a prompt."""
    return f'"{path}"' if any(letter in path for letter in " '()&;*?[]$!") else path


def _or_no(number: int, noun: str) -> str:
    return counted(number, noun) if number else f"no {counted(0, noun)[2:]}"


def _numbers(issues: tuple[RankedIssue, ...]) -> str:
    """The rows of one tier by their numbers: "no. 3", "no. 1 to 11", "the 11 errors"."""
    ranks = [issue.rank for issue in issues]
    if len(ranks) == 1:
        return f"no. {ranks[0]}"
    if ranks == list(range(ranks[0], ranks[0] + len(ranks))):
        return f"no. {ranks[0]} to {ranks[-1]}"
    return f"the {counted(len(ranks), issues[0].tier.value)}"


def _notes(report: Report) -> str:
    return "note" if sum(notice.unchecked for notice in report.notices) == 1 else "notes"
