"""How frequent a word is in English."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from functools import lru_cache
from itertools import takewhile


def zipf(word: str) -> float:
    """The word's frequency on the Zipf scale: the power of ten of its uses in a thousand million words.

    6 and more: the, and; 4: rabbit, goose; 3: teapot; 2: clockmaker; 0: hardly ever met. The figures
    are those of the wordfreq library (Speer 2022, data under CC BY-SA 4.0).
    """
    share = _shares().get(word.lower().replace("’", "'"))
    return 0.0 if share is None else round(math.log10(share) + 9, 2)


def frequent_words(least: float) -> Iterator[str]:
    """The words of at least that Zipf value, the most frequent first."""
    return takewhile(lambda word: zipf(word) >= least, _shares())


@lru_cache(maxsize=1)
def _shares() -> Mapping[str, float]:
    # wordfreq takes a tenth of a second to import: only what asks for frequencies shall pay it.
    from wordfreq import get_frequency_dict  # noqa: PLC0415

    # Its words come by their frequency, the highest first.
    shares: Mapping[str, float] = get_frequency_dict("en", "large")
    return shares
