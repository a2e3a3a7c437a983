"""The matters that a book does in one of a few forms, in the order of a style sheet.

Each is a module with ``MATTER``, its name as ``proofkit.toml`` writes it; ``FORMS``, as it writes them
too; and ``usage``.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.habits import (
    broken_off,
    capital_after_colon,
    clock_times,
    dash,
    dates,
    ellipsis,
    endings,
    halves_of_day,
    mark_shape,
    nesting,
    numbers,
    oclock,
    okay,
    ordinals,
    past_forms,
    possessive_of_s,
    quotation_marks,
    serial_comma,
    sound_typeface,
    space_after_ellipsis,
    space_after_stop,
    space_before_ellipsis,
    speech_layout,
    stop_and_mark,
    thoughts,
    thousands,
    times_of_day,
    title_point,
    title_typeface,
)
from proofkit.habits.usage import Usage


@dataclass(frozen=True, slots=True, kw_only=True)
class Matter:
    """One matter: its name, the forms that can be decided for it, and where a book has which."""

    name: str
    forms: tuple[str, ...]
    usage: Callable[[Book, Analysis], Usage]


MATTERS: tuple[Matter, ...] = tuple(
    Matter(name=habit.MATTER, forms=habit.FORMS, usage=habit.usage)
    for habit in (
        quotation_marks,
        nesting,
        mark_shape,
        stop_and_mark,
        dash,
        broken_off,
        ellipsis,
        space_before_ellipsis,
        space_after_ellipsis,
        serial_comma,
        capital_after_colon,
        space_after_stop,
        title_point,
        speech_layout,
        thoughts,
        sound_typeface,
        title_typeface,
        possessive_of_s,
        endings,
        past_forms,
        numbers,
        ordinals,
        thousands,
        dates,
        clock_times,
        times_of_day,
        oclock,
        halves_of_day,
        okay,
    )
)


def matter_named(name: str) -> Matter | None:
    """The matter of that name, or None."""
    return next((matter for matter in MATTERS if matter.name == name), None)
