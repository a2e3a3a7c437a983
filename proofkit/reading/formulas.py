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

# Flesch took samples of 100 words (1948, 1949), and so did those after him.
SMALLEST_SAMPLE = 100


def flesch_reading_ease(*, words: int, sentences: int, syllables: int) -> float:
    """Reading Ease: 0 very difficult to 100 very easy, for a book of short sentences even more.

    R. Flesch, A New Readability Yardstick, Journal of Applied Psychology 32 (1948), 221–233.
    """
    return 206.835 - 1.015 * (words / sentences) - 84.6 * (syllables / words)


def flesch_kincaid_grade(*, words: int, sentences: int, syllables: int) -> float:
    """The American school grade that can read the text; grade g is about age g + 5 to g + 6.

    J. P. Kincaid, R. P. Fishburne, R. L. Rogers and B. S. Chissom, Navy Research Branch Report 8-75
    (1975). Texts of very short words and sentences fall below 0.
    """
    return 0.39 * (words / sentences) + 11.8 * (syllables / words) - 15.59
