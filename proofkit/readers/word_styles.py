"""Word's paragraph styles: their names, heading levels and page breaks, with what they inherit."""

from __future__ import annotations

import re
from dataclasses import dataclass

from proofkit.readers.elements import Element, attribute, child, local, truth

_HEADING = re.compile(r"heading (\d)$", re.IGNORECASE)
_BODY_TEXT = 9  # the outline level of what is no heading
_DEEPEST = 20


@dataclass(frozen=True, slots=True, kw_only=True)
class Style:
    """What a paragraph's style and its own settings make of it."""

    name: str
    level: int
    breaks_before: bool
    italic: bool


class Styles:
    """The styles of a document, by id. ``root`` is styles.xml, or None where there is none."""

    def __init__(self, root: Element | None) -> None:
        self._styles = {
            attribute(style, "styleId"): style
            for style in (root if root is not None else ())
            if local(style) == "style"
        }

    def of(self, properties: Element | None) -> Style:
        """The style of a paragraph with these properties."""
        chain = self._chain(attribute(child(properties, "pStyle"), "val"))
        settings = [properties, *(child(style, "pPr") for style in chain)]
        breaks = [truth(setting, "pageBreakBefore") for setting in settings]
        names = [self._name(style) for style in chain]
        return Style(
            name=names[0] if names else "",
            level=_level(names, settings),
            breaks_before=next((found for found in breaks if found is not None), False),
            italic=self._italic(chain),
        )

    def italic(self, style_id: str) -> bool:
        """Whether a style of characters makes them italic."""
        return self._italic(self._chain(style_id))

    @staticmethod
    def _italic(chain: list[Element]) -> bool:
        found = (truth(child(style, "rPr"), "i") for style in chain)
        return next((italic for italic in found if italic is not None), False)

    def _chain(self, style_id: str) -> list[Element]:
        """A style and what it is based on, nearest first."""
        chain: list[Element] = []
        while style_id in self._styles and len(chain) < _DEEPEST:
            style = self._styles[style_id]
            chain.append(style)
            style_id = attribute(child(style, "basedOn"), "val")
        return chain

    @staticmethod
    def _name(style: Element) -> str:
        return attribute(child(style, "name"), "val") or attribute(style, "styleId")


def _level(names: list[str], settings: list[Element | None]) -> int:
    for name in names:
        if found := _HEADING.match(name):
            return int(found[1])
    for setting in settings:
        outline = attribute(child(setting, "outlineLvl"), "val")
        if outline.isdigit():
            return int(outline) + 1 if int(outline) < _BODY_TEXT else 0
    return 0
