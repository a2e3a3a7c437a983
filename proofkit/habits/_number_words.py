"""Numbers written in words and in figures, and what they count."""

from __future__ import annotations

_ONES = "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split()
_TENS = "twenty thirty forty fifty sixty seventy eighty ninety".split()
_ORDINALS = "first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth".split()
_TENTHS = "twentieth thirtieth fortieth fiftieth sixtieth seventieth eightieth ninetieth".split()

# A pattern for each, all in lower case.
UNITS = "|".join(_ONES[:9])
TENS = "|".join(_TENS)
CARDINAL = rf"(?:(?:{TENS})(?:[- ](?:{UNITS}))?|{'|'.join(sorted(_ONES, key=len, reverse=True))})"
ORDINAL = rf"(?:(?:{TENS})[- ](?:{'|'.join(_ORDINALS[:9])})|{'|'.join((*_ORDINALS, *_TENTHS))})"


def cardinal(number: int) -> str:
    """A number from 1 to 999,999 in words, as British English says it: "a" is left to the reader."""
    if number < 20:
        return _ONES[number - 1]
    if number < 100:
        ten, one = divmod(number, 10)
        return _TENS[ten - 2] + (f"-{_ONES[one - 1]}" if one else "")
    size, name = (1000, "thousand") if number >= 1000 else (100, "hundred")
    many, rest = divmod(number, size)
    words = f"{cardinal(many)} {name}"
    if not rest:
        return words
    return f"{words} and {cardinal(rest)}" if rest < 100 else f"{words} {cardinal(rest)}"


def ordinal(number: int) -> str:
    """A number from 1 to 99 as an ordinal in words: twenty-first."""
    if number < 20:
        return _ORDINALS[number - 1]
    ten, one = divmod(number, 10)
    return f"{_TENS[ten - 2]}-{_ORDINALS[one - 1]}" if one else _TENTHS[ten - 2]


def value(words: str) -> int | None:
    """The number from 1 to 99 that the words name, whatever stands between them; None for others."""
    plain = words.lower().replace("-", " ")
    return next((n for n in range(1, 100) if cardinal(n).replace("-", " ") == plain), None)


def ordinal_value(words: str) -> int | None:
    """The number from 1 to 99 that the ordinal in words names; None for others."""
    plain = words.lower().replace("-", " ")
    return next((n for n in range(1, 100) if ordinal(n).replace("-", " ") == plain), None)


def ordinal_in_figures(number: int) -> str:
    """1st, 2nd, 3rd, 11th, 21st."""
    ending = {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{'th' if number % 100 in (11, 12, 13) else ending}"
