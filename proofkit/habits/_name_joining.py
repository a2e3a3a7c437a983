"""Which mentions name one and the same: Mr Tock, Tock, Old Mr Tock."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence

from proofkit.habits.mentions import Mention
from proofkit.words.alike import plain
from proofkit.words.lists import word_set
from proofkit.words.place_words import FEATURES
from proofkit.words.titles import TITLES, pronoun_of_title

Key = tuple[str, ...]

# Describe the bearer and may be left off.
EPITHETS = word_set("old young little big great poor dear good wise the naughty brave clever tiny")


def joined(mentions: Iterable[Mention]) -> list[list[Mention]]:
    """The mentions of each one that bears a name, each group in the book's order."""
    by_key: dict[Key, list[Mention]] = defaultdict(list)
    for mention in mentions:
        by_key[_key(mention)].append(mention)
    homes = _homes(by_key)
    groups: dict[Key, list[Mention]] = defaultdict(list)
    for key, own in by_key.items():
        groups[homes.get(key, key)] += own
    return [sorted(group, key=lambda mention: mention.span) for group in groups.values()]


def _key(mention: Mention) -> Key:
    """The name's own words, without title, accents and capitals; a telling title's sex goes first."""
    words = [plain(word.lower().strip(".")) for word in mention.words]
    own = list(words)
    while len(own) > 1 and own[0] in TITLES | EPITHETS:
        own.pop(0)
    sexes = {pronoun_of_title(word) for word in words[: len(words) - len(own)]} - {None}
    return (*(f"{sex}:" for sex in sorted(filter(None, sexes))), *own)


def _homes(by_key: Mapping[Key, Sequence[Mention]]) -> dict[Key, Key]:
    """For a key that is part of just one fuller key, that one; the rest stay by themselves.

    A single word joins "he:" or "she:" with itself, or a longer name that begins or ends with it.
    """
    fuller: dict[Key, set[Key]] = defaultdict(set)
    for key in by_key:
        for part in _parts(key):
            if part in by_key and part != key:
                fuller[part].add(key)
    homes: dict[Key, Key] = {}
    for key, candidates in fuller.items():
        if len(candidates) == 1:
            homes[key] = next(iter(candidates))
    return {key: _last_home(key, homes) for key in homes}


def _parts(key: Key) -> list[Key]:
    own = tuple(word for word in key if not word.endswith(":"))
    parts = [own]
    if len(own) > 1 and own[-1] not in FEATURES:
        parts += [(own[0],), (own[-1],)]
    return parts


def _last_home(key: Key, homes: Mapping[Key, Key]) -> Key:
    seen = {key}
    while key in homes and homes[key] not in seen:
        key = homes[key]
        seen.add(key)
    return key
