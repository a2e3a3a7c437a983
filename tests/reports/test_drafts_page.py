"""The page of a book's drafts, in a real browser."""

from __future__ import annotations

import re
import shutil
import subprocess
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from proofkit.cli.drafting import hand_over
from proofkit.cli.guard import Exit
from proofkit.drafts.course import Step, course_of
from proofkit.drafts.draft import Draft
from proofkit.drafts.ledger import record
from proofkit.reports.drafts.page import as_html
from tests.browser.chromium import DESK, PHONE, barriers, browser, opened, overflow, pdf_of
from tests.drafts.goat_drafts import SLIPS, draft
from tests.reports.goat import SPREADS

__all__ = ["browser"]

HOSTILE = (
    "<script>document.title = 'mine'</script></title></style><style>* { display: none }</style>.docx",
    "<img src=x onerror=\"document.title = 'mine'\"> {{ 7 * 7 }} {% raw %} &lt;b&gt;.docx",
    "\u202exod.nos\u202c null \x00 bell \x07 end العربية.docx",
    "w" * 240 + ".docx",
)
LONGER = (f"{SPREADS[0]} It was tall and white.", *SPREADS[1:])
ALL = tuple(wrong for wrong, *_ in SLIPS)
# Four drafts: two errors and a query mended, a longer first spread, and a slip that is made again.
STORY = (
    draft(file="goat.docx"),
    draft("the the", "in form", day=3, file="goat v2.docx"),
    draft("the the", "in form", "Mister", day=4, file="Goat v3 FINAL (2).docx", spreads=LONGER),
    draft("in form", "Mister", "she  took", day=30, file="Goat v4.docx", spreads=LONGER),
)

Written = Callable[..., Path]


@pytest.fixture
def steps(tmp_path: Path) -> Callable[[Sequence[Draft]], tuple[Step, ...]]:
    """Record drafts, and give back their course."""

    def recorded(drafts: Sequence[Draft]) -> tuple[Step, ...]:
        for each in drafts:
            record(tmp_path / "proofkit.db", each)
        return course_of(tmp_path / "proofkit.db")

    return recorded


@pytest.fixture
def write(tmp_path: Path, steps: Callable[[Sequence[Draft]], tuple[Step, ...]]) -> Written:
    """Put the page of some drafts into a file."""

    def put(*drafts: Draft, hiding: Sequence[str] = ()) -> Path:
        path = tmp_path / "drafts.html"
        path.write_text(as_html(steps(drafts), hiding), encoding="utf-8")
        return path

    return put


def many(number: int) -> list[Draft]:
    """So many drafts, of which none is like another."""
    made = []
    for at in range(number):
        text = f"{SPREADS[0]} This was told {'very ' * (at % 7)}often: {at} times."
        mended = ALL[at % 8 :] if at % 2 else ALL[: at % 8]
        made.append(draft(*mended, day=at, file=f"Goat {at}.docx", spreads=(text, *SPREADS[1:])))
    return made


def _columns(page: Page, kind: str) -> list[str]:
    """What is read aloud of each column of a chart."""
    texts = page.locator(f".{kind} .columns li").all_text_contents()
    return [" ".join(text.split()) for text in texts]


def _height(page: Page, kind: str, at: int, among: int) -> dict[str, float]:
    """How high the older part and the new part of a bar are, by their places in the drawing."""
    heights = {"bar": 0.0, "beyond": 0.0}
    frame = page.locator(f"svg.{kind}").bounding_box()
    assert frame
    for part in heights:
        for shape in page.locator(f"svg.{kind} .{part}").all():
            box = shape.bounding_box()
            assert box
            middle = box["x"] + box["width"] / 2 - frame["x"]
            if int(middle / frame["width"] * among) == at:
                heights[part] += box["height"]
    return heights


def test_it_opens_with_how_far_the_book_has_come(browser: Browser, write: Written) -> None:
    with opened(browser, write(*STORY)) as page:
        assert page.title() == "The Lighthouse Goat: draft after draft"
        assert page.locator("h1").inner_text() == "The Lighthouse Goat"
        told = page.locator("dl.towards").inner_text().split("\n")
        assert [each for each in told if each] == [
            "errors to mend",
            "4; 6 in the first draft",
            "queries to think about",
            "none; 1 in the first draft",
            "drafts since a new error",
            "none: draft 4 has 1",
        ]


def test_every_draft_has_a_row_with_all_that_is_told_of_it(
    browser: Browser, write: Written
) -> None:
    with opened(browser, write(*STORY)) as page:
        heads = page.locator("table.rows thead th").all_inner_texts()
        cells = [
            row.locator("th, td").all_inner_texts() for row in page.locator("tr[id^=draft-]").all()
        ]
        rows = [dict(zip(heads, row, strict=True)) for row in cells]
        assert [row["file"] for row in rows] == [each.file for each in STORY]
        assert [row["days"] for row in rows] == ["", "3", "1", "26"]
        assert [(row["errors"], row["queries"]) for row in rows] == [
            ("6", "1"),
            ("4", "1"),
            ("4", "0"),
            ("4", "0"),
        ]
        assert [(row["fixed"], row["new"]) for row in rows] == [
            ("", ""),
            ("2", "0"),
            ("1", "0"),
            ("1", "1"),
        ]
        assert {"date", "words", "spreads", "per 1,000", "grade", "heaviest"} <= rows[0].keys()


def test_the_columns_tell_the_same_as_the_rows_and_lead_to_them(
    browser: Browser, write: Written
) -> None:
    with opened(browser, write(*STORY)) as page:
        told = _columns(page, "drafts")
        assert told[0] == "draft 1, 2026-09-01: 6 errors; 1 query;"
        assert told[3] == "draft 4, 2026-10-01: 4 errors, 1 new; 0 queries; −1 fixed;+1 new"
        page.locator(".drafts .columns a").nth(2).focus()
        page.keyboard.press("Enter")
        assert page.evaluate("document.querySelector(':target').id") == "draft-3"


def test_a_bar_is_as_high_as_its_figure_and_its_new_part_as_what_is_new(
    browser: Browser, write: Written
) -> None:
    with opened(browser, write(*STORY)) as page:
        first = _height(page, "errors", 0, 4)
        unit = first["bar"] / 6
        assert first["beyond"] == 0
        last = _height(page, "errors", 3, 4)
        assert last["bar"] == pytest.approx(3 * unit, abs=1)
        assert last["beyond"] == pytest.approx(unit, abs=1)
        query = _height(page, "queries", 0, 4)
        assert query["bar"] == pytest.approx(unit, abs=1)  # to one scale


def test_the_kinds_of_what_was_open_add_up_to_all_that_was(
    browser: Browser, write: Written, steps: Callable[[Sequence[Draft]], tuple[Step, ...]]
) -> None:
    with opened(browser, write(*STORY)) as page:
        rows = page.locator("table.families tbody tr").all()
        figures = [row.locator("td:not(.drawing)").all_inner_texts() for row in rows]
        sums = [sum(map(int, column)) for column in zip(*figures, strict=True)]
        assert sums == [7, 5, 4, 4]
        # What most is left of comes first; what is all mended comes last.
        kinds = [row.locator("th").inner_text() for row in rows]
        assert kinds[0] == "grammar"
        assert kinds[-1] == "consistency"
        assert "commas of address" in kinds
    assert [sum(step.families.values()) for step in steps(())] == sums


def test_what_is_let_stand_is_of_no_kind(
    steps: Callable[[Sequence[Draft]], tuple[Step, ...]],
) -> None:
    step, *_ = steps([draft(let_stand="grammar/its")])
    assert step.families["grammar"] == 1
    assert sum(step.families.values()) == step.draft.errors + step.draft.queries


def test_the_words_on_a_spread_stand_beside_those_before(browser: Browser, write: Written) -> None:
    # The newest draft is another check of the same text: draft 2 is the last that had other words.
    again = draft("the the", "in form", "Mister", day=5, spreads=LONGER, age_band="board")
    with opened(browser, write(*STORY[:3], again)) as page:
        told = _columns(page, "spreads")
        assert len(told) == len(SPREADS)
        assert re.fullmatch(r"spread 1: \d+ words \+5", told[0])
        assert all(re.fullmatch(r"spread \d+: \d+ words", each) for each in told[1:])
        assert "in draft 2" in page.locator(".spreads .caption").inner_text()
        row = page.locator("table.figures tbody tr").first.locator("td").all_inner_texts()
        assert int(row[1]) - int(row[0]) == 5
        stroke = page.locator(".spreads .stroke")
        assert stroke.count() == 1
        bar = page.locator("svg.words .bar").first.bounding_box()
        mark = stroke.bounding_box()
        assert bar
        assert mark
        assert bar["x"] <= mark["x"] + mark["width"] / 2 <= bar["x"] + bar["width"]
        before = (bar["y"] + bar["height"] - mark["y"] - mark["height"] / 2) / bar["height"]
        assert before == pytest.approx(int(row[0]) / int(row[1]), abs=0.03)


def test_a_spread_put_in_is_new_and_one_taken_out_is_gone(browser: Browser, write: Written) -> None:
    with opened(browser, write(draft(), draft(day=2, spreads=(*SPREADS, "The end.")))) as page:
        assert _columns(page, "spreads")[-1] == "spread 11: 2 words new"
        assert page.locator("table.figures tr").last.inner_text().split("\t")[1] == "not there"
    with opened(browser, write(draft(day=4, spreads=SPREADS[:-1]))) as page:
        assert _columns(page, "spreads")[-1].endswith("gone")


def test_what_hides_slips_is_told(browser: Browser, write: Written) -> None:
    where = "Unchanged since the first draft, and known by heart: <b>spread 2</b>."
    with opened(browser, write(*STORY, hiding=[where])) as page:
        told = page.locator("section:has(> #hiding)").inner_text()
        assert where in told
        assert "Daneman and Stainton, 1993" in told
    with opened(browser, write(*STORY)) as page:
        assert page.locator("#hiding").count() == 0


def test_a_book_that_is_ready_is_told_to_be(browser: Browser, write: Written) -> None:
    with opened(browser, write(*STORY, draft(*ALL, day=40))) as page:
        assert "A human proofreader comes next." in page.locator(".progress").inner_text()
        assert "none; 6 in the first draft" in page.locator(".towards").inner_text()


def test_one_draft_alone_has_nothing_beside_it(browser: Browser, write: Written) -> None:
    with opened(browser, write(STORY[0])) as page:
        assert page.locator("svg.errors, svg.family, .stroke, table.figures").count() == 0
        assert "days" not in page.locator("table.rows thead").inner_text()
        assert barriers(page) == []
        assert overflow(page) == 0


def test_of_many_drafts_the_newest_are_drawn_and_in_sight(browser: Browser, write: Written) -> None:
    with opened(browser, write(*many(50)), width=PHONE) as page:
        assert page.locator("tr[id^=draft-]").count() == 50
        links = page.locator(".drafts .columns a")
        assert links.count() == 40
        assert "10 earlier ones are in the table" in page.locator(".legend").inner_text()
        newest, oldest = links.last.bounding_box(), links.first.bounding_box()
        assert newest
        assert oldest
        assert 0 < newest["x"] < PHONE
        assert oldest["x"] < 0
        heads = page.locator("table.families thead th").all_inner_texts()[1:]
        assert [re.findall(r"\d+", head) for head in heads] == [
            ["11"],
            ["47"],
            ["48"],
            ["49"],
            ["50"],
        ]
        kinds = page.locator("table.kinds tbody tr")
        assert kinds.count() == 40
        told = kinds.last.locator("td").all_inner_texts()
        assert told == page.locator("table.families td.newest").all_inner_texts()
        assert overflow(page) == 0
        assert barriers(page) == []


def test_the_keyboard_reaches_every_link_and_all_that_scrolls(
    browser: Browser, write: Written
) -> None:
    with opened(browser, write(*STORY), width=PHONE) as page:
        goals = "[...document.querySelectorAll('a, [tabindex=\"0\"]')]"
        wanted = page.evaluate(f"{goals}.length")
        reached = set()
        for _ in range(wanted + 3):
            page.keyboard.press("Tab")
            reached.add(page.evaluate(f"{goals}.indexOf(document.activeElement)"))
        assert len(reached - {-1}) == wanted
        assert wanted > len(STORY)


@pytest.mark.parametrize("width", [PHONE, 900, DESK])
def test_markup_script_and_odd_signs_are_text(browser: Browser, write: Written, width: int) -> None:
    drafts = [
        replace(draft(*ALL[:at], day=at, file=name), title="<b onclick=x>Goat</b> & \u202eson")
        for at, name in enumerate(HOSTILE)
    ]
    with opened(browser, write(*drafts), width=width) as page:
        assert page.title() == "<b onclick=x>Goat</b> & \u202eson: draft after draft"
        assert page.locator("script, img, b[onclick]").count() == 0
        assert page.locator("style").count() == 1
        files = page.locator("td.file").all_inner_texts()
        assert "{{ 7 * 7 }} {% raw %} &lt;b&gt;.docx" in files[1]
        assert files[3] == HOSTILE[3]
        assert overflow(page) == 0
        assert barriers(page) == []


def test_a_style_or_script_from_elsewhere_is_refused(browser: Browser, write: Written) -> None:
    path = write(*STORY)
    smuggled = "<p style='color: red' id='smuggled'>x</p><script>document.title = 'mine'</script>"
    path.write_text(path.read_text("utf-8").replace("</main>", f"{smuggled}</main>"), "utf-8")
    with (
        pytest.raises(AssertionError, match="Content Security Policy"),
        opened(browser, path) as page,
    ):
        assert page.title() == "The Lighthouse Goat: draft after draft"
        red = "getComputedStyle(document.getElementById('smuggled')).color"
        assert page.evaluate(red) != "rgb(255, 0, 0)"


@pytest.mark.parametrize(("width", "dark"), [(DESK, False), (900, True), (PHONE, True)])
def test_nothing_keeps_anybody_from_reading_it(
    browser: Browser, write: Written, width: int, *, dark: bool
) -> None:
    path = write(*STORY, hiding=["Unchanged since the first draft: spread 2."])
    with opened(browser, path, width=width, dark=dark) as page:
        assert barriers(page) == []
        assert overflow(page) == 0
        colour = page.evaluate("getComputedStyle(document.body).backgroundColor")
        assert (sum(map(int, re.findall(r"\d+", colour)[:3])) < 150) is dark


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_it_prints_whole(browser: Browser, write: Written, tmp_path: Path, paper: str) -> None:
    reader = shutil.which("pdftotext")
    if reader is None:
        pytest.skip("no pdftotext here to read the printed pages with")
    with opened(browser, write(*STORY)) as page:
        printed = tmp_path / "printed.pdf"
        printed.write_bytes(pdf_of(page, paper))
        headings = page.locator("h2").all_inner_texts()
    read = subprocess.run(
        [reader, "-layout", str(printed), "-"], check=True, capture_output=True, text=True
    )
    text = " ".join(read.stdout.split())
    assert all(heading in text for heading in headings)
    assert "spread 4: 63" in text  # the last column of the table is not cut off
    assert re.search(
        r"\b1 2026-09-01 goat\.docx \d+ 10 6 1 ", text
    )  # a table, not blocks as on a phone


def test_the_command_writes_the_page_where_a_files_ending_asks_for_it(
    browser: Browser, tmp_path: Path
) -> None:
    for each in STORY:
        record(tmp_path / "proofkit.db", each)
    page_file = tmp_path / "how it went.html"
    assert hand_over(tmp_path, None, page_file) is Exit.CLEAN
    with opened(browser, page_file) as page:
        assert page.locator("tr[id^=draft-]").count() == len(STORY)
        assert "spread 2" in page.locator("section:has(> #hiding)").inner_text()


def test_a_long_book_scrolls_in_its_own_frame_and_by_keyboard(
    browser: Browser, write: Written
) -> None:
    long = SPREADS * 3
    with opened(browser, write(draft(spreads=long)), width=PHONE) as page:
        frame = page.locator(".score.spreads")
        assert frame.evaluate("frame => frame.scrollWidth > frame.clientWidth")
        assert frame.evaluate(
            "frame => { frame.focus(); return document.activeElement === frame; }"
        )
        assert overflow(page) == 0
        assert barriers(page) == []
