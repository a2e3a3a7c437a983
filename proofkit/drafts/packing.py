"""How texts, places and digests are kept in the ledger."""

from __future__ import annotations

import hashlib
import zlib
from collections.abc import Sequence

import msgspec

from proofkit.book import Span

_WORTH_IT = 5 / 6  # compressed to no more than this share of its size


def packed(text: str) -> str | bytes:
    """A page's text as it is, or compressed where that saves a sixth."""
    plain = text.encode()
    smaller = zlib.compress(plain, 9)
    return smaller if len(smaller) <= _WORTH_IT * len(plain) else text


def unpacked(content: str | bytes) -> str:
    """The text that was packed."""
    if isinstance(content, str):
        return content
    return zlib.decompress(content).decode()


def listed(places: Sequence[Span]) -> str | None:
    """Places as JSON, each as [page, first, after]; None for none."""
    spans = [(span.page, span.start, span.end) for span in places]
    return msgspec.json.encode(spans).decode() if spans else None


def places_in(text: str | None) -> tuple[Span, ...]:
    """The places that were listed."""
    if text is None:
        return ()
    spans = msgspec.json.decode(text, type=list[tuple[int, int, int]])
    return tuple(Span(page=page, start=first, end=after) for page, first, after in spans)


def digest_of(*texts: str) -> bytes:
    """Sixteen bytes that tell these texts from any others."""
    return hashlib.blake2b("\x1f".join(texts).encode(), digest_size=16).digest()


def in_utf8(path: str) -> str:
    """A path in characters that UTF-8 has; a file's name may hold bytes that are none."""
    return path.encode(errors="replace").decode()
