"""Print how many statuses are right through the drafts of an author whose every slip is known.

    python -m tests.bench.simulated_author [--books N] [--drafts N] [--seed N] [--wrong]

Each book is one of the project's invented stories. Between two drafts the author makes slips, mends some,
makes some of those again, and rewords, renames, renumbers, moves, cuts, restores and puts in text.
"""

from __future__ import annotations

import argparse
import random
import time
from collections import Counter
from dataclasses import dataclass, field

from proofkit.book import Book, Span
from proofkit.drafts.draft import Draft
from proofkit.drafts.matching import compared_with_last
from proofkit.drafts.status import Comparison, Status
from proofkit.issue import Issue, Tier, issue_at, with_keys
from proofkit.readers.read import read
from tests.bench._author import Manuscript, Slip, Word, manuscript_of, stories
from tests.bench._edits import Author
from tests.bench._slips_made import MADE
from tests.drafts.making import drafted

BOOKS, DRAFTS, SEED = 30, 12, 7
HERE = (Status.NEW, Status.STILL_THERE, Status.BACK_AGAIN, Status.LET_STAND)


@dataclass
class Tally:
    """How many statuses were right, and which were wrong: (what it was, what it was called)."""

    right: int = 0
    wrong: Counter[tuple[Status, Status]] = field(default_factory=Counter)
    truths: Counter[Status] = field(default_factory=Counter)
    new_by_move: int = 0  # still there, called new, its sentence moved
    said: list[str] = field(default_factory=list)

    @property
    def total(self) -> int:
        return self.right + sum(self.wrong.values())

    @property
    def share(self) -> float:
        return self.right / self.total

    def add(self, other: Tally) -> None:
        self.right += other.right
        self.wrong += other.wrong
        self.truths += other.truths
        self.new_by_move += other.new_by_move
        self.said += other.said


@dataclass(frozen=True)
class Snapshot:
    """A draft, which slip each of its issues is, and the slips that are in its text."""

    draft: Draft
    slips: tuple[Slip, ...]
    present: frozenset[Slip]


def main() -> None:
    """Run and print."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--books", type=int, default=BOOKS)
    parser.add_argument("--drafts", type=int, default=DRAFTS)
    parser.add_argument("--seed", type=int, default=SEED)
    parser.add_argument("--wrong", action="store_true", help="print every status that is wrong")
    asked = parser.parse_args()
    begun = time.perf_counter()
    tally = simulated(asked.books, asked.drafts, asked.seed)
    took = time.perf_counter() - begun
    print(f"{asked.books} books of {asked.drafts} drafts, {tally.total} statuses, {took:.0f} s")
    print(
        f"right: {100 * tally.share:.2f} %; still there, called new by a move: {tally.new_by_move}"
    )
    for status, count in tally.truths.most_common():
        missed = {said: n for (true, said), n in tally.wrong.items() if true is status}
        print(f"  {status:20} {count:6}", *(f"{n} called {said}" for said, n in missed.items()))
    for line in tally.said if asked.wrong else ():
        print(line)


def simulated(books: int, drafts: int, seed: int) -> Tally:
    """All statuses of so many books of so many drafts, against the truth."""
    paths, tally = stories(), Tally()
    for number in range(books):
        chance = random.Random(f"{seed} {number}")  # noqa: S311 - chance, no secret
        own = paths[number % len(paths)]
        other = chance.choice([path for path in paths if path != own])
        text, spare = manuscript_of(read(own)), manuscript_of(read(other)).leaves
        tally.add(_book(Author(text, chance, [p for p in spare if p.paragraphs]), drafts))
    return tally


def _book(author: Author, drafts: int) -> Tally:
    tally, ever = Tally(), set[Slip]()
    for _ in range(10):
        author.make(author.chance.choice(MADE))
    last, past = _snapshot(author.text, 1), Comparison(issues=())
    owners = {id(i): s for i, s in zip(last.draft.issues, last.slips, strict=True)}
    kept = [last]  # so that no issue's place in memory is another's later
    for number in range(2, drafts + 1):
        ever |= last.present
        author.moved = set()
        _work(author)
        now = _snapshot(author.text, number)
        owners |= {id(i): s for i, s in zip(now.draft.issues, now.slips, strict=True)}
        past = compared_with_last(last.draft, now.draft, past=past.past)
        _judge(tally, author, (last, now), past, owners, ever)
        last = now
        kept.append(now)
    return tally


def _work(author: Author) -> None:
    """What happens between two drafts."""
    chance, text = author.chance, author.text
    before = [slip for slip in text.slips if slip.here]
    for _ in range(chance.randrange(2, 7)):
        chance.choice(author.edits())()
    in_book = set(text.sentences())
    for slip in before:
        if slip.sentence in in_book and chance.random() < 0.2:
            author.mend(slip)
    mended = [s for s in text.slips if not s.here and s not in before and s.sentence in in_book]
    for slip in mended:
        same = slip.kind != "two ways" and slip.words[0] in slip.sentence.words
        if same and chance.random() < 0.25:
            author.apply(slip)
    for _ in range(chance.randrange(4)):
        author.make(chance.choice(MADE))
    for slip in before:
        slip.let_stand = slip.let_stand or chance.random() < 0.02


def _snapshot(text: Manuscript, number: int) -> Snapshot:
    book, places = text.rendered()
    in_book = set(text.sentences())
    present = [slip for slip in text.slips if slip.here and slip.sentence in in_book]
    by_matter = {}
    issues = []
    for slip in present:
        issue = _issue(book, slip, places)
        issues.append(issue)
        by_matter[issue.check, issue.span] = slip
    keyed = with_keys(book, issues)
    slips = tuple(by_matter[issue.check, issue.span] for issue in keyed)
    stand = {i.key for i, slip in zip(keyed, slips, strict=True) if slip.let_stand}
    draft = drafted(book, keyed, number=number, stand=stand)
    return Snapshot(draft, slips, frozenset(present))


def _issue(book: Book, slip: Slip, places: dict[Word, Span]) -> Issue:
    spans = sorted([_span(slip, places), *(places[word] for _sentence, word in slip.others)])
    return issue_at(
        book,
        spans[0],
        check=f"slips/{slip.kind.replace(' ', '-')}",
        tier=Tier.QUERY if slip.kind in {"heavy", "two ways"} else Tier.ERROR,
        message="a slip",
        confidence=0.9,
        related=spans[1:],
    )


def _span(slip: Slip, places: dict[Word, Span]) -> Span:
    first = places[slip.words[0]]
    after = len(slip.words[0].gap)
    if slip.kind in {"gap", "dropped"}:
        return Span(page=first.page, start=first.end, end=first.end + after)
    if slip.kind in {"comma", "no stop"}:
        return Span(page=first.page, start=first.end, end=first.end)
    if slip.kind == "doubled":
        return Span(page=first.page, start=first.start, end=places[slip.words[1]].end)
    if slip.kind == "heavy":
        words = slip.sentence.words
        return Span(page=first.page, start=places[words[0]].start, end=places[words[-1]].end)
    return first


def _judge(
    tally: Tally,
    author: Author,
    pair: tuple[Snapshot, Snapshot],
    result: Comparison,
    owners: dict[int, Slip],
    ever: set[Slip],
) -> None:
    """Count the statuses of a draft against what the author did."""
    last, now = pair
    in_book = set(author.text.sentences())
    for standing, slip in zip(result.issues, now.slips, strict=True):
        true = _truth(slip, last, ever)
        same = standing.before is None or owners[id(standing.before)] is slip
        called = standing.status if same or standing.status is not true else Status.NEW
        _count(tally, true, called, slip, moved=slip.sentence in author.moved)
    for ended in result.ended:
        slip = owners[id(ended.issue)]
        if slip not in now.present:
            true = Status.FIXED if slip.sentence in in_book else Status.GONE_WITH_TEXT
            _count(tally, true, ended.status, slip, moved=False)


def _truth(slip: Slip, last: Snapshot, ever: set[Slip]) -> Status:
    if slip.let_stand:
        return Status.LET_STAND
    if slip in last.present:
        return Status.STILL_THERE
    return Status.BACK_AGAIN if slip in ever else Status.NEW


def _count(tally: Tally, true: Status, called: Status, slip: Slip, *, moved: bool) -> None:
    tally.truths[true] += 1
    if called is true:
        tally.right += 1
        return
    tally.wrong[true, called] += 1
    if true is Status.STILL_THERE and called is Status.NEW:
        tally.new_by_move += moved
    words = " ".join(word.text for word in slip.sentence.words)
    tally.said.append(f"  {true} called {called}: {slip.kind} “{slip.words[0].text}” in: {words}")


if __name__ == "__main__":
    main()
