"""``proofkit.toml``, the book's own file, as it stands: its text, its values, and on which line each is.

The author writes in it by hand, so whatever is the matter with it is said with its line.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from proofkit.problem import Unusable

FILE_NAME = "proofkit.toml"

_PLACE = re.compile(r" \(at (?:line (\d+), column \d+|end of document)\)$")
_HEADER = re.compile(r"\s*\[\[?\s*([^\[\]]+?)\s*\]\]?")
_ENTRY = re.compile(r"\s*([\w.\"'-]+(?: [\w.\"'-]+)*)\s*=")
# Whatever stands in a string of several lines only looks like a table or a name.
_LONG_STRING = re.compile(r"\"\"\".*?\"\"\"|'''.*?'''", re.DOTALL)


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnFile:
    """A book's own file: where it is, its text, and what TOML makes of it."""

    path: Path
    text: str
    values: Mapping[str, object]

    def at(self, line: int | None) -> str:
        """The file, with the line where it is known: "proofkit.toml, line 3"."""
        return f"{self.path}, line {line}" if line else str(self.path)

    def line_of(self, name: str, table: str = "") -> int | None:
        """The line on which ``name`` is set, in a ``table`` or at the top."""
        wanted = f"{table}.{name}" if table else name
        inside = ""
        for number, line in self._lines():
            if header := _HEADER.match(line):
                inside = f"{_bare(header[1])}."
                if inside == f"{wanted}.":
                    return number
            elif (entry := _ENTRY.match(line)) and inside + _bare(entry[1]) == wanted:
                return number
        return self.line_of(table) if table else None

    def line_of_item(self, item: str, name: str, table: str = "") -> int | None:
        """The line of one item of the list ``name``."""
        first = self.line_of(name, table)
        for number, line in self._lines():
            if number >= (first or 1) and (f'"{item}"' in line or f"'{item}'" in line):
                return number
        return first

    def lines_of_tables(self, name: str) -> tuple[int, ...]:
        """The lines of every ``[[name]]``, in order."""
        header = re.compile(rf"\s*\[\[\s*[\"']?{re.escape(name)}[\"']?\s*\]\]")
        return tuple(number for number, line in self._lines() if header.match(line))

    def _lines(self) -> Iterator[tuple[int, str]]:
        hidden = _LONG_STRING.sub(lambda found: "\n" * found[0].count("\n"), self.text)
        return enumerate(hidden.split("\n"), 1)


def read_own_file(path: Path) -> OwnFile | None:
    """The file at ``path``, or None where there is none.

    Raises Unusable, naming the file and the line at fault, if it can't be read.
    """
    try:
        text = path.read_bytes().decode("utf-8-sig")
    except FileNotFoundError:
        return None
    except UnicodeDecodeError as error:
        line = error.object.count(b"\n", 0, error.start) + 1
        raise Unusable(
            f"{path}, line {line}, holds letters that are not UTF-8. Save the file as UTF-8, then try again."
        ) from error
    except OSError as error:
        raise Unusable(
            f"{path} can't be read. Check that it is a text file you may open."
        ) from error
    # TOML counts \r\n as one line end; a lone \r is an error that it names.
    return OwnFile(path=path, text=text.replace("\r\n", "\n"), values=_parsed(path, text))


def _parsed(path: Path, text: str) -> dict[str, object]:
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise Unusable(_broken(path, text, str(error))) from error


def _broken(path: Path, text: str, said: str) -> str:
    place = _PLACE.search(said)
    line = place[1] if place and place[1] else text.rstrip().count("\n") + 1
    reason = _PLACE.sub("", said)
    return (
        f"{path} can't be understood at line {line}: {reason[:1].lower()}{reason[1:]}. Mend that line, "
        "then try again; the file was left as it is."
    )


def _bare(name: str) -> str:
    return re.sub(r"[\"']|\s*(?=\.)|(?<=\.)\s*", "", name)
