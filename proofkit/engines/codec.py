"""How the engines' answers are kept in the memory: small, and quick to read again.

A page's tokens are kept column by column, each tag once; their words are not kept at all, since the
page has them.
"""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from proofkit.analysis import PageAnalysis, Sentence, Token
from proofkit.engines.joined import Remark

# Goes into every key: another layout finds nothing of this one.
LAYOUT = 1


class _Columns(msgspec.Struct, array_like=True, frozen=True, gc=False):
    """A page's tokens and sentences. Tags are places in ``names``, heads are distances."""

    names: list[str]
    starts: list[int]
    ends: list[int]
    lemmas: list[int]
    tags: list[int]
    parts: list[int]
    ties: list[int]
    heads: list[int]
    sentences: list[tuple[int, int, int, int]]


_Row = tuple[int, int, str, str, str, tuple[str, ...]]
_columns = msgspec.msgpack.Decoder(_Columns)
_rows = msgspec.msgpack.Decoder(list[_Row])
_encoder = msgspec.msgpack.Encoder()


def encoded_page(page: PageAnalysis) -> bytes:
    """A page's analysis as bytes."""
    tokens = page.tokens
    names: dict[str, int] = {}

    def column(values: Sequence[str]) -> list[int]:
        return [names.setdefault(value, len(names)) for value in values]

    lemmas = column([token.lemma for token in tokens])
    tags = column([token.tag for token in tokens])
    parts = column([token.pos for token in tokens])
    ties = column([token.dep for token in tokens])
    return _encoder.encode(
        _Columns(
            names=list(names),
            starts=[token.start for token in tokens],
            ends=[token.end for token in tokens],
            lemmas=lemmas,
            tags=tags,
            parts=parts,
            ties=ties,
            heads=[token.head for token in tokens],
            sentences=[(s.start, s.end, s.first, s.last) for s in page.sentences],
        )
    )


def decoded_page(value: bytes, prose: str) -> PageAnalysis:
    """The analysis of the page whose prose this is. Raises msgspec.DecodeError if it is damaged."""
    kept = _columns.decode(value)
    names = kept.names
    columns = (kept.starts, kept.ends, kept.lemmas, kept.tags, kept.parts, kept.ties, kept.heads)
    return PageAnalysis(
        tokens=tuple(
            Token(
                text=prose[start:end],
                start=start,
                end=end,
                lemma=names[lemma],
                tag=names[tag],
                pos=names[part],
                dep=names[tie],
                head=head,
            )
            for start, end, lemma, tag, part, tie, head in zip(*columns, strict=True)
        ),
        sentences=tuple(
            Sentence(start=start, end=end, first=first, last=last)
            for start, end, first, last in kept.sentences
        ),
    )


def encoded_remarks(remarks: Sequence[Remark]) -> bytes:
    """The grammar engine's remarks on a page as bytes."""
    return _encoder.encode(
        [(r.start, r.end, r.rule, r.category, r.message, r.replacements) for r in remarks]
    )


def decoded_remarks(value: bytes) -> list[Remark]:
    """The remarks again. Raises msgspec.DecodeError if they are damaged."""
    return [
        Remark(
            start=start,
            end=end,
            rule=rule,
            category=category,
            message=message,
            replacements=replacements,
        )
        for start, end, rule, category, message, replacements in _rows.decode(value)
    ]
