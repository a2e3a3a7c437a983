"""The runs of a Word paragraph: its characters as they print once all tracked changes are accepted."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from proofkit.readers.elements import Element, attribute, child, local, truth

BREAK = "\f"
# Deleted or moved away, furniture, and what says how rather than what.
_SKIPPED = {"del", "moveFrom", "pPr", "rPr", "sdtPr", "sdtEndPr", "rt", "object", "delText"}
_CHARACTERS = {"tab": "\t", "ptab": "\t", "cr": "\n", "noBreakHyphen": "-", "softHyphen": ""}
_PAGE_FIELD = re.compile(r"\s*(?:PAGE|NUMPAGES|SECTIONPAGES)\b", re.IGNORECASE)
# Wingdings as Word's autocorrection writes them; other pictures in symbol fonts become a bullet.
_SYMBOLS = {0x4A: "☺", 0x4C: "☹", 0xE0: "→", 0xDF: "←", 0xFC: "✓", 0xA7: "▪"}
_PRIVATE = range(0xF000, 0xF100)


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """Some characters of a paragraph; ``BREAK`` alone is a page break.

    ``italic`` None where it is as its paragraph's style has it; ``style`` the id of its own style;
    ``folio`` whether they are a page number field's; ``box`` a text box that hangs here; ``note`` the
    footnote or endnote that is referred to here ("footnote 2"). ``source`` is the element that it
    was read from.
    """

    text: str = ""
    bold: bool = False
    italic: bool | None = None
    style: str = ""
    folio: bool = False
    box: Element | None = None
    note: str = ""
    source: Element | None = field(default=None, compare=False, repr=False)


@dataclass(slots=True)
class _Fields:
    """The fields that are open: for each, its code so far and whether its result has begun."""

    codes: list[str] = field(default_factory=list)
    in_result: list[bool] = field(default_factory=list)

    def step(self, kind: str) -> None:
        """Take in a field character: begin, separate or end."""
        if kind == "begin":
            self.codes.append("")
            self.in_result.append(False)
        elif kind == "separate" and self.codes:
            self.in_result[-1] = True
        elif kind == "end" and self.codes:
            self.codes.pop()
            self.in_result.pop()

    def code(self, text: str) -> None:
        """Take in some of a field's code."""
        if self.codes:
            self.codes[-1] += text

    @property
    def hidden(self) -> bool:
        """Whether what comes is a field's code and not its result."""
        return not all(self.in_result)

    @property
    def folio(self) -> bool:
        """Whether what comes is a page number."""
        return any(_PAGE_FIELD.match(code) for code in self.codes)


def runs_of(paragraph: Element) -> Iterator[Run]:
    """The runs of one paragraph. A field that spans paragraphs shows its result in each."""
    yield from _within(paragraph, _Fields(), bold=False, folio=False)


def _within(parent: Element, fields: _Fields, *, bold: bool, folio: bool) -> Iterator[Run]:
    for element in parent:
        name = local(element)
        if name in _SKIPPED or (name == "Fallback" and _is_second(element)):
            continue
        if name == "r":
            yield from _run(element, fields, folio=folio)
        elif name == "fldSimple":
            is_folio = bool(_PAGE_FIELD.match(attribute(element, "instr")))
            yield from _within(element, fields, bold=bold, folio=folio or is_folio)
        else:
            yield from _piece(element, name, fields, bold=bold, folio=folio)


def _run(run: Element, fields: _Fields, *, folio: bool) -> Iterator[Run]:
    properties = child(run, "rPr")
    if truth(properties, "vanish"):
        return
    italic, style = truth(properties, "i"), attribute(child(properties, "rStyle"), "val")
    for piece in _within(run, fields, bold=bool(truth(properties, "b")), folio=folio):
        yield replace(piece, italic=italic, style=style) if piece.text else piece


def _piece(
    element: Element, name: str, fields: _Fields, *, bold: bool, folio: bool
) -> Iterator[Run]:
    """What one element inside a run, or around runs, prints."""
    if name == "fldChar":
        fields.step(attribute(element, "fldCharType"))
    elif name == "instrText":
        fields.code(element.text or "")
    elif name == "txbxContent":
        yield Run(box=element, source=element)
    elif name in {"footnoteReference", "endnoteReference"}:
        note = f"{name.removesuffix('Reference')} {attribute(element, 'id')}"
        yield Run(note=note, source=element)
    elif (text := _characters(element, name)) is not None:
        if text and not fields.hidden:
            yield Run(text=text, bold=bold, folio=folio or fields.folio, source=element)
    else:
        yield from _within(element, fields, bold=bold, folio=folio)


def _is_second(fallback: Element) -> bool:
    """Whether this is content for older programs that newer ones have had in other form."""
    choice = child(fallback.getparent(), "Choice")
    return choice is not None and any(local(e) in {"t", "sym"} for e in choice.iter())


def _characters(element: Element, name: str) -> str | None:
    """The characters of an element that is text or stands for some; None for any other."""
    if name == "t":
        return element.text or ""
    if name == "br":
        return BREAK if attribute(element, "type") == "page" else "\n"
    if name == "sym":
        return _symbol(attribute(element, "char"))
    return _CHARACTERS.get(name)


def _symbol(code: str) -> str:
    """The character of a symbol: fonts of pictures keep theirs at F000 and above."""
    try:
        number = int(code, 16)
    except ValueError:
        return ""
    if number in _PRIVATE:
        return _SYMBOLS.get(number - 0xF000, "•")
    return chr(number) if 0x20 <= number < 0xD800 else ""
