"""Every short form that English writes with an apostrophe, put together from its parts."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import lru_cache

from proofkit.words.lists import word_set

_CLITICS_AFTER = {
    "I": "'m 've 'll 'd",
    "you": "'re 've 'll 'd",
    "he": "'s 'll 'd",
    "she": "'s 'll 'd",
    "it": "'s 'll 'd",
    "we": "'re 've 'll 'd",
    "they": "'re 've 'll 'd",
    "that": "'s 'll 'd 've",
    "there": "'s 'll 'd 've",
    "here": "'s 'll",
    "who": "'s 'll 'd 've 're",
    "what": "'s 'll 'd 've 're",
    "where": "'s 'll 'd 've 're",
    "when": "'ll 'd",
    "why": "'ll 'd",
    "how": "'s 'll 'd 've 're",
    "someone": "'s 'll 'd",
    "somebody": "'s 'll 'd",
    "something": "'s 'll 'd",
    "everyone": "'s 'll 'd",
    "everybody": "'s 'll 'd",
    "everything": "'s 'll 'd",
    "anyone": "'s",
    "anybody": "'s",
    "nobody": "'s 'll 'd",
}
_NEGATED = "do does did is are was were ca wo could would should have has had must need might ai sha ought dare"
_HAVING = "could would should might must"
_OTHERS = "ma'am o'clock c'mon y'all"
# Taken for a short form only by what stands around them, or never: they are words as well.
WORDS_TOO = word_set(
    "ill id im well wed were hell shell shed its whore cant wont hes hows lets somethings ones"
)


@lru_cache(maxsize=1)
def short_forms() -> frozenset[str]:
    """All of them, with a straight apostrophe: *don't, it'll, who've, might've, o'clock*."""
    return frozenset(_built())


@lru_cache(maxsize=1)
def without_apostrophe() -> Mapping[str, str]:
    """For letters in lower case that are no word of their own, the short form they stand for."""
    bare = {form.replace("'", "").lower(): form for form in short_forms() if form.count("'") == 1}
    return {word: form for word, form in bare.items() if word not in WORDS_TOO}


@lru_cache(maxsize=1)
def misplaced() -> Mapping[str, str]:
    """For a short form with its apostrophe between the wrong letters, the right one: *did'nt*."""
    return {
        moved: form
        for form in short_forms()
        if form.count("'") == 1
        for moved in _moved(form)
        if moved not in {right.lower() for right in short_forms()}
    }


def _built() -> Iterator[str]:
    for word, clitics in _CLITICS_AFTER.items():
        yield from (word + clitic for clitic in clitics.split())
    yield from (word + "n't" for word in _NEGATED.split())
    yield from (word + "'ve" for word in _HAVING.split())
    yield from _OTHERS.split()


def _moved(form: str) -> Iterator[str]:
    letters, right = form.replace("'", "").lower(), form.index("'")
    for at in range(1, len(letters)):
        if at != right:
            yield letters[:at] + "'" + letters[at:]
