"""Print which share of slips is found, planted one at a time into clean text, by kind.

    python -m tests.bench.planted_slips [--engine] [--plants N] [--kinds WORD] [--misses] [--alarms]
                                        [--novels NUMBER,NUMBER,…]

The texts are the forty books of ``../shared/books``, at spots without marks, and five novels of
``../shared/corpus`` cut into stretches of some 260 words. A slip is found when an issue at default
settings touches it that was not there before; one about a lost quotation mark may stand anywhere from
the speech's beginning to its paragraph's end. It is mended when the first suggestion of such an issue
gives back the text. The grammar engine is left out unless asked for: it takes minutes.
"""

from __future__ import annotations

import argparse
import random
import sys
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.registry import all_checks
from proofkit.engines.analyse import Analyst
from proofkit.engines.memory import Memory
from proofkit.issue import Issue
from proofkit.ranking import without_rivals
from proofkit.settings import Settings
from proofkit.track_record import tempered
from proofkit.words.english import english_of
from proofkit.words.vocabulary import vocabulary_of
from tests.bench._kinds import KINDS
from tests.bench._slips import Slip, planted
from tests.bench._texts import (
    BOOKS,
    CORPUS,
    NOVELS,
    Marks,
    beside_mark,
    excerpts,
    picture_books,
    proofreaders_marks,
)

SEED = 11
EXCERPTS = 24  # of each novel
_SLACK = 1  # an issue beside the place touches it


@dataclass(frozen=True, slots=True, kw_only=True)
class Text:
    """A clean book, its analysis, and what is found in it before anything is planted."""

    book: Book
    analysis: Analysis
    issues: tuple[Issue, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial:
    """A slip in a text, and what is found only once it is there."""

    text: Text
    slip: Slip
    book: Book
    new: tuple[Issue, ...]

    @property
    def found(self) -> bool:
        return bool(self.new)

    @property
    def mended(self) -> bool:
        right = self.text.book.page(self.slip.page).text.split()
        return any(_applied(self.book, issue).split() == right for issue in self.new)


def main() -> None:
    """Plant and print."""
    asked = _asked()
    if not BOOKS.exists() or not CORPUS.exists():
        sys.exit("The forty books and the novels are not beside the project: nothing to measure.")
    novels = excerpts(asked.novels.split(","), EXCERPTS, SEED)
    kinds = [kind for kind in KINDS if asked.kinds in kind]
    for title, books in (("novels", novels), ("forty books", picture_books())):
        texts = _examined(books, engine=asked.engine)
        _print_alarms(title, texts, show=asked.alarms and books is novels)
        taken = proofreaders_marks()
        chosen = {kind: list(_chosen(kind, texts, asked.plants, taken)) for kind in kinds}
        for kind, trials in _tried(chosen, engine=asked.engine).items():
            _print_kind(kind, trials, show=asked.misses)


def _asked() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--engine", action="store_true", help="ask the grammar engine too")
    parser.add_argument("--plants", type=int, default=50, help="how many of each kind in each sort")
    parser.add_argument("--kinds", default="", help="only kinds whose name holds these words")
    parser.add_argument(
        "--misses", action="store_true", help="print every slip not found or mended"
    )
    parser.add_argument(
        "--alarms", action="store_true", help="print what is found in the clean novels"
    )
    parser.add_argument("--novels", default=",".join(NOVELS), help="their numbers in the corpus")
    return parser.parse_args()


def _examined(books: Sequence[Book], *, engine: bool) -> list[Text]:
    """The books with all that is found in them; the engines start once."""
    named = [(book, english_of(book, vocabulary_of(book))) for book in books]
    with Analyst(memory=Memory(None)) as analyst:
        analyses = analyst.analyse(named, language_model=True, grammar_engine=engine)
        if analyst.notices:
            sys.exit(analyst.notices[0].text)
    checks = [c for c in all_checks() if engine or Need.GRAMMAR_ENGINE not in c.needs]
    return [
        Text(book=book, analysis=analysis, issues=without_rivals(tempered(
            issue for check in checks for issue in check.find(book, analysis, Settings())
        )))
        for book, analysis in zip(books, analyses, strict=True)
    ]  # fmt: skip


def _chosen(
    kind: str, texts: Sequence[Text], plants: int, taken: Marks
) -> Iterator[tuple[Text, Slip]]:
    every = [
        (text, slip)
        for text in texts
        for page in text.book.story_pages
        for slip in KINDS[kind](text.book, text.analysis, page)
        if not beside_mark(page.text, slip.start, taken)
    ]
    choose = random.Random(SEED)  # noqa: S311 - a sample, no secret
    yield from choose.sample(every, min(plants, len(every)))


def _tried(
    chosen: Mapping[str, Sequence[tuple[Text, Slip]]], *, engine: bool
) -> dict[str, list[Trial]]:
    """All slips planted, each alone; the engines read all the books at once."""
    pairs = [pair for its in chosen.values() for pair in its]
    after = iter(_examined([planted(text.book, slip) for text, slip in pairs], engine=engine))
    return {
        kind: [_trial(text, slip, next(after)) for text, slip in its]
        for kind, its in chosen.items()
    }


def _trial(text: Text, slip: Slip, after: Text) -> Trial:
    by = len(slip.wrong) - (slip.end - slip.start)
    before = {
        (i.check, i.span.page, i.span.start + by * (i.span.page == slip.page and i.span.start >= slip.end))
        for i in text.issues
    }  # fmt: skip
    new = (i for i in after.issues if (i.check, i.span.page, i.span.start) not in before)
    return Trial(
        text=text,
        slip=slip,
        book=after.book,
        new=tuple(issue for issue in new if _touches(issue, slip)),
    )


def _touches(issue: Issue, slip: Slip) -> bool:
    start, end = slip.reach
    return issue.span.page == slip.page and (
        start - _SLACK < issue.span.end and issue.span.start < end + _SLACK
    )


def _applied(book: Book, issue: Issue) -> str:
    """The issue's page once its first suggestion is taken."""
    text = book.page(issue.span.page).text
    if not issue.suggestions:
        return text
    return text[: issue.span.start] + issue.suggestions[0] + text[issue.span.end :]


def _print_alarms(title: str, texts: Sequence[Text], *, show: bool) -> None:
    words = sum(text.book.words for text in texts)
    families = Counter(i.check.partition("/")[0] for text in texts for i in text.issues)
    print(f"\n{title}: {words} words, found before anything is planted, in 1,000 words")
    print("  ", ", ".join(f"{f} {1000 * n / words:.2f}" for f, n in families.most_common()))
    for text in texts if show else ():
        for issue in text.issues:
            print(f"    {_in_context(text.book, issue.span.page, issue.span.start, issue.span.end)}"
                  f" | {issue.check} {issue.suggestions[:2]} ({text.book.path})")  # fmt: skip


def _print_kind(kind: str, trials: Sequence[Trial], *, show: bool) -> None:
    if not trials:
        print(f"  {kind:26}    0 planted")
        return
    found = sum(trial.found for trial in trials)
    mended = sum(trial.mended for trial in trials)
    print(f"  {kind:26} {len(trials):4} planted, found {found / len(trials):.2f}", end="")
    print(f", mended by the first suggestion {mended / len(trials):.2f}")
    for trial in trials if show else ():
        if not trial.mended:
            slip = trial.slip
            place = _in_context(trial.book, slip.page, slip.start, slip.start + len(slip.wrong))
            said = [f"{i.check} {i.quote!r} {i.suggestions[:1]}" for i in trial.new]
            print(f"    {place} | {'; '.join(said) or 'not found'} ({trial.book.path[-30:]})")


def _in_context(book: Book, page: int, start: int, end: int) -> str:
    text = book.page(page).text
    place = f"{text[max(0, start - 50) : start]}›{text[start:end]}‹{text[end : end + 50]}"
    return place.replace("\n", "¶")


if __name__ == "__main__":
    main()
