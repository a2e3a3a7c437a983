"""Bytes of a text file as text, in whatever encoding an author's editor wrote.

A byte order mark is believed. Without one, text that is valid UTF-8 is UTF-8, since other encodings
hardly ever make it by chance; regular zero bytes mean UTF-16; all else is Windows-1252, or Mac Roman
where that gives more apostrophes inside words and quotation marks at their ends. A file that mixes UTF-8 and
Windows-1252 is read line by line. What was guessed is said.
"""

from __future__ import annotations

import codecs
import re

from proofkit.problem import Unusable

_MARKS = (
    (codecs.BOM_UTF8, "utf-8-sig"),
    (codecs.BOM_UTF32_LE, "utf-32"),  # before UTF-16, whose mark it starts with
    (codecs.BOM_UTF32_BE, "utf-32"),
    (codecs.BOM_UTF16_LE, "utf-16"),
    (codecs.BOM_UTF16_BE, "utf-16"),
)
# Letters and typographer's marks that English text holds; a line of much else was misread.
_OUTLANDISH = re.compile(
    r"[^\x09-\x7e\u00a0-\u024f\u2000-\u22ff\u2600-\u27bf\ufeff\U0001f000-\U0001faff]"
)
# Apostrophes inside words and quotation marks at their ends, as each encoding spells them.
_MAC_MARKS = re.compile(rb"[A-Za-z]\xd5[a-z]|(?:^|\s)\xd2[A-Z]|[,.!?]\xd3", re.MULTILINE)
_WINDOWS_MARKS = re.compile(rb"[A-Za-z]\x92[a-z]|(?:^|\s)[\x91\x93][A-Z]|[,.!?]\x94", re.MULTILINE)
_TWICE_ENCODED = re.compile("â€[™œ\u009d˜“”¦]|Ã[©¨¡³¶¼]")
_SAVE_AGAIN = "open it in your editor and save it again as UTF-8"


def decoded(data: bytes, name: str) -> tuple[str, tuple[str, ...]]:
    """The text in ``data`` and remarks on how it was read; line ends are newlines.

    Raises ``Unusable`` where no encoding gives text; ``name`` is the file's name for the sentence.
    """
    text, remarks = _text(data, name)
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    if len(_OUTLANDISH.findall(text)) > len(text) // 10:
        raise Unusable(
            f"“{name}” doesn't hold English text that proofkit can read; if it should, {_SAVE_AGAIN}."
        )
    if _TWICE_ENCODED.search(text):
        remarks += (f"Some characters look garbled (such as â€™ for ’): {_SAVE_AGAIN}.",)
    return text, remarks


def _text(data: bytes, name: str) -> tuple[str, tuple[str, ...]]:
    marked = next((encoding for mark, encoding in _MARKS if data.startswith(mark)), None)
    if encoding := marked or _unmarked_utf16(data):
        return _strictly(data, encoding, name), ()
    try:
        return data.decode("utf-8"), ()
    except UnicodeDecodeError:
        return _old(data)


def _strictly(data: bytes, encoding: str, name: str) -> str:
    try:
        return data.decode(encoding)
    except UnicodeDecodeError:
        raise Unusable(
            f"“{name}” breaks off or is damaged inside its text; {_SAVE_AGAIN}."
        ) from None


def _unmarked_utf16(data: bytes) -> str | None:
    """UTF-16 without a mark: English text has a zero in nearly every second byte."""
    head = data[:4000]
    if head[1::2].count(0) > len(head) * 0.4:
        return "utf-16-le"
    if head[0::2].count(0) > len(head) * 0.4:
        return "utf-16-be"
    return None


def _old(data: bytes) -> tuple[str, tuple[str, ...]]:
    if len(_MAC_MARKS.findall(data)) > len(_WINDOWS_MARKS.findall(data)):
        return data.decode("mac_roman"), ("The file is in Mac Roman, an old Mac encoding.",)
    lines = data.split(b"\n")
    texts, odd, utf8 = [], 0, 0
    for line in lines:
        text, is_utf8 = _line(line)
        texts.append(text)
        if not line.isascii():
            utf8 += is_utf8
            odd += not is_utf8
    if not utf8:
        return "\n".join(texts), ()
    remark = (
        f"The file mixes two encodings: {_SAVE_AGAIN}. Look at the accents and quotation marks on "
        f"the {odd} {'line' if odd == 1 else 'lines'} that proofkit had to guess."
    )
    return "\n".join(texts), (remark,)


def _line(line: bytes) -> tuple[str, bool]:
    try:
        return line.decode("utf-8"), True
    except UnicodeDecodeError:
        # Five bytes stand for nothing in Windows-1252; Latin-1 makes them controls, which go.
        return line.decode("cp1252", errors="replace"), False
