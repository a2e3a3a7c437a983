"""Print how many wrong words are found, planted one at a time, and how many right ones are doubted.

    python -m tests.bench.planted_words [pairs] [alarms]

The texts are the forty books of ``../shared/books`` and five novels of ``../shared/corpus`` that the
model of context has never seen. Each slip is planted alone: its page (of a novel, its paragraph) is
checked with the vocabulary of the whole book. Of each pair, either way, at most PLANTS places are tried
in each sort of text. ``pairs`` prints every pair, ``alarms`` every false alarm.
"""

from __future__ import annotations

import random
import re
import sys
import tarfile
import time
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from statistics import mean

from proofkit.analysis import Analysis
from proofkit.book import Book, Page, Paragraph, Span
from proofkit.checks.grammar import sound_alike
from proofkit.checks.words import wrong_word
from proofkit.issue import Issue
from proofkit.readers.read import read
from proofkit.settings import English, Settings
from proofkit.words.context.pairs import confusion_pairs, confusions
from proofkit.words.context.tokens import plain
from proofkit.words.data import wordlist
from proofkit.words.suggest import in_case_of
from proofkit.words.vocabulary import WORD, Use, Vocabulary, opens_sentence, vocabulary_of

SHARED = Path(__file__).resolve().parents[3] / "shared"
BOOKS = SHARED / "books" / "dev"
CORPUS = SHARED / "corpus" / "childrens-novels.tar.xz"
Find = Callable[[Book, Analysis, Settings], Iterable[Issue]]
Place = tuple[Page, Analysis, int, int]
PLANTS = 12
SEED = 7


@dataclass(frozen=True, slots=True, kw_only=True)
class Plant:
    """A page with one wrong word in it, from ``start`` to ``end``; ``right`` is what stood there."""

    page: Page
    analysis: Analysis
    start: int
    end: int
    right: str


def main(parts: Sequence[str]) -> None:
    """Print the figures for either sort of text."""
    if not BOOKS.exists() or not CORPUS.exists():
        sys.exit("The forty books and the novels are not beside the project: nothing to measure.")
    forty = [read(path) for path in sorted(BOOKS.glob("*.md"))]
    for title, books in (("five novels", list(novels())), ("forty books", forty)):
        known = [(book, _analysis(book)) for book in books]
        _alarms(title, known, show="alarms" in parts)
        _recall(title, known, show="pairs" in parts)


def novels() -> Iterator[Book]:
    """The five novels kept for testing, a paragraph a page."""
    rows = wordlist("word-choice-texts.tsv").read_text("utf-8").splitlines()
    numbers = {row.split("\t")[0] for row in rows if row.endswith("\ttest")}
    with tarfile.open(CORPUS) as archive:
        for member in archive:
            found = re.search(r"_(\d+)\.txt$", member.name)
            if found and found.group(1) in numbers and (file := archive.extractfile(member)):
                yield _novel(member.name, file.read().decode("utf-8"))


def _novel(name: str, text: str) -> Book:
    blocks = (" ".join(re.sub(r"[_*]", "", b).split()) for b in re.split(r"\n\s*\n", text))
    pages = [
        Page(number=number, text=block, paragraphs=(Paragraph(start=0, end=len(block)),))
        for number, block in enumerate(filter(None, blocks), 1)
    ]
    return Book(path=name, title=name, pages=tuple(pages))


def _analysis(book: Book) -> Analysis:
    return Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book))


def _alarms(title: str, known: list[tuple[Book, Analysis]], *, show: bool) -> None:
    words, alarms, rows = 0, 0, []
    started = time.perf_counter()
    for book, analysis in known:
        words += book.words
        for issue in wrong_word.find(book, analysis, Settings()):
            alarms += 1
            rows.append((issue.confidence, _in_context(book, issue)))
    seconds = time.perf_counter() - started
    print(
        f"\n{title}: {words} words, {alarms} alarms, {1000 * alarms / words:.2f} in 1,000 words",
        end="",
    )
    print(f"; {words / seconds:.0f} words a second")
    if show:
        print(*(f"  {sure:.2f} {row}" for sure, row in sorted(rows, reverse=True)), sep="\n")


def _in_context(book: Book, issue: Issue) -> str:
    text = book.page(issue.span.page).text
    before, after = text[: issue.span.start][-45:], text[issue.span.end :][:35]
    place = " ".join(f"{before}›{issue.quote}‹{after}".split())
    return f"{place} | {issue.suggestions[0]} ({len(issue.related) + 1}; {Path(book.path).stem})"


def _recall(title: str, known: list[tuple[Book, Analysis]], *, show: bool) -> None:
    places = _places(known)
    alone, either, first = {}, {}, []
    for pair in confusion_pairs():
        ways = [way for way in (pair, pair[::-1]) if way in confusions()]
        tried = [plant for wrong, right in ways for plant in _plants(places, right, wrong)]
        if not tried:
            continue
        found = [_found(plant, wrong_word.find) for plant in tried]
        alone[pair] = mean(reading is not None for reading in found)
        either[pair] = mean(
            reading is not None or _found(plant, sound_alike.find) is not None
            for reading, plant in zip(found, tried, strict=True)
        )
        first += [r == p.right for r, p in zip(found, tried, strict=True) if r is not None]
        if show:
            print(f"  {'/'.join(pair):20} {len(tried):4} planted, {alone[pair]:.2f} found")
    print(f"  mean over {len(alone)} pairs {mean(alone.values()):.3f}", end="")
    print(
        f", with grammar/sound-alike {mean(either.values()):.3f}; right reading {mean(first):.3f}"
    )


def _places(known: list[tuple[Book, Analysis]]) -> dict[str, list[Place]]:
    """Where each word of a pair stands, names and the like left out."""
    wanted = {word for pair in confusion_pairs() for word in pair}
    places = defaultdict(list)
    for book, analysis in known:
        for page in book.pages:
            for match in WORD.finditer(page.prose):
                form = match.group()
                word = plain(form)
                lower = form[0].islower() or opens_sentence(page.prose, match.start())
                if word in wanted and lower and not analysis.vocabulary.is_name(form):
                    places[word].append((page, analysis, *match.span()))
    return places


def _plants(places: dict[str, list[Place]], right: str, wrong: str) -> Iterator[Plant]:
    here = places.get(right, [])
    for page, analysis, start, end in _some(here):
        form = page.text[start:end]
        written = in_case_of(form, wrong)
        text = page.text[:start] + written + page.text[end:]
        by = len(written) - len(form)
        parts = tuple(
            replace(p, start=p.start + by * (p.start > start), end=p.end + by * (p.end > start))
            for p in page.paragraphs
        )
        yield Plant(
            page=replace(page, number=1, text=text, paragraphs=parts),
            analysis=_with(analysis, wrong),
            start=start,
            end=start + len(written),
            right=form,
        )


def _some(places: Sequence[Place]) -> Sequence[Place]:
    chance = random.Random(SEED)  # noqa: S311 - the same places every time, nothing secret
    return chance.sample(places, min(PLANTS, len(places)))


def _with(analysis: Analysis, wrong: str) -> Analysis:
    """What is known of the book once the wrong word stands in it as well."""
    uses = analysis.vocabulary.uses
    use = uses.get(wrong, Use(word=wrong, forms={}, spans=(), capitals_inside=0))
    forms = {**use.forms, wrong: use.lower + 1}
    more = replace(use, forms=forms, spans=(*use.spans, Span(page=1, start=0, end=0)))
    return replace(analysis, vocabulary=Vocabulary(uses={**uses, wrong: more}))


def _found(plant: Plant, find: Find) -> str | None:
    book = Book(path="planted", title="", pages=(plant.page,))
    for issue in find(book, plant.analysis, Settings()):
        for span in (issue.span, *issue.related):
            if span.start < plant.end and plant.start < span.end:
                return issue.suggestions[0] if issue.suggestions else ""
    return None


if __name__ == "__main__":
    main(sys.argv[1:])
