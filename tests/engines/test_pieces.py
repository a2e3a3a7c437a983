from hypothesis import given
from hypothesis import strategies as st

from proofkit.engines.pieces import pieces

_PROSE = st.text(alphabet="ab .!\n\t\u00a0’🦊", max_size=300)


@given(prose=_PROSE, limit=st.integers(min_value=10, max_value=80))
def test_every_visible_character_is_shown_once_and_finds_its_place(prose: str, limit: int) -> None:
    found = [
        (piece.place(at), character)
        for piece in pieces(prose, limit)
        for at, character in enumerate(piece.text)
        if not character.isspace()
    ]
    assert found == [(at, c) for at, c in enumerate(prose) if not c.isspace()]


@given(prose=_PROSE, limit=st.integers(min_value=10, max_value=80))
def test_no_piece_is_longer_than_asked_and_none_is_empty(prose: str, limit: int) -> None:
    for piece in pieces(prose, limit):
        assert len(piece.text) <= limit
        assert piece.text.strip()


def test_a_gap_is_shown_as_one_space_and_ranges_reach_back_over_it() -> None:
    prose = "The owl" + " " * 30 + "hooted."
    (piece,) = pieces(prose, 1000)
    assert piece.text == "The owl hooted."
    start = piece.text.index("hooted")
    assert piece.range(start, start + 6) == (37, 43)
    assert piece.range(4, start + 6) == (4, 43)


def test_a_long_page_is_cut_between_paragraphs() -> None:
    first, second = "One hen sat. " * 3, "Two hens ran. " * 3
    texts = [piece.text.strip() for piece in pieces(f"{first}\n\n{second}", 60)]
    assert texts == [first.strip(), second.strip()]


def test_a_long_paragraph_is_cut_between_sentences() -> None:
    texts = [piece.text.strip() for piece in pieces("One hen sat. Two hens ran. Three flew.", 30)]
    assert texts == ["One hen sat. Two hens ran.", "Three flew."]


def test_half_a_sign_is_shown_as_the_sign_for_an_unknown_one() -> None:
    (piece,) = pieces("a\ud83eb", 100)
    assert piece.text == "a\ufffdb"
