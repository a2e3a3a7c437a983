"""Which of two accepted spellings the book has: towards or toward, any more or anymore."""

from __future__ import annotations

import re
from collections import defaultdict
from functools import lru_cache

from proofkit.analysis import Analysis, PageAnalysis
from proofkit.book import Book, Span
from proofkit.habits.usage import Usage
from proofkit.words.lists import word_set
from proofkit.words.two_spellings import Family, families, family_by_word

_WORD = re.compile(r"[^\W\d_]+(?:['’\-‑][^\W\d_]+)*")
# After these a thing moves on to another: "climbed on to the roof"; "went on to win" is something else.
_MOVING = word_set(
    """
    climb climbed climbing climbs jump jumped jumping jumps hop hopped hopping hops leap leapt leaped
    leaping leaps fall fell falling falls step stepped stepping steps scramble scrambled drop dropped
    dropping drops flop flopped plop plopped tumble tumbled crawl crawled crawling creep crept spring
    sprang clamber clambered slide slid bounce bounced bouncing tip tipped pour poured roll rolled
    """
)
_NOT_ALONE = frozenset({"NOUN", "ADJ", "PROPN", "NUM"})
_LOOK_BACK = 3
_BEFORE_VERB = word_set("to us ’s 's i you we they can could will would let must should may might")


def spelling_usages(book: Book, analysis: Analysis) -> tuple[Usage, ...]:
    """For each word of the table that the book has, its spellings and their places.

    ``matter`` is the spelling that dictionaries put first, and each form is the first form of a word:
    the places of "waggons" stand under "waggon". Names are left out.
    """
    places: dict[str, dict[str, list[Span]]] = defaultdict(lambda: defaultdict(list))
    for page in book.pages:
        own = analysis.page(page.number)
        starts = {token.start: at for at, token in enumerate(own.tokens)}
        for match in (*_WORD.finditer(page.prose), *_phrases().finditer(page.prose)):
            family = family_by_word().get(match[0].lower().replace("’", "'"))
            if family and _counts(family, match, own, starts, analysis):
                form = family.form_of(match[0]) or ""
                places[family.forms[0]][form].append(page.span(*match.span()))
    return tuple(
        Usage(matter=matter, places={form: tuple(sorted(spans)) for form, spans in forms.items()})
        for matter, forms in sorted(places.items())
    )


def decided_spelling(matter: str, words: tuple[str, ...]) -> str | None:
    """The form that the author's list of words decides for a matter of ``spelling_usages``, or None."""
    family = family_by_word()[matter]
    return next((form for word in words if (form := family.form_of(word))), None)


@lru_cache(maxsize=1)
def _phrases() -> re.Pattern[str]:
    """The spellings that are written apart."""
    phrases = [
        form.replace(" ", "[ \u00a0]")
        for family in families()
        for line in family.lines
        for form in line
        if " " in form
    ]
    return re.compile(rf"(?<![\w'’-])(?:{'|'.join(phrases)})(?![\w'’-])", re.IGNORECASE)


def _counts(
    family: Family,
    match: re.Match[str],
    own: PageAnalysis,
    starts: dict[int, int],
    analysis: Analysis,
) -> bool:
    """Whether the word is the one that the family is about, by the words beside it."""
    at = starts.get(match.start())
    if family.kind == "phrase":
        return at is None or _is_phrase(match[0].lower(), at, own)
    if match[0][0].isupper() and analysis.vocabulary.is_name(match[0]):
        return family.forms[0] in _CAPITALS
    if at is None or not family.kind:
        return True
    token = own.tokens[at]
    if family.kind == "past":
        return token.tag != "JJ" and token.dep != "amod"
    return (
        token.pos in ("ADV", "ADP", "SCONJ", "PART")
        and not (token.dep == "amod" or _next_is(own, at, frozenset({"NOUN"})))
    ) or family.forms[0] == "towards"


# What children call their family is a name, and still one word; a cry may have its capital anywhere.
_CAPITALS = word_set(
    "mum mummy mama auntie granny grandad nana hurrah hello yuck miaow whoa halloween ta-da"
)


def _is_phrase(words: str, at: int, own: PageAnalysis) -> bool:
    last = at + words.count(" ") + words.count("\u00a0")
    after = own.tokens[last + 1].text.lower() if last + 1 < len(own.tokens) else ""
    if words in ("any more", "all right", "no one"):
        return not _next_is(own, last, _NOT_ALONE) and after not in ("than", "of", "such")
    if "-" in words and _next_is(own, at + 2 * words.count("-"), frozenset({"NOUN"})):
        return False  # hyphened before a noun, as it may be in every style
    if words == "make believe":
        first = at == 0 or own.tokens[at - 1].pos == "PUNCT"
        verb = first or own.tokens[at - 1].text.lower() in _BEFORE_VERB
        return not verb and not _next_is(own, last, frozenset({"PRON", "SCONJ"}))
    if words == "for ever":
        return after not in ("so", "such")
    if words in ("on to", "onto"):
        before = own.tokens[max(0, at - _LOOK_BACK) : at]
        return any(token.text.lower() in _MOVING for token in before)
    return True


def _next_is(own: PageAnalysis, at: int, kinds: frozenset[str]) -> bool:
    return at + 1 < len(own.tokens) and own.tokens[at + 1].pos in kinds
