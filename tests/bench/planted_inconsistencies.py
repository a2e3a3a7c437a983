"""Print which share of inconsistencies is found, planted one at a time into texts that agree with themselves.

    python -m tests.bench.planted_inconsistencies [--plants N] [--kinds WORD] [--misses] [--alarms]

The texts are the invented stories of ``tests/stories`` and stretches of five public-domain novels of
``../shared/corpus``. One is found when an issue that was not there before touches the odd place, or has
it among its related places; it is mended when a first suggestion gives back the usual form there.
False alarms are the issues of these families in the texts, and in the texts with sentences added that
are all alike. The grammar engine is not asked: none of these checks needs it.
"""

from __future__ import annotations

import argparse
import random
from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from proofkit.book import Book, Page, Span
from proofkit.checks.check import Need
from proofkit.checks.registry import all_checks
from proofkit.engines.analyse import Analyst
from proofkit.engines.memory import Memory
from proofkit.issue import Issue
from proofkit.ranking import without_rivals
from proofkit.readers.read import read
from proofkit.settings import Settings
from proofkit.track_record import tempered
from proofkit.words.english import english_of
from proofkit.words.vocabulary import vocabulary_of
from tests.bench._inconsistencies import Inconsistency, added, items, swapped
from tests.bench._texts import CORPUS, NOVELS, excerpts

STORIES = Path(__file__).parents[1] / "stories"
SEED = 5
_STRETCHES = 6  # of each novel, joined into one text
_FAMILIES = ("consistency", "english")


@dataclass(frozen=True, slots=True, kw_only=True)
class Result:
    """One inconsistency, and the issues about it that were not there before."""

    planted: Inconsistency
    about: tuple[Issue, ...]

    @property
    def mended(self) -> bool:
        usual = " ".join(self.planted.before.page(self.planted.page).text.split())
        here = (issue for issue in self.about if issue.suggestions)
        return any(usual in " ".join(_applied(self.planted.after, i).split()) for i in here)


def main() -> None:
    """Plant and print."""
    asked = _asked()
    books = [*stories(), *novels()]
    _print_alarms("as they are", books, show=asked.alarms)
    tries = [p for p in _planted(books, asked.plants) if asked.kinds in p.kind]
    before = _issues([p.before for p in tries])
    after = _issues([p.after for p in tries])
    alike = [p.before for p in tries if not p.own]
    _print_alarms("with sentences added", alike, show=asked.alarms)
    by_kind: defaultdict[str, list[Result]] = defaultdict(list)
    for planted, old, new in zip(tries, before, after, strict=True):
        by_kind[planted.kind].append(Result(planted=planted, about=_about(planted, old, new)))
    for kind, results in by_kind.items():
        _print_kind(kind, results, show=asked.misses)
    _print_kind("all", [result for results in by_kind.values() for result in results], show=False)


def stories() -> Iterator[Book]:
    """The invented stories, clean."""
    for path in sorted(STORIES.glob("*.md")):
        yield read(path)


def novels() -> Iterator[Book]:
    """Of each of five novels some stretches, as one book; none where the corpus is absent."""
    for number in NOVELS if CORPUS.exists() else ():
        parts = excerpts([number], _STRETCHES, SEED)
        pages = [page for part in parts for page in part.pages]
        yield replace(parts[0], pages=tuple(_numbered(pages)))


def _numbered(pages: Sequence[Page]) -> Iterator[Page]:
    for number, page in enumerate(pages, 1):
        yield replace(page, number=number)


def _asked() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--plants", type=int, default=8, help="how many of each kind or item")
    parser.add_argument("--kinds", default="", help="only kinds whose name holds these words")
    parser.add_argument("--misses", action="store_true", help="print each one not mended")
    parser.add_argument("--alarms", action="store_true", help="print the false alarms")
    return parser.parse_args()


def _planted(books: Sequence[Book], plants: int) -> Iterator[Inconsistency]:
    choose = random.Random(SEED)  # noqa: S311 - a sample, no secret
    for item in items():
        tries = (
            added(book, item, choose.randrange(len(item.sentences)))
            for book in choose.sample(list(books), len(books))
        )
        found = [planted for planted in tries if planted is not None]
        yield from found[: max(1, plants // 3)]
    own: defaultdict[str, list[Inconsistency]] = defaultdict(list)
    for book in books:
        for planted in swapped(book):
            own[planted.kind].append(planted)
    for places in own.values():
        yield from choose.sample(places, min(3 * plants, len(places)))


def _issues(books: Sequence[Book]) -> list[tuple[Issue, ...]]:
    named = [(book, english_of(book, vocabulary_of(book))) for book in books]
    with Analyst(memory=Memory(None)) as analyst:
        analyses = analyst.analyse(named, language_model=True, grammar_engine=False)
        checks = [c for c in all_checks() if Need.GRAMMAR_ENGINE not in c.needs]
        return [
            without_rivals(tempered(i for c in checks for i in c.find(book, analysis, Settings())))
            for book, analysis in zip(books, analyses, strict=True)
        ]


def _about(
    planted: Inconsistency, before: Sequence[Issue], after: Sequence[Issue]
) -> tuple[Issue, ...]:
    known = Counter((issue.check, issue.quote, issue.message) for issue in before)
    found = []
    for issue in after:
        matter = (issue.check, issue.quote, issue.message)
        known[matter] -= 1
        if known[matter] < 0 and any(_touches(s, planted) for s in (issue.span, *issue.related)):
            found.append(issue)
    return tuple(found)


def _touches(span: Span, planted: Inconsistency) -> bool:
    return span.page == planted.page and (span.start <= planted.end and planted.start <= span.end)


def _applied(book: Book, issue: Issue) -> str:
    text = book.page(issue.span.page).text
    return text[: issue.span.start] + issue.suggestions[0] + text[issue.span.end :]


def _print_alarms(title: str, books: Sequence[Book], *, show: bool) -> None:
    words = sum(book.words for book in books)
    alarms = [
        (book, issue)
        for book, issues in zip(books, _issues(books), strict=True)
        for issue in issues
        if issue.check.partition("/")[0] in _FAMILIES
    ]
    print(f"{title}: {words} words, {1000 * len(alarms) / words:.2f} issues in 1,000 words")
    for book, issue in alarms if show else ():
        print(
            f"    {book.path[-30:]} {issue.check} {issue.quote!r} {issue.suggestions[:2]} {issue.message}"
        )


def _print_kind(kind: str, results: Sequence[Result], *, show: bool) -> None:
    found = sum(bool(result.about) for result in results) / len(results)
    mended = sum(result.mended for result in results) / len(results)
    print(f"  {kind:32} {len(results):4} planted, found {found:.2f}, right form first {mended:.2f}")
    for result in results if show else ():
        if not result.mended:
            planted = result.planted
            text = planted.after.page(planted.page).text
            place = text[max(0, planted.start - 40) : planted.end + 25].replace("\n", "¶")
            said = [f"{i.check} {i.quote!r} {i.suggestions[:2]}" for i in result.about]
            print(f"    {place!r} | {said or 'not found'} ({planted.after.path[-30:]})")


if __name__ == "__main__":
    main()
