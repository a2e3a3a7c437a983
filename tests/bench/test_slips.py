"""What is planted stands where it should, and nothing else moves."""

from __future__ import annotations

import pytest

from proofkit.analysis import Analysis
from proofkit.settings import English
from proofkit.words.vocabulary import vocabulary_of
from tests.bench._kinds import KINDS
from tests.bench._slips import planted
from tests.marked import book_of

BOOK = book_of(
    "The owl sat in a tree. It was cold.\n\n“Come in, Pip,” said the owl. “I don't mind.”",
    "Pip came in. The owl and Pip were old friends.",
)
ANALYSIS = Analysis(english=English.BRITISH, vocabulary=vocabulary_of(BOOK))


def versions(kind: str) -> set[str]:
    """The pages as they read with each slip of the kind in them."""
    slips = [s for page in BOOK.pages for s in KINDS[kind](BOOK, ANALYSIS, page)]
    return {planted(BOOK, slip).page(slip.page).text for slip in slips}


@pytest.mark.parametrize(
    ("kind", "right", "wrong"),
    [
        ("small word doubled", "sat in a", "sat in in a"),
        ("article dropped", "in a tree", "in tree"),
        ("was/were and the like", "It was", "It were"),
        ("closing mark lost", "Pip,” said", "Pip, said"),
        ("opening mark lost", "“I don't", "I don't"),
        ("closing mark moved", "Pip,” said", "Pip”, said"),
        ("comma of address lost", "in, Pip", "in Pip"),
        ("stop lost, page end", "mind.”", "mind”"),
        ("stop lost, paragraph end", "cold.", "cold"),
        ("stop lost, before capital", "tree. It", "tree It"),
        ("stop lost, before speech", "owl. “", "owl “"),
        ("apostrophe lost", "don't", "dont"),
        ("capital lost, sentence", "It was", "it was"),
    ],
)
def test_each_slip_is_one_change(kind: str, right: str, wrong: str) -> None:
    assert BOOK.pages[0].text.replace(right, wrong, 1) in versions(kind)


def test_paragraphs_keep_their_text() -> None:
    page = BOOK.pages[0]
    slip = next(KINDS["article dropped"](BOOK, ANALYSIS, page))
    after = planted(BOOK, slip).page(1)
    second = page.paragraphs[1]
    moved = after.paragraphs[1]
    assert after.text[moved.start : moved.end] == page.text[second.start : second.end]
