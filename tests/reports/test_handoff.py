"""The papers of the pack, as words."""

from __future__ import annotations

import io
from dataclasses import replace
from datetime import UTC, datetime

import pytest
from docx import Document

from proofkit.book import Book, Page, Paragraph, Role
from proofkit.handoff import author_of
from proofkit.problem import Notice
from proofkit.report import LetStand
from proofkit.reports.handoff.brief import brief
from proofkit.reports.handoff.checklist import checklist
from proofkit.reports.handoff.lists import rulings_list, spreads_list, words_list
from proofkit.reports.handoff.paper import Columns, Paper, Part
from proofkit.reports.handoff.printed import as_printed
from proofkit.reports.handoff.word import as_word
from proofkit.rulings.ruling import Ruling
from proofkit.settings import English
from tests.reports.goat import SPREADS, book, goat

# A stop set apart by a slip is no word.
WORDS = sum(any(map(str.isalpha, word)) for spread in SPREADS for word in spread.split())
MADE = datetime(2026, 11, 25, 9, 30, tzinfo=UTC)


def rows(paper: Paper, number: int = 0) -> tuple[tuple[str, ...], ...]:
    return [part.table for part in paper.parts if part.table][number].rows


def pairs(paper: Paper) -> dict[str, str]:
    return {matter: told for matter, told in rows(paper)}  # noqa: C416 - so a third column would fail


def words(paper: Paper) -> str:
    return "\n".join(sentence for part in paper.parts for sentence in (*part.says, *part.lists))


def test_the_brief_tells_what_the_book_is() -> None:
    paper = brief(goat(), author="Ada Pell", papers=(("2 goat.docx", "the manuscript"),))
    told = pairs(paper)
    assert told["title"] == "The Lighthouse Goat"
    assert told["author"] == "Ada Pell"
    assert told["extent"] == f"{WORDS} words, 10 pages with story, 10 spreads"
    assert told["English"] == "British English"
    assert told["for whom"] == "a picture book for 3 to 6"
    assert rows(paper, 1) == (("2 goat.docx", "the manuscript"),)


def test_the_brief_hides_neither_errors_nor_what_was_not_checked() -> None:
    report = goat()
    failed = Notice(text="The grammar engine did not start.", unchecked=True)
    report = replace(report, notices=(failed, Notice(text="It has tracked changes.")))
    said = words(brief(report, author="", papers=()))
    assert f"it still sees {len(report.errors)} errors" in said
    assert "in this run: The grammar engine did not start." in said
    assert "tracked changes" not in said
    clean = words(brief(goat(issues=()), author="", papers=()))
    assert "it sees no errors any more, and has no open query" in clean
    assert "in this run" not in clean


def test_a_book_without_title_author_or_pages_says_so() -> None:
    report = goat(issues=())
    bare = replace(report.manuscript, title="", paginated=False, pages=1, spreads=0)
    told = pairs(brief(replace(report, manuscript=bare), author="", papers=()))
    assert told["title"] == "(the manuscript gives none)"
    assert told["author"] == "(the manuscript names nobody)"
    assert told["extent"] == f"{WORDS} words, no pages are marked in the manuscript"


def test_rulings_stand_with_their_reasons_in_the_books_order() -> None:
    report = goat()
    first, second, *_ = sorted(report.issues, key=lambda issue: (issue.page, issue.start))
    stands = (LetStand(issue=second), LetStand(issue=first, because="her own way"))
    ruled = (
        Ruling(at="", word="gonna", because="it is speech"),
        Ruling(at="", check="commas/missing-in-list"),
        Ruling(at="", key="k7f2bcd", check="a/b"),
    )
    paper = rulings_list(replace(report, let_stand=stands), ruled)
    assert rows(paper) == (
        ("“gonna”", "it is speech"),
        ("whatever commas/missing-in-list finds", "(no reason was written down)"),
    )
    assert [(row[1], row[3]) for row in rows(paper, 1)] == [
        (first.quote, "her own way"),
        (second.quote, "(no reason was written down)"),
    ]
    assert "ruled on nothing" in words(rulings_list(goat(), ()))


def test_words_to_confirm_have_their_places() -> None:
    report = goat()
    listed = rows(words_list(report))
    assert [row[0] for row in listed] == [word.word for word in report.words_to_confirm]
    assert listed
    assert all(row[2].startswith("spread") for row in listed)
    none = replace(report, words_to_confirm=())
    assert "There is no word" in words(words_list(none))


def test_words_are_counted_by_the_spread() -> None:
    report = goat()
    *spreads, total = rows(spreads_list(report))
    assert [row[0] for row in spreads] == [f"spread {n}" for n in range(1, len(SPREADS) + 1)]
    assert spreads[0] == ("spread 1", "14", "Nell was a goat, and she lived in…")
    assert sum(int(row[1]) for row in spreads) == int(total[1]) == report.manuscript.words


def test_two_pages_of_a_spread_are_counted_together_and_no_pages_at_all() -> None:
    report = goat()
    pages = tuple(
        replace(page, spread=max(page.spread, 2) if page.spread else None, label="")
        for page in report.pages
    )
    listed = rows(spreads_list(replace(report, pages=pages)))
    assert [row[0] for row in listed[:2]] == ["spread 2", "spread 3"]
    alone = rows(spreads_list(report))
    assert int(listed[0][1]) == int(alone[0][1]) + int(alone[1][1])
    whole = replace(report, manuscript=replace(report.manuscript, paginated=False))
    assert f"only the whole: {WORDS} words" in words(spreads_list(whole))


@pytest.mark.parametrize(
    "matter", ["heading", "folio", "running head", "caption", "imprint page", "ISBN", "one place"]
)
def test_the_checklist_has_what_the_trade_looks_at(matter: str) -> None:
    paper = checklist()
    assert matter.lower() in words(paper).lower()
    assert all(part.to_tick for part in paper.parts)


def test_the_printed_manuscript_is_the_text_whatever_stands_in_it() -> None:
    text = "<script>alert(1)</script>\nand a \x00 b\n\nShe went very far."
    first, second = text.index("\n\n"), text.index("She")
    story = Page(
        number=1,
        text=text,
        label="Spread <1>",
        paragraphs=(
            Paragraph(start=0, end=first),
            Paragraph(start=second, end=len(text)),
        ),
        emphasis=((text.index("very"), text.index("very") + 4),),
    )
    made = as_printed(
        Book(path="x.md", title="", pages=(story,)), title="A <b>", english=English.AMERICAN
    )
    assert "<p>She went <em>very</em> far.</p>" in made
    assert "<h2>Spread &lt;1&gt;</h2>" in made
    assert "<title>A &lt;b&gt;: manuscript</title>" in made
    assert "<p>&lt;script&gt;alert(1)&lt;/script&gt;\nand a \N{REPLACEMENT CHARACTER} b</p>" in made
    assert "<script" not in made
    assert '<html lang="en-US">' in made


def test_the_author_is_as_the_title_page_has_her() -> None:
    text = "The Goat\n\nBy Ada  Pell"
    title = Page(
        number=1,
        text=text,
        paragraphs=(
            Paragraph(start=0, end=8, role=Role.TITLE),
            Paragraph(start=10, end=len(text), role=Role.AUTHOR),
        ),
        role=Role.TITLE,
    )
    assert author_of(Book(path="goat.docx", title="The Goat", pages=(title, title))) == "Ada Pell"
    assert author_of(book(*SPREADS)) == ""


def test_a_paper_is_set_in_word_as_it_is_whatever_stands_in_it() -> None:
    odd = "a\x1b[31m <w:p/> & \ufffe\ud800 b"
    table = Columns(heads=("head", "other"), shares=(0.4, 0.6), rows=((odd, "x"),))
    part = Part(heading="A part", says=(odd,), lists=("look",), to_tick=True, table=table)
    made = as_word(Paper(name="List", about="About.", parts=(part,)), odd, English.BRITISH, MADE)
    document = Document(io.BytesIO(made))
    lines = [paragraph.text for paragraph in document.paragraphs]
    assert lines[1:3] == ["About.", "A part"]
    assert "<w:p/> &" in lines[0]
    assert lines[0].endswith(" b: list")
    assert lines[4] == "☐\tlook"
    [[head, _], [cell, x]] = [[c.text for c in row.cells] for row in document.tables[0].rows]
    assert (head, x) == ("head", "x")
    assert "<w:p/> &" in cell
    assert document.core_properties.author == ""
    assert document.core_properties.created == MADE
