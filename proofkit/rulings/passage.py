"""Words at fault and the words around them: how a place is known again when the book has changed.

A passage is written on one line, the words at fault between marks: "… grass stood still. Even ›the
the‹ weathercock was asleep." Its surroundings run on over the ends of pages, for page breaks are what
an author of picture books moves most.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass

from proofkit.book import Span

OPEN, CLOSE, CUT = "›", "‹", "…"

_AROUND = 8  # words on either side that are written down
_SEARCHED = 16  # words on either side that are looked at, so that a word put in pushes none out
_NEAR = 400  # characters of a page that these can take up
_LONG = 16  # words at fault from which on they are a whole passage
_ENDS = 6  # words of such a passage that are written down from its beginning, and from its end
_ALIKE = 0.6  # share of a passage's words that tells it again
_SIDE = 5  # words on one side that tell it alone, whatever was put in on the other

_WORD = re.compile(r"[^\W_]+")
_MARKED = re.compile(rf"(.*?){OPEN}(.*){CLOSE}(.*)", re.DOTALL)
# Marks of the author's own would be taken for ours; a word processor turns straight marks into curly ones.
_OURS = str.maketrans({OPEN: "'", CLOSE: "'"})
_SAME = _OURS | str.maketrans({"‘": "'", "’": "'", "“": '"', "”": '"'})


@dataclass(frozen=True, slots=True, kw_only=True)
class Passage:
    """The words at fault as ``quote``, the words ``before`` and ``after`` them, made comparable."""

    before: tuple[str, ...]
    quote: str
    after: tuple[str, ...]


def written(pages: Sequence[str], span: Span) -> str:
    """The passage at ``span`` of a book of these page texts, on one line."""
    before, quote, after = _parts(pages, span)
    quote = _shortened(re.sub(r"[\r\n\u2028]+", " ", quote))
    line = f"{_tail(before)}{OPEN}{quote.translate(_OURS)}{CLOSE}{_head(after)}"
    return line.strip()


def passage_in(line: str) -> Passage | None:
    """The passage that was written on a line; None where no words are marked in it."""
    found = _MARKED.fullmatch(line)
    if found is None:
        return None
    before, quote, after = found.groups()
    return Passage(before=_words(before), quote=comparable(quote), after=_words(after))


def passage_at(pages: Sequence[str], span: Span) -> Passage:
    """The passage at ``span``, with more of its surroundings than are written down."""
    before, quote, after = _parts(pages, span)
    return Passage(
        before=_words(before)[-_SEARCHED:],
        quote=comparable(_shortened(quote)),
        after=_words(after)[:_SEARCHED],
    )


def comparable(text: str) -> str:
    """The text with what may differ between two drafts made the same: spaces, marks, accents' encoding."""
    return re.sub(r"\s+", " ", unicodedata.normalize("NFC", text).translate(_SAME))


def same_words(kept: Passage, found: Passage) -> bool:
    """Whether the words at fault are the same; in a long passage some may have changed."""
    if kept.quote == found.quote:
        return True
    if min(len(kept.quote), len(found.quote)) < 2 * _ENDS:
        return False  # too short for so many words
    ours, theirs = _words(kept.quote), _words(found.quote)
    shortest = min(len(ours), len(theirs))
    return shortest >= _ENDS and _in_common(ours, theirs) / max(len(ours), len(theirs)) >= _ALIKE


def likeness(kept: Passage, found: Passage) -> float:
    """The share of the surroundings written down that is still there, in its order; 0 to 1."""
    total = len(kept.before) + len(kept.after)
    if not total:
        return 1.0
    common = _in_common(kept.before, found.before) + _in_common(kept.after, found.after)
    return common / total


def alike(kept: Passage, found: Passage) -> bool:
    """Whether the words at fault are the same and most of their surroundings too, or all of one side."""
    if not same_words(kept, found):
        return False
    may_be_like = _shared(kept, found) >= _ALIKE  # soon told, and most places are far from it
    return (may_be_like and likeness(kept, found) >= _ALIKE) or _side_by_side(kept, found)


def _shared(kept: Passage, found: Passage) -> float:
    """The share of the surroundings whose words are there at all: no less than the likeness."""
    around = {*found.before, *found.after}
    words = (*kept.before, *kept.after)
    return sum(word in around for word in words) / len(words) if words else 1.0


def _side_by_side(kept: Passage, found: Passage) -> bool:
    before, after = len(kept.before), len(kept.after)
    return (before >= _SIDE and found.before[-before:] == kept.before) or (
        after >= _SIDE and found.after[:after] == kept.after
    )


def _parts(pages: Sequence[str], span: Span) -> tuple[str, str, str]:
    here = pages[span.page - 1]
    before, after = here[: span.start][-_NEAR:], here[span.end :][:_NEAR]
    for page in reversed(pages[: span.page - 1]):
        if len(before.split()) > _SEARCHED:
            break
        before = f"{page[-_NEAR:]} {before}"
    for page in pages[span.page :]:
        if len(after.split()) > _SEARCHED:
            break
        after = f"{after} {page[:_NEAR]}"
    return before, here[span.start : span.end], after


def _tail(text: str) -> str:
    line = re.sub(r"\s+", " ", text.translate(_OURS))
    starts = [word.start() for word in re.finditer(r"\S+", line)]
    return line if len(starts) <= _AROUND else f"{CUT} {line[starts[-_AROUND] :]}"


def _head(text: str) -> str:
    line = re.sub(r"\s+", " ", text.translate(_OURS))
    ends = [word.end() for word in re.finditer(r"\S+", line)]
    return line if len(ends) <= _AROUND else f"{line[: ends[_AROUND - 1]]} {CUT}"


def _shortened(quote: str) -> str:
    words = quote.split()
    if len(words) <= _LONG:
        return quote
    return " ".join([*words[:_ENDS], CUT, *words[-_ENDS:]])


def _words(text: str) -> tuple[str, ...]:
    return tuple(_WORD.findall(unicodedata.normalize("NFC", text).casefold()))


def _in_common(ours: Sequence[str], theirs: Sequence[str]) -> int:
    """How many words stand in both, in the same order: the longest common subsequence."""
    row = [0] * (len(theirs) + 1)
    for our in ours:
        left_above = 0
        for at, their in enumerate(theirs, 1):
            above = row[at]
            row[at] = left_above + 1 if our == their else max(above, row[at - 1])
            left_above = above
    return row[-1]
