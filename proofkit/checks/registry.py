"""Every check, one line each. To delete a check, delete its file and its line."""

from __future__ import annotations

from importlib import import_module

from proofkit.checks.check import Check

_MODULES: tuple[str, ...] = (
    "reading.book_length",
    "reading.heavy_spread",
    "reading.long_sentence",
)


def all_checks() -> tuple[Check, ...]:
    """All checks, in the order of the list."""
    return tuple(_load(module) for module in _MODULES)


def check_named(name: str) -> Check | None:
    """The check of that name, or None."""
    module = name.replace("/", ".").replace("-", "_")
    return _load(module) if module in _MODULES else None


def check_names() -> tuple[str, ...]:
    """The names of all checks, without loading them."""
    return tuple(_name(module) for module in _MODULES)


def _load(module: str) -> Check:
    code = import_module(f"proofkit.checks.{module}")
    return Check(name=code.NAME, needs=code.NEEDS, find=code.find, handbook=code.__doc__ or "")


def _name(module: str) -> str:
    return module.replace(".", "/").replace("_", "-")
