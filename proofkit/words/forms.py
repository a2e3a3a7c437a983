"""The forms that English words take: which a form can be, by the word alone.

A language model explains a slip away: it calls *taken* a past tense when a writer uses it as one. So
checks ask here what a form can be, whatever it was taken for where it stands.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from proofkit.words.data import wordlist
from proofkit.words.dictionary import Dictionary
from proofkit.words.lists import word_set

_PLURALS = {
    "child": "children", "mouse": "mice", "man": "men", "woman": "women", "tooth": "teeth", "goose": "geese",
    "foot": "feet", "ox": "oxen", "louse": "lice", "person": "people", "wolf": "wolves", "leaf": "leaves",
    "loaf": "loaves", "knife": "knives", "wife": "wives", "life": "lives", "half": "halves",
    "calf": "calves", "elf": "elves", "self": "selves", "shelf": "shelves", "thief": "thieves",
    "scarf": "scarves", "potato": "potatoes", "tomato": "tomatoes", "hero": "heroes", "echo": "echoes",
    "mango": "mangoes", "cactus": "cacti", "grandchild": "grandchildren", "housewife": "housewives",
    "policeman": "policemen", "fisherman": "fishermen", "postman": "postmen", "snowman": "snowmen",
    "fireman": "firemen", "gentleman": "gentlemen", "policewoman": "policewomen",
}  # fmt: skip
_SINGULARS = {plural: singular for singular, plural in _PLURALS.items()}
# One form for one and for many, and things that come in two halves.
_ONE_FORM = word_set("""
sheep fish deer moose elk trout salmon cod shrimp squid swine bison grouse plankton buffalo reindeer
antelope aircraft spacecraft hovercraft craft offspring series species crossroads means barracks gallows headquarters works innings trousers pants scissors glasses pyjamas pajamas
jeans shorts tights binoculars spectacles tongs pliers thanks clothes stairs outskirts folk game people
police cattle kin
""")
# Measures, which a number may leave in the form for one: "a ten foot pole", "two dozen".
_MEASURES = word_set("""
foot pound stone dozen score hundred thousand million head pair brace yoke gross mile fathom ton tonne
kilo euro yen rand quid inch year
""")
# Words that end in s and are no plurals.
_NO_PLURALS = word_set("""
news mathematics gymnastics politics measles mumps chess lens bus gas cosmos chaos atlas canvas christmas
tennis yes us always perhaps alas plus thus this his hers its ours yours theirs as is was has does
rhinoceros towards besides sometimes across
""")


@dataclass(frozen=True, slots=True, kw_only=True)
class Verb:
    """An irregular verb: its plain form, its past forms and its participles, the usual one first."""

    plain: str
    pasts: tuple[str, ...]
    participles: tuple[str, ...]


@lru_cache(maxsize=1)
def irregular_verbs() -> tuple[Verb, ...]:
    """All of ``wordlists/irregular-verbs.txt``."""
    lines = wordlist("irregular-verbs.txt").read_text("utf-8").splitlines()
    rows = (line.split() for line in lines if line and not line.startswith("#"))
    return tuple(
        Verb(plain=plain, pasts=tuple(past.split("/")), participles=tuple(participle.split("/")))
        for plain, past, participle in rows
    )


@lru_cache(maxsize=1)
def past_by_participle() -> Mapping[str, str]:
    """Forms that can only be a participle (*taken*, *drunk*), each with its verb's past (*took*).

    Those that are also a plain form (*run*, *come*) or a past (*made*) are not among them.
    """
    pasts = {past for verb in irregular_verbs() for past in verb.pasts}
    plains = {verb.plain for verb in irregular_verbs()}
    return {
        participle: verb.pasts[0]
        for verb in irregular_verbs()
        for participle in verb.participles
        if participle not in pasts and participle not in plains
    }


@lru_cache(maxsize=1)
def participle_by_past() -> Mapping[str, str]:
    """Forms that can only be a past tense (*went*, *took*), each with its verb's participle (*gone*).

    Those that are also a plain form of any verb (*saw* and *fell* are kept: nobody has sawn or felled
    after *had*) or a participle (*made*, *lay*) are not among them.
    """
    participles = {form for verb in irregular_verbs() for form in verb.participles}
    plains = {verb.plain for verb in irregular_verbs()}
    return {
        past: verb.participles[0]
        for verb in irregular_verbs()
        for past in verb.pasts
        if past not in participles and past not in plains
    }


@lru_cache(maxsize=1)
def past_forms() -> frozenset[str]:
    """Every form of an irregular verb that can be its past tense."""
    return frozenset(past for verb in irregular_verbs() for past in verb.pasts)


def past_of(plain: str) -> str:
    """The past tense of a verb: *took* of *take*, *hopped* of *hop*, *cried* of *cry*."""
    for verb in irregular_verbs():
        if verb.plain == plain:
            return verb.pasts[0]
    if plain.endswith("e"):
        return plain + "d"
    if plain.endswith("y") and plain[-2:-1] not in "aeiou":
        return plain[:-1] + "ied"
    if _doubles(plain):
        return plain + plain[-1] + "ed"
    return plain + "ed"


def third_person_of(plain: str) -> str:
    """The form after he, she or it: *takes*, *watches*, *cries*."""
    irregular = {"have": "has", "do": "does", "go": "goes", "be": "is"}
    return irregular.get(plain) or _with_s(plain)


def plain_of(word: str, words: Dictionary) -> str | None:
    """The verb that ``word`` is the regular past or third person of, or None."""
    for ending in ("ed", "d", "es", "s"):
        stem = word.removesuffix(ending)
        undoubled = stem[:-1] if stem[-2:-1] == stem[-1:] else stem
        for plain in (stem, undoubled) if stem != word else ():
            if plain in words.words and word in (past_of(plain), third_person_of(plain)):
                return plain
    return None


def plural_of(noun: str) -> str:
    """The plural of an ordinary English noun."""
    return _PLURALS.get(noun) or _with_s(noun)


def singular_of(noun: str, words: Dictionary) -> str | None:
    """The singular of a form that can only be a plural, or None for any other."""
    if noun in _SINGULARS:
        return _SINGULARS[noun]
    if noun.endswith("men") and words.knows(noun[:-2] + "an"):
        return noun[:-2] + "an"
    if noun in _ONE_FORM or noun in _NO_PLURALS or not noun.endswith("s"):
        return None
    if noun.endswith(("ss", "us", "is")):
        return None
    stems = [noun[:-1]]
    if noun.endswith("ies") and len(noun) > 4:
        stems = [noun[:-3] + "y", noun[:-1]]
    elif noun.endswith(("ches", "shes", "sses", "xes", "zes", "oes")):
        stems = [noun[:-2], noun[:-1]]
    return next((stem for stem in stems if len(stem) > 1 and words.knows(stem)), None)


def has_one_form(noun: str) -> bool:
    """Whether one can't see by the form how many are meant: *sheep*, *scissors*, *(two) dozen*."""
    return noun in _ONE_FORM or noun in _MEASURES


def is_measure(noun: str) -> bool:
    """Whether it is a measure, which only a number may leave in the form for one."""
    return noun in _MEASURES


def _with_s(word: str) -> str:
    if word.endswith(("s", "x", "z", "ch", "sh")):
        return word + "es"
    if word.endswith("y") and word[-2:-1] not in "aeiou":
        return word[:-1] + "ies"
    return word + "s"


def _doubles(plain: str) -> bool:
    """Whether the last letter is doubled before -ed: one syllable, one vowel, one consonant."""
    vowels = sum(letter in "aeiouy" for letter in plain)
    return vowels == 1 and len(plain) > 2 and plain[-1] not in "aeiouwxy" and plain[-2] in "aeiouy"
