"""A check's docstring, set out as a page to read."""

from __future__ import annotations

import inspect
import re
import textwrap
from dataclasses import dataclass

_HEADINGS = ("What it finds", "Why a reader minds", "Example", "Better", "When to let it stand")
_AS_WRITTEN = ("Example", "Better")
_HEADING = re.compile(rf"(?m)^({'|'.join(_HEADINGS)})$")
_WORDS_NAMED = re.compile(r"(?<![\w*])\*([^*\n]+)\*(?![\w*])")


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """A heading and what stands under it; paragraphs are parted by a blank line."""

    heading: str
    body: str


def summary(handbook: str) -> str:
    """The docstring's first paragraph: the check in one sentence."""
    return " ".join(inspect.cleandoc(handbook).partition("\n\n")[0].split())


def sections(handbook: str) -> tuple[Section, ...]:
    """The sections under the fixed headings, in their order."""
    _before, *parts = _HEADING.split(inspect.cleandoc(handbook))
    return tuple(
        Section(heading=heading, body=textwrap.dedent(body.strip("\n")).rstrip())
        for heading, body in zip(parts[::2], parts[1::2], strict=True)
    )


def set_out(section: Section, width: int) -> str:
    """The body of a section, set in a little and ``width`` wide; an example keeps its line ends.

    Words between asterisks are words that are spoken of: they get quotation marks.
    """
    if section.heading in _AS_WRITTEN:
        return "\n".join(_set_in(line, width) for line in section.body.splitlines())
    paragraphs = re.split(r"\n\s*\n", section.body)
    return "\n\n".join(_set_in(_quoted(paragraph), width) for paragraph in paragraphs)


def _set_in(text: str, width: int) -> str:
    return textwrap.fill(text, width, initial_indent="  ", subsequent_indent="  ")


def _quoted(paragraph: str) -> str:
    return _WORDS_NAMED.sub(r"“\1”", " ".join(paragraph.split()))
