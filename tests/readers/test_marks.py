"""Lines that are page marks, lines that only look like it, and what a mark says."""

from __future__ import annotations

import pytest

from proofkit.book import Role
from proofkit.readers.blocks import Part
from proofkit.readers.marks import Kind, mark_in, matter_mark, number_mark, part_in


@pytest.mark.parametrize(
    ("line", "label", "folios"),
    [
        ("Page 3", "Page 3", (3,)),
        ("PAGE 3:", "PAGE 3", (3,)),
        ("Pages 4-5", "Pages 4-5", (4, 5)),
        ("Pages 4–5.", "Pages 4–5", (4, 5)),
        ("pp. 4/5", "pp. 4/5", (4, 5)),
        ("Pages 4 and 5", "Pages 4 and 5", (4, 5)),
        ("Pages four to five", "Pages four to five", (4, 5)),
        ("p. 6", "p. 6", (6,)),
        ("pg 6", "pg 6", (6,)),
        ("p6", "p6", (6,)),
        ("[Page 3]", "Page 3", (3,)),
        ("(page 3)", "page 3", (3,)),
        ("**Page 3**", "Page 3", (3,)),
        ("--- Page 8 ---", "Page 8", (8,)),
        ("Page No. 7", "Page No. 7", (7,)),
        ("Page #7", "Page #7", (7,)),
        ("Page twenty-four", "Page twenty-four", (24,)),
        ("Page 3 of 24", "Page 3 of 24", (3,)),
        ("Spread 4–5", "Spread 4–5", (4, 5)),
        ("Pages 1–3", "Pages 1–3", (1, 2, 3)),
        ("Pages 2 and 5", "Pages 2 and 5", (2, 5)),
        ("Pages 5–4", "Pages 5–4", (5, 4)),
    ],
)
def test_page_marks(line: str, label: str, folios: tuple[int, ...]) -> None:
    mark = mark_in(line)
    assert mark is not None
    assert (mark.label, mark.kind, mark.folios, mark.rest) == (label, Kind.PAGE, folios, "")


@pytest.mark.parametrize(
    ("line", "label", "number", "folios"),
    [
        ("Spread 2", "Spread 2", 2, ()),
        ("SPREAD TWO", "SPREAD TWO", 2, ()),
        ("Double spread 7:", "Double spread 7", 7, ()),
        ("Double-page spread 7", "Double-page spread 7", 7, ()),
        ("DPS 7", "DPS 7", 7, ()),
        ("Opening 3", "Opening 3", 3, ()),
        ("Spread 2 (pages 4–5)", "Spread 2 (pages 4–5)", 2, (4, 5)),
        ("Spread 1: pp. 2-3", "Spread 1: pp. 2-3", 1, (2, 3)),
    ],
)
def test_spread_marks(line: str, label: str, number: int, folios: tuple[int, ...]) -> None:
    mark = mark_in(line)
    assert mark is not None
    assert (mark.label, mark.kind, mark.numbers, mark.folios) == (
        label,
        Kind.SPREAD,
        (number,),
        folios,
    )


@pytest.mark.parametrize(
    ("line", "label", "rest", "aside"),
    [
        ("Page 3: Goose woke.", "Page 3", "Goose woke.", False),
        ("Page 3 – Goose ran—", "Page 3", "Goose ran—", False),
        ("Page 3. Goose woke.", "Page 3", "Goose woke.", False),
        ("Page 3\tGoose woke.", "Page 3", "Goose woke.", False),
        ("[Page 3] Goose woke—", "Page 3", "Goose woke—", False),
        ("**Page 3** Goose woke.", "Page 3", "Goose woke.", False),
        ("Page 3: – What? said Goose.", "Page 3", "– What? said Goose.", False),
        ("[Page 3: a goose on a bench]", "Page 3", "a goose on a bench", True),
        ("Spread 2 – illustration only", "Spread 2", "illustration only", True),
        ("Page 3 (no text)", "Page 3", "(no text)", True),
    ],
)
def test_text_that_shares_the_line(line: str, label: str, rest: str, aside: bool) -> None:  # noqa: FBT001
    mark = mark_in(line)
    assert mark is not None
    assert (mark.label, mark.rest, mark.aside) == (label, rest, aside)


@pytest.mark.parametrize(
    "line",
    [
        "Page 3 was torn.",
        "Page 3 left the room",
        "Spread 2 slices with jam.",
        "Pages 4 and 5 were stuck together.",
        "Page after page",
        "Page",
        "A spread of 7 cakes",
        "Page 0",
        "Pageant 3",
        "Openings 3 times a day",
        "P.S. I love you",
        "“Page 3,” said Goose.",
    ],
)
def test_story_lines_are_no_marks(line: str) -> None:
    assert mark_in(line) is None


@pytest.mark.parametrize(
    ("line", "label", "role"),
    [
        ("Page 1: title page", "Page 1: title page", Role.TITLE),
        ("Page 2 (copyright page)", "Page 2 (copyright page)", Role.IMPRINT),
        ("Page 3 – Dedication", "Page 3 – Dedication", Role.DEDICATION),
    ],
)
def test_marks_that_say_what_the_page_is(line: str, label: str, role: Role) -> None:
    mark = mark_in(line)
    assert mark is not None
    assert (mark.label, mark.role) == (label, role)


def test_a_heading_is_all_label() -> None:
    mark = mark_in("Page 3: The Pond", heading=True)
    assert mark is not None
    assert (mark.label, mark.rest) == ("Page 3: The Pond", "")


@pytest.mark.parametrize(
    ("line", "part", "rest"),
    [
        ("Left:", Part.LEFT, ""),
        ("Right page", Part.RIGHT, ""),
        ("(left)", Part.LEFT, ""),
        ("[RIGHT] Tock.", Part.RIGHT, "Tock."),
        ("Left-hand page: Tick—", Part.LEFT, "Tick—"),
        ("Verso", Part.LEFT, ""),
        ("Right – Tock.", Part.RIGHT, "Tock."),
    ],
)
def test_sides_of_a_spread(line: str, part: Part, rest: str) -> None:
    assert part_in(line) == (part, rest)


@pytest.mark.parametrize(
    "line",
    ["Right, said Fred.", "Right!", "Left. Right. Left.", "Left alone, Goose wept.", "Rightly so"],
)
def test_story_lines_are_no_sides(line: str) -> None:
    assert part_in(line) is None


def test_a_side_in_the_mark() -> None:
    mark = mark_in("Spread 3 – left")
    assert mark is not None
    assert (mark.label, mark.part) == ("Spread 3 – left", Part.LEFT)


@pytest.mark.parametrize(
    ("line", "numbers"),
    [("3", (3,)), ("- 4 -", (4,)), ("4–5", (4, 5)), ("(6)", (6,)), ("7.", (7,))],
)
def test_numbers_alone(line: str, numbers: tuple[int, ...]) -> None:
    mark = number_mark(line)
    assert mark is not None
    assert mark.numbers == numbers


@pytest.mark.parametrize("line", ["3 geese", "Three", "1,000", "3!", ""])
def test_no_numbers_alone(line: str) -> None:
    assert number_mark(line) is None


def test_pages_without_numbers() -> None:
    mark = matter_mark("[Title page]")
    assert mark is not None
    assert (mark.label, mark.role) == ("Title page", Role.TITLE)
    assert matter_mark("Cover your ears!") is None
