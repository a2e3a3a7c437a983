"""The comments of a Word file: what each says, the words it lies over, and how it was answered."""

from __future__ import annotations

import io
import posixpath
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from proofkit.problem import Unusable
from proofkit.readers.characters import kept
from proofkit.readers.elements import Element, attribute, local
from proofkit.readers.package import Package
from proofkit.readers.sniff import Format, is_zip, package_format
from proofkit.readers.word import open_word

_NOT_TEXT = {"del", "moveFrom", "txbxContent"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Comment:
    """A comment that answers no other one, and the answers to it in their order.

    ``words`` are those that it lies over as they stand now, with tracked changes accepted.
    """

    author: str
    text: str
    words: str = ""
    resolved: bool = False
    answers: tuple[str, ...] = ()


def comments_in(path: Path) -> tuple[Comment, ...]:
    """The comments of a Word file, in the order in which it keeps them.

    Raises ``Unusable`` where it can't be opened or is no Word file.
    """
    try:
        content = path.read_bytes()
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise Unusable(f"“{path}” can't be opened: {reason}.") from error
    package = Package(io.BytesIO(content), path) if is_zip(content) else None
    if package is None or not _is_word(package):
        raise Unusable(f"“{path.name}” is no Word file (.docx), so it has no comments to read.")
    word = open_word(package)
    root = _part(package, word.part, "comments")
    states = _states(_part(package, word.part, "commentsExtended"))
    words = _words(word.root)
    return tuple(_threads(root, states, words)) if root is not None else ()


def _is_word(package: Package) -> bool:
    mimetype = package.bytes_of("mimetype") or b""
    return package_format(package.names(), mimetype, package.name) is Format.WORD


def _part(package: Package, document: str, kind: str) -> Element | None:
    """A part that the document is related to."""
    folder, _, name = document.rpartition("/")
    relations = package.xml(posixpath.join(folder, "_rels", f"{name}.rels"))
    for relation in relations if relations is not None else ():
        if attribute(relation, "Type").endswith(f"/{kind}"):
            target = posixpath.join(f"/{folder}", attribute(relation, "Target"))
            return package.xml(posixpath.normpath(target).lstrip("/"))
    return None


@dataclass(frozen=True, slots=True)
class _State:
    """What Word keeps of a comment beside its text: which it answers, and whether it is resolved."""

    parent: str = ""
    resolved: bool = False


def _states(root: Element | None) -> dict[str, _State]:
    """The states of comments, by the id of their last paragraph ([MS-DOCX] 2.5.4.1)."""
    return {
        attribute(entry, "paraId"): _State(
            attribute(entry, "paraIdParent"), attribute(entry, "done") in {"1", "true"}
        )
        for entry in (root if root is not None else ())
        if local(entry) == "commentEx"
    }


def _threads(root: Element, states: dict[str, _State], words: dict[str, str]) -> Iterator[Comment]:
    comments = [comment for comment in root if local(comment) == "comment"]
    known = {comment: _paragraph_id(comment) for comment in comments}
    for comment in comments:
        state = states.get(known[comment], _State())
        if state.parent:
            continue
        answers = (
            _text(other)
            for other in comments
            if known[comment] and states.get(known[other], _State()).parent == known[comment]
        )
        yield Comment(
            author=attribute(comment, "author"),
            text=_text(comment),
            words=words.get(attribute(comment, "id"), ""),
            resolved=state.resolved,
            answers=tuple(answers),
        )


def _paragraph_id(comment: Element) -> str:
    ids = [attribute(e, "paraId") for e in comment.iter() if local(e) == "p"]
    return ids[-1] if ids else ""


def _text(comment: Element) -> str:
    """A comment's paragraphs as lines."""
    paragraphs = (e for e in comment.iter() if local(e) == "p")
    lines = ("".join(e.text or "" for e in p.iter() if local(e) == "t") for p in paragraphs)
    return kept("\n".join(lines)).strip()


def _words(document: Element) -> dict[str, str]:
    """The words that each comment lies over, by the comment's id; paragraphs are parted by a space."""
    found: dict[str, str] = {}
    open_: set[str] = set()
    for element in document.iter():
        name = local(element)
        if name == "commentRangeStart":
            open_.add(attribute(element, "id"))
        elif name == "commentRangeEnd":
            open_.discard(attribute(element, "id"))
        elif open_ and name in {"t", "p", "tab", "br"} and not _is_elsewhere(element):
            text = (element.text or "") if name == "t" else " "
            found |= {number: found.get(number, "") + text for number in open_}
    return {number: " ".join(kept(text).split()) for number, text in found.items()}


def _is_elsewhere(element: Element) -> bool:
    return any(local(e) in _NOT_TEXT for e in element.iterancestors())
