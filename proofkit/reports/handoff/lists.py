"""The lists of the pack: rulings with their reasons, words to confirm, words per spread."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import groupby

from proofkit.book import Role
from proofkit.report import LetStand, PageReport, Report
from proofkit.reports.handoff.paper import Columns, Paper, Part
from proofkit.reports.phrases import counted
from proofkit.reports.places import page_name, pages_named, place
from proofkit.rulings.ruling import Ruling

_NO_REASON = "(no reason was written down)"


def rulings_list(report: Report, rulings: Iterable[Ruling]) -> Paper:
    """What the author let stand: ``rulings`` for the whole book, and each place in the book's order."""
    whole = tuple(_whole_book(ruling) for ruling in rulings if not ruling.about_place)
    in_order = sorted(report.let_stand, key=lambda each: (each.issue.page, each.issue.start))
    places = tuple(_at_place(report, each) for each in in_order)
    parts = []
    if whole:
        table = Columns(heads=("what stands", "why"), shares=(0.5, 0.5), rows=whole)
        parts.append(Part(heading="Throughout the book", table=table))
    if places:
        heads = ("where", "what stands", "what was asked", "why")
        table = Columns(heads=heads, shares=(0.14, 0.26, 0.3, 0.3), rows=places)
        parts.append(Part(heading="Place by place", table=table))
    if not parts:
        parts.append(Part(says=("The author has ruled on nothing.",)))
    about = "What the author was asked about, and lets stand. Please leave it as it is."
    return Paper(name="Rulings", about=about, parts=tuple(parts))


def _whole_book(ruling: Ruling) -> tuple[str, str]:
    what = f"“{ruling.word}”" if ruling.word else f"whatever {ruling.check} finds"
    if ruling.word and ruling.check:
        what = f"{what}, where {ruling.check} asks about it"
    return what, ruling.because or _NO_REASON


def _at_place(report: Report, each: LetStand) -> tuple[str, str, str, str]:
    issue = each.issue
    where = place(report, issue.page, issue.start)
    return where, issue.quote, issue.message, each.because or _NO_REASON


def words_list(report: Report) -> Paper:
    """The words that no dictionary has, most used first."""
    words = report.words_to_confirm
    rows = tuple((word.word, f"{word.count:,}", pages_named(report, word.pages)) for word in words)
    heads, shares = ("word", "how often", "where"), (0.3, 0.15, 0.55)
    part = (
        Part(table=Columns(heads=heads, shares=shares, rows=rows))
        if rows
        else Part(
            says=("There is no word that a dictionary lacks and the author has not settled.",)
        )
    )
    about = (
        "No dictionary has these words. They are taken for the book’s own: names, sounds, invented "
        "words. A slip may be among them."
    )
    return Paper(name="Words to confirm", about=about, parts=(part,))


def spreads_list(report: Report) -> Paper:
    """How many words of story each spread has, or each page where spreads are not known."""
    rows = tuple(_per_spread(report.pages))
    book = report.manuscript
    if not book.paginated:
        says = (
            f"No pages are marked in the manuscript, so there is only the whole: {counted(book.words, 'word')}.",
        )
        return Paper(name="Words per spread", about="Words of the story.", parts=(Part(says=says),))
    total = ("in all", f"{book.words:,}", "")
    heads, shares = ("where", "words", "begins"), (0.2, 0.12, 0.68)
    table = Columns(heads=heads, shares=shares, rows=(*rows, total))
    return Paper(
        name="Words per spread", about="Words of the story alone.", parts=(Part(table=table),)
    )


def _per_spread(pages: Iterable[PageReport]) -> Iterable[tuple[str, str, str]]:
    story = [page for page in pages if page.role is Role.STORY]
    for _, group in groupby(story, key=lambda page: page.spread or -page.number):
        members = list(group)
        name = page_name(members[0])
        if len(members) > 1:
            name = f"spread {members[0].spread}"
        words = sum(page.words for page in members)
        yield name, f"{words:,}", _beginning(members)


def _beginning(pages: Iterable[PageReport]) -> str:
    """The first words that stand there, to find the place by."""
    words = " ".join(page.text for page in pages).split()
    return " ".join(words[:8]) + ("…" if len(words) > 8 else "") if words else "(no words)"
