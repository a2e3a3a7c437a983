"""What the book says a name is (a dog, a kite), and how it writes the same word where it is no name."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterator

from proofkit.book import Span
from proofkit.habits.names import Named
from proofkit.stylesheet.ground import Ground
from proofkit.stylesheet.sheet import Basis, Row
from proofkit.words.reporting import SAYING
from proofkit.words.titles import KIN_NAMES, TITLES
from proofkit.words.vocabulary import opens_sentence

_OWNER = r"(?:an?|the|his|her|its|my|your|our|their)"
_SPEECH = SAYING - {"called"}  # a boat called Saltwind says nothing
_SIZES = {"little", "old"}  # any noun may have these
_LEANS = ("compound", "nmod", "appos")
# A small kite called Red.
_CALLED = re.compile(
    rf"\b(?i:{_OWNER}) (?:[a-z]+ ){{0,3}}?(?P<noun>[a-z]+),? (?:was )?(?:called|named) \Z"
)
_WITH_OWNER = re.compile(rf"\b(?P<owner>(?i:{_OWNER}|[A-Z][a-z]+['’]s)) \Z")
# “Pip, come here!”
_SPOKEN_TO = re.compile(r"[“\"‘']\Z")
_OFTEN = 5  # whoever is named so often is somebody
_REACH = 60  # characters before a name that are looked at


def what_it_is(ground: Ground, one: Named) -> str:
    """The noun that introduces a name, "dog"; "" where the book has none just before it."""
    for span in one.spans:
        called = _CALLED.search(_before(ground, span))
        noun = called["noun"] if called else _noun_beside(ground, span)
        if noun:
            return noun
    return ""


def is_shown(ground: Ground, one: Named) -> bool:
    """Whether the book shows somebody in the name: by a title, a deed, a pronoun, an owner.

    Egypt on a postcard, or a boat called Saltwind, does nothing.
    """
    return (
        one.name.split()[0].lower().strip(".") in TITLES | KIN_NAMES
        or one.count >= _OFTEN
        or bool(one.pronouns)
        or any(_acts(ground, span) or _noun_beside(ground, span) for span in one.spans)
    )


def _acts(ground: Ground, name: Span) -> bool:
    """Whether the name is the subject of a verb, or is spoken to or of right beside one of speech."""
    tokens = ground.analysis.page(name.page).tokens
    last = bisect_left(tokens, name.end, key=lambda token: token.start) - 1
    if last < 0:
        return False
    near = tokens[max(0, last - 2) : last + 2]
    called = _SPOKEN_TO.search(_before(ground, name)) is not None
    return (
        tokens[last].dep in ("nsubj", "nsubjpass")
        or called
        or any(token.text.lower() in _SPEECH for token in near)
    )


def without_capital(ground: Ground, name: str) -> str:
    """How a title or a kin word of the name stands in lower case, with its owner: “the captain”; or ""."""
    first = name.split(maxsplit=1)[0].lower().strip(".")
    ranked = first in (TITLES | KIN_NAMES) - _SIZES
    use = ground.analysis.vocabulary.use(first) if ranked else None
    for span in use.spans if use else ():
        owner = _WITH_OWNER.search(_before(ground, span))
        written = ground.book.quote(span)
        if owner and owner["owner"].lower() not in ("a", "an") and written.islower():
            return f"“{owner['owner'].lower()} {written}” without a capital"
    return ""


def kin_rows(ground: Ground) -> Iterator[Row]:
    """Kin words that do a name's work (said Granny) and are not among the names already."""
    known = {form.lower() for one in ground.named for form in one.forms}
    for word in sorted(KIN_NAMES - known):
        use = ground.analysis.vocabulary.use(word)
        places = tuple(s for s in use.spans if _is_bare(ground, s)) if use else ()
        inside = [s for s in places if not opens_sentence(_prose(ground, s), s.start)]
        if inside:
            form = word.capitalize()
            note = without_capital(ground, form)
            basis = Basis.DECIDED if form in ground.words else Basis.ALWAYS
            yield Row(term=form, form=form, basis=basis, places=places, note=note)


def _is_bare(ground: Ground, span: Span) -> bool:
    """Whether it has a capital, and no article or owner before it."""
    return ground.book.quote(span)[0].isupper() and not _WITH_OWNER.search(_before(ground, span))


def _noun_beside(ground: Ground, name: Span) -> str:
    """The noun before the name that belongs to it, as the language model sees it: her dog Biscuit."""
    tokens = ground.analysis.page(name.page).tokens
    at = bisect_left(tokens, name.start, key=lambda token: token.start)
    if at >= len(tokens):
        return ""
    comma = at > 0 and tokens[at - 1].text == ","
    before = at - 2 if comma else at - 1
    if before < 1 or tokens[before].tag != "NN" or not tokens[before].text.islower():
        return ""
    leans = (tokens[before].head == at and tokens[before].dep in _LEANS) or (
        tokens[at].head == before and tokens[at].dep in _LEANS
    )
    owned = any(token.tag in ("PRP$", "POS") for token in tokens[max(0, before - 3) : before])
    return tokens[before].text if leans and owned else ""


def _before(ground: Ground, span: Span) -> str:
    return _prose(ground, span)[max(0, span.start - _REACH) : span.start]


def _prose(ground: Ground, span: Span) -> str:
    return ground.book.page(span.page).prose
