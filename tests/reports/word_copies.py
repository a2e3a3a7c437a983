"""What tests look at in a Word copy, found out without any of proofkit's own code for it."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Iterator
from copy import deepcopy

from lxml import etree

from proofkit.readers.elements import Element

_MARKS = {"commentRangeStart", "commentRangeEnd", "commentReference"}
_ELSEWHERE = {"del", "moveFrom", "txbxContent", "tabs"}
_TEXTS = {"tab": " ", "br": "\n", "cr": "\n", "noBreakHyphen": "-", "softHyphen": "", "sym": "☺"}


def parts_of(content: bytes) -> dict[str, bytes]:
    """The parts of a package."""
    with zipfile.ZipFile(io.BytesIO(content)) as package:
        assert package.testzip() is None
        names = package.namelist()
        assert len(names) == len(set(names))
        return {name: package.read(name) for name in names}


def name_of(element: Element) -> str:
    return etree.QName(element).localname if isinstance(element.tag, str) else ""


def value(element: Element, name: str) -> str:
    return next((str(v) for k, v in element.attrib.items() if etree.QName(k).localname == name), "")


def looks(document: bytes, *, new: frozenset[str] = frozenset()) -> list[tuple[str, ...]]:
    """Every character and every other thing of a document with all that shapes it, in order.

    Comments' marks with ids that are ``new`` are passed over, and so are the bounds of runs.
    """
    return list(_looks(etree.fromstring(document), (), new))


def _looks(
    element: Element, around: tuple[str, ...], new: frozenset[str]
) -> Iterator[tuple[str, ...]]:
    name = name_of(element)
    if name in _MARKS and value(element, "id") in new:
        return
    if name == "r":
        properties = "".join(_canonical(child) for child in element if name_of(child) == "rPr")
        attributes = str(sorted(element.attrib.items()))
        for child in element:
            if name_of(child) != "rPr":
                yield from _looks(child, (*around, "r", properties, attributes), new)
    elif name == "t":
        yield from ((*around, "t", character) for character in element.text or "")
    elif len(element):
        yield (*around, "open", name, str(sorted(element.attrib.items())))
        for child in element:
            yield from _looks(child, (*around, name), new)
        yield (*around, "close", name)
    else:
        yield (*around, _canonical(element))


def _canonical(element: Element) -> str:
    bare = deepcopy(element)
    bare.tail = None
    return bytes(etree.tostring(bare, method="c14n")).decode()


def anchored(document: bytes) -> dict[str, str]:
    """The text that each comment of a document lies over, by the comment's id, as it shows: not what is deleted or hidden."""
    open_: dict[str, str] = {}
    closed: dict[str, str] = {}
    for element in etree.fromstring(document).iter():
        name, number = name_of(element), value(element, "id")
        if name == "commentRangeStart":
            assert number not in open_
            open_[number] = ""
        elif name == "commentRangeEnd":
            closed[number] = open_.pop(number)
        elif any(name_of(e) in _ELSEWHERE or _is_hidden(e) for e in element.iterancestors()):
            continue
        elif name == "p" and not _runs_on(element.getprevious()):
            open_ = {each: f"{text}\n\n" if text else "" for each, text in open_.items()}
        elif name == "t" or name in _TEXTS:
            text = element.text or "" if name == "t" else _TEXTS[name]
            open_ = {each: before + text for each, before in open_.items()}
    assert not open_
    return closed


def _is_hidden(run: Element) -> bool:
    return name_of(run) == "r" and run.find("{*}rPr/{*}vanish") is not None


def _runs_on(before: Element | None) -> bool:
    """Whether the end of the paragraph before was deleted."""
    marks = before.iterfind("{*}pPr/{*}rPr/{*}del") if before is not None else ()
    return any(True for _ in marks)


def comments_in(part: bytes) -> dict[str, tuple[str, str]]:
    """Each comment's author and words, by its id, in the part's order."""
    return {
        value(comment, "id"): (
            value(comment, "author"),
            "".join(e.text or "" for e in comment.iter() if name_of(e) == "t"),
        )
        for comment in etree.fromstring(part)
    }
