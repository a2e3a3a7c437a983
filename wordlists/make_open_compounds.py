"""Make ``open-compounds.txt``: pairs of words that stories write apart although dictionaries join them.

    python wordlists/make_open_compounds.py FOLDER

The folder holds the texts of novels, one a file. The committed list was counted over 389 public-domain
children's novels (Project Gutenberg, 1850–1930; 16.6 million words). A pair is listed if more of the
books have it open than joined, and at least three do: "back door", "fairy tale", "river bank".
"""

from __future__ import annotations

import re
import sys
from collections import Counter
from itertools import pairwise
from pathlib import Path

HERE = Path(__file__).parent
LEAST_BOOKS = 3
# Rarer joined forms are never asked for, so their pairs need not be listed.
LEAST_ZIPF = 2.2
_RUN = re.compile(r"[a-z]+(?: [a-z]+)*")
_HEAD = """# Pairs of words that children's novels write apart more often than joined.
# Counted by make_open_compounds.py over 389 public-domain novels (Project Gutenberg, 1850-1930).
"""


def main(folder: Path) -> None:
    """Count the novels in ``folder`` and write the list beside this script."""
    sys.path.insert(0, str(HERE.parent))
    from proofkit.settings import English  # noqa: PLC0415 - found only once the path is set
    from proofkit.words.dictionary import dictionary  # noqa: PLC0415
    from proofkit.words.frequency import zipf  # noqa: PLC0415

    words = dictionary(English.BRITISH).words | dictionary(English.AMERICAN).words
    apart: Counter[tuple[str, str]] = Counter()
    joined: Counter[str] = Counter()
    for path in sorted(folder.glob("*.txt")):
        runs = [m.group().split() for m in _RUN.finditer(" ".join(path.read_text("utf-8").split()))]
        apart.update({pair for run in runs for pair in pairwise(run)})
        joined.update({word for run in runs for word in run})
    listed = sorted(
        f"{left} {right}"
        for (left, right), books in apart.items()
        if min(len(left), len(right)) > 2
        and books >= LEAST_BOOKS
        and books > joined[left + right]
        and left + right in words
        and zipf(left + right) >= LEAST_ZIPF
    )
    (HERE / "open-compounds.txt").write_text(_HEAD + "\n".join(listed) + "\n", "utf-8")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
