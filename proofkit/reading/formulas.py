"""The published readability formulas, as functions of counts.

Each is the formula as its author printed it. They are two lines each, and so are our own: the
general library for them differs from the print in three formulas (the 1953 constants for Spache's
revised formula, 0.058 for 0.0588 in Coleman and Liau's, a 1948 correction in Chall and Dale's of
1995) and takes longer to load than a whole book takes to measure. The tests hold ours beside it
where it is right.

Every formula was made on samples of 100 words and more; what it says of less is outside its design.
Counts are whole numbers; words and sentences are at least one.
"""

from __future__ import annotations

from math import sqrt

# Flesch took samples of 100 words (1948, 1949), and so did those after him.
SMALLEST_SAMPLE = 100
# McLaughlin counts in three times ten sentences (1969).
SMALLEST_SMOG_SAMPLE = 30

_EASES = (
    (90, "very easy"),
    (80, "easy"),
    (70, "fairly easy"),
    (60, "standard"),
    (50, "fairly difficult"),
    (30, "difficult"),
)


def flesch_reading_ease(*, words: int, sentences: int, syllables: int) -> float:
    """Reading Ease: 0 very difficult to 100 very easy, for a book of short sentences even more.

    R. Flesch, A New Readability Yardstick, Journal of Applied Psychology 32 (1948), 221–233.
    """
    return 206.835 - 1.015 * (words / sentences) - 84.6 * (syllables / words)


def ease_in_words(ease: float) -> str:
    """Flesch's own name for a reading ease (The Art of Readable Writing, 1949, p. 149)."""
    return next((name for least, name in _EASES if ease >= least), "very difficult")


def flesch_kincaid_grade(*, words: int, sentences: int, syllables: int) -> float:
    """The American school grade that can read the text; grade g is about age g + 5 to g + 6.

    J. P. Kincaid, R. P. Fishburne, R. L. Rogers and B. S. Chissom, Navy Research Branch Report 8-75
    (1975). Texts of very short words and sentences fall below 0.
    """
    return 0.39 * (words / sentences) + 11.8 * (syllables / words) - 15.59


def spache_grade(*, words: int, sentences: int, unfamiliar: int) -> float:
    """The American grade of a text for the first three years at school, from 1 up to about 4.

    G. Spache, Good Reading for Poor Readers (revised edition, 1974). ``unfamiliar`` counts each word
    that is off his list once, however often it stands there; in a text far longer than his samples of
    100 to 150 words that makes the grade too low.
    """
    return 0.121 * (words / sentences) + 0.082 * (100 * unfamiliar / words) + 0.659


def dale_chall_score(*, words: int, sentences: int, unfamiliar: int) -> float:
    """Below 5 for grade 4 and less, then about two grades to a point: 5 is grades 5 and 6.

    E. Dale and J. S. Chall, A Formula for Predicting Readability, Educational Research Bulletin 27
    (1948), 11–20 and 37–54. ``unfamiliar`` counts every time that a word off their list is used; above
    5 in a hundred, 3.6365 is added.
    """
    off = 100 * unfamiliar / words
    score = 0.1579 * off + 0.0496 * (words / sentences)
    return score + 3.6365 if off > 5 else score


def dale_chall_cloze(*, words: int, sentences: int, unfamiliar: int) -> float:
    """How many in a hundred left-out words a reader can supply: higher is easier. Not a grade.

    J. S. Chall and E. Dale, Readability Revisited (1995), whose tables turn it into grades; the tables
    are not in here. ``unfamiliar`` as in their formula of 1948.
    """
    return 64 - 0.95 * (100 * unfamiliar / words) - 0.69 * (words / sentences)


def smog_grade(*, sentences: int, polysyllables: int) -> float:
    """The American grade at which readers understand all of a text, not a half or three quarters of it.

    G. H. McLaughlin, SMOG Grading: a New Readability Formula, Journal of Reading 12 (1969), 639–646, in
    its precise form. ``polysyllables`` are words of three syllables and more, each as often as it
    stands there. Made on 30 sentences; fewer are outside its design.
    """
    return 1.043 * sqrt(polysyllables * 30 / sentences) + 3.1291


def coleman_liau_grade(*, words: int, sentences: int, letters: int) -> float:
    """The American grade by letters and sentences to 100 words, without syllables.

    M. Coleman and T. L. Liau, A Computer Readability Formula Designed for Machine Scoring, Journal of
    Applied Psychology 60 (1975), 283–284.
    """
    return 0.0588 * (100 * letters / words) - 0.296 * (100 * sentences / words) - 15.8


def automated_readability_index(*, words: int, sentences: int, characters: int) -> float:
    """The American school year plus one: 1 is age 5 to 6, 2 is 6 to 7. A part of a year counts as a whole.

    R. J. Senter and E. A. Smith, Automated Readability Index, AMRL-TR-66-220 (1967). ``characters`` are
    letters and figures.
    """
    return 4.71 * (characters / words) + 0.5 * (words / sentences) - 21.43


def gunning_fog_index(*, words: int, sentences: int, complex_words: int) -> float:
    """The years of schooling that a reader needs.

    R. Gunning, The Technique of Clear Writing (1952). ``complex_words`` have three syllables and more,
    without names, compounds of easy words, and words that -es, -ed or -ing makes long.
    """
    return 0.4 * (words / sentences + 100 * complex_words / words)
