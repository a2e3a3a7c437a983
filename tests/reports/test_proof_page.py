from __future__ import annotations

import itertools
import json
import re
import shutil
import subprocess
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from proofkit.book import Book, Paragraph, Span
from proofkit.book import Page as BookPage
from proofkit.issue import Issue, Tier
from proofkit.report import Report
from proofkit.reports.json_report import as_json
from proofkit.reports.proof.proof import as_proof
from tests.browser.chromium import DESK, PHONE, barriers, browser, opened, overflow, pdf_of
from tests.reports import goat

__all__ = ["browser"]

HOSTILE = (
    "<script>document.title = 'mine'</script> said </style><style>* { display: none }</style>.",
    "<img src=x onerror=\"document.title = 'mine'\"> {{ 7 * 7 }} {% raw %} ${document.title} &lt;b&gt;",
    "javascript:alert(1) ' \" ` --> <!-- ]]> \u202esdrawkcab\u202c \u200b\ufeff a\u0301\u0328 \U0001f98a",
    "null \x00 bell \x07 lone \ud800 end",
    "w" * 400 + " Donaudampfschifffahrtsgesellschaftskapitän",
    "العربية ثم English",
)


Write = Callable[[Report], Path]


@pytest.fixture
def write(tmp_path: Path) -> Write:
    """Put a report's proof into a file."""

    def put(report: Report) -> Path:
        path = tmp_path / "proof.html"
        path.write_text(as_proof(report), encoding="utf-8")
        return path

    return put


def _hostile() -> Report:
    book = goat.book(*HOSTILE, title="<b onclick=x>Goat</b> & \u202eson", path="</title><i>.docx")
    issues = [
        goat.slip(book, words, "<i>" + words, check="spelling/slip", message="<b>why</b>")
        for words in ("<script>", "{{ 7 * 7 }}", "<!--", "bell \x07", "w" * 400, "ثم")
    ]
    return goat.goat(book, issues=issues)


def _many(spreads: int, *, paginated: bool = True) -> Report:
    """Some spreads with an error and a query on each."""
    texts = [
        f"The goat number {n} sat sat on hte wall.\n\n“Ho,” said Nell." for n in range(spreads)
    ]
    book = goat.book(*texts, paginated=paginated)
    return goat.goat(book, issues=list(_slips(book)))


def _slips(book: Book) -> Iterator[Issue]:
    for page in book.pages:
        for found in re.finditer(r"sat sat|hte", page.text):
            yield Issue(
                check="repetition/doubled-word"
                if found[0] == "sat sat"
                else "spelling/misspelling",
                tier=Tier.QUERY if found[0] == "sat sat" else Tier.ERROR,
                span=Span(page=page.number, start=found.start(), end=found.end()),
                quote=found[0],
                message="a word twice" if found[0] == "sat sat" else "no dictionary has this word",
                suggestions=("sat",) if found[0] == "sat sat" else ("the",),
                confidence=0.8,
            )


def _focused(page: Page) -> str:
    return str(page.evaluate("document.activeElement.id || document.activeElement.className"))


def _keys(page: Page) -> list[str]:
    """The keys of the rows that are shown."""
    rows = page.locator(".slip li:visible")
    return [str(key) for key in rows.evaluate_all("rows => rows.map(row => row.dataset.key)")]


@pytest.mark.parametrize("paginated", [True, False])
def test_every_issue_of_the_json_has_its_mark_and_its_row(
    browser: Browser, write: Write, *, paginated: bool
) -> None:
    report = goat.goat(paginated=paginated)
    issues = {each["key"]: each for each in json.loads(as_json(report))["issues"]}
    with opened(browser, write(report)) as page:
        assert sorted(_keys(page)) == sorted(issues)
        for key, issue in issues.items():
            row = page.locator(f".slip li[data-key='{key}']")
            assert row.get_attribute("data-tier") == issue["tier"]
            assert issue["message"] in row.inner_text()
            number = row.get_attribute("data-n")
            note = page.locator(f"#m{number}")
            assert note.is_visible()
            assert f"no. {number}," in (note.get_attribute("aria-label") or "")
            assert page.locator(f"[data-m~='{number}']").count() >= 1


def test_the_text_is_as_set_and_the_marks_add_no_word_to_it(browser: Browser, write: Write) -> None:
    with opened(browser, write(goat.goat())) as page:
        texts = page.locator(".set").evaluate_all(
            """each => each.map(paragraph => {
                const copy = paragraph.cloneNode(true);
                copy.querySelectorAll(".note").forEach(mark => mark.remove());
                return copy.textContent;
            })"""
        )
    assert texts == ["The Lighthouse Goat", *"\n\n".join(goat.SPREADS).split("\n\n")]


@pytest.mark.parametrize("width", [PHONE, 480, 700, DESK])
def test_no_mark_moves_the_text(browser: Browser, write: Write, width: int) -> None:
    """Every paragraph is as high as the same one without its marks: no line breaks elsewhere."""
    with opened(browser, write(goat.goat()), width=width) as page:
        moved = page.evaluate(
            """[...document.querySelectorAll(".set")].filter(marked => {
                const bare = marked.cloneNode(true);
                bare.querySelectorAll(".note").forEach(mark => mark.remove());
                bare.textContent = bare.textContent;
                marked.after(bare);
                const differs = Math.abs(bare.offsetHeight - marked.offsetHeight) > 1;
                bare.remove();
                return differs;
            }).map(marked => marked.textContent)"""
        )
    assert moved == []


def test_a_mark_says_for_and_read_and_stands_level_with_its_words(
    browser: Browser, write: Write
) -> None:
    with opened(browser, write(goat.goat())) as page:
        note = page.locator(".note[aria-label*='reduce space']")
        assert (
            note.get_attribute("aria-label")
            == "no. 8, reduce space: for “she␣␣took” read “she took”"
        )
        words = page.locator("[data-m='8']").bounding_box()
        beside = note.bounding_box()
        assert words
        assert beside
        assert abs(words["y"] + words["height"] / 2 - beside["y"] - beside["height"] / 2) < 4
        assert beside["x"] > words["x"] + words["width"]


def test_each_row_says_place_for_read_why_and_how_sure(browser: Browser, write: Write) -> None:
    with opened(browser, write(goat.goat())) as page:
        row = " ".join(page.locator("#c1").inner_text().split())
        assert row.startswith("no. 1 paragraph 1 for the the read the a word twice sure")
        asked = " ".join(page.locator(".slip li[data-tier=query]").last.inner_text().split())
        assert "for Mister read Mr ? elsewhere the book has Mr (4 times) query, likely" in asked


def test_words_and_grade_stand_at_the_head_of_each_spread(browser: Browser, write: Write) -> None:
    report = goat.goat()
    with opened(browser, write(report)) as page:
        heads = page.locator(".spread-head").all_inner_texts()
    assert heads[0].split("\n\n") == ["Title page", "not counted as story"]
    for head, spread in zip(heads[1:], report.reading.spreads, strict=True):
        name, figures = head.split("\n\n")
        assert name == f"Spread {spread.spread}"
        assert figures == f"{spread.words} words; reading grade {spread.flesch_kincaid_grade:.1f}"


def test_the_arrow_keys_walk_all_marks_and_back(browser: Browser, write: Write) -> None:
    report = goat.goat()
    every = [f"m{n}" for n in range(1, len(report.issues) + 1)]
    with opened(browser, write(report)) as page:
        walked = []
        for _ in every:
            page.keyboard.press("ArrowRight")
            walked.append(_focused(page))
            assert page.locator(".note[aria-current]").count() == 1
        assert walked == every
        page.keyboard.press("ArrowRight")  # there is nothing after the last
        assert _focused(page) == every[-1]
        back = []
        for _ in every[1:]:
            page.keyboard.press("ArrowLeft")
            back.append(_focused(page))
        assert back == every[-2::-1]


def test_enter_goes_to_the_correction_and_back(browser: Browser, write: Write) -> None:
    with opened(browser, write(goat.goat())) as page:
        page.keyboard.press("ArrowRight")
        page.keyboard.press("Enter")
        assert page.evaluate("document.activeElement.getAttribute('href')") == "#m1"
        page.keyboard.press("Enter")
        assert _focused(page) == "m1"


def test_tab_reaches_every_control(browser: Browser, write: Write) -> None:
    with opened(browser, write(goat.goat())) as page:
        controls = "[...document.querySelectorAll('a, button, select, input')]"
        wanted = page.evaluate(f"{controls}.length")
        reached = set()
        for _ in range(wanted + 2):
            page.keyboard.press("Tab")
            reached.add(page.evaluate(f"{controls}.indexOf(document.activeElement)"))
        assert len(reached - {-1}) == wanted


def test_what_is_ticked_off_is_counted_and_kept(browser: Browser, write: Write) -> None:
    path = write(goat.goat())
    with opened(browser, path) as page:
        assert page.locator("#left").inner_text() == "10 of 10 left"
        page.keyboard.press("ArrowRight")
        page.keyboard.press("Space")
        assert page.locator("#c1 input").is_checked()
        assert page.locator("#left").inner_text() == "9 of 10 left"
        page.evaluate("history.scrollRestoration = 'manual'")
        kept = page.evaluate("JSON.stringify(localStorage)")
        key = page.locator("#c1").get_attribute("data-key")
        assert key
        assert key in kept
        page.locator("#open").check()
        assert key not in _keys(page)
        page.locator("#open").uncheck()
        page.locator("#c1 input").uncheck()
        assert page.locator("#left").inner_text() == "10 of 10 left"


def test_a_tick_is_found_again_when_the_book_is_checked_again(
    browser: Browser, tmp_path: Path
) -> None:
    path = tmp_path / "proof.html"
    path.write_text(as_proof(goat.goat()), encoding="utf-8")
    window = browser.new_context(offline=True)
    page = window.new_page()
    page.goto(path.as_uri())
    page.locator(".slip li", has_text="Mister").locator("input").check()
    # The next draft: the first error is mended, so all numbers are others.
    book = goat.book(*goat.SPREADS)
    left = [each for each in goat.slips(book) if each.check != "repetition/doubled-word"]
    path.write_text(as_proof(goat.goat(issues=left)), encoding="utf-8")
    page.goto(path.as_uri())
    assert page.locator("input:checked").count() == 1
    assert page.locator(".slip li", has_text="Mister").locator("input").is_checked()
    window.close()


def test_the_filters_choose_by_tier_family_and_words(browser: Browser, write: Write) -> None:
    report = goat.goat()
    with opened(browser, write(report)) as page:
        page.select_option("#tier", "query")
        assert sorted(_keys(page)) == sorted(each.key for each in report.queries)
        assert page.locator(".note:visible").count() == len(report.queries)
        assert page.locator("#left").inner_text() == "2 of 2 left"
        page.select_option("#tier", "")
        page.select_option("#family", "spacing")
        assert sorted(_keys(page)) == sorted(
            each.key for each in report.issues if each.check.startswith("spacing/")
        )
        page.select_option("#family", "")
        page.locator("#words").fill("MISTER")
        assert len(_keys(page)) == 1
        page.locator("#words").fill("no such words")
        assert _keys(page) == []
        assert page.locator("#left").inner_text() == "none like that"
        page.locator("#words").fill("")
        assert len(_keys(page)) == len(report.issues)


def test_the_walk_passes_over_what_is_filtered_out(browser: Browser, write: Write) -> None:
    with opened(browser, write(_many(4))) as page:
        page.select_option("#tier", "error")
        page.locator("#next").click()
        first = _focused(page)
        page.keyboard.press("ArrowRight")
        assert (first, _focused(page)) == ("m2", "m4")


def test_what_stands_is_shown_if_asked_and_marked_stet(browser: Browser, write: Write) -> None:
    report = goat.goat(let_stand={"repetition/doubled-word": "she stammers"})
    with opened(browser, write(report)) as page:
        assert len(_keys(page)) == len(report.issues)
    path = write(report)
    path.write_text(as_proof(report, show_stet=True), encoding="utf-8")
    with opened(browser, path) as page:
        row = page.locator(".slip li[data-tier=stet]")
        assert "let stand: she stammers" in row.inner_text()
        assert page.locator(".note[aria-label*='stet']").count() == 1
        assert page.locator(".dots").inner_text() == "the the"


def test_other_places_of_a_matter_point_to_it(browser: Browser, write: Write) -> None:
    book = goat.book(*goat.SPREADS)
    there = next(page for page in book.pages if "Mind the bucket" in page.text)
    at = there.text.index("Mr Brannock")
    issue = goat.slip(
        book,
        "Mister",
        "Mr",
        check="consistency/names",
        message="two ways",
        also=[there.span(at, at + 2)],
    )
    with opened(browser, write(goat.goat(book, issues=[issue]))) as page:
        link = page.locator(".elsewhere")
        assert link.inner_text() == "see 1"
        link.click()
        assert page.locator("#c1.current").count() == 1


@pytest.mark.parametrize("width", [PHONE, DESK])
def test_markup_script_and_odd_signs_are_text(browser: Browser, write: Write, width: int) -> None:
    with opened(browser, write(_hostile()), width=width) as page:
        assert page.title() == "<b onclick=x>Goat</b> & \u202eson: marked proof"
        assert page.locator("h1").inner_text() == "<b onclick=x>Goat</b> & \u202eson"
        assert page.locator("script").count() == page.locator("style").count() == 1
        assert page.locator("img, b, main i:not(.words > i)").count() == 0
        assert page.locator(".why", has_text="<b>why</b>").count() == 6
        sets = page.locator(".set").evaluate_all(
            "each => each.map(p => { p.querySelectorAll('.note').forEach(n => n.remove()); return p.textContent; })"
        )
        for spread in (*HOSTILE[:3], HOSTILE[4], HOSTILE[5]):
            assert spread in sets
        assert "null \ufffd bell \ufffd lone \ufffd end" in sets
        assert overflow(page) == 0


def test_a_style_or_script_from_elsewhere_is_refused(browser: Browser, write: Write) -> None:
    path = write(goat.goat())
    smuggled = "<p style='color: red' id='smuggled'>x</p><script>document.title = 'mine'</script>"
    path.write_text(path.read_text("utf-8").replace("</main>", f"{smuggled}</main>"), "utf-8")
    with (
        pytest.raises(AssertionError, match="Content Security Policy"),
        opened(browser, path) as page,
    ):
        assert page.title() == "The Lighthouse Goat: marked proof"


@pytest.mark.parametrize(("width", "dark"), [(DESK, False), (PHONE, True)])
@pytest.mark.parametrize("kind", ["goat", "no pages", "nothing found", "hostile", "stet"])
def test_nothing_keeps_anybody_from_reading_it(
    browser: Browser, write: Write, kind: str, width: int, *, dark: bool
) -> None:
    reports = {
        "goat": goat.goat(),
        "no pages": goat.goat(paginated=False),
        "nothing found": goat.goat(issues=[]),
        "hostile": _hostile(),
        "stet": goat.goat(let_stand={"repetition/doubled-word": ""}),
    }
    path = write(reports[kind])
    path.write_text(as_proof(reports[kind], show_stet=kind == "stet"), encoding="utf-8")
    with opened(browser, path, width=width, dark=dark) as page:
        if kind == "goat":
            page.locator("#c1 input").check()
            page.keyboard.press("ArrowRight")
        assert barriers(page) == []
        assert overflow(page) == 0


def test_without_its_script_the_proof_is_whole(browser: Browser, write: Write) -> None:
    report = goat.goat()
    with opened(browser, write(report), script=False) as page:
        assert page.locator(".slip li:visible").count() == len(report.issues)
        assert page.locator(".tools:visible, .running:visible").count() == 0


def test_a_long_text_without_pages_is_cut_into_strips(browser: Browser, write: Write) -> None:
    with opened(browser, write(_many(120, paginated=False))) as page:
        heads = page.locator(".spread-head h2").all_inner_texts()
        assert heads[0].startswith("Paragraphs 1–")
        edges = [re.findall(r"\d+", head) for head in heads]
        assert len(heads) > 2
        assert all(int(b[0]) == int(a[1]) + 1 for a, b in itertools.pairwise(edges))
        assert len(_keys(page)) == 240


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_no_spread_is_cut_in_print(
    browser: Browser, write: Write, tmp_path: Path, paper: str
) -> None:
    reader = shutil.which("pdftotext")
    if reader is None:
        pytest.skip("no pdftotext here to read the printed pages with")
    report = _many(24)
    with opened(browser, write(report)) as page:
        printed = tmp_path / "printed.pdf"
        printed.write_bytes(pdf_of(page, paper))
    read = subprocess.run(
        [reader, "-layout", str(printed), "-"], check=True, capture_output=True, text=True
    )
    sheets = [" ".join(each.split()) for each in read.stdout.split("\f")]
    assert len(sheets) > 4
    for n in range(24):
        (on,) = (sheet for sheet in sheets if f"The goat number {n} sat" in sheet)
        assert f"Spread {n + 1} " in on
        assert all(re.search(rf"\b{number} paragraph 1\b", on) for number in (2 * n + 1, 2 * n + 2))
    assert "Show" not in sheets[0]


def test_dark_is_dark_and_light_is_light(browser: Browser, write: Write) -> None:
    path = write(goat.goat())
    papers = {}
    for dark in (False, True):
        with opened(browser, path, dark=dark) as page:
            colour = page.evaluate("getComputedStyle(document.body).backgroundColor")
            papers[dark] = sum(map(int, re.findall(r"\d+", colour)[:3]))
    assert papers[True] < 150
    assert papers[False] > 600


def test_an_empty_page_and_an_issue_about_it_are_shown(browser: Browser, write: Write) -> None:
    pages = (
        BookPage(number=1, text="Nell slept.", paragraphs=(Paragraph(start=0, end=11),), spread=1),
        BookPage(number=2, text="", paragraphs=(), spread=2),
    )
    book = Book(path="goat.md", title="Goat", pages=pages)
    issue = Issue(
        check="pages/empty",
        tier=Tier.QUERY,
        span=Span(page=2, start=0, end=0),
        quote="",
        message="a spread without a word",
        confidence=0.5,
    )
    with opened(browser, write(goat.goat(book, issues=[issue]))) as page:
        assert page.locator("#m1").is_visible()
        assert "a spread without a word" in page.locator("#c1").inner_text()
