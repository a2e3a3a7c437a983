from __future__ import annotations

import pytest

from proofkit.reading.same_form import in_form


@pytest.mark.parametrize(
    ("plain", "tag", "form"),
    [
        ("big", "JJ", "big"), ("big", "JJR", "bigger"), ("big", "JJS", "biggest"),
        ("happy", "JJR", "happier"), ("large", "JJS", "largest"), ("good", "JJR", "better"),
        ("cold", "JJR", "colder"), ("clever", "JJR", "cleverer"),
        ("eat", "VBD", "ate"), ("eat", "VBN", "eaten"), ("eat", "VBG", "eating"), ("eat", "VBZ", "eats"),
        ("stop", "VBD", "stopped"), ("stop", "VBG", "stopping"), ("begin", "VBG", "beginning"),
        ("open", "VBD", "opened"), ("open", "VBG", "opening"), ("visit", "VBG", "visiting"),
        ("make", "VBG", "making"), ("see", "VBG", "seeing"), ("lie", "VBG", "lying"), ("be", "VBG", "being"),
        ("hop", "VBD", "hopped"), ("hope", "VBD", "hoped"), ("hurry", "VBD", "hurried"),
        ("look", "VBG", "looking"), ("feel", "VBG", "feeling"), ("quit", "VBG", "quitting"),
        ("house", "NNS", "houses"), ("child", "NNS", "children"), ("berry", "NNS", "berries"),
        ("run", "VBN", "run"), ("hide", "VBN", "hidden"), ("go", "VBP", "go"), ("quickly", "RB", "quickly"),
    ],
)  # fmt: skip
def test_forms(plain: str, tag: str, form: str) -> None:
    assert in_form(plain, tag) == form


@pytest.mark.parametrize(
    ("plain", "tag"),
    [("curious", "JJR"), ("beautiful", "JJS"), ("quickly", "RBR"), ("sheep", "NNS"), ("the", "DT")],
)
def test_a_form_that_english_has_not_is_not_made(plain: str, tag: str) -> None:
    assert in_form(plain, tag) is None
