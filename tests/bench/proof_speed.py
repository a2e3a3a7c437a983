"""How fast the marked proof of a novel opens and answers: 40,000 words with 2,000 issues.

    python -m tests.bench.proof_speed

The text is the beginning of The Wind in the Willows (Project Gutenberg 289), from ``../shared/corpus``;
an issue is planted at every twentieth word, of six kinds in turn. Opening is from asking for the file to
the second frame after it was loaded; an answer is from the event to the second frame after it. Each
figure is the median and the worst of its runs.
"""

from __future__ import annotations

import re
import tempfile
import time
from collections.abc import Iterator
from itertools import cycle
from pathlib import Path
from statistics import median

from playwright.sync_api import Page, sync_playwright

from proofkit.book import Book, Paragraph
from proofkit.book import Page as BookPage
from proofkit.issue import Issue, Tier
from proofkit.reports.proof.proof import as_proof
from tests.bench._texts import CORPUS
from tests.bench.reading_speed import novel
from tests.browser.chromium import launched
from tests.reports import goat

_ISSUES = 2_000
_RUNS = 5
_CHECKS = (
    "spelling/misspelling",
    "grammar/article",
    "spacing/missing-space",
    "capitals/name",
    "speech/not-closed",
    "repetition/echo",
)
_FRAMES = "new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))"
_ACTS = {
    "next mark": "document.getElementById('next').click()",
    "previous mark": "document.getElementById('previous').click()",
    "tick one off": "document.querySelector('.slip input').click()",
    "errors only": "choose('tier', 'error')",
    "everything": "choose('tier', '')",
    "one family": "choose('family', 'spacing')",
    "every family": "choose('family', '')",
    "search": "write('words', 'mole')",
    "search cleared": "write('words', '')",
}
_TIMED = """(async () => {
    %s
    const start = performance.now();
    %s;
    await %s;
    return performance.now() - start;
})()"""
_HELP = """
    const choose = (id, value) => {
        const list = document.getElementById(id);
        list.value = value;
        list.dispatchEvent(new Event('change', { bubbles: true }));
    };
    const write = (id, value) => {
        const field = document.getElementById(id);
        field.value = value;
        field.dispatchEvent(new Event('input', { bubbles: true }));
    };
"""


def main() -> None:
    """Print the size of the page and its times."""
    if not CORPUS.exists():
        print(f"skipped: there is no {CORPUS}")
        return
    for paginated in (False, True):
        book = _book(_joined(novel()), paginated=paginated)
        report = goat.goat(book, issues=list(_slips(book)))
        start = time.perf_counter()
        html = as_proof(report)
        print(f"\n{'in chapters of 1,000 words' if paginated else 'without pages'}")
        print(f"words                 {book.words:>8,}")
        print(f"issues                {len(report.issues):>8,}")
        print(f"written in            {time.perf_counter() - start:8.2f} s")
        print(f"size                  {len(html.encode()) / 1e6:8.2f} MB")
        with tempfile.TemporaryDirectory() as folder, sync_playwright() as driver:
            file = Path(folder, "proof.html")
            file.write_text(html, encoding="utf-8")
            browser = launched(driver)
            assert browser is not None, "Chromium is not installed here"
            _time(browser.new_page(viewport={"width": 1100, "height": 800}), file)
            browser.close()


def _time(page: Page, file: Path) -> None:
    opening = []
    for _ in range(_RUNS):
        page.goto("about:blank")
        start = time.perf_counter()
        page.goto(file.as_uri())
        page.evaluate(_FRAMES)
        opening.append(time.perf_counter() - start)
    print(f"opens in              {median(opening):8.2f} s    worst {max(opening):.2f} s")
    times: dict[str, list[float]] = {name: [] for name in _ACTS}
    # In turn: an act that is repeated at once changes nothing.
    for _ in range(_RUNS):
        for name, act in _ACTS.items():
            times[name].append(page.evaluate(_TIMED % (_HELP, act, _FRAMES)))
    for name, each in times.items():
        print(f"{name:<22}{median(each):8.0f} ms   worst {max(each):.0f} ms")


def _joined(text: str) -> str:
    """The text with its lines joined, as the readers do it."""
    return "\n\n".join(" ".join(paragraph.split()) for paragraph in text.split("\n\n"))


def _book(text: str, *, paginated: bool) -> Book:
    chunks = [text]
    if paginated:
        paragraphs = text.split("\n\n")
        chunks = ["\n\n".join(paragraphs[n : n + 20]) for n in range(0, len(paragraphs), 20)]
    pages = tuple(
        BookPage(
            number=n,
            text=chunk,
            paragraphs=(Paragraph(start=0, end=len(chunk)),),
            label=f"Page {n}" if paginated else "",
        )
        for n, chunk in enumerate(chunks, 1)
    )
    return Book(path="novel.txt", title="A novel", pages=pages, paginated=paginated)


def _mended(check: str, word: str) -> tuple[str, ...]:
    """What such an issue proposes: something else for each kind, nothing for an echo."""
    return {
        "spelling/misspelling": (word[::-1],),
        "grammar/article": (f"a {word}",),
        "spacing/missing-space": (f"{word[:1]} {word[1:]}",),
        "capitals/name": (word.upper(),),
        "speech/not-closed": (f"{word}”",),
    }.get(check, ())


def _slips(book: Book) -> Iterator[Issue]:
    checks = cycle(_CHECKS)
    words = [(page, found) for page in book.pages for found in re.finditer(r"\w+", page.text)]
    apart = len(words) // _ISSUES
    for page, found in words[::apart][:_ISSUES]:
        check = next(checks)
        mended = _mended(check, found[0])
        yield Issue(
            check=check,
            tier=Tier.ERROR if mended else Tier.QUERY,
            span=page.span(found.start(), found.end()),
            quote=found[0],
            message="why it is marked, in some six words",
            suggestions=mended,
            confidence=0.8,
        )


if __name__ == "__main__":
    main()
