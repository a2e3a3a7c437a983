"""Comment ranges in the main text: runs are split where a range begins or ends, and marks set there.

A run that is split becomes two with the same properties, so nothing looks different.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from copy import deepcopy
from dataclasses import dataclass, field

from lxml import etree

from proofkit.readers.elements import Element, local
from proofkit.reports.word_copy.anchors import Anchor

_SPACE = "{http://www.w3.org/XML/1998/namespace}space"
# What a mark can't stand in, so that it goes outside.
_CLOSED = {"oMath", "oMathPara"}

_Edge = tuple[Element, int]


def namespace(element: Element) -> str:
    """The namespace of an element's name: Word's two dialects differ in it."""
    return str(etree.QName(element).namespace or "")


def mark(root: Element, anchors: Sequence[tuple[int, Anchor]]) -> None:
    """Set the marks of comments, given by their ids, in the order of the text, into its tree."""
    cuts = _Cuts()
    edges = [(number, _start(anchor), _end(anchor)) for number, anchor in anchors]
    for _, start, end in edges:
        cuts.before[start[0]].add(start[1])
        cuts.after[end[0]].add(end[1])
    for holder in dict.fromkeys([*cuts.before, *cuts.after]):
        _split(holder, cuts)
    word = namespace(root)
    last: dict[Element, Element] = {}
    for number, start, end in edges:
        opening, closing = cuts.starting[start], cuts.ending[end]
        opening.addprevious(_mark(word, "commentRangeStart", number))
        after = last.get(closing, closing)
        for element in (_mark(word, "commentRangeEnd", number), _reference(word, number)):
            after.addnext(element)
            after = element
        last[closing] = after


@dataclass(slots=True)
class _Cuts:
    """Where runs are to be split, as places in their text; and the runs that begin and end there."""

    before: dict[Element, set[int]] = field(default_factory=lambda: defaultdict(set))
    after: dict[Element, set[int]] = field(default_factory=lambda: defaultdict(set))
    starting: dict[_Edge, Element] = field(default_factory=dict)
    ending: dict[_Edge, Element] = field(default_factory=dict)


def _start(anchor: Anchor) -> _Edge:
    holder = _holder(anchor.first.first)
    return holder, _offset(holder, anchor.first.first, anchor.first.start, end=False)


def _end(anchor: Anchor) -> _Edge:
    holder = _holder(anchor.last.last)
    return holder, _offset(holder, anchor.last.last, anchor.last.end, end=True)


def _holder(element: Element) -> Element:
    """The run around an element, or what is closed around that."""
    around = list(element.iterancestors())
    closed = [e for e in around if local(e) in _CLOSED]
    runs = [e for e in around if local(e) == "r"]
    return (closed or runs or [element])[-1]


def _offset(holder: Element, element: Element, at: int, *, end: bool) -> int:
    """A place in a holder: how many units of its children come before it."""
    if local(holder) != "r":
        return _size(holder) if end else 0
    before = 0
    for child in _content(holder):
        if child is element and local(element) == "t":
            return before + at
        if child is element or any(e is child for e in element.iterancestors()):
            return before + (_size(child) if end else 0)
        before += _size(child)
    return before


def _content(run: Element) -> list[Element]:
    return [child for child in run if local(child) != "rPr"]


def _size(element: Element) -> int:
    """The units of a run's child: a text has its characters, any other is one."""
    return len(element.text or "") if local(element) == "t" else 1


def _split(holder: Element, cuts: _Cuts) -> None:
    places = sorted(cuts.before[holder] | cuts.after[holder])
    if local(holder) != "r":
        for at in places:
            cuts.starting[holder, at] = cuts.ending[holder, at] = holder
        return
    properties = [child for child in holder if local(child) == "rPr"]
    pieces = _pieces(_content(holder), places)
    run = holder
    for number, (start, end, members) in enumerate(pieces):
        if number:
            run = _next_run(run, properties)
            run.extend(members)
        cuts.starting[holder, start] = cuts.ending[holder, end] = run


def _pieces(
    children: Sequence[Element], places: Sequence[int]
) -> list[tuple[int, int, list[Element]]]:
    """The children in groups that are parted at these places, each with where it begins and ends.

    A text is cut in two where a place lies inside it.
    """
    pieces: list[tuple[int, int, list[Element]]] = []
    held: list[Element] = []
    begun = at = 0
    for child in children:
        size = _size(child)
        inner = [place for place in places if at < place < at + size]
        for part, start in _parts(child, [at, *inner], at):
            if start in places and held:
                pieces.append((begun, start, held))
                held, begun = [], start
            held.append(part)
        at += size
    pieces.append((begun, at, held))
    return pieces


def _parts(child: Element, starts: Sequence[int], at: int) -> list[tuple[Element, int]]:
    """A child as one part for each start; only a text has more than one."""
    if len(starts) == 1:
        return [(child, starts[0])]
    text = child.text or ""
    bounds = [start - at for start in starts] + [len(text)]
    parts = []
    for index, start in enumerate(starts):
        part = child if index == 0 else deepcopy(child)
        part.text = text[bounds[index] : bounds[index + 1]]
        part.set(_SPACE, "preserve")
        parts.append((part, start))
    return parts


def _next_run(run: Element, properties: Sequence[Element]) -> Element:
    """A new run after this one, with the same properties."""
    made = etree.Element(run.tag, dict(run.attrib), nsmap=run.nsmap)
    made.extend(deepcopy(list(properties)))
    made.tail, run.tail = run.tail, None
    run.addnext(made)
    return made


def _mark(word: str, name: str, number: int) -> Element:
    return etree.Element(f"{{{word}}}{name}", {f"{{{word}}}id": str(number)})


def _reference(word: str, number: int) -> Element:
    run = etree.Element(f"{{{word}}}r")
    run.append(_mark(word, "commentReference", number))
    return run
