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
_BRACKETED = re.compile(r"[\[{].*[\]}][.]?", re.DOTALL)
_INLINE_BRACKETS = re.compile(
    r"(?<!\w)(?:\[[^\[\]]*[^\W\d_][^\[\]]*\]|\{[^{}]*[^\W\d_][^{}]*\})(?!\w)"
)
_INLINE_ROUND = re.compile(rf"\(\s*{_OPENING}[^()]*\)", re.IGNORECASE)
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
    patterns = (_INLINE_BRACKETS, _INLINE_ROUND, _INLINE_LINE)
    found = [match.span() for pattern in patterns for match in pattern.finditer(text)]
    if text_labels and (label := _TEXT_LABEL.match(text)):
        found.append(label.span())
    return _apart(sorted(found))


def _is_note(block: Block, text: str) -> bool:
    if _STYLE.search(block.style):
        return True
    if _BRACKETED.fullmatch(text) and _INLINE_BRACKETS.sub("", text).strip(" .") == "":
        return True
    if _NOTE.match(text):
        return "\n" not in block.text
    if _DIRECTION.fullmatch(text):
        return True
    return (
        text.endswith((")", ").")) and bool(_NOTE_IN_BRACKETS.match(text)) and text.count("(") == 1
    )


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
