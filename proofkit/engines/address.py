"""Where a grammar server that the user already runs may be: anywhere but at a public service."""

from __future__ import annotations

from urllib.parse import urlsplit

from proofkit.problem import Unusable

_PUBLIC = (".languagetool.org", ".languagetoolplus.com")


def checked_address(address: str) -> str:
    """The address of a server that the user gave, if it can be one. Raises Unusable."""
    try:
        parts = urlsplit(address if "://" in address else f"http://{address}")
        host = parts.hostname
    except ValueError:
        host = None
    if not host or parts.scheme not in ("http", "https"):
        raise Unusable(
            f"“{address}” is not the address of a grammar server; one looks like http://localhost:8081."
        )
    if f".{host}".endswith(_PUBLIC):
        raise Unusable(
            f"“{address}” is a public service, and a manuscript never leaves your machine. "
            "Leave --grammar-server out, and proofkit starts its own."
        )
    return parts.geturl().rstrip("/").removesuffix("/v2")
