"""From a page's characters back to the Word file's own elements, so that marks can be set beside them.

Between the file and the page, characters are normalised, page marks are taken off, lines are trimmed.
None of that adds or drops a letter in the middle of a paragraph, so its letters find their place again.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from proofkit.readers.characters import kept
from proofkit.readers.elements import Element, local
from proofkit.readers.word import Passage


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """Where one character stands: ``start`` to ``end`` in the text of ``first`` to that of ``last``.

    The two differ where a letter and its accent stand in two elements. An element that is no text
    (a tab, a line break) counts as one character.
    """

    first: Element
    start: int
    last: Element
    end: int


@dataclass(frozen=True, slots=True)
class Letter:
    """One character as proofkit keeps it, and where it stands."""

    text: str
    spot: Spot


_Raw = tuple[str, Element, int]


def letters_of(passage: Passage) -> tuple[Letter, ...]:
    """The characters of a paragraph of the file in their order, page breaks among them."""
    raw = [
        (character, run.source, at)
        for run in passage.runs
        if run.source is not None
        for at, character in enumerate(run.text)
    ]
    whole = kept("".join(character for character, _, _ in raw))
    letters = tuple(_letters(_clusters(raw)))
    if "".join(letter.text for letter in letters) == whole:
        return letters
    # A mark without width parts a letter from its accent, or two letters make one.
    return tuple(_letters(_clusters(raw, through=True)))


def _letters(clusters: Iterator[list[_Raw]]) -> Iterator[Letter]:
    for cluster in clusters:
        (_, first, start), (_, last, end) = cluster[0], cluster[-1]
        spot = Spot(first=first, start=start, last=last, end=end + 1)
        for character in kept("".join(character for character, _, _ in cluster)):
            yield Letter(character, spot)


def _clusters(raw: Sequence[_Raw], *, through: bool = False) -> Iterator[list[_Raw]]:
    """Each character with the accents after it; ``through`` what has no width between them."""
    cluster: list[_Raw] = []
    for item in raw:
        joins = unicodedata.combining(item[0]) or (through and not kept(item[0]))
        if cluster and not joins:
            yield cluster
            cluster = []
        cluster.append(item)
    if cluster:
        yield cluster


def aligned(
    texts: Sequence[str], letters: Sequence[Letter]
) -> tuple[tuple[Spot | None, ...] | None, ...]:
    """For each text, which is a piece of the paragraph, the spots of its characters; None if it is none.

    The texts come in the paragraph's order. A page mark stands before its text, so that the last place
    of a text is its own.
    """
    worded = [at for at, letter in enumerate(letters) if not letter.text.isspace()]
    whole = "".join(letters[at].text for at in worded)
    found: list[tuple[Spot | None, ...] | None] = []
    limit = len(whole)
    for text in reversed(texts):
        own = "".join(text.split())
        at = whole.rfind(own, 0, limit) if own else -1
        if at < 0:
            found.append(None)
            continue
        limit = at
        found.append(_walked(text, letters, worded[at]))
    return tuple(reversed(found))


def _walked(text: str, letters: Sequence[Letter], at: int) -> tuple[Spot | None, ...]:
    """The spots of a text that begins with letter ``at``; spaces that were trimmed are passed over."""
    spots: list[Spot | None] = []
    for character in text:
        if not character.isspace():
            while letters[at].text.isspace():
                at += 1
        elif character == "\n":
            while at < len(letters) and letters[at].text == " ":
                at += 1
        if at < len(letters) and _same(character, letters[at].text):
            spots.append(letters[at].spot)
            at += 1
        else:
            spots.append(None)
    return tuple(spots)


def _same(character: str, letter: str) -> bool:
    return character == letter or (character == " " and letter in "\t\r")


def stand_in(passage: Passage, references: dict[str, Element]) -> Element | None:
    """What in the text stands for a paragraph that lies beside it: a text box, or a note's reference.

    Word passes over the anchor of a comment in a text box, a footnote or an endnote ([MS-OI29500],
    2.1.315). None for a paragraph of the text itself.
    """
    if passage.locator in references:
        element = references[passage.locator]
    else:
        sources = (run.source for run in passage.runs if run.source is not None)
        found = next(sources, None)
        if found is None or _box(found) is None:
            return None
        element = found
    return _box(element) if _box(element) is not None else element


def _box(element: Element) -> Element | None:
    """The outermost text box around an element."""
    boxes = [e for e in element.iterancestors() if local(e) == "txbxContent"]
    return boxes[-1] if boxes else None


def references_of(passages: Sequence[Passage]) -> dict[str, Element]:
    """Where in the text each footnote and endnote is referred to first, by its locator."""
    found: dict[str, Element] = {}
    for passage in passages:
        for run in passage.runs:
            if run.note and run.source is not None:
                found.setdefault(run.note, run.source)
    return found
