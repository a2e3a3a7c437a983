"""A word twice in a row.

What it finds
    A small word that grammar never allows twice (*the the*, *of of*), two such words that come
    again (*in the in the*), and a past verb twice (*walked walked*) in narration. Line and page ends are looked across. Words
    that may stand twice (*had had*, *that that*), repetition for effect (*up, up*; *very very*;
    *bye bye*), sounds and names are left alone.

Why a reader minds
    The eye skips it, the voice trips over it.

Example
    She picked up the the key.

Better
    She picked up the key.

When to let it stand
    When somebody stammers.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from itertools import pairwise

from proofkit.analysis import Analysis
from proofkit.book import Book, Page
from proofkit.checks.check import Need
from proofkit.checks.spacing._gaps import undisturbed
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words import nearby
from proofkit.words.lists import word_set

NAME = "repetition/doubled-word"
NEEDS = frozenset({Need.TEXT})

NEVER_TWICE = word_set(
    "the a an and of for from with at my your our their his into onto upon am was were are be been "
    "will would could should can may might must they we he she i but or if as than when because "
    "while where which who whose what this these those some every each by has have its to"
)
# May be the end of one thing and the start of the next, now and then: only asked about.
_SELDOM_TWICE = word_set("to by his what this he she they we i was who my as")
# Who is given something may come before what is hers: gave her her hat.
GIVING = word_set("""
give gives gave giving given tell tells told telling show shows showed shown showing bring brings brought buy
buys bought send sends sent take takes took lend lends lent hand hands handed offer offers offered make makes
made call calls called ask asks asked pass passes passed cost costs feed feeds fed pay pays paid pour poured read
reads sing sings sang sell sold leave left wish wished get gets got hear heard see sees saw promise promised owe
save saved throw threw build built find found knit knitted bake baked cook cooked teach taught write wrote
let lets help helps helped of to
""")
_JOINING = frozenset(("and", "or", "but"))  # by and by and by
_TWICE = re.compile(r"(?<![\w'’-])(\w+)(\s+)(\w+)(?![\w'’-])")
_TWO_TWICE = re.compile(r"(?<![\w'’-])((\w+) +(\w+)) +\2 +\3(?![\w'’-])", re.I)
_PAST = re.compile(r"[a-z]{2,}ed")
_ENDS = re.compile(r"(?<![\w'’-])(\w+)\s*$")
_BEGINS = re.compile(r"\s*(\w+)( +)(?=\w)")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each word or pair of words that stands twice."""
    for page in book.pages:
        yield from _words(book, page)
        yield from _pairs(book, page)
    story = [page for page in book.story_pages if page.prose.strip()]
    for page, after in pairwise(story):
        yield from _over_page(book, page, after)


def _words(book: Book, page: Page) -> Iterator[Issue]:
    at = 0
    while match := _TWICE.search(page.prose, at):
        at = match.start(3)
        first, second = match[1], match[3]
        if first.lower() != second.lower() or not undisturbed(page, *match.span()):
            continue
        if _thrice(page.prose, match) or not (
            _wrong(first, second) or _one_her_too_many(page, match)
        ):
            continue
        yield _issue(book, page, match.start(), match.end(), first, sure=_sure(first))


def _wrong(first: str, second: str) -> bool:
    """Whether the word is one that may not stand twice, and is no letter, sound or name."""
    if first in ("Then", "Even", "Just", "Once", "Before", "After"):
        return second == first.lower()
    if first in ("May", "Will") and second.islower():
        return False  # somebody's name
    if first.lower() in NEVER_TWICE:
        return first == second or not (second[0].isupper() and first.islower())
    return first == second and _PAST.fullmatch(first) is not None


def _one_her_too_many(page: Page, match: re.Match[str]) -> bool:
    """Whether *her her* stands where nobody is given what is hers."""
    before = re.search(r"([^\W\d_]+)\s+$", nearby.before(page.prose, match.start()))
    return match[1] == match[3] == "her" and before is not None and before[1] not in GIVING


def _thrice(prose: str, match: re.Match[str]) -> bool:
    """Whether the word stands a third time: then it is meant."""
    word = match[1].lower()
    before = re.search(r"(\w+)\W+$", nearby.before(prose, match.start()))
    after = re.match(r"\W+(\w+)", nearby.after(prose, match.end()))
    return any(m is not None and m[1].lower() == word for m in (before, after))


def _sure(word: str) -> bool:
    return word.lower() in NEVER_TWICE and word.lower() not in _SELDOM_TWICE


def _pairs(book: Book, page: Page) -> Iterator[Issue]:
    for match in _TWO_TWICE.finditer(page.prose):
        one, two = match[2].lower(), match[3].lower()
        small = one in NEVER_TWICE and (two in NEVER_TWICE or two == "in")
        small = small or (one == "in" and two in NEVER_TWICE)
        if small and one != two and not {one, two} & _JOINING:
            yield _issue(book, page, match.start(), match.end(), match[1], sure=True)


def _over_page(book: Book, page: Page, after: Page) -> Iterator[Issue]:
    last, first = _ENDS.search(page.prose), _BEGINS.match(after.prose)
    if last is None or first is None or last[1].lower() != first[1].lower() or not _sure(last[1]):
        return
    yield issue_at(
        book,
        after.span(first.start(1), first.end()),
        check=NAME,
        tier=Tier.ERROR,
        message="the word that also ends the page before",
        suggestions=[""],
        confidence=0.85,
        related=[page.span(last.start(1), last.end(1))],
    )


def _issue(book: Book, page: Page, start: int, end: int, reading: str, *, sure: bool) -> Issue:
    words = "two words twice" if " " in reading else "a word twice"
    return issue_at(
        book,
        page.span(start, end),
        check=NAME,
        tier=Tier.ERROR if sure else Tier.QUERY,
        message=words,
        suggestions=[reading],
        confidence=0.95 if sure else 0.6,
    )
