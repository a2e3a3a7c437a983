"""Whether a manuscript is in English, by its commonest small words."""

from __future__ import annotations

import re

from proofkit.book import Book

# Frequent in English and rare as spellings in the languages that share its letters; words such as
# "in", "is", "die", "on" and "man", which others have too, are left out.
_SMALL_WORDS = frozenset(
    [
        "the",
        "and",
        "of",
        "to",
        "that",
        "it",
        "his",
        "her",
        "she",
        "they",
        "with",
        "for",
        "you",
        "said",
        "but",
        "from",
        "this",
        "there",
        "are",
        "what",
        "when",
        "not",
        "were",
        "my",
        "your",
        "have",
        "who",
        "out",
        "would",
        "could",
        "then",
        "into",
        "down",
        "him",
        "them",
        "their",
        "one",
        "little",
        "all",
        "like",
        "very",
        "where",
        "how",
        "because",
        "been",
        "which",
        "about",
    ]
)
_WORD = re.compile(r"[^\W\d_]+")
# English stories have about 3 in 10, other European languages under 1 in 25.
_FEWEST = 0.1
_TOO_SHORT_TO_TELL = 25


def looks_english(book: Book) -> bool:
    """Whether the story is in English; True as well where it is too short to tell."""
    words = [word.casefold() for page in book.story_pages for word in _WORD.findall(page.prose)]
    if len(words) < _TOO_SHORT_TO_TELL:
        return True
    return sum(word in _SMALL_WORDS for word in words) >= len(words) * _FEWEST
