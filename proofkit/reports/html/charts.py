"""The shapes of a page's charts: bars and a line, placed by a plotting library.

pygal draws SVG and nothing else, in pure Python. Its own page furniture (styles, scripts, type) is left
behind: the page must keep to its own security policy, and its type must stay type, at the reader's size.
Taken over are the places of bars, lines and dots.

A stave is ``WIDTH`` by ``HEIGHT`` and has no margin: column n of N lies between n and n + 1 Nths of the
width, so that figures and links in HTML line up with it at any size.
"""

from __future__ import annotations

import sys
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

import pygal

# pygal adds a hook for its plug-ins to Python's imports, by an interface that Python has given up:
# 3.11 warns of it at every import that fails from then on. There are no plug-ins here.
sys.meta_path[:] = [hook for hook in sys.meta_path if not isinstance(hook, pygal.PluginImportFixer)]

WIDTH = 1000
HEIGHT = 200
# pygal leaves a fiftieth of the plot free on every side; the view box cuts it off.
_MARGIN = 0.02
_LEFT, _TOP = round(_MARGIN * WIDTH), round(_MARGIN * HEIGHT)
VIEW_BOX = f"{_LEFT} {_TOP} {WIDTH} {HEIGHT}"
_BARE = {
    "js": (),
    "css": (),
    "margin": 0,
    "spacing": 0,
    "no_prefix": True,
    "show_legend": False,
    "show_x_labels": False,
    "show_y_labels": False,
    "width": WIDTH + 2 * _LEFT,
    "height": HEIGHT + 2 * _TOP,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """One bar; ``beyond`` for the upper part of one that is parted."""

    x: float
    y: float
    width: float
    height: float
    beyond: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A line with its dots; ``paths`` has one for every stretch without a gap."""

    paths: tuple[str, ...]
    dots: tuple[tuple[float, float], ...]


class _Bars(pygal.StackedBar):  # type: ignore[misc] # the library carries no types
    """Bars with more white between them than the library leaves."""

    _series_margin = 0.18
    _serie_margin = 0


def bars(values: Sequence[int], usual: float, top: float) -> tuple[Bar, ...]:
    """A bar for each value, on a scale from nought to ``top``, parted where it passes ``usual``."""
    lower = [min(value, usual) for value in values]
    return stacked(lower, [max(value - usual, 0) for value in values], top)


def stacked(lower: Sequence[float], upper: Sequence[float], top: float) -> tuple[Bar, ...]:
    """For each column a lower value and one above it, on a scale from nought to ``top``."""
    chart = _Bars(**_BARE, range=(0, top))
    chart.add("lower", lower)
    chart.add("upper", upper)
    shapes = [shape for shape in chart.render_tree().iter("rect") if _is_mark(shape)]
    return tuple(
        Bar(
            x=_rounded(shape, "x"),
            y=_rounded(shape, "y"),
            width=_rounded(shape, "width"),
            height=_rounded(shape, "height"),
            beyond=at >= len(lower),
        )
        for at, shape in enumerate(shapes)
        if _rounded(shape, "height") > 0
    )


def line(values: Sequence[float | None], bottom: float, top: float) -> Line:
    """A line through the middle of each column; None leaves a gap."""
    chart = pygal.XY(
        **_BARE, range=(bottom, top), xrange=(0, len(values)), allow_interruptions=True
    )
    chart.add("line", [(at + 0.5, value) for at, value in enumerate(values)])
    drawn = chart.render_tree()
    return Line(
        paths=tuple(shape.get("d") for shape in drawn.iter("path") if _is_mark(shape)),
        dots=tuple(
            (_rounded(shape, "cx"), _rounded(shape, "cy"))
            for shape in drawn.iter("circle")
            if _is_mark(shape)
        ),
    )


def level(value: float, top: float) -> float:
    """The y of a value on a scale from nought to ``top``."""
    return round(_TOP + HEIGHT * (1 - value / top), 2)


class _Shape(Protocol):
    """An element of the drawing; the library has two ways to make them."""

    def get(self, name: str, /) -> str | None: ...


def _is_mark(shape: _Shape) -> bool:
    """Whether it stands for a value, and is no background."""
    return "reactive" in (shape.get("class") or "").split()


def _rounded(shape: _Shape, name: str) -> float:
    return round(float(shape.get(name) or 0), 2)


def share(value: float, bottom: float, top: float) -> float:
    """How high a value stands on a scale, in hundredths."""
    return round(100 * (value - bottom) / (top - bottom), 2)
