"""What is not story: front and back matter, notes, folios, running heads; and story that looks like it."""

from __future__ import annotations

from pathlib import Path

import pytest

from proofkit.book import Role
from tests.readers.reading import read_text, roles, said, texts

STORY = "Page 1\n\nA goose sat on a clock and it ticked.\n\nPage 2\n\nShe ticked too.\n"


def test_title_page_before_the_first_mark(tmp_path: Path) -> None:
    book = read_text(
        tmp_path,
        "THE CLOCKWORK GOOSE\n\nby Una Vale\n\nFor Ned, who winds things up\n\n"
        f"About 480 words, for ages 3 to 6\n\n{STORY}",
    )
    assert book.title == "THE CLOCKWORK GOOSE"
    assert book.pages[0].role is Role.TITLE
    assert roles(book.pages[0]) == ["title", "author", "dedication", "note"]
    assert book.pages[0].spread is None
    assert book.words == 12


def test_title_in_an_unmarked_manuscript(tmp_path: Path) -> None:
    book = read_text(
        tmp_path, "The Clockwork Goose\nby Una Vale\n\nA goose sat on a clock.\n", ".md"
    )
    assert roles(book.pages[0]) == ["title", "author", "story"]
    book = read_text(tmp_path, "The Clockwork Goose\n\nby Una Vale\n\nA goose sat on a clock.\n")
    assert roles(book.pages[0]) == ["title", "author", "story"]
    assert book.title == "The Clockwork Goose"


@pytest.mark.parametrize(
    "line",
    [
        "written by Una Vale",
        "Written and illustrated by Una Vale",
        "Illustrations: Pim Rook",
        "A story by Una Vale and Pim Rook",
        "Author: Una Vale",
    ],
)
def test_author_lines(tmp_path: Path, line: str) -> None:
    book = read_text(tmp_path, f"The Goose\n\n{line}\n\n{STORY}")
    assert roles(book.pages[0]) == ["title", "author"]


def test_a_story_that_starts_with_by_or_for(tmp_path: Path) -> None:
    book = read_text(
        tmp_path,
        "By the river lived a goose.\n\fFor many years she was happy.\n\fTo Goose it was home.\n",
    )
    assert [page.role for page in book.pages] == [Role.STORY] * 3
    assert book.words == 17


def test_dedication_and_imprint_pages(tmp_path: Path) -> None:
    book = read_text(
        tmp_path,
        "The Goose\n\nUna Vale\n\f\nFor Grandpa, who never wound the clock\n\f\n"
        "First published in 2024 by Rook Books\n\n© Una Vale 2024\n\nAll rights reserved.\n\f\n"
        "A goose sat on a clock.\n\f\nIt ticked.\n",
    )
    assert [page.role for page in book.pages] == [
        Role.TITLE,
        Role.DEDICATION,
        Role.IMPRINT,
        Role.STORY,
        Role.STORY,
    ]
    assert [page.spread for page in book.pages] == [None, None, None, 1, 2]


def test_pages_that_say_what_they_are(tmp_path: Path) -> None:
    book = read_text(
        tmp_path,
        "Page 1: Title page\n\nThe Goose\n\nBy Una Vale\n\nPages 2-3 (endpapers)\n\nClocks and springs\n\n"
        "Page 4\n\nA goose sat down.\n",
    )
    assert [page.role for page in book.pages] == [Role.TITLE, Role.BACK_MATTER, Role.STORY]
    assert book.title == "The Goose"
    assert book.words == 4


def test_back_matter_after_the_story(tmp_path: Path) -> None:
    book = read_text(
        tmp_path,
        f"{STORY}\n\nThe End\n\nAbout the Author\n\nUna Vale lives with nine geese.\n\nGlossary\n\nFob: a chain.\n",
    )
    assert texts(book)[-1].startswith("About the Author")
    assert book.pages[-1].role is Role.BACK_MATTER
    assert book.pages[-1].label == ""
    assert texts(book)[-2].endswith("The End")


def test_a_question_early_in_the_story_is_no_back_matter(tmp_path: Path) -> None:
    book = read_text(
        tmp_path,
        "Page 1\n\nDid you know?\n\nPage 2\n\nGeese wind clocks.\n\nPage 3\n\nAll of them.\n",
    )
    assert [page.role for page in book.pages] == [Role.STORY] * 3


@pytest.mark.parametrize(
    "note",
    [
        "[Goose climbs the ladder.]",
        "{Goose climbs the ladder.}",
        "Illustration: Goose climbs the ladder.",
        "Art note: Goose climbs the ladder.",
        "Art note – Goose climbs the ladder.",
        "Illo: a ladder",
        "(Illustration note: a ladder)",
        "(We see Goose on the ladder.)",
        "(Wordless spread)",
        "Note to illustrator: Goose on a ladder",
        "Illus. note: Goose on a ladder",
        "ILLUSTRATOR NOTES: a ladder",
        "[AN: a ladder]",
        "Picture: a ladder",
    ],
)
def test_paragraphs_that_are_notes(tmp_path: Path, note: str) -> None:
    book = read_text(tmp_path, f"Page 1\n\nUp went Goose.\n\n{note}\n\nPage 2\n\nDown she came.\n")
    assert said(book.pages[0]) == [("story", "Up went Goose."), ("note", note)]
    assert book.words == 6


@pytest.mark.parametrize(
    "story",
    [
        "(But the goose wasn't.)",
        "Picture this: a goose on a ladder.",
        "Show me the way!",
        "Art was her favourite thing.",
        "“Illustrations!” said Goose.",
        "(She saw the ladder.)",
        "The image: gone.",
        "Hon[k]! went Goose.",
        "... [...] ...",
    ],
)
def test_paragraphs_that_are_story(tmp_path: Path, story: str) -> None:
    book = read_text(tmp_path, f"Page 1\n\n{story}\n\nPage 2\n\nDown she came.\n")
    assert said(book.pages[0]) == [("story", story)]
    assert book.pages[0].notes == ()


@pytest.mark.parametrize(
    ("text", "prose"),
    [
        ("Up she went. [Goose climbs.] Up, up!", "Up she went.  Up, up!"),
        ("Up she went (illo: a ladder) and up.", "Up she went  and up."),
        ("Up she went. Illustration: a tall ladder.", "Up she went. "),
        ("Up she went.\nArt note: a tall ladder.", "Up she went. "),
    ],
)
def test_notes_inside_a_paragraph(tmp_path: Path, text: str, prose: str) -> None:
    book = read_text(tmp_path, f"Page 1\n\n{text}\n\nPage 2\n\nDown she came.\n")
    page = book.pages[0]
    assert " ".join(page.prose.split()) == " ".join(prose.split())
    assert len(page.prose) == len(page.text)


def test_a_note_over_several_paragraphs(tmp_path: Path) -> None:
    book = read_text(
        tmp_path,
        "Page 1\n\n[Goose climbs.\n\nThe clock looks on.]\n\nUp she went.\n\nPage 2\n\nBong.\n",
    )
    assert roles(book.pages[0]) == ["note", "note", "story"]


def test_a_label_for_the_note_in_the_next_paragraph(tmp_path: Path) -> None:
    book = read_text(
        tmp_path, "Page 1\n\nIllustration:\n\nA ladder.\n\nUp she went.\n\nPage 2\n\nBong.\n"
    )
    assert roles(book.pages[0]) == ["note", "note", "story"]


def test_text_labels_beside_notes(tmp_path: Path) -> None:
    book = read_text(
        tmp_path,
        "Page 1\n\nText: Up she went.\n\nIllustration: a ladder\n\nPage 2\n\nText: Bong.\n\nIllustration: a clock\n",
    )
    assert [page.prose.strip() for page in book.pages] == ["Up she went.", "Bong."]


def test_a_wordless_page_keeps_its_note(tmp_path: Path) -> None:
    book = read_text(tmp_path, "Page 1\n\n[Only snow.]\n\nPage 2\n\nBong.\n")
    assert book.pages[0].role is Role.STORY
    assert book.pages[0].words == 0


def test_folios_and_running_heads(tmp_path: Path) -> None:
    pages = [
        f"Vale / The Goose / {n}\n\nThe goose walked round clock {n}.\n\n{n}\n" for n in (1, 2, 3)
    ]
    book = read_text(tmp_path, "\f".join(pages))
    assert [roles(page) for page in book.pages] == [["running head", "story", "folio"]] * 3


@pytest.mark.parametrize(
    "refrain",
    [
        "Honk, honk, honk!",
        "{} little geese went honk",
        "The goose went home",
        "Up went goose number {}.",
    ],
)
def test_a_refrain_is_no_running_head(tmp_path: Path, refrain: str) -> None:
    pages = [f"The goose went round clock {n}.\n\n{refrain.format(n)}\n" for n in (1, 2, 3, 4)]
    book = read_text(tmp_path, "The Goose\n\nby Una Vale\n\f" + "\f".join(pages))
    assert [roles(page) for page in book.story_pages] == [["story", "story"]] * 4


def test_headings_inside_the_story(tmp_path: Path) -> None:
    book = read_text(
        tmp_path,
        "# The Goose\n\n## Chapter One\n\nA goose sat down.\n\n## Chapter Two\n\nIt ticked.\n",
        ".md",
    )
    assert roles(book.pages[0]) == ["title", "title", "story", "title", "story"]
    assert not book.paginated


def test_a_title_below_the_authors_address(tmp_path: Path) -> None:
    book = read_text(
        tmp_path,
        f"Una Vale\n\n12 Clock Lane, Bath\n\nuna@vale.example\n\nTick Goes the Goose\n\n{STORY}",
    )
    assert book.title == "Tick Goes the Goose"
    assert roles(book.pages[0]) == ["note", "note", "note", "title"]


def test_a_title_above_the_authors_line(tmp_path: Path) -> None:
    book = read_text(tmp_path, f"Picture book\n\n“Tick Goes the Goose”\n\nby Una Vale\n\n{STORY}")
    assert book.title == "Tick Goes the Goose"


def test_a_page_of_one_word_is_no_title(tmp_path: Path) -> None:
    book = read_text(tmp_path, "The Goose\n\nby Una Vale\n\f\nSnow\n\f\nMore Snow\n\f\nHonk!\n")
    assert [page.role for page in book.pages] == [Role.TITLE, Role.STORY, Role.STORY, Role.STORY]


def test_a_gift_is_no_dedication(tmp_path: Path) -> None:
    book = read_text(
        tmp_path, "The Goose\n\nby Una Vale\n\f\nFor my birthday I got a goose.\n\f\nHonk!\n"
    )
    assert book.pages[1].role is Role.STORY


@pytest.mark.parametrize(
    "line",
    [
        "His name was printed in gold.",
        "It was published by the moon.",
        "Thanks",
        "Did you know?",
        "Copyright? said Goose.",
    ],
)
def test_lines_that_an_imprint_or_back_matter_may_have_too(tmp_path: Path, line: str) -> None:
    book = read_text(tmp_path, f"{STORY}\n\nPage 3\n\n{line}\n\nHonk!\n")
    assert roles(book.pages[-1]) == ["story", "story"]


@pytest.mark.parametrize(
    "note",
    [
        "[A sign reads [KEEP OUT] on the door.]",
        "(Illo: a goose (wet) on a chair.)",
        "[One.] [Two.]",
    ],
)
def test_brackets_inside_brackets(tmp_path: Path, note: str) -> None:
    book = read_text(tmp_path, f"Page 1\n\n{note}\n\nUp she went. {note} And down.\n")
    assert roles(book.pages[0]) == ["note", "story"]
    assert book.words == 5
