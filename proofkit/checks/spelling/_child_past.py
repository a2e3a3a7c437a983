"""The past tense as small children make it: goed, sayed, runned, tooked."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import lru_cache

from proofkit.words.forms import irregular_verbs


def usual_past(word: str) -> str | None:
    """The past tense that grown-ups use for a child's regular one: went for goed; None for other words."""
    return _pasts().get(word)


@lru_cache(maxsize=1)
def _pasts() -> Mapping[str, str]:
    return {
        form: verb.pasts[0]
        for verb in irregular_verbs()
        for stem in (verb.plain, *verb.pasts)
        for form in _regular(stem)
        if form not in verb.pasts
    }


def _regular(stem: str) -> Iterator[str]:
    yield stem + "ed"
    yield stem + stem[-1] + "ed"
    if stem.endswith("e"):
        yield stem + "d"
    if stem.endswith("y"):
        yield stem[:-1] + "ied"
