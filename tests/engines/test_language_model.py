from collections.abc import Iterator
from contextlib import closing

import pytest

from proofkit.analysis import PageAnalysis
from proofkit.engines import language_model
from proofkit.engines.language_model import LanguageModel, model_version

pytestmark = pytest.mark.engine


@pytest.fixture(scope="module")
def model() -> Iterator[LanguageModel]:
    with closing(LanguageModel()) as loaded:
        yield loaded


def _analysed(model: LanguageModel, text: str) -> PageAnalysis:
    (page,) = model.analyse([text])
    for token in page.tokens:
        assert text[token.start : token.end] == token.text
    return page


def test_words_have_forms_and_ties(model: LanguageModel) -> None:
    page = _analysed(model, "The children ate their cakes.")
    assert [token.lemma for token in page.tokens] == ["the", "child", "eat", "their", "cake", "."]
    assert [token.tag for token in page.tokens] == ["DT", "NNS", "VBD", "PRP$", "NNS", "."]
    assert page.tokens[1].dep == "nsubj"
    assert page.tokens[1].head == 2
    assert page.tokens[2].head == 2


def test_gaps_and_line_ends_are_no_words_and_shift_no_place(model: LanguageModel) -> None:
    text = "The owl" + " " * 25 + "hooted.\n\n  Nobody\nheard it."
    page = _analysed(model, text)
    assert [t.text for t in page.tokens] == [
        "The",
        "owl",
        "hooted",
        ".",
        "Nobody",
        "heard",
        "it",
        ".",
    ]
    assert all(0 <= token.head < len(page.tokens) for token in page.tokens)
    assert page.tokens[1].head == 2
    assert [text[s.start : s.end] for s in page.sentences] == [
        text[: text.index("\n")],
        "Nobody\nheard it.",
    ]
    assert [(s.first, s.last) for s in page.sentences] == [(0, 4), (4, 8)]


def test_signs_of_two_units_shift_no_place(model: LanguageModel) -> None:
    assert _analysed(model, "🦊🦊 The fox 🦊 ran.").tokens[-2].text == "ran"


def test_a_long_text_is_analysed_in_pieces_as_one_page(
    model: LanguageModel, monkeypatch: pytest.MonkeyPatch
) -> None:
    text = "\n\n".join(["The hen sat on the wall. The fox ran by."] * 5)
    whole = _analysed(model, text)
    monkeypatch.setattr(language_model, "_PIECE", 90)
    assert _analysed(model, text) == whole
    assert len(whole.sentences) == 10


def test_an_empty_page_has_no_words(model: LanguageModel) -> None:
    assert list(model.analyse(["", " \n "])) == [PageAnalysis(), PageAnalysis()]


def test_the_version_names_the_model_and_spacy() -> None:
    assert model_version().startswith("3.8")
    assert "spaCy 3.8" in model_version()
