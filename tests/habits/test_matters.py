"""The matters that have a few forms: what each finds in a small text, and what holds of all."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.habits._dashes import ONE_SIDED
from proofkit.habits.matters import MATTERS, Matter, matter_named
from proofkit.habits.nesting import SAME
from proofkit.settings import English
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of

# What a book may have, but nobody would decide on.
NO_FORMS = {ONE_SIDED, SAME}
PIECES = ["Hen", "ran", "I", " ", " ", "\n\n", "“", "”", "‘", "’", '"', "'", "—", " – ", "--", "-", "…", "...",
          ". . .", ". ", ".  ", ", ", ": ", "? ", "! ", "Mr ", "Mr. ", "said ", "thought ", "7", "(", ")"]  # fmt: skip


def analysis_of(book: Book) -> Analysis:
    return Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book))


def counts(name: str, *pages: str) -> dict[str, int]:
    """How often a book of these pages has each form of a matter."""
    book, matter = book_of(*pages), matter_named(name)
    assert matter is not None
    usage = matter.usage(book, analysis_of(book))
    return {form: usage.count(form) for form in usage.places}


def test_no_name_comes_twice() -> None:
    names = [matter.name for matter in MATTERS]
    assert len(set(names)) == len(names)
    assert matter_named("nothing of the kind") is None


@pytest.mark.parametrize("matter", MATTERS, ids=lambda matter: matter.name)
@given(pieces=st.lists(st.sampled_from(PIECES), max_size=40))
def test_places_lie_in_the_book_and_their_forms_are_known(
    matter: Matter, pieces: list[str]
) -> None:
    book = book_of("".join(pieces).strip("\n") or "Hen.")
    usage = matter.usage(book, analysis_of(book))
    assert usage.matter == matter.name
    assert set(usage.places) <= {*matter.forms, *NO_FORMS}
    for spans in usage.places.values():
        assert list(spans) == sorted(spans)
        assert all(0 <= s.start < s.end <= len(book.page(s.page).text) for s in spans)


@pytest.mark.parametrize(
    ("name", "text", "found"),
    [
        ("quotation-marks", "“Oh,” said Pip. ‘Ah,’ said Bo. “Eh?”", {"double": 2, "single": 1}),
        ("nesting", "“Who said ‘No’ to you?” asked Pip.", {"single inside double": 1}),
        ("nesting", "“Who said “No” to you?” asked Pip.", {SAME: 1}),
        ("mark-shape", "“It’s 6' 2\" tall,\" said Pip.", {"curly": 2, "straight": 1}),
        ("dash", "Up – and up—and up - and 3–4 and well-worn.",
         {"spaced en rule": 1, "em rule": 1, "spaced hyphen": 1}),
        ("dash", "Up --and up -- and up--up.", {ONE_SIDED: 1, "spaced two hyphens": 1, "two hyphens": 1}),
        ("dash", "“W—wait!” Smith–Jones.\n– A list", {}),
        ("dash-breaking-off", "“But I—” “But you –” Then", {"em rule": 1, "spaced en rule": 1}),
        ("ellipsis", "So… so... so . . . so.", {"one character": 1, "three points": 1, "spaced points": 1}),
        ("space-before-ellipsis", "So… so … so. …So.", {"no space": 1, "a space": 1}),
        ("space-after-ellipsis", "So… yes…no. Drip…drip.", {"a space": 1, "no space": 1}),
        ("space-after-stop", "Up. Down.  Up! Down", {"one": 2, "two": 1}),
        ("title-point", "Mr Tock and Mrs. Tock", {"Mr": 1, "Mr.": 1}),
        ("stop-and-mark", "It is a ‘hat’. It is a ‘cap.’", {"outside": 1, "inside": 1}),
        ("thoughts", "“Why?” thought Pip. Not me, thought Bo.", {"marks": 1, "plain": 1}),
        ("new-speaker", '"Up?" asked Mole. "No," said Hare.', {"run on": 1}),
        ("new-speaker", '"Up?" asked Mole.\n\n"No," said Hare.', {"new paragraph": 1}),
    ],
)  # fmt: skip
def test_what_each_finds(name: str, text: str, found: dict[str, int]) -> None:
    assert counts(name, text) == found
