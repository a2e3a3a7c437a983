"""Which patterns of neighbours the weights are given to; the training and the reading share this list."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

# A template is a letter and what it joins: offsets from the word; tags are asked for at offset + TAG.
TAG = 100
TEMPLATES: tuple[tuple[str, tuple[int, ...]], ...] = (
    ("a", (-3,)),
    ("b", (-2,)),
    ("c", (-1,)),
    ("d", (1,)),
    ("e", (2,)),
    ("f", (3,)),
    ("g", (-2, -1)),
    ("h", (-1, 1)),
    ("i", (1, 2)),
    ("j", (-3, -2)),
    ("k", (-2, 1)),
    ("l", (-1, 2)),
    ("m", (2, 3)),
    ("n", (-3, -2, -1)),
    ("o", (-2, -1, 1)),
    ("p", (-1, 1, 2)),
    ("q", (1, 2, 3)),
    ("A", (TAG - 2,)),
    ("B", (TAG - 1,)),
    ("C", (TAG + 1,)),
    ("D", (TAG + 2,)),
    ("E", (TAG - 2, TAG - 1)),
    ("F", (TAG - 1, TAG + 1)),
    ("G", (TAG + 1, TAG + 2)),
    ("H", (TAG - 2, TAG - 1, TAG + 1)),
    ("I", (TAG - 1, TAG + 1, TAG + 2)),
    ("J", (TAG - 3, TAG - 2, TAG - 1)),
    ("K", (TAG + 1, TAG + 2, TAG + 3)),
    ("L", (-1, TAG + 1)),
    ("M", (TAG - 1, 1)),
)
BAG = "z"
BAG_OFFSETS = tuple(offset for offset in range(-6, 7) if abs(offset) > 1)


_REACH = 3  # of the templates
# The same templates, ready to fill: {0} to {6} are the words from -3 to 3, {7} to {13} their tags.
_PLACES = tuple(
    " ".join((letter, *(f"{{{o + _REACH if o < TAG // 2 else o - TAG + 10}}}" for o in offsets)))
    for letter, offsets in TEMPLATES
)
_FORM = "\n".join(_PLACES)


def feature_names(words: Sequence[str], tags: Sequence[str], at: int) -> Iterator[str]:
    """The names of the patterns at token ``at``, each word of the wider surroundings once.

    ``tags`` are those of the seven words from ``at - 3`` to ``at + 3``.
    """
    yield from _FORM.format(*words[at - _REACH : at + _REACH + 1], *tags).split("\n")
    for word in {words[at + offset] for offset in BAG_OFFSETS}:
        yield f"{BAG} {word}"
