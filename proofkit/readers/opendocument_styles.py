"""OpenDocument's styles: names, page breaks, bold and italics, with what they inherit."""

from __future__ import annotations

from dataclasses import dataclass

from proofkit.readers.elements import Element, attribute, local

_DEEPEST = 20


@dataclass(frozen=True, slots=True, kw_only=True)
class Style:
    """What a style makes of a paragraph, a table or a stretch of text."""

    name: str = ""
    breaks_before: bool = False
    breaks_after: bool = False
    bold: bool = False
    italic: bool | None = None


class Styles:
    """The styles of a text by name, from content.xml and styles.xml; each is worked out once."""

    def __init__(self, *roots: Element | None) -> None:
        self._known: dict[str, Style] = {}
        self._styles: dict[str, Element] = {}
        for root in roots:
            for element in root.iter() if root is not None else ():
                if local(element) == "style":
                    self._styles.setdefault(attribute(element, "name"), element)

    def of(self, name: str) -> Style:
        """The style of that name; a plain one where there is none."""
        if name not in self._known:
            self._known[name] = self._worked_out(name)
        return self._known[name]

    def _worked_out(self, name: str) -> Style:
        chain = self._chain(name)
        if not chain:
            return Style(name=name)
        named = next((e for e in chain if not _is_automatic(e)), chain[-1])
        return Style(
            name=(attribute(named, "display-name") or attribute(named, "name")).replace(
                "_20_", " "
            ),
            breaks_before=_setting(chain, "break-before") == "page"
            or any(attribute(e, "master-page-name") for e in chain[:1]),
            breaks_after=_setting(chain, "break-after") == "page",
            italic=_italic(_setting(chain, "font-style")),
            bold=_setting(chain, "font-weight") in {"bold", "700", "800", "900"},
        )

    def _chain(self, name: str) -> list[Element]:
        chain: list[Element] = []
        while name in self._styles and len(chain) < _DEEPEST:
            chain.append(self._styles[name])
            name = attribute(chain[-1], "parent-style-name")
        return chain


def _italic(setting: str) -> bool | None:
    return setting in {"italic", "oblique"} if setting else None


def _is_automatic(style: Element) -> bool:
    parent = style.getparent()
    return parent is not None and local(parent) == "automatic-styles"


def _setting(chain: list[Element], key: str) -> str:
    """The nearest value of a property in a style and those that it builds on."""
    for style in chain:
        for properties in style:
            if value := attribute(properties, key):
                return value
    return ""
