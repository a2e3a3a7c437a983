"""Where the sentences of a text are, found by marks and capitals alone.

The measures must not depend on the language model, so the rule is our own. Flesch counts "each unit
of thought that is grammatically independent", whatever mark ends it (How to Write Plain English,
1979, ch. 2). In a children's book that comes to this:

- . ? ! and … end a sentence, closing marks after them included, unless a small letter follows:
  “Stop!” said Ann. is one sentence, and so is Up… and up… and away!
- nor does ? or ! end one before a name or "I" with a verb of speaking: “Stop!” Ann said.
- a point after a title or an initial ends none: Mr. Tock, A. A. Moss;
- the end of a paragraph or a page ends a sentence, mark or no mark; the end of a line does not, for
  verse breaks its lines inside sentences;
- : ; and dashes do not end one. Flesch lets them where what follows could stand alone, which only a
  reader can judge; a sentence longer by that is the more cautious count.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

from proofkit.book import count_words

_PARAGRAPH_END = re.compile(r"\n[ \t]*\n")
# The look-behind and the possessive ++ keep a leader of ten thousand dots from being tried at each.
_STOP = re.compile(
    r"(?<![.?!…])(?P<mark>\.(?:[ \u00a0]\.)++|[.?!…]++)(?P<closing>[\"'”’)\]»*_]*+)(?P<gap>\s+)(?=\S)"
)
_OPENING = "\"'“‘([«*_—–-¡¿"
_TITLE = re.compile(
    r"(?:^|[\s(“‘\"'])(?:Mr|Mrs|Ms|Mx|Dr|St|Rev|Prof|Capt|Col|Sgt|Lt|vs|Mt|[A-HJ-Z])$"
)
_SPEAKER = re.compile(
    r"(?!(?:The|Then|And|But|So|When|As|At|In|On)\b)(?:[A-Z][\w’'\-]*\.? ){1,3}(?:"
    r"said|says|asked|asks|cried|cries|called|calls|shouted|shouts|whispered|whispers|replied|"
    r"replies|answered|answers|yelled|yells|exclaimed|begged|begs|sighed|sighs|laughed|laughs|"
    r"roared|roars|squeaked|squeaks|growled|growls|screamed|screams|sobbed|sobs|muttered|mutters|"
    r"murmured|murmurs|wondered|wonders|thought|thinks|added|adds|sang|sings|giggled|giggles|"
    r"grumbled|grumbles|gasped|gasps|hissed|hisses|bellowed|bellows)\b"
)


def sentences(text: str) -> Iterator[tuple[int, int]]:
    """The start and end of every sentence that has a word, in order, without the white space around."""
    return iter(_found(text))


# Whoever looks at a page word by word asks for its sentences again and again.
@lru_cache(maxsize=64)
def _found(text: str) -> tuple[tuple[int, int], ...]:
    return tuple(_sentences(text))


def _sentences(text: str) -> Iterator[tuple[int, int]]:
    for start, end in _paragraphs(text):
        at = start
        for stop in _STOP.finditer(text, start, end):
            if _ends_sentence(text, stop):
                yield from _trimmed(text, at, stop.start("gap"))
                at = stop.end()
        yield from _trimmed(text, at, end)


def _paragraphs(text: str) -> Iterator[tuple[int, int]]:
    at = 0
    for gap in _PARAGRAPH_END.finditer(text):
        yield at, gap.start()
        at = gap.end()
    yield at, len(text)


def _ends_sentence(text: str, stop: re.Match[str]) -> bool:
    if stop["mark"] == "." and _TITLE.search(text, max(0, stop.start() - 8), stop.start()):
        return False
    following = text[stop.end() : stop.end() + 60]
    opened = following.lstrip(_OPENING)
    if opened[:1].islower():
        return False
    spoken = stop["closing"] and opened == following
    return not (spoken and _SPEAKER.match(following))


def _trimmed(text: str, start: int, end: int) -> Iterator[tuple[int, int]]:
    piece = text[start:end]
    if count_words(piece):
        start += len(piece) - len(piece.lstrip())
        yield start, start + len(piece.strip())
