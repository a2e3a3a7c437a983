"""What goes wrong, in the author's words."""

from __future__ import annotations

from dataclasses import dataclass


class Unusable(Exception):
    """Input or surroundings that proofkit cannot work with.

    The message is one or two plain sentences for the author: it names the file or the thing, says
    what is the matter, and what to do next. The command line prints it and exits with 2.
    """


@dataclass(frozen=True, slots=True, kw_only=True)
class Notice:
    """A sentence for the author about the run. ``unchecked``: because of it something was not checked."""

    text: str
    unchecked: bool = False
