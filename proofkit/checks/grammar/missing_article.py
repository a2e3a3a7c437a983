"""A noun that seems to want its a or the.

What it finds
    "She put key in her pocket", "he saw snake": a noun for one thing with nothing before it to say which,
    where English hardly ever leaves it so. How often a noun stands bare, and after which words (by boat,
    in bed, at school), was counted in novels for children, and so was how well the words about it fit
    with an article and without. Left alone are dialect, short cries without a verb, members of the
    family, pairs ("hand in hand", "hook and line"), and nouns that the book leaves bare again and again.

Why a reader minds
    A small word is easily lost in typing, and never missed by the one who wrote it; the voice that reads
    aloud stumbles.

Example
    She put key in her pocket.

Better
    She put the key in her pocket.

When to let it stand
    In a note, a telegram, a poem; and where a noun is really a name.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from proofkit.analysis import Analysis, Token
from proofkit.book import Book, Page
from proofkit.checks.check import Need
from proofkit.checks.grammar._gaps import Gaps
from proofkit.checks.grammar._voices import tier_at
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.bare_nouns import bare_nouns
from proofkit.words.forms import has_one_form
from proofkit.words.lists import word_set
from proofkit.words.noun_phrases import EDGE, NounPhrase, noun_phrase

NAME = "grammar/missing-article"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

# Natural logs: the odds that the noun wants no article, and a share of what an article gains in the
# counts. Above the first sum three lost articles in ten are found, and one right noun in 6,000 words is
# asked about; above the second hardly any is.
_ODDS = -0.5
_GAIN_SHARE = 0.2
_ASK, _SURE = 4.0, 5.0
_HABIT = 3  # times
_NO_NOUNS = word_set("""
one none other another mother father mum mom dad mummy mommy daddy papa mama granny gran grandma grandpa
grandad grandmother grandfather nan nana nanny nurse cook teacher sister brother uncle aunt auntie baby
mister sir madam doctor captain matron sort kind type home
""")
# What one is made or becomes stands bare: "they made him king".
_MAKES = word_set(
    "made make makes making became become becomes crowned elected appointed chosen called named as"
)
# What these are made of, or lack, stands bare: "a piece of road".
_PARTS = word_set("""
piece bit stretch expanse glimpse strip patch length sort kind type sign sense out lack want feeling
pieces bits stretches strips patches lengths
""")
_JOINS = word_set("and or nor &")
_NOUNS = frozenset({"NN", "NNS", "NNP", "NNPS"})
_VERBS = frozenset({"VBD", "VBZ", "VBP", "MD"})
_STOPS = frozenset('.!?:;"“”‘…')


@dataclass(frozen=True, slots=True, kw_only=True)
class _Found:
    page: Page
    start: int
    end: int
    phrase: NounPhrase
    tier: Tier
    score: float
    the_gains: bool


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each such noun; a query where somebody speaks."""
    found = [f for page in book.pages for f in _on_page(book, page, analysis)]
    habits = Counter(f.phrase.noun for f in found)
    for f in found:
        if habits[f.phrase.noun] < _HABIT:
            yield _issue(book, f)


def _issue(book: Book, found: _Found) -> Issue:
    quote = found.page.prose[found.start : found.end]
    readings = [f"{_a_or_an(quote)} {quote}", f"the {quote}"]
    sure = found.score > _SURE and found.tier is Tier.ERROR
    return issue_at(
        book,
        found.page.span(found.start, found.end),
        check=NAME,
        tier=Tier.ERROR if sure else Tier.QUERY,
        message="an “a” or a “the” seems to be missing",
        confidence=0.65 if sure else 0.5,
        suggestions=readings[::-1] if found.the_gains else readings,
    )


def _a_or_an(words: str) -> str:
    return (
        "an" if words[0] in "aeiou" and not words.startswith(("one", "uni", "use", "eu")) else "a"
    )


def _on_page(book: Book, page: Page, analysis: Analysis) -> Iterator[_Found]:
    if "\n" in page.prose.strip().replace("\n\n", " "):
        return
    tokens = analysis.page(page.number).tokens
    words, tags = [token.text for token in tokens], [token.tag for token in tokens]
    figures, gaps = bare_nouns(), None
    for at in range(1, len(tokens)):
        if tags[at] != "NN" or not words[at].islower() or words[at] in _NO_NOUNS:
            continue
        phrase = noun_phrase(words, tags, at)
        if phrase is None or phrase.determined or has_one_form(phrase.noun):
            continue
        if not figures.knows(phrase.noun):
            continue
        odds = figures.odds(phrase)
        if odds < _ODDS and _may_want_one(tokens, phrase, at):
            gaps = gaps or Gaps(page, analysis)
            start, end = tokens[phrase.first].start, tokens[at].end
            the, a = (gaps.gain(start, word) for word in ("the", _a_or_an(page.prose[start:end])))
            score = _GAIN_SHARE * max(the, a) - odds
            tier = tier_at(book, analysis, page, start) if score > _ASK else None
            if tier:
                yield _Found(
                    page=page,
                    start=start,
                    end=end,
                    phrase=phrase,
                    tier=tier,
                    score=score,
                    the_gains=the > a,
                )


def _may_want_one(tokens: Sequence[Token], phrase: NounPhrase, at: int) -> bool:
    """Whether the noun is neither in a pair, nor part of a longer phrase, nor a cry without a verb."""
    first = phrase.first
    if not tokens[first].text[0].islower():
        return False
    before = tokens[first - 1] if first else None
    if phrase.before in _MAKES or (
        before and (before.tag in _NOUNS or before.text[-1] in "-‑/,—–")
    ):
        return False
    if phrase.before == "of" and first > 1 and tokens[first - 2].text in _PARTS:
        return False
    near = [
        token.text.lower() for token in (*tokens[max(0, at - 5) : at], *tokens[at + 1 : at + 5])
    ]
    if phrase.noun in near or _in_pair(tokens, phrase, at):
        return False
    if phrase.before == EDGE:
        return at + 1 < len(tokens) and tokens[at + 1].tag in _VERBS
    return any(token.tag in _VERBS for token in _sentence(tokens, at))


def _in_pair(tokens: Sequence[Token], phrase: NounPhrase, at: int) -> bool:
    after = tokens[at + 1 : at + 3]
    if len(after) == 2 and after[0].text in _JOINS and after[1].tag in _NOUNS | {"JJ"}:
        return True
    return phrase.before in _JOINS and phrase.first > 1 and tokens[phrase.first - 2].tag in _NOUNS


def _sentence(tokens: Sequence[Token], at: int) -> Sequence[Token]:
    first, last = at, at
    while first and tokens[first - 1].text[0] not in _STOPS:
        first -= 1
    while last < len(tokens) and tokens[last].text[0] not in _STOPS:
        last += 1
    return tokens[first:last]
