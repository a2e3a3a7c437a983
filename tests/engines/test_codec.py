import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from proofkit.analysis import PageAnalysis, Sentence, Token
from proofkit.engines.codec import decoded_page, decoded_remarks, encoded_page, encoded_remarks
from proofkit.engines.joined import Remark

_NAMES = st.sampled_from(["", "goose", "NN", "VERB", "’s", "🦊"])


@st.composite
def _pages(draw: st.DrawFn) -> tuple[str, PageAnalysis]:
    words = draw(st.lists(st.text(alphabet="abc’🦊", min_size=1, max_size=5), max_size=8))
    tokens, at = [], 0
    for word in words:
        tokens.append(
            Token(
                text=word,
                start=at,
                end=at + len(word),
                lemma=draw(_NAMES),
                tag=draw(_NAMES),
                pos=draw(_NAMES),
                dep=draw(_NAMES),
                head=draw(st.integers(min_value=0, max_value=len(words) - 1)),
            )
        )
        at += len(word) + 1
    sentences = (Sentence(start=0, end=at, first=0, last=len(words)),) if words else ()
    return " ".join(words), PageAnalysis(tokens=tuple(tokens), sentences=sentences)


@given(_pages())
def test_a_page_comes_back_as_it_was(given_page: tuple[str, PageAnalysis]) -> None:
    prose, page = given_page
    assert decoded_page(encoded_page(page), prose) == page


def test_remarks_come_back_as_they_were() -> None:
    remarks = [
        Remark(start=1, end=4, rule="A", category="B", message="“Why?”", replacements=("x", "y")),
        Remark(start=9, end=9, rule="", category="", message=""),
    ]
    assert decoded_remarks(encoded_remarks(remarks)) == remarks


@pytest.mark.parametrize("value", [b"", b"\xc1", b"\x93\x01"])
def test_damage_is_told(value: bytes) -> None:
    with pytest.raises(msgspec.MsgspecError):
        decoded_page(value, "")
    with pytest.raises(msgspec.MsgspecError):
        decoded_remarks(value)
