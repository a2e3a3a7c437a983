from __future__ import annotations

import re
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from proofkit.book import Book, Paragraph, Span
from proofkit.book import Page as BookPage
from proofkit.reading.measure import measure
from proofkit.reading.phonics import decodable
from proofkit.reading.verse.find import verse_of
from proofkit.reading.words_beyond import HardWord
from proofkit.reading_report import ReadingReport, reading_report_of
from proofkit.reports.reading.page import as_html
from proofkit.settings import English
from tests.browser.chromium import DESK, PHONE, barriers, browser, opened, overflow, pdf_of
from tests.reports import goat

__all__ = ["browser"]

STORM = 4  # the spread that has more on it than the others

VERSE = (
    (
        "A mouse called Pip lived by the sea,\nbeneath a bent old apple tree.\n"
        "She watched the moon climb up the sky\nand wondered how it got so high."
    ),
    (
        "She built a ladder out of string,\na spoon, a shoe, a silver ring.\n"
        "She climbed it slowly, rung by rung,\nand sang the songs her mother sung."
    ),
    (
        "The moon was cold, the moon was round,\nit didn’t make a single sound.\n"
        "She poured the tea, she cut the cake,\nand both of them stayed wide awake, until the very break of day."
    ),
)
HOSTILE = (
    "<script>document.title = 'mine'</script> said </style><style>* { display: none }</style>.",
    "<img src=x onerror=\"document.title = 'mine'\"> {{ 7 * 7 }} {% raw %} ${document.title} &lt;b&gt;",
    "javascript:alert(1) ' \" ` --> <!-- ]]> \u202esdrawkcab\u202c \u200b\ufeff a\u0301\u0328 \U0001f98a",
    "null \x00 bell \x07 lone \ud800 end",
    "w" * 400 + " Donaudampfschifffahrtsgesellschaftskapitän",
    "العربية ثم English",
)


def _page(number: int, text: str, *, spread: int | None, label: str) -> BookPage:
    paragraphs = (Paragraph(start=0, end=len(text)),)
    return BookPage(number=number, text=text, paragraphs=paragraphs, spread=spread, label=label)


def _hard(book: Book, word: str, simpler: tuple[str, ...] = (), gift: str = "") -> HardWord:
    spans = tuple(
        Span(page=page.number, start=found.start(), end=found.end())
        for page in book.pages
        for found in re.finditer(rf"\b{word}\b", page.prose)
    )
    return HardWord(
        word=word,
        spans=spans,
        pages=tuple(dict.fromkeys(span.page for span in spans)),
        simpler=simpler,
        why="one word in 400,000 of English",
        gift=gift,
    )


def _report(book: Book, *hard: HardWord, age_band: str = "picture") -> ReadingReport:
    return reading_report_of(
        book,
        measure(book),
        english=English.BRITISH,
        age_band=age_band,
        words_beyond=hard,
        verse=verse_of(book, English.BRITISH),
        phonics=decodable(book, 5) if age_band == "early-reader" else None,
    )


def _goat(age_band: str = "board") -> ReadingReport:
    book = goat.book(*goat.SPREADS)
    return _report(
        book,
        _hard(book, "vane", ("cock",)),
        _hard(book, "rattled", ("shook", "banged")),
        _hard(book, "lamp", gift="met 4 times"),
        age_band=age_band,
    )


Write = Callable[[ReadingReport], Path]


@pytest.fixture
def write(tmp_path: Path) -> Write:
    """Put a report's page into a file."""

    def put(report: ReadingReport) -> Path:
        path = tmp_path / "page.html"
        path.write_text(as_html(report), encoding="utf-8")
        return path

    return put


def _leaf_shown(page: Page) -> str:
    """The heading of the one spread that lies open."""
    shown = page.locator(".leaf:visible h3")
    assert shown.count() == 1
    return shown.inner_text()


def _focused(page: Page) -> str:
    """What has the focus: a link's target, or the place of a spread."""
    return str(
        page.evaluate(
            "document.activeElement.getAttribute('href') || `#${document.activeElement.id}`"
        )
    )


def test_it_opens_with_what_to_work_on_and_the_spread_that_needs_it_most(
    browser: Browser, write: Write
) -> None:
    with opened(browser, write(_goat())) as page:
        assert page.locator("h1").inner_text() == "The Lighthouse Goat"
        assert "a board book for 0 to 3" in page.locator(".about").inner_text()
        first = page.locator(".slip li").first
        assert f"spread {STORM}" in first.inner_text()
        assert "words" in first.inner_text()
        assert _leaf_shown(page) == f"Spread {STORM}"


def test_every_spread_has_a_column_with_the_figures_of_the_table(
    browser: Browser, write: Write
) -> None:
    report = _goat()
    with opened(browser, write(report)) as page:
        rows = page.locator("table.figures tbody tr").all()
        columns = page.locator(".columns a").all()
        assert len(columns) == len(rows) == len(report.spreads)
        for spread, column, row in zip(report.spreads, columns, rows, strict=True):
            name = " ".join((column.text_content() or "").split())
            assert f"spread {spread.spread}" in name
            assert f"{spread.measures.words} words;" in name
            assert row.locator("td").first.inner_text() == str(spread.measures.words)
            assert ("to work on" in name) is bool(spread.reasons)


def test_a_bar_is_as_high_as_its_figure_and_stands_in_its_column(
    browser: Browser, write: Write
) -> None:
    report = _goat()
    with opened(browser, write(report)) as page:
        heights = [0.0] * len(report.spreads)
        links = [link.bounding_box() for link in page.locator(".columns a").all()]
        for bar in page.locator("svg.words .bar, svg.words .beyond").all():
            box = bar.bounding_box()
            assert box
            middle = box["x"] + box["width"] / 2
            at = next(n for n, a in enumerate(links) if a and a["x"] < middle < a["x"] + a["width"])
            heights[at] += box["height"]
        scale = heights[0] / report.spreads[0].measures.words
        words = [spread.measures.words for spread in report.spreads]
        assert heights == pytest.approx([scale * each for each in words], abs=2)


def test_a_click_on_a_bar_shows_its_text_with_the_hard_words_marked(
    browser: Browser, write: Write
) -> None:
    with opened(browser, write(_goat())) as page:
        page.locator(".columns a").nth(8).click(position={"x": 5, "y": 60})
        assert _leaf_shown(page) == "Spread 9"
        page.locator(".columns a").nth(STORM - 1).click(position={"x": 5, "y": 60})
        assert _leaf_shown(page) == f"Spread {STORM}"
        assert page.locator(".leaf:visible mark").all_inner_texts() == ["rattled", "vane"]
        slip = page.locator(".leaf:visible dl").inner_text()
        assert "try shook or banged" in slip
        assert re.search(
            r"⌜It rattled .* done\.⌟ \d\d words", page.locator(".leaf:visible").inner_text()
        )


def test_the_arrow_keys_leaf_through_and_enter_opens(browser: Browser, write: Write) -> None:
    with opened(browser, write(_goat())) as page:
        page.locator(".columns a").first.focus()
        page.keyboard.press("ArrowRight")
        assert (_leaf_shown(page), _focused(page)) == ("Spread 2", "#leaf-2")
        page.keyboard.press("End")
        page.keyboard.press("ArrowRight")  # there is nothing after the last
        assert _leaf_shown(page) == "Spread 10"
        page.keyboard.press("Home")
        assert _leaf_shown(page) == "Spread 1"
        page.keyboard.press("Enter")
        assert page.evaluate("document.activeElement.className") == "leaf"
        page.keyboard.press("ArrowRight")
        assert (_leaf_shown(page), page.evaluate("document.activeElement.id")) == (
            "Spread 2",
            "leaf-2",
        )


def test_the_keyboard_reaches_every_link(browser: Browser, write: Write) -> None:
    with opened(browser, write(_goat())) as page:
        wanted = page.locator("a:visible").count()
        reached = set()
        for _ in range(wanted + 5):
            page.keyboard.press("Tab")
            reached.add(
                page.evaluate("[...document.querySelectorAll('a')].indexOf(document.activeElement)")
            )
        assert len(reached - {-1}) == wanted


def test_a_link_to_a_spread_opens_it_at_once(browser: Browser, write: Write) -> None:
    path = write(_goat())
    with opened(browser, path) as page:
        page.locator("table.words a").first.click()
        assert _leaf_shown(page) == f"Spread {STORM}"
        page.locator(".leaf:visible a[rel=next]").click()
        assert _leaf_shown(page) == f"Spread {STORM + 1}"


def test_the_two_pages_of_a_spread_face_each_other(browser: Browser, write: Write) -> None:
    pages = (
        _page(1, "Nell slept.", spread=None, label="Page 3"),
        _page(2, "Nell woke.", spread=1, label="Page 4"),
        _page(3, "Nell ran.", spread=1, label="Page 5"),
    )
    report = _report(Book(path="goat.md", title="Goat", pages=pages))
    with opened(browser, write(report)) as page:
        numbers = page.locator(".columns .number").all_inner_texts()
        assert [re.sub(r".*?(p\. \d|\d)\W*$", r"\1", each, flags=re.S) for each in numbers] == [
            "p. 3",
            "1",
        ]
        page.locator(".columns a").nth(1).click()
        left, right = (each.bounding_box() for each in page.locator(".leaf:visible .page").all())
        assert left
        assert right
        assert left["x"] + left["width"] <= right["x"]
        assert left["y"] == right["y"]
        assert page.locator(".leaf:visible .label").all_inner_texts() == ["Page 4", "Page 5"]


def test_without_its_script_every_spread_is_there(browser: Browser, write: Write) -> None:
    with opened(browser, write(_goat()), script=False) as page:
        assert page.locator(".leaf:visible").count() == len(goat.SPREADS)


@pytest.mark.parametrize("spreads", [0, 1, 10, 40])
def test_nothing_is_wider_than_a_phone(browser: Browser, write: Write, spreads: int) -> None:
    texts = [goat.SPREADS[n % len(goat.SPREADS)] for n in range(spreads)]
    book = goat.book(*texts) if spreads else goat.book(*goat.SPREADS, paginated=False)
    with opened(browser, write(_report(book)), width=PHONE) as page:
        assert overflow(page) == 0


@pytest.mark.parametrize("width", [PHONE, DESK])
def test_markup_script_and_odd_signs_are_text(browser: Browser, write: Write, width: int) -> None:
    book = goat.book(*HOSTILE, title="<b onclick=x>Goat</b> & \u202eson", path="</title><i>.docx")
    report = _report(book, _hard(book, "said"), _hard(book, "raw", ("<i>b</i>",)))
    with opened(browser, write(report), width=width) as page:
        assert page.title() == "<b onclick=x>Goat</b> & \u202eson: how it reads"
        assert page.locator("h1").inner_text() == "<b onclick=x>Goat</b> & \u202eson"
        assert page.locator("script").count() == page.locator("style").count() == 1
        assert page.locator("img, b[onclick], i").count() == 0
        text = page.locator(".leaves").text_content() or ""
        for spread in HOSTILE[:3]:
            assert " ".join(spread.split()) in " ".join(text.replace("⌜", "").split())
        assert "null \ufffd bell \ufffd lone \ufffd end" in text
        assert overflow(page) == 0


def test_a_style_or_script_from_elsewhere_is_refused(browser: Browser, write: Write) -> None:
    path = write(_goat())
    smuggled = "<p style='color: red' id='smuggled'>x</p><script>document.title = 'mine'</script>"
    path.write_text(path.read_text("utf-8").replace("</main>", f"{smuggled}</main>"), "utf-8")
    with (
        pytest.raises(AssertionError, match="Content Security Policy"),
        opened(browser, path) as page,
    ):
        assert page.title() == "The Lighthouse Goat: how it reads"
        red = "getComputedStyle(document.getElementById('smuggled')).color"
        assert page.evaluate(red) != "rgb(255, 0, 0)"


@pytest.mark.parametrize(("width", "dark"), [(DESK, False), (PHONE, True)])
@pytest.mark.parametrize("kind", ["goat", "read by the child", "verse", "no pages"])
def test_nothing_keeps_anybody_from_reading_it(
    browser: Browser, write: Write, kind: str, width: int, *, dark: bool
) -> None:
    reports = {
        "goat": _goat(),
        "read by the child": _goat("early-reader"),
        "verse": _report(goat.book(*VERSE)),
        "no pages": _report(goat.book(*goat.SPREADS, paginated=False)),
    }
    with opened(browser, write(reports[kind]), width=width, dark=dark) as page:
        assert barriers(page) == []
        assert overflow(page) == 0


def test_the_line_that_stumbles_is_marked_and_says_why(browser: Browser, write: Write) -> None:
    with opened(browser, write(_report(goat.book(*VERSE)))) as page:
        assert "iambic tetrameter" in page.locator("section:has(> #verse)").inner_text()
        marked = page.locator(".verse-line.stumbles")
        assert marked.count() == 1
        assert "until the very break of day" in marked.inner_text()
        assert "beats too many" in marked.inner_text()


def test_what_a_child_can_sound_out_is_told_where_it_reads_alone(
    browser: Browser, write: Write
) -> None:
    with opened(browser, write(_goat("early-reader"))) as page:
        assert "phase 5" in page.locator("section:has(> #phonics)").inner_text()
    with opened(browser, write(_goat())) as page:
        assert page.locator("#phonics").count() == 0


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_it_prints_whole(browser: Browser, write: Write, tmp_path: Path, paper: str) -> None:
    reader = shutil.which("pdftotext")
    if reader is None:
        pytest.skip("no pdftotext here to read the printed pages with")
    with opened(browser, write(_goat())) as page:
        printed = tmp_path / "printed.pdf"
        printed.write_bytes(pdf_of(page, paper))
        headings = page.locator("h2").all_inner_texts()
    read = subprocess.run(
        [reader, "-layout", str(printed), "-"], check=True, capture_output=True, text=True
    )
    text = " ".join(read.stdout.split())
    assert all(heading in text for heading in headings)
    assert "rattled" in text  # from the table of words; the spreads' own text stays on the screen
    assert goat.SPREADS[0] not in text


def test_dark_is_dark_and_light_is_light(browser: Browser, write: Write) -> None:
    path = write(_goat())
    papers = {}
    for dark in (False, True):
        with opened(browser, path, dark=dark) as page:
            colour = page.evaluate("getComputedStyle(document.body).backgroundColor")
            papers[dark] = sum(map(int, re.findall(r"\d+", colour)[:3]))
    assert papers[True] < 150
    assert papers[False] > 600


def test_a_book_without_a_word_is_no_trouble(browser: Browser, write: Write) -> None:
    with opened(browser, write(_report(goat.book("", "")))) as page:
        assert "no words" in page.locator(".slip").inner_text()
        assert page.locator("a").count() == 0  # there is nowhere to go
        assert barriers(page) == []
