from __future__ import annotations

import pytest

from proofkit.book import Role, Span
from proofkit.report import PageReport, Report
from proofkit.reports.places import also, listed, page_name, pages_named, place
from tests.reports.goat import SPREADS, book, goat, slip


def page(label: str = "", *, spread: int | None = None, role: Role = Role.STORY) -> PageReport:
    return PageReport(number=6, label=label, spread=spread, role=role, words=0, text="")


@pytest.mark.parametrize(
    ("label", "name"),
    [
        ("Page 3", "page 3"),
        ("PAGE 3:", "page 3"),
        ("[p. 3]", "page 3"),
        ("pp. 4-5", "pages 4–5"),
        ("Pages 4 – 5", "pages 4–5"),
        ("Pages 4 and 5", "pages 4 and 5"),
        ("Spread 2", "spread 2"),
        ("**Double spread 7:**", "spread 7"),
        ("Spread 3: the goat climbs the stair", "spread 3"),
        ("The storm", "The storm"),
        ("The storm that came in from the sea", "The storm that ca…"),
    ],
)
def test_a_page_is_called_what_its_author_calls_it(label: str, name: str) -> None:
    assert page_name(page(label, spread=9)) == name


def test_a_page_without_a_label_goes_by_its_spread_or_its_number() -> None:
    assert page_name(page(spread=3)) == "spread 3"
    assert page_name(page()) == "page 6"


def test_what_is_not_story_goes_by_what_it_is() -> None:
    assert page_name(page("Page 1", role=Role.TITLE)) == "title page"
    assert page_name(page(role=Role.BACK_MATTER)) == "back matter"


def test_without_pages_the_paragraph_is_counted() -> None:
    run = goat(paginated=False, issues=())
    text = run.pages[0].text
    assert place(run, 1, 0) == "paragraph 1"
    assert place(run, 1, text.index("Every night Nell")) == "paragraph 3"


def test_several_pages_are_named_in_one_phrase() -> None:
    report = goat()
    assert pages_named(report, (2,)) == "spread 1"
    assert pages_named(report, (2, 3, 4, 6, 8, 9)) == "spreads 1–3, 5, 7 and 8"
    assert pages_named(report, (1, 2)) == "title page and spread 1"
    assert pages_named(goat(paginated=False, issues=()), (1,)) == ""


def test_a_list_has_and_before_its_last() -> None:
    assert listed([]) == ""
    assert listed(["a"]) == "a"
    assert listed(["a", "b", "c"]) == "a, b and c"


def refrain(*, paginated: bool, pages: tuple[int, ...], start: int = 0) -> Report:
    of = book(*SPREADS, paginated=paginated)
    more = [Span(page=page, start=start, end=start + 4) for page in pages]
    found = slip(of, "Clip-clop", check="spelling/slip", message="a slip", also=more)
    return goat(of, issues=(found,))


def test_a_matter_that_comes_again_says_where_else() -> None:
    report = refrain(paginated=True, pages=(3, 8, 10))
    assert also(report, report.issues[0]) == "also on spreads 7 and 9"
    at = "\n\n".join(SPREADS).index("And then, at last")
    run = refrain(paginated=False, pages=(1,), start=at)
    assert also(run, run.issues[0]) == "also in paragraph 13"


def test_a_matter_that_comes_again_on_its_own_page_alone_does_not() -> None:
    report = refrain(paginated=True, pages=(3, 3))
    assert also(report, report.issues[0]) == ""
