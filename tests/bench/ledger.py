"""Print what a ledger of 500 drafts of a 40,000-word book costs: time to list, time to record, size.

    python -m tests.bench.ledger [DRAFTS]

The text is a novel's (see ``_texts.py``); slips are made up, edits are random, with a fixed seed. Times
are ratios of runs side by side: judge them, never test them.
"""

from __future__ import annotations

import random
import statistics
import subprocess
import sys
import tempfile
import time
import zlib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

from proofkit.book import Book, Page, Paragraph, counted_words
from proofkit.drafts.draft import Draft
from proofkit.drafts.from_report import draft_of
from proofkit.drafts.ledger import record
from proofkit.engines.note import EngineNote
from proofkit.issue import Issue, Tier, issue_at, with_keys
from proofkit.reading.measure import measure
from proofkit.report import report_of
from proofkit.settings import English, Settings
from tests.bench._texts import CORPUS, NOVELS, excerpts

WORDS, PAGES = 40_000, 200
SLIPS = 300  # in the first draft: 7 or 8 in a thousand words
EDITED = 6  # pages that an author changes from draft to draft
START = datetime(2025, 1, 1, tzinfo=UTC)
CHECKS = ("spelling/misspelling", "commas/missing-in-list", "grammar/verb-and-subject")


@dataclass(slots=True)
class Author:
    """A book that is revised: its pages, each a list of words, and which words are slips."""

    pages: list[list[str]]
    slips: list[set[int]]
    dice: random.Random

    def revise(self) -> None:
        """Change a few pages: a word here, a sentence there, a slip mended, another one made."""
        for at in self.dice.sample(range(len(self.pages)), EDITED):
            page, slips = self.pages[at], self.slips[at]
            page[self.dice.randrange(len(page))] = self.dice.choice(self.dice.choice(self.pages))
            if slips and self.dice.random() < 0.5:
                page[slips.pop()] = "mended"
            elif self.dice.random() < 0.5:
                slips.add(self.dice.randrange(len(page)))

    def book(self) -> Book:
        """The manuscript as it stands."""
        return Book(path="Book.docx", title="A Book", pages=tuple(self._pages()))

    def _pages(self) -> Iterator[Page]:
        for number, words in enumerate(self.pages, 1):
            text = " ".join(words)
            whole = (Paragraph(start=0, end=len(text)),)
            label = f"Pages {2 * number}–{2 * number + 1}"
            yield Page(number=number, text=text, paragraphs=whole, spread=number, label=label)

    def issues(self, book: Book) -> Iterator[Issue]:
        """An issue for each slip."""
        for page, slips in zip(book.pages, self.slips, strict=True):
            words = list(counted_words(page.text))
            for at in sorted(slips):
                if at < len(words):
                    yield issue_at(
                        book,
                        page.span(*words[at].span()),
                        check=CHECKS[at % len(CHECKS)],
                        tier=Tier.QUERY if at % 5 == 0 else Tier.ERROR,
                        message="not in the dictionary, and near to another word",
                        confidence=0.8,
                    )


def drafts(number: int) -> Iterator[Draft]:
    """So many drafts of the book."""
    dice = random.Random(7)  # noqa: S311 - edits, no secret
    stretches = excerpts(NOVELS, of_each=WORDS, seed=7)  # all that there are
    words = [word for book in stretches for page in book.pages for word in page.text.split()][
        :WORDS
    ]
    length = len(words) // PAGES
    pages = [words[at * length : (at + 1) * length] for at in range(PAGES)]
    slips: list[set[int]] = [set() for _ in pages]
    for _ in range(SLIPS):
        slips[dice.randrange(PAGES)].add(dice.randrange(length))
    author = Author(pages=pages, slips=slips, dice=dice)
    reading = measure(author.book())
    for day in range(number):
        book = author.book()
        report = report_of(
            book,
            with_keys(book, author.issues(book)),
            english=English.BRITISH,
            age_band="chapter",
            words_to_confirm=(),
            reading=reading,
            engines=(EngineNote(name="language model", version="3.8.0", ran=True),),
        )
        yield draft_of(report, date=START + timedelta(days=day), settings=Settings())
        author.revise()


def main(arguments: Sequence[str]) -> None:
    """Record the drafts, then print the figures."""
    if not CORPUS.exists():
        sys.exit("The novels are not beside the project: no text to measure with.")
    number = int(arguments[0]) if arguments else 500
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / "proofkit.toml").write_text('title = "A Book"\n')
        ledger = Path(folder) / "proofkit.db"
        seconds: list[float] = []
        texts: dict[str, int] = {}
        whole = issues = 0
        for draft in drafts(number):
            began = time.process_time()
            record(ledger, draft)
            seconds.append(time.process_time() - began)
            for text in draft.texts:
                texts.setdefault(text, len(zlib.compress(text.encode(), 9)))
            whole += len(zlib.compress("\n".join(draft.texts).encode(), 9))
            issues += len(draft.issues)
        size = ledger.stat().st_size
        print(f"{number} drafts, {issues / number:.0f} issues each, {size / 1e6:.1f} MB")
        pages = sum(texts.values())
        allowed = 1.2 * pages + 200 * issues
        print(
            f"size / (1.2 x each page's text compressed once + 200 bytes an issue): {size / allowed:.3f}"
        )
        print(f"size / all drafts' texts, each compressed as a whole: {size / whole:.3f}")
        early, late = statistics.median(seconds[:20]), statistics.median(seconds[-20:])
        print(
            f"recording one, seconds of a core: median {early:.3f} at first, {late:.3f} at last, worst {max(seconds):.3f}"
        )
        _print_listing(folder)


def _print_listing(folder: str) -> None:
    listing = (sys.executable, "-m", "proofkit", "drafts", folder)
    spacy = (sys.executable, "-c", "import spacy")
    pairs = [(_timed(listing), _timed(spacy)) for _ in range(5)]
    ours, theirs = (statistics.median(column) for column in zip(*pairs, strict=True))
    print(
        f"proofkit drafts: {ours:.2f} s; importing spaCy: {theirs:.2f} s; ratio {ours / theirs:.2f}"
    )


def _timed(command: Sequence[str]) -> float:
    began = time.perf_counter()
    subprocess.run(command, check=True, capture_output=True)
    return time.perf_counter() - began


if __name__ == "__main__":
    main(sys.argv[1:])
