"""Make ``track-record.tsv``: how often each check was right, and the counts behind it.

    python wordlists/make_track_record.py

Drafts are made of clean texts, the invented stories of ``tests/stories`` and stretches of five novels
that nothing was trained on: on every third page one slip or one inconsistency is planted, of a kind
taken by lot. What is then raised is true where it touches a slip and false elsewhere. The marked books
of ``../shared/books`` are counted beside, in columns of their own. What only measures (``reading/``) or
is a matter of house style (``grammar/comma-…``) is neither true nor false and is left out. Wants
``../shared``; takes some minutes.
"""

from __future__ import annotations

import random
import sys
from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path

HERE = Path(__file__).parent
sys.path.insert(0, str(HERE.parent))

from proofkit.analysis import Analysis  # noqa: E402
from proofkit.book import Book, Span  # noqa: E402
from proofkit.checks.registry import all_checks  # noqa: E402
from proofkit.engines.analyse import Analyst  # noqa: E402
from proofkit.engines.memory import Memory  # noqa: E402
from proofkit.issue import Issue  # noqa: E402
from proofkit.ranking import without_rivals  # noqa: E402
from proofkit.readers.read import read  # noqa: E402
from proofkit.settings import Settings  # noqa: E402
from proofkit.words.english import english_of  # noqa: E402
from proofkit.words.vocabulary import vocabulary_of  # noqa: E402
from tests.bench._inconsistencies import added, items, swapped  # noqa: E402
from tests.bench._kinds import KINDS  # noqa: E402
from tests.bench._slips import planted  # noqa: E402
from tests.bench._texts import NOVELS, excerpts, on_mark, picture_books, proofreaders_marks  # noqa: E402

ROUNDS = (21, 22, 23)  # seeds
EXCERPTS = 30  # of each novel, in each round
EVERY = 3  # pages to a slip
# Slips of words are made more often than any one kind of the others; roughly as in the marked books.
OFTEN = {
    "word taken for another": 5,
    "misspelling": 5,
    "space lost": 2,
    "comma lost, before speech": 2,
}
NEITHER = ("reading/", "grammar/comma-")


@dataclass(slots=True)
class Record:
    """What a check said, true and false, and how sure it said it was.

    ``planted`` has what was true, then what was false in the stories, then what was false in novels.
    """

    planted: list[int] = field(default_factory=lambda: [0, 0, 0])
    marked: list[int] = field(default_factory=lambda: [0, 0])
    claimed: list[float] = field(default_factory=list)


def main() -> None:
    """Plant, check, count, write."""
    records: dict[str, Record] = defaultdict(Record)
    drafts = [draft for seed in ROUNDS for draft in _drafts(seed)]
    for (book, places), issues in zip(drafts, _issues([d[0] for d in drafts]), strict=True):
        for issue in issues:
            column = 0 if _touches(issue, places) else 1 + (book.path in NOVELS)
            records[issue.check].planted[column] += 1
            records[issue.check].claimed.append(issue.confidence)
    books, marks = picture_books(), proofreaders_marks()
    for book, issues in zip(books, _issues(books), strict=True):
        for issue in issues:
            true = any(on_mark(book, span, marks) for span in (issue.span, *issue.related))
            records[issue.check].marked[not true] += 1
            records[issue.check].claimed.append(issue.confidence)
    words = sum(book.words for book, _ in drafts), sum(book.words for book in books)
    _write(HERE / "track-record.tsv", records, sum(len(p) for _, p in drafts), words)


def _drafts(seed: int) -> Iterator[tuple[Book, list[Span]]]:
    choose = random.Random(seed)  # noqa: S311 - a sample, no secret
    stories = [read(path) for path in sorted((HERE.parent / "tests" / "stories").glob("*.md"))]
    books = [*stories, *excerpts(NOVELS, EXCERPTS, seed)]
    for book, analysis in zip(books, _analyses(books), strict=True):
        yield _with_slips(book, analysis, choose)


def _with_slips(book: Book, analysis: Analysis, choose: random.Random) -> tuple[Book, list[Span]]:
    """The book with its slips, never two on a page, so that none moves another."""
    places: list[Span] = []
    after = book
    if choose.random() < 0.5 and (odd := _inconsistency(book, choose)):
        after, span = odd
        places.append(span)
    taken = {span.page for span in places}
    free = [page.number for page in book.story_pages if page.words and page.number not in taken]
    for number in choose.sample(free, max(0, len(free) // EVERY - len(places))):
        kinds = [kind for kind in KINDS for _ in range(OFTEN.get(kind, 1))]
        for kind in choose.sample(kinds, len(kinds)):
            slips = list(KINDS[kind](after, analysis, after.page(number)))
            if slips:
                slip = choose.choice(slips)
                after = planted(after, slip)
                places.append(Span(page=number, start=slip.reach[0], end=slip.reach[1]))
                break
    return after, places


def _inconsistency(book: Book, choose: random.Random) -> tuple[Book, Span] | None:
    if choose.random() < 0.5:
        item = choose.choice(list(items()))
        found = added(book, item, choose.randrange(len(item.sentences)))
    else:
        every = list(swapped(book))
        found = choose.choice(every) if every else None
    if found is None:
        return None
    return found.after, Span(page=found.page, start=found.start, end=found.end)


def _analyses(books: Sequence[Book]) -> list[Analysis]:
    named = [(book, english_of(book, vocabulary_of(book))) for book in books]
    with Analyst(memory=MEMORY) as analyst:
        return list(analyst.analyse(named, language_model=True, grammar_engine=False))


def _issues(books: Sequence[Book]) -> Iterator[tuple[Issue, ...]]:
    named = [(book, english_of(book, vocabulary_of(book))) for book in books]
    checks = all_checks()
    with Analyst(memory=MEMORY) as analyst:
        analyst.ask(named)
        analyses = analyst.analyse(named, language_model=True, grammar_engine=True)
        for book, analysis in zip(books, analyses, strict=True):
            yield without_rivals(i for c in checks for i in c.find(book, analysis, Settings()))


def _touches(issue: Issue, places: Sequence[Span]) -> bool:
    return any(
        place.page == span.page and span.start <= place.end and place.start <= span.end
        for place in places
        for span in (issue.span, *issue.related)
    )


def _write(path: Path, records: dict[str, Record], slips: int, words: tuple[int, int]) -> None:
    lines = [
        "# How often each check was right. Made by make_track_record.py, which says how.",
        f"# Planted: {slips} slips in {words[0]} words of clean text. Marked: {words[1]} words of forty",
        "# picture books, which were in sight when the checks were written.",
        "# check, claimed (mean), planted true, false in stories, false in novels, marked true, marked false",
    ]
    for check, record in sorted(records.items()):
        if check.startswith(NEITHER):
            continue
        claimed = sum(record.claimed) / len(record.claimed)
        counts = (*record.planted, *record.marked)
        lines.append("\t".join((check, f"{claimed:.2f}", *map(str, counts))))
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")


MEMORY = Memory(None)

if __name__ == "__main__":
    main()
