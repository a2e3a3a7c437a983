"""Make ``word-choice.bin``, ``word-choice.tsv`` and ``word-choice-texts.tsv`` from children's novels.

    python wordlists/make_word_choice.py FOLDER [WORDS]

The folder holds one UTF-8 text a book, its name ending in its Project Gutenberg number, headers and
licence removed. WORDS stops reading early, for a trial. Needs scikit-learn and scipy; takes about
fifteen minutes on two cores and 3 GB. Every sixteenth book is kept out of counts and weights, and the
margins are set on those; five more are kept out of everything, for ``tests/bench/planted_words.py``.
"""

from __future__ import annotations

import os
import sys
import time
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

import numpy as np

HERE = Path(__file__).parent
sys.path[:0] = [str(HERE.parent), str(HERE)]

from word_choice_corpus import Text, book_of, numbered, row_of, split, texts  # noqa: E402
from word_choice_counts import counted, kept, words_of  # noqa: E402
from word_choice_margins import with_margins  # noqa: E402
from word_choice_weights import Weights, tags_of, weighed  # noqa: E402

from proofkit.words.context.counts import as_byte  # noqa: E402
from proofkit.words.context.model import MIDDLE, SCALE, Choice  # noqa: E402
from proofkit.words.context.pairs import confusion_pairs, confusions  # noqa: E402
from proofkit.words.context.table import MAGIC, SHELVES, name_key  # noqa: E402
from proofkit.words.context.tokens import class_of  # noqa: E402

RUNS = 1_090_000  # kept runs of two to four words
WEIGHTS = 800_000  # kept weights, the heaviest
STARTED = time.monotonic()


def main(folder: Path, most: int) -> None:
    """Read, count, weigh, set the margins, write."""
    books, words = [], 0
    for book in texts(folder):
        books.append(book)
        words += sum(paragraph.count(" ") + 1 for paragraph in book.paragraphs)
        if words > most:
            break
    training, tuning, test = split(books)
    row = numbered(row_of(book_of(book)) for book in training)
    say(f"{len(training)} books, {len(row.ids)} tokens, {len(row.words)} words")
    names = tags_of(row, training)
    tags = [
        name or (word if not word[0].islower() else class_of(word))
        for name, word in zip(names, row.words, strict=True)
    ]
    order = sorted(set(tags))
    numbers = np.array([order.index(tag) + 1 for tag in tags], dtype=np.uint8)
    say(f"{len(order)} tags")
    table = {f"^{word}": int(number) for word, number in zip(row.words, numbers, strict=True)}
    for length, runs in enumerate(kept(row, counted(row), RUNS), 1):
        for code, count in zip(runs.codes.tolist(), runs.counts.tolist(), strict=True):
            table[words_of(row, code, length)] = as_byte(count)
        say(f"{len(runs.codes)} runs of {length}")
    with ProcessPoolExecutor(2, initializer=os.nice, initargs=(5,)) as pool:
        jobs = [pool.submit(weighed, row, numbers, pair) for pair in confusion_pairs()]
        trained = [weights for job in jobs if (weights := job.result()) is not None]
    say(f"{len(trained)} pairs of {len(jobs)}")
    table |= heaviest(trained, WEIGHTS)
    write_table(HERE / "word-choice.bin", table)
    choices = [choice for weights in trained for choice in both_ways(weights)]
    write_choices(HERE / "word-choice.tsv", len(row.ids), choices)
    say(f"{len(table)} numbers")
    found = with_margins([book_of(book) for book in tuning], choices, len(row.ids))
    write_choices(HERE / "word-choice.tsv", len(row.ids), found)
    write_texts(HERE / "word-choice-texts.tsv", training, tuning, test)
    say("done")


def heaviest(trained: list[Weights], room: int) -> dict[str, int]:
    """The heaviest weights of all pairs, by name, as bytes."""
    every = np.abs(np.concatenate([weights.weights for weights in trained]))
    least = max(0.5 / SCALE, float(-np.sort(-every)[min(room, len(every)) - 1]))
    table = {}
    for weights in trained:
        prefix = "/".join(weights.pair)
        for name, weight in zip(weights.names, weights.weights.tolist(), strict=True):
            byte = min(255, max(1, MIDDLE + round(weight * SCALE)))
            if abs(weight) >= least and byte != MIDDLE:
                table[f"{prefix} {name}"] = byte
    say(f"{len(table)} weights, from {least:.3f}")
    return table


def both_ways(weights: Weights) -> list[Choice]:
    """The pair's choices: its first word meant, and its second."""
    first, second = weights.pair
    ways = [
        Choice(written=second, meant=first, bias=round(weights.bias, 3)),
        Choice(written=first, meant=second, bias=round(-weights.bias, 3)),
    ]
    return [choice for choice in ways if (choice.written, choice.meant) in confusions()]


def write_table(path: Path, table: dict[str, int]) -> None:
    """Write the numbers as ``proofkit.words.context.table`` reads them."""
    keys = np.array([name_key(name) for name in table], dtype=np.uint64)
    order = np.argsort(keys, kind="stable")
    keys, numbers = keys[order], np.array(list(table.values()), dtype=np.uint8)[order]
    begins = np.searchsorted(keys >> np.uint64(16), np.arange(SHELVES + 1)).astype("<u4")
    lower = (keys & np.uint64(0xFFFF)).astype("<u2")
    # Who has the old table mapped keeps it.
    fresh = path.with_suffix(".new")
    fresh.write_bytes(MAGIC + begins.tobytes() + lower.tobytes() + numbers.tobytes())
    fresh.replace(path)


def write_choices(path: Path, total: int, choices: list[Choice]) -> None:
    """Write the choices with what was measured."""
    lines = [
        "# Words written for one another. Made by make_word_choice.py from the texts in",
        "# word-choice-texts.tsv (public domain in the United States; only counts and weights are here).",
        f"# tokens {total}",
        "# written, meant, bias, margin, share found, false in a million words",
    ]
    lines += [
        f"{c.written}\t{c.meant}\t{c.bias:.3f}\t{c.margin:.2f}\t{c.found:.3f}\t{c.false:.2f}"
        for c in choices
    ]
    path.write_text("\n".join(lines) + "\n", "utf-8")


def write_texts(path: Path, training: list[Text], tuning: list[Text], test: list[Text]) -> None:
    """Write which books were used for what."""
    lines = [
        "# The books that word-choice.bin and word-choice.tsv were made from. Project Gutenberg texts, in",
        "# the public domain in the United States; none of their text is in this project.",
        "# Project Gutenberg number, title, use",
    ]
    for use, books in (("training", training), ("margins", tuning), ("test", test)):
        lines += [f"{b.number}\t{b.title.replace('-', ' ')}\t{use}" for b in books]
    path.write_text("\n".join(lines) + "\n", "utf-8")


def say(words: str) -> None:
    """Say on stderr how far it is."""
    sys.stderr.write(f"{time.monotonic() - STARTED:6.0f} s  {words}\n")


if __name__ == "__main__":
    main(Path(sys.argv[1]), int(sys.argv[2]) if len(sys.argv) > 2 else 10**9)
