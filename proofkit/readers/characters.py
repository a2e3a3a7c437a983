"""Characters as proofkit keeps them, so that words compare equal however they were typed.

Every kind of space counts as one space and stays one character: a run of them is kept, since two
spaces are something to remark on. A soft hyphen and other marks without width are dropped: they say
where a word may break and are no part of it. A tab stays until lines are joined, since it may part a
page mark from its text. A non-breaking hyphen is a hyphen. A letter and its
separate accent become one character. All offsets count the text after this.
"""

from __future__ import annotations

import re
import unicodedata

_SPACES = "\u00a0\u1680\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a\u202f\u205f\u3000"
_WITHOUT_WIDTH = "\u00ad\u200b\u200e\u200f\u2060\ufeff"
_TABLE = str.maketrans(
    dict.fromkeys(_SPACES, " ")
    | dict.fromkeys(_WITHOUT_WIDTH)
    | {"\u2011": "-", "\u2028": "\n", "\u2029": "\n", "\x85": "\n", "\v": "\n"}
)
# What no manuscript holds on purpose; tab, newline, form feed and carriage return are dealt with.
_CONTROLS = re.compile(r"[\x00-\x08\x0e-\x1f\x7f]")


def kept(text: str) -> str:
    """``text`` in the characters that proofkit keeps."""
    return unicodedata.normalize("NFC", _CONTROLS.sub("", text.translate(_TABLE)))
