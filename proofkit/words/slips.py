"""How likely it is that somebody who meant one word wrote another: the cost of a slip of spelling.

A cost is a sum of steps, each about a power of ten less likely. Three things are known of slips of
spelling: most are one letter wrong, left out, too many, or two changed round (Damerau 1964: 80 %);
vowels, doubled letters and silent letters go wrong far more often than others, and the first letter
seldom (Yannakoudakis and Fawthrop 1983); and what is written sounds like what was meant (Mitton 1996).
"""

from __future__ import annotations

_VOWELS = frozenset("aeiouy")
_ROWS = ("qwertyuiop", "asdfghjkl", "zxcvbnm")
_SOUND_ALIKE = frozenset(
    frozenset(pair)
    for pair in ("ck", "cs", "sz", "gj", "kq", "mn", "fv", "td", "cq", "xz", "uw", "vw", "bp")
)
# Spellings of one sound, longest first, as written and as meant.
_SOUNDS: tuple[tuple[str, str], ...] = tuple(
    (written, meant)
    for group in (
        ("f", "ph", "gh", "ff"),
        ("uf", "uff", "ough", "ugh"),
        ("k", "ck", "ch", "que", "cc", "c"),
        ("sh", "ti", "ci", "ch", "ssi", "si"),
        ("shun", "tion", "sion", "cion", "ssion", "cian", "tian"),
        ("shus", "cious", "tious", "ceous"),
        ("us", "ous", "eous", "ious"),
        ("s", "ss", "sc", "ps", "c", "ce", "st"),
        ("j", "dge", "ge", "dg", "g"),
        ("ch", "tch", "t"),
        ("n", "kn", "gn", "pn", "nn"),
        ("m", "mb", "mn", "mm"),
        ("r", "wr", "rh", "rr"),
        ("w", "wh", "u"),
        ("z", "x", "s"),
        ("x", "ks", "cs", "cks", "xc"),
        ("kw", "qu"),
        ("a", "ai", "ay", "ei", "ea", "eigh", "au"),
        ("e", "ee", "ea", "ie", "ei", "ey", "y", "ae", "oe"),
        ("i", "y", "igh", "ie", "ai"),
        ("o", "oa", "ow", "ough", "oe", "au", "ou"),
        ("u", "oo", "ew", "ue", "ou", "eu", "iew", "eau"),
        ("or", "aw", "au", "ough", "augh", "oar", "our", "ore"),
        ("er", "ar", "or", "ir", "ur", "ear", "re", "our"),
        ("el", "le", "al", "il"),
        ("ed", "t"),
        ("ley", "ly", "lly", "ally"),
    )
    for written in group
    for meant in group
    if written != meant and (len(written) > 1 or len(meant) > 1)
)
_BY_END: dict[tuple[str, str], list[tuple[str, str]]] = {}
for _written, _meant in _SOUNDS:
    _BY_END.setdefault((_written[-1], _meant[-1]), []).append((_written, _meant))

DOUBLED = 0.35
CHANGED_ROUND = 0.45
SOUND = 0.75
FIRST_LETTER = 0.8
APOSTROPHE = 0.15


def slip(written: str, meant: str) -> float:
    """The cost of writing ``written`` for ``meant``, both in lower case; 0 where they are equal."""
    rows = [[0.0] * (len(meant) + 1) for _ in range(len(written) + 1)]
    for i in range(len(written) + 1):
        for j in range(len(meant) + 1):
            if i or j:
                rows[i][j] = _cheapest(written, meant, i, j, rows)
    return rows[-1][-1]


def _cheapest(written: str, meant: str, i: int, j: int, rows: list[list[float]]) -> float:
    """The least cost at which the first ``i`` letters stand for the first ``j`` of what was meant."""
    steps = []
    if i:
        steps.append(rows[i - 1][j] + _too_many(written, i))
    if j:
        steps.append(rows[i][j - 1] + _left_out(meant, j))
    if i and j:
        one, other = written[i - 1], meant[j - 1]
        steps.append(rows[i - 1][j - 1] + _wrong(one, other, first=i == 1 and j == 1))
        if i > 1 and j > 1 and one == meant[j - 2] and other == written[i - 2] and one != other:
            steps.append(rows[i - 2][j - 2] + CHANGED_ROUND)
        for sound, spelling in _BY_END.get((one, other), ()):
            a, b = i - len(sound), j - len(spelling)
            if a >= 0 and b >= 0 and written[a:i] == sound and meant[b:j] == spelling:
                steps.append(rows[a][b] + SOUND)
    return min(steps)


def _too_many(written: str, i: int) -> float:
    letter = written[i - 1]
    if letter in "'-":
        return APOSTROPHE * 2
    if i > 1 and letter == written[i - 2]:
        return DOUBLED
    if i == 1:
        return 1 + FIRST_LETTER
    return 0.75 if letter in _VOWELS else 1.0


def _left_out(meant: str, j: int) -> float:
    letter = meant[j - 1]
    if letter in "'-":
        return APOSTROPHE
    if j > 1 and letter == meant[j - 2]:
        return DOUBLED
    if j == 1:
        return 1 + FIRST_LETTER
    return 0.65 if letter in _VOWELS or letter == "h" else 0.85


def _wrong(one: str, other: str, *, first: bool) -> float:
    if one == other:
        return 0.0
    if one in _VOWELS and other in _VOWELS:
        cost = 0.5
    elif frozenset((one, other)) in _SOUND_ALIKE:
        cost = 0.65
    else:
        cost = 0.9 if _neighbours(one, other) else 1.1
    return cost + (FIRST_LETTER if first else 0.0)


def _neighbours(one: str, other: str) -> bool:
    """Whether the two lie side by side on a keyboard."""
    return any(one + other in row or other + one in row for row in _ROWS)
