"""Our readability measures beside published counts, worked examples and another library.

Sources, by letter:

(F)  R. Flesch, A New Readability Yardstick, Journal of Applied Psychology 32 (1948), 221–233, and The
     Art of Readable Writing (1949), pp. 149–150, the latter as W. H. DuBay prints it in The Principles
     of Readability (2004), p. 23.
(K)  J. P. Kincaid and others, Navy Research Branch Report 8-75 (1975), as DuBay prints it, p. 50.
(W)  Wikipedia, Flesch–Kincaid readability tests: the platypus sentence with its counts and grade.
(N)  the npm package flesch-kincaid, which takes counts, run on these in November 2026.
(T)  the PyPI package textstat 0.7.8, run here, where its formula is the published one.
"""

from __future__ import annotations

import pytest
from textstat import textstat

from proofkit.book import count_words
from proofkit.reading.formulas import flesch_kincaid_grade, flesch_reading_ease
from proofkit.reading.measure import measure
from proofkit.reading.sentences import sentences
from proofkit.reading.syllables import syllables
from tests.marked import book_of

PLATYPUS = "The Australian platypus is seemingly a hybrid of a mammal and reptilian creature."
MAT = "The cat sat on the mat."

# (F) 1949: lowest and highest score of the band, words to a sentence, syllables to 100 words.
FLESCH_1949 = {
    "very easy": (90, 100, 8, 123),
    "easy": (80, 90, 11, 131),
    "fairly easy": (70, 80, 14, 139),
    "standard": (60, 70, 17, 147),
    "fairly difficult": (50, 60, 21, 155),
    "difficult": (30, 50, 25, 167),
    "very difficult": (0, 30, 29, 192),
}

# Our own sentences, of words on whose syllables dictionary and library agree.
TEXTS = [
    "The goose sat on the clock. The clock did not tick. Tock was sad.",
    "Seven yellow umbrellas danced over the river, and nobody knew who had opened them.",
    "Grandmother remembers the winter of the enormous snowman. It lasted until Easter Monday.",
]


def counts(text: str) -> dict[str, int]:
    """Words, sentences and syllables as we count them."""
    return {
        "words": count_words(text),
        "sentences": len(list(sentences(text))),
        "syllables": sum(syllables(word) for word in text.split()),
    }


def test_platypus_counts() -> None:  # (W)
    assert counts(PLATYPUS) == {"words": 13, "sentences": 1, "syllables": 24}


def test_platypus_scores() -> None:  # (W) prints 11.3, (N) 11.2646 and 37.4554
    assert flesch_kincaid_grade(**counts(PLATYPUS)) == pytest.approx(11.2646, abs=0.00005)
    assert flesch_reading_ease(**counts(PLATYPUS)) == pytest.approx(37.4554, abs=0.00005)


def test_the_cat_sat_on_the_mat() -> None:  # (N) 116.145 and -1.45
    assert counts(MAT) == {"words": 6, "sentences": 1, "syllables": 6}
    assert flesch_reading_ease(**counts(MAT)) == pytest.approx(116.145)
    assert flesch_kincaid_grade(**counts(MAT)) == pytest.approx(-1.45)


def test_sentences_of_one_word_of_one_syllable_are_the_ends_of_both_scales() -> None:
    """121.22 is often published as the highest ease; the lowest grade is arithmetic of ours."""
    assert flesch_reading_ease(words=1, sentences=1, syllables=1) == pytest.approx(121.22)
    assert flesch_kincaid_grade(words=1, sentences=1, syllables=1) == pytest.approx(-3.40)


@pytest.mark.parametrize(("style", "row"), FLESCH_1949.items(), ids=FLESCH_1949)
def test_each_row_of_flesch_s_table_falls_in_its_own_band(
    style: str, row: tuple[int, int, int, int]
) -> None:
    lowest, highest, to_a_sentence, to_100_words = row
    ease = flesch_reading_ease(
        words=100 * to_a_sentence, sentences=100, syllables=to_100_words * to_a_sentence
    )
    assert lowest <= ease <= highest, style


@pytest.mark.parametrize("text", [PLATYPUS, MAT, *TEXTS])
def test_the_library_counts_and_scores_alike(text: str) -> None:  # (T)
    own = counts(text)
    assert own["words"] == textstat.lexicon_count(text)
    assert own["sentences"] == textstat.sentence_count(text)
    assert own["syllables"] == textstat.syllable_count(text)
    assert flesch_reading_ease(**own) == pytest.approx(textstat.flesch_reading_ease(text))
    assert flesch_kincaid_grade(**own) == pytest.approx(textstat.flesch_kincaid_grade(text))


def test_a_measured_page_has_the_library_s_scores() -> None:  # (T)
    text = " ".join([*TEXTS, *TEXTS, *TEXTS])
    page = measure(book_of(text)).pages[0]
    assert page.words >= 100
    assert page.flesch_reading_ease == pytest.approx(textstat.flesch_reading_ease(text))
    assert page.flesch_kincaid_grade == pytest.approx(textstat.flesch_kincaid_grade(text))


def test_speech_is_where_we_differ_from_the_library_on_purpose() -> None:
    """Flesch counts units of speech; the library counts marks, and leaves out sentences of two words."""
    assert counts("“Stop!” cried the goose from the top of the tower.")["sentences"] == 1
    assert counts("Up went Ann. Ben slept.")["sentences"] == 2
    assert textstat.sentence_count("Up went Ann. Ben slept.") == 1
