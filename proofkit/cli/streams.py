"""Standard output and error that take any character, whatever the terminal can show."""

from __future__ import annotations

import codecs
import io
import sys

_STAND_INS = {
    "›": ">",
    "‹": "<",
    "…": "...",
    "␣": "_",
    "–": "-",
    "—": "-",
    "‑": "-",
    "‘": "'",
    "’": "'",
    "“": '"',
    "”": '"',
    "\N{NO-BREAK SPACE}": " ",
}
_HANDLER = "proofkit.stand-in"


def steady_streams() -> None:
    """Have characters that the terminal lacks replaced by the nearest it has."""
    codecs.register_error(_HANDLER, _stand_in)
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors=_HANDLER)


def _stand_in(error: UnicodeError) -> tuple[str, int]:
    if not isinstance(error, UnicodeEncodeError):
        raise error
    lacking = error.object[error.start : error.end]
    return "".join(_STAND_INS.get(letter, "?") for letter in lacking), error.end
