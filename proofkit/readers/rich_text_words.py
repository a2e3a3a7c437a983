"""The words of Rich Text: how a file is cut into them, and what those without a rule of their own mean.

Source: Microsoft, Rich Text Format Specification 1.9.1.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum


class Sink(StrEnum):
    """Where the characters of a group go."""

    TEXT = "text"
    NOWHERE = "nowhere"
    INFO = "info"
    TITLE = "title"
    STYLES = "styles"
    FONTS = "fonts"
    FIELD_CODE = "field code"
    SHAPE = "shape"
    BOX = "box"
    FOOTNOTE = "footnote"


@dataclass(frozen=True, slots=True, kw_only=True)
class Token:
    """A brace, a control word with its number, a run of characters, an escaped byte or mark.

    ``kind`` is "{", "}", "word", "text", "byte" or "symbol".
    """

    kind: str
    text: str = ""
    number: int | None = None


_TOKEN = re.compile(
    r"\\(?P<word>[A-Za-z]{1,32})(?P<number>-?\d{1,10})? ?"
    r"|\\'(?P<byte>[0-9A-Fa-f]{2})"
    r"|\\(?P<symbol>[^A-Za-z])"
    r"|(?P<brace>[{}])"
    r"|[\r\n\0]+"
    r"|(?P<text>[^\\{}\r\n\0]+)",
    re.DOTALL,
)
_SYMBOLS = {"~": "\u00a0", "_": "\u2011", "-": "\u00ad", "{": "{", "}": "}", "\\": "\\"}

CHARACTERS = {
    "tab": "\t",
    "line": "\n",
    "lquote": "‘",
    "rquote": "’",
    "ldblquote": "“",
    "rdblquote": "”",
    "endash": "–",
    "emdash": "—",
    "bullet": "•",
    "emspace": " ",
    "enspace": " ",
    "qmspace": " ",
    "softline": "",
    "zwj": "\u200d",
    "zwnj": "\u200c",
}
_NOWHERE = [
    "colortbl",
    "header",
    "headerl",
    "headerr",
    "headerf",
    "footer",
    "footerl",
    "footerr",
    "footerf",
    "pict",
    "objdata",
    "listtext",
    "pntext",
    "pntxta",
    "pntxtb",
    "pn",
    "sp",
    "shprslt",
    "annotation",
    "atnid",
    "atnauthor",
    "atnref",
    "atndate",
    "ftnsep",
    "ftnsepc",
    "ftncn",
    "aftnsep",
    "aftnsepc",
    "aftncn",
    "nonesttables",
    "nonshppict",
    "xe",
    "tc",
    "rxe",
    "txe",
    "author",
    "operator",
    "company",
    "category",
    "keywords",
    "comment",
    "doccomm",
    "hlinkbase",
    "creatim",
    "revtim",
    "printim",
    "subject",
    "manager",
    "bkmkstart",
    "bkmkend",
    "datafield",
    "do",
    "revtbl",
    "rsidtbl",
    "listtable",
    "listoverridetable",
    "themedata",
    "datastore",
    "latentstyles",
    "filetbl",
    "generator",
    "private",
    "template",
    "background",
]
SINKS = dict.fromkeys(_NOWHERE, Sink.NOWHERE) | {
    "info": Sink.INFO,
    "shpinst": Sink.SHAPE,
    "title": Sink.TITLE,
    "stylesheet": Sink.STYLES,
    "fonttbl": Sink.FONTS,
    "fldinst": Sink.FIELD_CODE,
    "shptxt": Sink.BOX,
    "footnote": Sink.FOOTNOTE,
}
# Starred groups are skipped unless they are known here.
STARRED_BUT_READ = {"shpinst", "fldinst", "shppict"}
# Windows' character sets, by the number that a font has.
CHARSETS = {
    77: "mac_roman",
    161: "cp1253",
    162: "cp1254",
    163: "cp1258",
    186: "cp1257",
    204: "cp1251",
    238: "cp1250",
}


def tokens_of(data: bytes) -> Iterator[Token]:
    """The tokens of a file. Bytes above 127 come as characters of the same number."""
    text = data.decode("latin-1")
    at = 0
    while found := _TOKEN.match(text, at):
        at = found.end()
        number = int(found["number"]) if found["number"] else None
        if found["word"] == "bin":
            at += max(0, number or 0)
        elif found["word"]:
            yield Token(kind="word", text=found["word"], number=number)
        elif found["byte"]:
            yield Token(kind="byte", text=chr(int(found["byte"], 16)))
        elif found["symbol"]:
            yield from _symbol(found["symbol"])
        elif found["brace"]:
            yield Token(kind=found["brace"])
        elif found["text"]:
            yield Token(kind="text", text=found["text"])


def _symbol(symbol: str) -> Iterator[Token]:
    if symbol in "\r\n":
        yield Token(kind="word", text="par")
    elif symbol == "*":
        yield Token(kind="word", text="*")
    elif symbol in _SYMBOLS:
        yield Token(kind="symbol", text=_SYMBOLS[symbol])


def decoded(raw: bytes, encoding: str) -> str:
    """Bytes as text; an encoding that nobody knows is taken for Windows-1252."""
    try:
        return raw.decode(encoding, errors="replace")
    except LookupError:
        return raw.decode("cp1252", errors="replace")


def paired(text: str) -> str:
    """The text with its halves joined: characters beyond the first plane come in two halves."""
    return text.encode("utf-16-le", "surrogatepass").decode("utf-16-le", "replace")
