"""Does a sentence sound like somebody speaking, or like the one who tells the story?"""

from __future__ import annotations

import re

from proofkit.words.abbreviations import ends_in_abbreviation

_SPEAKER = re.compile(
    r"\b(?:I|me|my|mine|myself|we|us|our|ours|you|your|yours|yourself|let's|let’s|please)\b"
)
_SENTENCE = re.compile(r".*?(?:[.!?…]+[\"”'’)]*(?=\s|$)|$)\s*", re.DOTALL)


def speaks_in_person(sentence: str) -> bool:
    """Whether the sentence has a first or second person in it, or calls out."""
    return _SPEAKER.search(sentence) is not None or sentence.rstrip().endswith(("!", "?"))


def sentence_spans(text: str) -> list[tuple[int, int]]:
    """Where the sentences of ``text`` start and end, told by stops alone; good enough to cut speech."""
    spans: list[tuple[int, int]] = []
    for match in _SENTENCE.finditer(text):
        if not match.group().strip():
            continue
        if spans and ends_in_abbreviation(text[spans[-1][0] : spans[-1][1]].rstrip()):
            spans[-1] = (spans[-1][0], match.end())
        else:
            spans.append(match.span())
    return spans
