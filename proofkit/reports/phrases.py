"""The sentences of a report, the same wherever it is shown."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import PurePath

from proofkit.reading.bands import band_named
from proofkit.report import RankedIssue, Report
from proofkit.reports.fault import one_line
from proofkit.reports.keys import short_keys
from proofkit.reports.places import pages_named
from proofkit.settings import English
from proofkit.words.confirm import WordToConfirm

_ENGLISH = {English.BRITISH: "British English", English.AMERICAN: "American English"}
# In the order in which an author asks.
_CHANGES = (
    ("fixed", "fixed"),
    ("gone_with_text", "gone with the text"),
    ("no_longer_raised", "no longer raised"),
    ("let_stand", "let stand"),
    ("new", "new"),
    ("back_again", "back again"),
    ("still_there", "still there"),
)
_NOT_ALL = "not everything was checked"
_LAST_WORD = (
    "proofkit can't tell whether the story agrees with the pictures, keeps to its own facts, or sings: "
    "a human proofreader comes next."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Advice:
    """What to do, and the command for it, if there is one."""

    sentence: str
    command: str = ""

    def __str__(self) -> str:
        return f"{self.sentence}: {self.command}" if self.command else self.sentence


def title(report: Report) -> str:
    """The book's title, or its file's name where the manuscript gives none."""
    return one_line(report.manuscript.title) or PurePath(report.manuscript.path).stem


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
    """How much was found, in both tiers, and how much of it the author let stand before."""
    errors, queries = len(report.errors), len(report.queries)
    if report.since_last and report.since_last.new_only:
        found = f"{_or_no(errors, 'error')} to mend, {_or_no(queries, 'query')} to think about"
        return f"Only what is new or back again is listed: {found}"
    line = f"{_or_no(errors, 'error')} to mend, {_or_no(queries, 'query')} to think about"
    earlier = f"; {len(report.let_stand):,} let stand earlier" if report.let_stand else ""
    return f"{line[0].upper()}{line[1:]}{earlier}"


def since_last(report: Report) -> str:
    """How the manuscript stands against the draft before, in one line; "" where there is none."""
    since = report.since_last
    if since is None:
        return ""
    errors = sum((since.new, since.back_again, since.still_there))
    parts = (f"{getattr(since, name)} {words}" for name, words in _CHANGES if getattr(since, name))
    what = ", ".join(parts)
    return (
        f"Since draft {since.last}, {ago(since.days)}, errors {since.errors} → {errors}"
        f"{f': {what}' if what else ''}"
    )


def ago(days: int) -> str:
    """How long before: "the same day", "the day before", "13 days before"."""
    if days <= 0:
        return "the same day"
    return "the day before" if days == 1 else f"{days:,} days before"


def why(report: Report, issue: RankedIssue) -> str:
    """What is the matter with an issue, and whether the last draft did not have it."""
    since = report.since_last
    if since and issue.key in since.new_keys:
        return f"new: {issue.message}"
    if since and issue.key in since.back_keys:
        return f"back again: {issue.message}"
    return issue.message


def held_back(hidden: tuple[RankedIssue, ...], report: Report) -> Advice:
    """How many rows a long table keeps back, and how to see them."""
    return Advice(
        sentence=f"{counted(len(hidden), 'more row')} held back. To see all",
        command=f"proofkit check {quoted(report.manuscript.path)} --limit 0",
    )


def let_stand(report: Report) -> Advice:
    """How many rows the table leaves out because they are to stand, and how to see them."""
    return Advice(
        sentence=f"{counted(len(report.let_stand), 'row')} let stand. To see what",
        command=f"proofkit check {quoted(report.manuscript.path)} --show-stet",
    )


def confirmable(report: Report, word: WordToConfirm) -> str:
    """A word that is taken for the book's own, how often it stands there, and where."""
    where = pages_named(report, word.pages)
    return f"{word.word} ({word.count}{', on ' + where if where else ''})"


def more_about(report: Report) -> Advice:
    """Where to read more about the first row; the report must have one."""
    first = (*report.errors, *report.queries)[0]
    return Advice(
        sentence=f"More about no. {first.rank}", command=f"proofkit explain {first.check}"
    )


def next_step(report: Report) -> Advice:
    """The last line: what to do now."""
    if not report.complete:
        return Advice(sentence=_next_when_incomplete(report))
    if report.errors:
        mend = f"Next: mend {_numbers(report.errors)} in your manuscript, save it, then check it again."
        return Advice(sentence=f"{mend} To let one stand", command=_stet(report))
    if report.queries:
        decide = (
            f"Next: nothing must change. Decide {_numbers(report.queries)} as the story wants it."
        )
        return Advice(sentence=f"{decide} {_LAST_WORD} To let one stand", command=_stet(report))
    return Advice(sentence=f"Next: there is nothing more to ask. {_LAST_WORD}")


def _stet(report: Report) -> str:
    """The command that lets a row stand, with the key of a likely one: the first query, or the last error."""
    likely = report.queries[0] if report.queries else report.errors[-1]
    return f"proofkit stet {quoted(report.manuscript.path)} {short_keys(report)[likely.key]}"


def _next_when_incomplete(report: Report) -> str:
    unchecked = sum(notice.unchecked for notice in report.notices)
    meanwhile = (
        "What is listed can be mended meanwhile." if report.issues else "What was checked is clean."
    )
    notes = "note" if unchecked == 1 else "notes"
    return f"Next: {_NOT_ALL}. See the {notes} above, then check again. {meanwhile}"


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
    if len(ranks) < 3:
        return f"no. {' and '.join(map(str, ranks))}"
    if ranks == list(range(ranks[0], ranks[0] + len(ranks))):
        return f"no. {ranks[0]} to {ranks[-1]}"
    return f"the {counted(len(ranks), issues[0].tier.value)}"
