from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from proofkit.book import count_words
from proofkit.reading.sentences import sentences


def told(text: str) -> list[str]:
    return [text[start:end] for start, end in sentences(text)]


@pytest.mark.parametrize(
    "text",
    [
        "“Stop!” said Ann.",
        "“Stop!” Ann said.",
        "“Stop!” I cried.",
        "“Stop!” Mrs. Pell shouted.",
        "“Where is it?” asked the bear.",
        "'Where is it?' asked the bear.",
        "“Up… and up… and away!” he sang.",
        "Up . . . and up . . . and away she went.",
        "Mr. Tock and Dr. A. B. Moss went out.",
        "It cost 1.50, or 2.50 on a Sunday",
        "Oh! what a mess",
        "There was a mole\nwho lived in a hole.",
        "She had one wish: to fly; but how – and when?",
    ],
)
def test_one_sentence(text: str) -> None:
    assert told(text) == [text]


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("Up went Ann. Down came Ben!", ["Up went Ann.", "Down came Ben!"]),
        ("“Stop! Come back!” said Ann.", ["“Stop!", "Come back!” said Ann."]),
        ("“Stop!” The bus stopped.", ["“Stop!”", "The bus stopped."]),
        ("“Stop!” Ann ran after it.", ["“Stop!”", "Ann ran after it."]),
        ("“Stop!” “Why?”", ["“Stop!”", "“Why?”"]),
        ("So did I. Then we slept.", ["So did I.", "Then we slept."]),
        ("“No. I won’t.”", ["“No.", "I won’t.”"]),
        ("Wait… What was that?!", ["Wait…", "What was that?!"]),
        ("She was 5. 6 came next.", ["She was 5.", "6 came next."]),
        ("Goodnight, Pip\n\nGoodnight, moon", ["Goodnight, Pip", "Goodnight, moon"]),
        ("“Well,” said Ann. “Come in.”", ["“Well,” said Ann.", "“Come in.”"]),
        ("“Hop!” Then Ann said no more.", ["“Hop!”", "Then Ann said no more."]),
    ],
)
def test_several_sentences(text: str, parts: list[str]) -> None:
    assert told(text) == parts


@pytest.mark.parametrize("text", ["", "  \n\n ", "…", "* * *\n\n—"])
def test_marks_alone_are_no_sentence(text: str) -> None:
    assert told(text) == []


@given(st.text(alphabet="aB.!?… \n“”’M1-", max_size=60))
def test_no_word_is_lost_and_none_is_counted_twice(text: str) -> None:
    found = list(sentences(text))
    assert sum(count_words(text[start:end]) for start, end in found) == count_words(text)
    assert all(end <= start for (_, end), (start, _) in pairwise(found))
