"""Notes to the illustrator or designer: which paragraphs, and which stretches inside a paragraph.

What counts as a note, chosen so that story text is seldom taken for one:

- square or curly brackets, unless they stand inside a word ("[s]he") or hold no letter;
- round brackets only where they open as a note does: "(illo: …)", "(art note – …)", and for a whole
  paragraph also "(we see …)", "(show …)", "(picture of …)"; "(But he wasn't.)" is story;
- a paragraph or a line that opens with "Illustration:", "Art note", "Illo –", "Note to illustrator"
  and the like, and the paragraph after such words that stand alone;
- a paragraph whose style is named after notes or illustrations.

Where a manuscript has such lines, "Text:" before the story's own lines is a label too.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace
from itertools import pairwise

from proofkit.book import Role
from proofkit.readers.blocks import Block, plain

_SURE = r"illustrat(?:ion|or)s?(?:[’']s)?|illos?|illus\.?|art(?:work)?s?|AN"
_UNSURE = r"pictures?|images?|visuals?|design(?:er)?|layout"
_SUFFIX = r"\s+(?:notes?|briefs?|ideas?|suggestions?|directions?|descriptions?|instructions?|only)"
_TO_WHOM = r"notes?\s+(?:to|for)\s+(?:the\s+)?(?:illustrator|artist|designer|editor|art director)"
_OPENING = (
    rf"(?:(?:{_SURE})(?:{_SUFFIX})?\s*(?::|[–—]|\s-\s)"
    rf"|(?:{_UNSURE})\s*:"
    rf"|(?:{_SURE}|{_UNSURE}){_SUFFIX}\s*(?::|[–—]|\s-\s|\.?$)"
    rf"|{_TO_WHOM}\b)"
)
_NOTE = re.compile(rf"[*_\s]*{_OPENING}", re.IGNORECASE)
_NOTE_IN_BRACKETS = re.compile(rf"[\[({{]\s*{_OPENING}", re.IGNORECASE)
_LABEL_ALONE = re.compile(rf"[*_\s\[(]*(?:{_OPENING}|{_TO_WHOM}|{_SURE})[*_\s:–—-]*", re.IGNORECASE)
_DIRECTION = re.compile(
    r"\(\s*(?:(?:we (?:can )?see|show(?:s|ing)?|(?:picture|image|illustration|close[- ]?up|view|spread)s?\b"
    r"|wordless|no (?:text|words)|double[- ]page|full[- ]page|vignettes?)\b)[^()]*\)[.]?",
    re.IGNORECASE,
)
_LETTER = re.compile(r"[^\W\d_]")
_BRACKETS = {"[": "]", "{": "}", "(": ")"}
_INLINE_LINE = re.compile(
    r"(?:^|(?<=[.!?…”\"’'] ))(?:illustrations?|illustrator|illos?|illus\.?|art(?:work)?)"
    rf"(?:{_SUFFIX})?:.*$",
    re.IGNORECASE | re.MULTILINE,
)
_TEXT_LABEL = re.compile(r"(?:story\s+)?text\s*:\s*", re.IGNORECASE)
_STYLE = re.compile(r"illustrat|\billo|art ?note|\bnotes? to|stage direction", re.IGNORECASE)
_MOST_PARAGRAPHS_IN_BRACKETS = 8


def with_notes(blocks: list[Block], *, text_labels: bool) -> list[Block]:
    """A leaf's blocks with the role NOTE where the whole block is a note."""
    blocks = _across_paragraphs(blocks)
    found: list[Block] = []
    follows_label = False
    for block in blocks:
        text = plain(block.text)
        is_note = block.role is None and (follows_label or _is_note(block, text))
        if text_labels and _TEXT_LABEL.fullmatch(text):
            is_note = True
        elif text_labels and _TEXT_LABEL.match(text):
            is_note = False
        follows_label = is_note and not follows_label and bool(_LABEL_ALONE.fullmatch(text))
        found.append(replace(block, role=Role.NOTE) if is_note else block)
    return found


def has_text_labels(blocks: Iterable[Block]) -> bool:
    """Whether the manuscript sets its story apart from its notes by "Text:"."""
    texts = [plain(block.text) for block in blocks]
    labels = sum(bool(_TEXT_LABEL.match(text)) for text in texts)
    return labels >= 2 and (labels >= 3 or any(_NOTE.match(text) for text in texts))


def note_ranges(text: str, *, text_labels: bool) -> list[tuple[int, int]]:
    """The stretches of a story paragraph that are notes, in order and apart."""
    found = [span for span in _brackets(text) if _is_bracketed_note(text, *span)]
    found += [match.span() for match in _INLINE_LINE.finditer(text)]
    if text_labels and (label := _TEXT_LABEL.match(text)):
        found.append(label.span())
    return _apart(sorted(found))


def _is_note(block: Block, text: str) -> bool:
    if _STYLE.search(block.style):
        return True
    if _NOTE.match(text):
        return "\n" not in block.text
    spans = _brackets(text)
    between = "".join(text[end:start] for (_, end), (start, _) in pairwise(spans))
    if not spans or spans[0][0] > 0 or (between + text[spans[-1][1] :]).strip(" ."):
        return False
    return bool(_DIRECTION.fullmatch(text)) or all(_is_bracketed_note(text, *s) for s in spans)


def _brackets(text: str) -> list[tuple[int, int]]:
    """The outermost pairs of brackets, in order."""
    found: list[tuple[int, int]] = []
    open_: list[tuple[str, int]] = []
    for at, character in enumerate(text):
        if character in _BRACKETS:
            open_.append((_BRACKETS[character], at))
        elif open_ and character == open_[-1][0]:
            _, start = open_.pop()
            if not open_:
                found.append((start, at + 1))
    return found


def _is_bracketed_note(text: str, start: int, end: int) -> bool:
    """Square and curly brackets hold a note unless they stand inside a word; round ones if it says so."""
    if text[start] == "(":
        return bool(_NOTE_IN_BRACKETS.match(text[start:end]))
    inside_word = text[start - 1 : start].isalnum() or text[end : end + 1].isalnum()
    return not inside_word and bool(_LETTER.search(text[start:end]))


def _across_paragraphs(blocks: list[Block]) -> list[Block]:
    """Blocks from one that opens a bracket to the one that closes it are one note."""
    blocks = list(blocks)
    for start, block in enumerate(blocks):
        text = block.text.strip()
        if block.role is None and text.startswith("[") and "]" not in text:
            for end in range(start + 1, min(len(blocks), start + _MOST_PARAGRAPHS_IN_BRACKETS)):
                if "[" in blocks[end].text:
                    break
                if blocks[end].text.rstrip(" .").endswith("]"):
                    for index in range(start, end + 1):
                        blocks[index] = replace(blocks[index], role=Role.NOTE)
                    break
    return blocks


def _apart(ranges: list[tuple[int, int]]) -> list[tuple[int, int]]:
    merged: list[tuple[int, int]] = []
    for start, end in ranges:
        if merged and start < merged[-1][1]:
            merged[-1] = (merged[-1][0], max(end, merged[-1][1]))
        else:
            merged.append((start, end))
    return merged
