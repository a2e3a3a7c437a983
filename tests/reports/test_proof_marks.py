from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from proofkit.reports.proof.marks import Kind, mark_of


@pytest.mark.parametrize(
    ("quote", "reading", "kind", "on", "new"),
    [
        ("harbor", "harbour", Kind.INSERT, "", "u"),
        ("round", "round.", Kind.INSERT, "", "."),
        ("lost,", "lost,”", Kind.INSERT, "", "”"),
        ("evening Nell", "evening, Nell", Kind.INSERT, "", ","),
        ("home", "a home", Kind.INSERT, "", "a "),
        ("the the", "the", Kind.DELETE, " the", ""),
        (",,", ",", Kind.DELETE, ",", ""),
        ("really", "", Kind.DELETE, "really", ""),
        ("bed-time", "bedtime", Kind.DELETE_CLOSE, "-", ""),
        ("acccept", "accept", Kind.DELETE_CLOSE, "c", ""),
        ("Than", "Then", Kind.SUBSTITUTE, "a", "e"),
        ("boy´s", "boy’s", Kind.SUBSTITUTE, "´", "’"),
        ("catched", "caught", Kind.SUBSTITUTE, "catched", "caught"),
        ("Mister", "Mr", Kind.SUBSTITUTE, "Mister", "Mr"),
        ('"More!"', "“More!”", Kind.SUBSTITUTE, '"More!"', "“More!”"),
        ("it self", "itself", Kind.CLOSE_UP, " ", ""),
        ("supper .", "supper.", Kind.CLOSE_UP, " ", ""),
        ("right.Then", "right. Then", Kind.INSERT_SPACE, "", " "),
        ("she  took", "she took", Kind.REDUCE_SPACE, "  ", " "),
        ("form", "from", Kind.TRANSPOSE, "or", "ro"),
        ("jar”,", "jar,”", Kind.TRANSPOSE, "”,", ",”"),
        ("said he", "he said", Kind.TRANSPOSE, "said he", "he said"),
        ("the jar", "The jar", Kind.CAPITAL, "t", "T"),
        ("bbc", "BBC", Kind.CAPITAL, "bbc", "BBC"),
        ("My Mum", "My mum", Kind.LOWER_CASE, "M", "m"),
        ("sea. “No", "sea.\n\n“No", Kind.NEW_PARAGRAPH, " ", "\n\n"),
        ("the\n\nsea", "the sea", Kind.RUN_ON, "\n\n", " "),
        ("a windle", None, Kind.QUERY, "a windle", ""),
        ("as it is", "as it is", Kind.QUERY, "as it is", ""),
    ],
)
def test_the_mark_is_the_one_that_a_corrector_makes(
    quote: str, reading: str | None, kind: Kind, on: str, new: str
) -> None:
    mark = mark_of(quote, reading)
    assert (mark.kind, quote[mark.start : mark.end], mark.new) == (kind, on, new)


@given(st.text("aA b.,”\n\u0301é", max_size=9), st.text("aA b.,”\n\u0301é", max_size=9))
def test_every_mark_but_a_query_makes_the_reading(quote: str, reading: str) -> None:
    mark = mark_of(quote, reading)
    made = quote[: mark.start] + mark.new + quote[mark.end :]
    assert made == reading or (mark.kind is Kind.QUERY and quote == reading)


def test_no_accent_is_parted_from_its_letter() -> None:
    mark = mark_of("cafe\u0301", "cafe\u0300")
    assert (mark.start, mark.end, mark.new) == (3, 5, "e\u0300")
