"""Words that want their hyphens: which they are, and where the same words stand apart by right.

Gathered by hand; the kinds are those of New Hart's Rules (2014), 3.3, and the Chicago manual of style, 7.89:
adjectives made of a describing word and a part of somebody (*kind-hearted, three-legged*), relations by
marriage, *self-* and *great-* words, words for persons and things made of a whole phrase.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from proofkit.analysis import Token
from proofkit.words.lists import word_set

# Written with hyphens wherever they stand side by side, plurals beside.
ALWAYS = word_set("""
mother-in-law father-in-law brother-in-law sister-in-law son-in-law daughter-in-law mothers-in-law sisters-in-law
brothers-in-law merry-go-round merry-go-rounds jack-in-the-box passer-by passers-by forget-me-not
forget-me-nots topsy-turvy higgledy-piggledy helter-skelter roly-poly harum-scarum pell-mell hurly-burly
willy-nilly namby-pamby hoity-toity yo-yo yo-yos t-shirt t-shirts x-ray x-rays self-control self-respect
self-defence self-defense self-pity self-conscious self-confident self-confidence self-portrait
great-grandmother great-grandfather great-grandma great-grandpa great-grandson great-granddaughter
great-grandchildren cock-a-doodle-doo happy-go-lucky absent-minded absent-mindedly good-natured
good-naturedly old-fashioned new-fangled lady-in-waiting ladies-in-waiting jack-o'-lantern jack-o'-lanterns
jack-o’-lantern jack-o’-lanterns will-o'-the-wisp will-o’-the-wisp left-handed right-handed short-sighted
middle-aged tittle-tattle hanky-panky goody-goody
""")
# And these between an article or owner and a noun: an out-of-the-way place.
_BETWEEN = word_set("""
out-of-the-way up-to-date matter-of-fact down-to-earth well-to-do good-for-nothing first-rate second-rate
next-door hand-me-down once-in-a-lifetime would-be so-called make-believe
""")
_FIXED = re.compile(
    rf"(?<![\w'’-])(?:{'|'.join(sorted(ALWAYS, key=len, reverse=True)).replace('-', '[ -]')})(?![\w-]| (?:clock|school|book|court|firm)s?\b)",
    re.IGNORECASE,
)
_QUALITIES = word_set("""
good bad kind cold warm hard soft broken light heavy big small little long short red blue green yellow white black brown
grey gray golden silver pink purple orange bright dark fair pale rosy round flat sharp quick slow hot sweet ill even narrow
broad strong weak high low large wide thin fat thick curly straight clear sad wild tender true brave faint whole half double
many far near simple clean bushy fluffy shaggy empty open bare bald stout silly sour cool mean great noble lion
chicken stiff crooked hook odd keen sure clumsy nimble fleet
""")
_NUMBERS = word_set("one two three four five six seven eight nine ten twelve hundred single")
# Made of a part or a quality: no verb that a story would use says so.
_PARTS = word_set("""
hearted haired eyed legged tailed tempered natured eared bellied nosed winged mannered humoured humored cheeked
whiskered toothed necked skinned mouthed bearded blooded witted bodied throated fingered toed lipped horned beaked
tongued sighted brimmed sleeved
""")
# These may be verbs: the small dog headed home.
_PARTS_OR_DEEDS = word_set("headed faced footed handed shaped sized minded voiced sided spirited")
# "A pear shaped fruit": a thing and how it lends itself; a verb would have its own object there.
_LENT = word_set("shaped coloured colored sized")
# "A snow covered hill": what can't act itself, so that this is no verb.
_STUFFS = word_set(
    "snow ice moss ivy dust tree smoke mist flower grass sand mud leaf sugar chocolate straw fur stone"
)
_UNDER = word_set("covered lined filled topped tipped stuffed")
_LOOKS = word_set("looking smelling sounding tasting")
_DETERMINERS = word_set(
    "a an the this that these those his her my your our their its some any every each no very"
)
_SEVERAL = word_set("the these those")
_BE = word_set(
    "am is are was were be been being looked felt seemed became very so quite rather too"
)
_NOUN_TAGS = frozenset(("NN", "NNS", "NNP"))
_BEFORE_NOUN = frozenset((*_NOUN_TAGS, "JJ"))
# A well-known song, a half-eaten apple; not: the well made a noise.
_DONE = {
    "well": word_set(
        "known worn made loved behaved dressed built fed kept bred earned deserved meant lit oiled trained"
    ),
    "half": word_set(
        "eaten open asleep empty finished hidden buried dead grown closed drunk melted frozen full built"
    ),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Open:
    """Characters ``start`` to ``end`` that want their hyphens."""

    start: int
    end: int
    reading: str


def fixed(prose: str) -> Iterator[Open]:
    """The words that are hyphened wherever they stand."""
    for match in _FIXED.finditer(prose):
        words = match.group()
        if " " in words and not _after_x(prose, match):
            yield Open(start=match.start(), end=match.end(), reading=words.replace(" ", "-"))


def _after_x(prose: str, match: re.Match[str]) -> bool:
    """Whether the words only meet: the letter x, a ray; *my own self, respect it*."""
    words = match.group()
    if words[:2] in ("x ", "t ") and words[0].islower():
        return True
    return words.lower().startswith("self ") and prose[: match.start()].endswith(
        ("own ", "true ", "old ", "whole ", "better ", "the ", "her ", "his ", "my ")
    )


def made_of_parts(tokens: Sequence[Token], prose: str) -> Iterator[Open]:
    """*Kind hearted, three legged, a fierce looking dog*, where nothing else can be meant."""
    for at in range(1, len(tokens) - 1):
        first, second = tokens[at - 1], tokens[at]
        if prose[first.end : second.start] != " " or not second.text.islower():
            continue
        if at > 1 and tokens[at - 2].text in ("-", "‑"):
            continue
        if _is_compound(tokens, at):
            words = prose[first.start : second.end]
            yield Open(start=first.start, end=second.end, reading=words.replace(" ", "-"))


def between(tokens: Sequence[Token], prose: str) -> Iterator[Open]:
    """Phrases that describe the noun after them: *an out of the way place*."""
    for at in range(1, len(tokens)):
        for length in (3, 4, 5):
            first, last = at, at + length - 1
            if last + 1 >= len(tokens) or tokens[first - 1].text.lower() not in ("a", "an", "the"):
                break
            words = prose[tokens[first].start : tokens[last].end]
            if (
                "-" not in words
                and words.replace(" ", "-") in _BETWEEN
                and tokens[last + 1].tag in _NOUN_TAGS
            ):
                yield Open(
                    start=tokens[first].start,
                    end=tokens[last].end,
                    reading=words.replace(" ", "-"),
                )


def _is_compound(tokens: Sequence[Token], at: int) -> bool:
    quality, part = tokens[at - 1].text.lower(), tokens[at].text
    before = tokens[at - 2].text.lower() if at > 1 else ""
    after = tokens[at + 1].tag
    noun = after in _NOUN_TAGS and tokens[at + 1].text not in ("home", "glass", "glasses")
    told = before in _DETERMINERS and noun
    if part in _LOOKS:
        handsome = (quality, part) == ("good", "looking") and before in _BE
        described = at > 1 and tokens[at - 2].tag == "JJ"
        looks = tokens[at - 1].tag == "JJ" and noun and (told or described)
        return looks or (handsome and after not in _NOUN_TAGS)
    if part in _DONE.get(quality, ()) or f"{quality}-{part}" in _BETWEEN:
        return told and before != "the"
    covered = part in _UNDER and quality in _STUFFS
    if part in _LENT or covered or (quality == "well" and part.endswith("ed")):
        lent = tokens[at - 1].tag in ("NN", "RB", "NNP") and tokens[at].tag in ("VBN", "JJ")
        return noun and lent and before in ("a", "an")
    if quality in _NUMBERS and (part in _PARTS or part in _PARTS_OR_DEEDS):
        return before in (_DETERMINERS | {"only"}) - _SEVERAL and after in _BEFORE_NOUN
    if quality in _QUALITIES and part in _PARTS:
        return before in _DETERMINERS | _BE or after in _NOUN_TAGS
    return quality in _QUALITIES and part in _PARTS_OR_DEEDS and told
