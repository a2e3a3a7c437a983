"""Pages and spreads as authors mark them, and manuscripts that mark none."""

from __future__ import annotations

from pathlib import Path

import pytest

from proofkit.book import Role
from tests.readers.reading import labels, read_text, said, texts


def test_bare_headings(tmp_path: Path) -> None:
    book = read_text(
        tmp_path,
        "# The Lost Hat\n\n##\nTo and fro\nwent the hat.\n\n##\n\n##\nIt came home.\n\n"
        "##\n* License: [CC-BY]\n* Text: Una Vale\n* Illustration: Pim Rook\n* Language: en\n",
        ".md",
    )
    assert book.title == "The Lost Hat"
    assert [page.role for page in book.pages] == [
        Role.TITLE,
        Role.STORY,
        Role.STORY,
        Role.STORY,
        Role.IMPRINT,
    ]
    assert texts(book)[:4] == ["The Lost Hat", "To and fro went the hat.", "", "It came home."]
    assert [page.spread for page in book.pages] == [None, 1, 2, 3, None]
    assert labels(book) == [""] * 5


@pytest.mark.parametrize("suffix", [".md", ".txt"])
@pytest.mark.parametrize(
    "form", ["Page {}", "[Page {}]", "**Page {}**", "## Page {}", "p. {}:", "Page {} -"]
)
def test_page_lines(tmp_path: Path, suffix: str, form: str) -> None:
    parts = [f"{form.format(n)}\n\nOn we go, said {n} geese.\n" for n in (1, 2, 3)]
    book = read_text(tmp_path, "\n".join(parts), suffix)
    assert texts(book) == [f"On we go, said {n} geese." for n in (1, 2, 3)]
    assert [page.folios for page in book.pages] == [(1,), (2,), (3,)]
    assert [page.spread for page in book.pages] == [None, 1, 1]


def test_a_label_and_its_text_in_one_paragraph(tmp_path: Path) -> None:
    book = read_text(tmp_path, "Page 2\nGoose woke.\n\nPage 3: Goose slept.\n\nPage 4\n")
    assert labels(book) == ["Page 2", "Page 3", "Page 4"]
    assert texts(book) == ["Goose woke.", "Goose slept.", ""]


def test_the_paragraph_begins_on_the_line_after_its_label(tmp_path: Path) -> None:
    book = read_text(tmp_path, "Page 2\nGoose woke.\n\nPage 3: Goose slept.\n")
    assert [page.paragraphs[0].locator for page in book.pages] == ["line 2", "line 4"]


def test_numbers_stay_as_the_author_wrote_them(tmp_path: Path) -> None:
    book = read_text(tmp_path, "".join(f"Page {n}\n\nGoose {n}.\n\n" for n in (2, 3, 3, 6, 5)))
    assert [page.folios for page in book.pages] == [(2,), (3,), (3,), (6,), (5,)]
    assert [page.number for page in book.pages] == [1, 2, 3, 4, 5]


def test_sides_of_a_pair_of_pages(tmp_path: Path) -> None:
    book = read_text(
        tmp_path, "Pages 4–5\n\nLeft: Tick.\n\nRight page\n\nTock.\n\nPages 6–7\n\nBong.\n"
    )
    assert labels(book) == ["Pages 4–5, left", "Pages 4–5, right", "Pages 6–7"]
    assert [page.folios for page in book.pages] == [(4,), (5,), (6, 7)]
    assert [page.spread for page in book.pages] == [2, 2, 3]
    assert texts(book) == ["Tick.", "Tock.", "Bong."]


def test_sides_of_a_numbered_spread(tmp_path: Path) -> None:
    book = read_text(
        tmp_path, "Spread 1\n[A clock]\n\nLeft\n\nTick.\n\nRight\n\nTock.\n\nSpread 2\n\nBong.\n"
    )
    assert labels(book) == ["Spread 1, left", "Spread 1, right", "Spread 2"]
    assert [page.spread for page in book.pages] == [1, 1, 2]
    assert said(book.pages[0]) == [("note", "[A clock]"), ("story", "Tick.")]


def test_an_author_whose_pairs_begin_with_odd_numbers(tmp_path: Path) -> None:
    book = read_text(tmp_path, "".join(f"Pages {n}-{n + 1}\n\nGoose {n}.\n\n" for n in (1, 3, 5)))
    assert [page.spread for page in book.pages] == [1, 2, 3]


@pytest.mark.parametrize("suffix", [".md", ".txt"])
def test_form_feeds(tmp_path: Path, suffix: str) -> None:
    book = read_text(tmp_path, "Goose woke.\n\f\nGoose ate.\n\f\f\nGoose slept.\n\f", suffix)
    assert texts(book) == ["Goose woke.", "Goose ate.", "", "Goose slept."]
    assert [page.spread for page in book.pages] == [1, 2, 3, 4]
    assert book.paginated


def test_labels_win_over_breaks(tmp_path: Path) -> None:
    book = read_text(
        tmp_path,
        "Page 2\n\nGoose woke.\n\f\nPage 3\n\nGoose ate.\n\f\nShe slept.\n\fPage 4\n\nBye.\n",
    )
    assert labels(book) == ["Page 2", "Page 3", "Page 4"]
    assert texts(book) == ["Goose woke.", "Goose ate.\n\nShe slept.", "Bye."]


def test_many_more_breaks_than_labels(tmp_path: Path) -> None:
    pages = "\f".join(f"On day {n} the goose was late again.\n" for n in range(6))
    book = read_text(tmp_path, f"Page 2\n\n{pages}")
    assert len(book.pages) == 6
    assert book.pages[0].label == "Page 2"


def test_lone_numbers_that_count_up(tmp_path: Path) -> None:
    parts = "".join(f"{n}\n\nThe goose looked into clock number {n}.\n\n" for n in (1, 2, 3, 4))
    book = read_text(tmp_path, parts)
    assert labels(book) == ["1", "2", "3", "4"]
    assert [page.folios for page in book.pages] == [(1,), (2,), (3,), (4,)]
    assert book.paginated


def test_a_countdown_is_story(tmp_path: Path) -> None:
    book = read_text(tmp_path, "The goose took a breath.\n\n3\n\n2\n\n1\n\nOff she went!\n")
    assert not book.paginated
    assert len(book.pages) == 1


def test_numbers_that_head_chapters(tmp_path: Path) -> None:
    chapter = "The goose walked on and on along the long grey road. " * 60
    book = read_text(tmp_path, "".join(f"{n}\n\n{chapter}\n\n" for n in (1, 2, 3)))
    assert not book.paginated


def test_chapters_parted_by_breaks_are_no_pages(tmp_path: Path) -> None:
    chapter = "The goose walked on and on along the long grey road. " * 60
    book = read_text(tmp_path, "\f".join([chapter] * 3))
    assert not book.paginated
    assert [page.spread for page in book.pages] == [None] * 3


def test_nothing_marked(tmp_path: Path) -> None:
    book = read_text(tmp_path, "A goose sat on a clock.\n\nIt ticked.\n\nShe left: it was time.\n")
    assert not book.paginated
    assert texts(book) == ["A goose sat on a clock.\n\nIt ticked.\n\nShe left: it was time."]
    assert book.pages[0].role is Role.STORY
    assert book.spreads == ()


def test_a_page_named_in_a_long_story_marks_nothing(tmp_path: Path) -> None:
    words = "The goose walked on and on along the long grey road. " * 150
    book = read_text(tmp_path, f"{words}\n\nPage 3: the map was torn.\n\n{words}\n")
    assert not book.paginated
    assert "map was torn" in book.pages[0].prose


def test_dashes_part_scenes_not_pages(tmp_path: Path) -> None:
    book = read_text(tmp_path, "Goose woke up late.\n---\nShe ran all the way.\n", ".md")
    assert texts(book) == ["Goose woke up late.\n\nShe ran all the way."]


def test_labels_at_the_feet_of_pages_are_folios(tmp_path: Path) -> None:
    pages = [f"The goose went round clock {n}.\n\nPage {n}\n" for n in (1, 2, 3, 4)]
    book = read_text(tmp_path, "\f".join(pages))
    assert labels(book) == [""] * 4
    assert said(book.pages[1]) == [("story", "The goose went round clock 2."), ("folio", "Page 2")]


def test_numbers_at_the_heads_of_pages_are_labels(tmp_path: Path) -> None:
    pages = [f"{n}–{n + 1}\n\nThe goose went round clock {n}.\n" for n in (4, 6, 8)]
    book = read_text(tmp_path, "\f".join(["The Goose\n\nby Una Vale\n", *pages]))
    assert labels(book) == ["", "4–5", "6–7", "8–9"]
    assert book.pages[1].folios == (4, 5)
    assert texts(book)[1] == "The goose went round clock 4."


def test_an_empty_heading_above_a_label_adds_nothing(tmp_path: Path) -> None:
    book = read_text(tmp_path, "##\nPage 2\n\nTick.\n\n##\nPage 3\n\nTock.\n", ".md")
    assert labels(book) == ["Page 2", "Page 3"]


def test_a_page_number_above_the_name_of_the_page(tmp_path: Path) -> None:
    book = read_text(
        tmp_path, "Page 1\n\nTitle page\n\nThe Goose\n\nPages 2-3 Endpapers\n\nPage 4\n\nTick.\n"
    )
    assert labels(book) == ["Page 1: Title page", "Pages 2-3 Endpapers", "Page 4"]
    assert [page.role for page in book.pages] == [Role.TITLE, Role.BACK_MATTER, Role.STORY]


def test_a_mark_that_names_several_pages(tmp_path: Path) -> None:
    book = read_text(tmp_path, "Pages 1–3: title, copyright and dedication\n\nPage 4\n\nTick.\n")
    assert labels(book) == ["Pages 1–3: title, copyright and dedication", "Page 4"]
    assert book.pages[0].role is Role.TITLE
