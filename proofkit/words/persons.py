"""Does a sentence sound like somebody speaking, or like the one who tells the story?"""

from __future__ import annotations

import re

from proofkit.book import Book
from proofkit.words.abbreviations import ends_in_abbreviation

_SPEAKER = re.compile(
    r"\b(?:I|(?i:me|my|mine|myself|we|us|our|ours|you|your|yours|yourself|let's|let’s|please))\b"
)
# Past forms that stories tell with; -ed comes beside them. Left out is what is also a plain form (put, let).
_TOLD = re.compile(
    r"\b(?:was|were|had|did|said|went|came|saw|took|gave|ran|sat|got|made|found|knew|thought|told|felt|left|"
    r"kept|began|brought|heard|stood|became|fell|ate|drank|slept|flew|grew|threw|wrote|spoke|sang|swam|lay|"
    r"lost|met|held|led|built|bought|caught|taught|fought|sent|spent|bent|woke|broke|chose|drove|rode|rose|"
    r"froze|stole|shook|hid|bit|blew|drew|crept|swept|wept|leapt|dug|hung|stuck|swung|shone|shot|slid|sank|"
    r"stank|rang|sprang|won|wore|tore|swore|paid|laid|sold|meant|forgot|understood|[a-z]{2,}ed)\b"
)
_NOW = re.compile(r"\b(?:is|are|am|has|says|asks|cries|goes|comes|sees|looks|runs|sits|takes)\b")
_SENTENCE = re.compile(r".*?(?:[.!?…]+[\"”'’)]*(?=\s|$)|$)\s*", re.DOTALL)


def speaks_in_person(sentence: str) -> bool:
    """Whether the sentence has a first or second person in it, or calls out."""
    return _SPEAKER.search(sentence) is not None or sentence.rstrip().endswith(("!", "?"))


def told_in_past(book: Book) -> bool:
    """Whether the story is told in the past: far more such verbs than verbs of the present."""
    past = sum(len(_TOLD.findall(page.prose)) for page in book.pages)
    return past > sum(len(_NOW.findall(page.prose)) for page in book.pages)


def sounds_spoken(sentence: str, *, past: bool) -> bool:
    """Whether the sentence is likelier said by somebody than told by the story.

    ``past``: the story is told in the past, so that a sentence without any past verb is spoken.
    """
    return speaks_in_person(sentence) or (past and _TOLD.search(sentence) is None)


def tells(sentence: str) -> bool:
    """Whether the sentence has a verb in the past or one that tells what goes on now."""
    return _TOLD.search(sentence) is not None or _NOW.search(sentence) is not None


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
