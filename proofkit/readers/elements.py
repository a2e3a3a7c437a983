"""XML elements by their local names, since one format's dialects differ only in namespaces."""

from __future__ import annotations

from typing import TypeAlias

from lxml import etree

Element: TypeAlias = etree._Element  # noqa: SLF001 - lxml gives its elements' type no public name

_OFF = {"0", "false", "off", "none"}


def local(element: Element) -> str:
    """An element's name without its namespace; "" for anything that is no element."""
    tag = element.tag
    return tag.rpartition("}")[2] if isinstance(tag, str) else ""


def child(element: Element | None, name: str) -> Element | None:
    """The first child of that local name, or None."""
    if element is None:
        return None
    return next((e for e in element if local(e) == name), None)


def attribute(element: Element | None, name: str) -> str:
    """The attribute of that local name, or ""."""
    if element is None:
        return ""
    for key, value in element.attrib.items():
        if key.rpartition("}")[2] == name:
            return str(value)
    return ""


def truth(parent: Element | None, name: str) -> bool | None:
    """An on/off property: True, False, or None where it isn't set."""
    found = child(parent, name)
    return None if found is None else attribute(found, "val").lower() not in _OFF


def ancestor(element: Element, name: str) -> Element | None:
    """The nearest element of that local name around this one."""
    return next((e for e in element.iterancestors() if local(e) == name), None)
