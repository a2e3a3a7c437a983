"""What goes wrong with an engine, in the author's words."""

from __future__ import annotations


class EngineTrouble(Exception):
    """An engine cannot be had or does not answer.

    The message is one or two plain sentences: what is the matter and what to do next. The run goes
    on with what is left, and says so.
    """
