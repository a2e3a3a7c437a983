"""The two inks. The author's words are in the terminal's own; what proofkit adds is in the second.

Every meaning is in words, place or weight as well, so nothing is lost without colour.
"""

from __future__ import annotations

from rich.theme import Theme

INK = "proofkit.ink"  # a corrector's ink: numbers, marks, corrections
STRONG = "proofkit.strong"  # a heading
FAULT = "proofkit.fault"  # the words at fault

THEME = Theme(
    {
        # Of the eight colours that every terminal has, magenta alone is legible on black and on white
        # and stands for neither good nor bad.
        INK: "magenta",
        STRONG: "bold",
        FAULT: "bold",
    },
    inherit=False,
)
