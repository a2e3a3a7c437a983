"""What an engine has to say for itself in a report."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class EngineNote:
    """What an engine did in a run; ``ran`` is false where all was remembered, or it failed."""

    name: str
    version: str
    ran: bool
    note: str = ""
