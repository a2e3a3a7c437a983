"""Make dale-chall-words.txt and spache-words.txt from the npm packages that carry the lists.

    npm install dale-chall@2 spache@2
    python wordlists/make_familiar_words.py node_modules

The packages (MIT, Titus Wormer) hold the words alone, one to a line of their source.
"""

from __future__ import annotations

import re
import sys
from pathlib import Path

_HERE = Path(__file__).parent
_WORD = re.compile(r"^  (?:'(?P<single>[^']+)'|\"(?P<double>[^\"]+)\"),?$", re.MULTILINE)
_SOURCES = {
    "dale-chall": "J. S. Chall and E. Dale, Readability Revisited: The New Dale-Chall Readability Formula, 1995: "
    "words known to four of five American children in their fourth year at school",
    "spache": "G. Spache, Good Reading for Poor Readers, 1974: the revised list of words familiar to American "
    "children in their first three years at school",
}

_LICENCE = """\
# Licence: MIT. Copyright (c) 2014 Titus Wormer <tituswormer@gmail.com>
# Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated
# documentation files (the 'Software'), to deal in the Software without restriction, including without limitation the
# rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit
# persons to whom the Software is furnished to do so, subject to the following conditions: The above copyright notice and
# this permission notice shall be included in all copies or substantial portions of the Software.
# THE SOFTWARE IS PROVIDED 'AS IS', WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE
# WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR
# COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR
# OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.
"""


def main(packages: Path) -> None:
    """Write both lists into this folder."""
    for name, source in _SOURCES.items():
        text = (packages / name / "index.js").read_text(encoding="utf-8")
        words = [match["single"] or match["double"] for match in _WORD.finditer(text)]
        head = (
            f"# Source: {source}; from the npm package {name} 2.0.1\n"
            "# Made by make_familiar_words.py\n"
            f"{_LICENCE}"
        )
        body = "".join(f"{word}\n" for word in words)
        (_HERE / f"{name}-words.txt").write_text(head + body, encoding="utf-8")
        print(f"{name}: {len(words)} words")  # noqa: T201 - says what it did


if __name__ == "__main__":
    main(Path(sys.argv[1]))
