"""Who may be spoken to: a name, a word such as Mum, "my dear friend", "children"."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum

from proofkit.analysis import Analysis
from proofkit.words.dictionary import dictionary
from proofkit.words.lists import word_set
from proofkit.words.vocabulary import opens_sentence


class Kind(Enum):
    """What sort of word someone is called by."""

    NAME = "a name, with its titles"
    KIN = "Mum, Grandfather"
    MINE = "my dear friend"
    HEARERS = "children, everyone, sir"


@dataclass(frozen=True, slots=True, kw_only=True)
class SpokenTo:
    """Words that may be an address; ``start`` and ``end`` count in the text they were found in.

    ``known`` is False for a capital that the rest of the book doesn't confirm as a name.
    """

    kind: Kind
    start: int
    end: int
    words: str
    known: bool = True

    @property
    def reading(self) -> str:
        """As it should be written: a kinship word that stands for a name takes a capital."""
        return self.words.capitalize() if self.kind is Kind.KIN else self.words


_KIN = word_set(
    """
    mother father mum mom mummy mommy mama mamma dad daddy papa grandmother grandfather grandma
    grandpa granny gran grandad granddad nana auntie aunty aunt uncle
    """
)
_TITLES = word_set(
    """
    Mr Mrs Ms Dr Miss Mister Uncle Aunt Auntie King Queen Prince Princess Old Little Big Mother
    Father Brother Sister Cousin Grandma Grandpa Granny Captain Doctor Professor Lady Lord Sir Chief
    Madam Aunty Master
    """
)
_NOT_NAMES = word_set(
    """
    God Lord Will May Heavens Goodness English I Santa Sunday Monday Tuesday Wednesday Thursday
    Friday Saturday Christmas Easter North South East West
    Now Here There Then Again Too Today Tomorrow Please Never Always Everything Nothing Yes No
    French German Spanish Italian Latin Greek Chinese Swahili Zulu Irish Welsh Scottish
    """
)
_CAPITALS = r"[A-Z][a-z]\w*(?:['’](?!s\b)\w+)?"
_DEAR = r"(?:dear|little|dearest|good|old|sweet|brave|clever|poor|young|precious|darling)"
_MINE = (
    r"(?:friends?|child|children|sons?|daughters?|dears?|[Kk]ing|[Qq]ueen|[Ll]ord|[Ll]ady|love|lovely|darlings?|boys?|girls?"
    r"|ones?|brothers?|sisters?|people|prince|princess|lad|lass|man|fellow|pet|treasure)"
)
_HEARERS = (
    r"(?:ladies and gentlemen|boys and girls|little ones?|old (?:friend|chap|fellow|boy|man)|young (?:man|lady|fellow)"
    r"|dear (?:friends?|boy|girl|child|children)|children|everyone|everybody|friends|folks|class|sir|madam|ma['’]am|darling"
    r"|sweetheart|dear|boys|girls|kids|lads|gentlemen|ladies)"
)
_CANDIDATE = re.compile(
    rf"(?P<name>(?<![\w'’-])(?!My )(?:(?:my|dear|little|old|poor) )?(?:(?:Mr|Mrs|Ms|Dr|St)\. )?{_CAPITALS}(?: {_CAPITALS}){{0,3}})(?![\w-]|['’]\w)"
    rf"|\b(?P<kin>{'|'.join(sorted(_KIN))})\b(?!['’-])"
    rf"|\b(?P<mine>[Mm]y (?:{_DEAR},? )*{_MINE})\b(?!['’-])"
    rf"|\b(?P<hearers>{_HEARERS})\b(?!['’-])"
)


def spoken_to(text: str, analysis: Analysis) -> Iterator[SpokenTo]:
    """Every word of the text that someone may be called by, in order."""
    for match in _CANDIDATE.finditer(text):
        if match["name"] is None:
            kind = next(
                kind for kind in (Kind.KIN, Kind.MINE, Kind.HEARERS) if match[_GROUPS[kind]]
            )
            yield SpokenTo(kind=kind, start=match.start(), end=match.end(), words=match.group())
        else:
            inside = not opens_sentence(text, match.start()) and match.start() > 0
            found = _name(match["name"], match.start(), analysis, whole=inside)
            if found:
                yield found


_GROUPS = {Kind.KIN: "kin", Kind.MINE: "mine", Kind.HEARERS: "hearers"}


def _name(capitals: str, start: int, analysis: Analysis, *, whole: bool) -> SpokenTo | None:
    """The name at the end of a run of capitals: "Crow" in "Hello Crow", "Old Crow" in "Old Crow".

    Inside a sentence the ``whole`` run is the name.
    """
    words = capitals.split(" ")
    while len(words) > 1 and words[-1] == words[-2]:
        words.pop()  # called twice: "Nell Nell"
    capitals = " ".join(words)
    if words[-1] in _NOT_NAMES:
        return None
    known = _is_name(words[-1], analysis)
    first = len(words) - 1
    while first and (
        whole
        or _bare(words[first - 1]) in _TITLES
        or words[first - 1].islower()
        or _is_name(words[first - 1], analysis)
    ):
        first -= 1
    name = " ".join(words[first:])
    own = start + len(capitals) - len(name)
    kind = Kind.KIN if name.lower() in _KIN else Kind.NAME
    return SpokenTo(kind=kind, start=own, end=own + len(name), words=name, known=known)


def _is_name(word: str, analysis: Analysis) -> bool:
    if word.lower() in _KIN:
        return True
    use = analysis.vocabulary.use(word)
    if use is None or use.capitals_inside <= use.lower:
        return False
    # Once may be chance ("He said, If you…"): a common word is a name only from twice on.
    return use.capitals_inside > 1 or not dictionary(analysis.english).knows(word.lower())


def _bare(word: str) -> str:
    return word.removesuffix(".")
