"""Miss Pell in one place, Mrs Pell in another.

What it finds
    A name that has one title all through the book and another once: Mrs Pell, Miss Pell; Uncle Bo,
    Aunt Bo. And a Mr Tock whom the story, outside what is said, once calls Tock. Mr and Mrs Tock are a
    couple.

Why a reader minds
    A small child takes the name with its title for the whole name, and asks who the new one is.

Example
    Mrs Pell baked a pie. Mrs Pell cut the pie. "Eat!" said Mrs Pell. Then Miss Pell ate it.

Better
    Mrs Pell baked a pie. Mrs Pell cut the pie. "Eat!" said Mrs Pell. Then Mrs Pell ate it.

When to let it stand
    When they are two people: a mother and her daughter, a doctor and his brother.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.dictionary import dictionary
from proofkit.words.quotations import quotations_of
from proofkit.words.titles import pronoun_of_title
from proofkit.words.vocabulary import opens_sentence

NAME = "consistency/name-with-other-title"
NEEDS = frozenset({Need.TEXT})

_TITLED = re.compile(
    r"(?<![\w'’-])(Mr|Mrs|Miss|Ms|Dr|Doctor|Professor|Captain|Uncle|Aunt|Auntie|Aunty|Granny|Grandma|"
    r"Grandpa|Nana|King|Queen|Prince|Princess|Sir|Lady|Lord|Farmer)(\.?) ([A-Z][^\W\d_]+)"
)
_FORMAL = frozenset({"Mr", "Mrs", "Miss", "Ms", "Dr", "Doctor", "Professor"})
_FAMILY_NAMES = _FORMAL | {"Captain", "Farmer", "Lord", "Lady", "Sir"}
_OFTEN = 2
_TIMES = 3
_MOST = 2
_NAMED_AFTER = re.compile(r"(?:[A-Z][\w'’.]*|\b(?:the|a|an|old|little|this|that)) \Z")
_BEFORE = 20  # characters
Titled = Mapping[str, tuple[Span, ...]]


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for each name, on the title or the bareness that it has seldom."""
    words = dictionary(analysis.english).words
    for name, titled in _names(book).items():
        usual = max(titled, key=lambda title: len(titled[title]))
        count = len(titled[usual])
        if count < _OFTEN:
            continue
        for title, spans in titled.items():
            if title != usual and _is_slip(len(spans), count) and _can_be_one(usual, title):
                yield _issue(book, spans, book.quote(titled[usual][0]), count, 0.5)
        bare = _bare(book, name, titled, words)
        if usual in _FORMAL and len(bare) == 1 and count >= _TIMES:
            yield _issue(book, bare, book.quote(titled[usual][0]), count, 0.4)


def _is_slip(seldom: int, usual: int) -> bool:
    return seldom <= _MOST and usual >= 2 * seldom


def _names(book: Book) -> dict[str, Titled]:
    """For each name, the places of each of its titles, the name included."""
    found: dict[str, dict[str, list[Span]]] = defaultdict(lambda: defaultdict(list))
    for page in book.pages:
        for match in _TITLED.finditer(page.prose):
            found[match[3]][match[1]].append(page.span(*match.span()))
    return {name: {t: tuple(s) for t, s in titled.items()} for name, titled in found.items()}


def _can_be_one(title: str, other: str) -> bool:
    """Whether the two would be one person's: not a couple, nor a man and a woman of one family."""
    if {title, other} <= _FAMILY_NAMES:
        hers = [pronoun_of_title(t.lower()) == "she" for t in (title, other)]
        return hers[0] == hers[1]
    # Of first names the other sex is the likelier slip: Uncle Bo, Aunt Bo.
    return not {title, other} & _FAMILY_NAMES


def _bare(book: Book, name: str, titled: Titled, words: frozenset[str]) -> tuple[Span, ...]:
    """The name without any title before it or name beside it, in what the story tells.

    A name that is also a word (Mr Black) may open a sentence as that word.
    """
    quotations = quotations_of(book)
    covered = {(span.page, span.end) for spans in titled.values() for span in spans}
    alone = re.compile(rf"(?<![\w'’-]){re.escape(name)}(?![\w-])(?! [A-Z])(?!['’]s? [A-Z])")
    return tuple(
        page.span(*match.span())
        for page in book.pages
        for match in alone.finditer(page.prose)
        if (page.number, match.end()) not in covered
        and not _NAMED_AFTER.search(page.prose, max(0, match.start() - _BEFORE), match.start())
        and not quotations.speaks(page.number, match.start())
        and not (name.lower() in words and opens_sentence(page.prose, match.start()))
    )


def _issue(
    book: Book, spans: tuple[Span, ...], better: str, count: int, confidence: float
) -> Issue:
    return issue_at(
        book,
        spans[0],
        check=NAME,
        tier=Tier.QUERY,
        message=f"elsewhere the book has {better} ({count} times)",
        suggestions=(better,),
        confidence=confidence,
        related=spans[1:],
    )
