"""Echoes: the same uncommon word twice within a breath, though nothing is made of it.

Silent where a word comes back on purpose: it belongs to the book (three times or more), names a person
or a thing, is said twice on the spot (“huge, huge”), comes back in another form, stands in speech or in two sentences built alike.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence

from proofkit.analysis import Analysis, Token
from proofkit.book import Book, Page
from proofkit.reading.known_words import is_thing
from proofkit.reading.rhythm.place import RhythmPlace, Stumble, prose_paragraphs
from proofkit.words.frequency import zipf
from proofkit.words.quotations import Quotations

_BREATH = 25  # words from the one to the other
_ON_THE_SPOT = 3  # words: nearer ones are doubled for effect
_COMMON = 4.4  # Zipf frequency; nobody hears a commoner word come back
_THEME = 3  # uses in the book
_TAGS = ("VB", "JJ", "RB", "NN")


def echoes(book: Book, analysis: Analysis, speech: Quotations) -> Iterator[RhythmPlace]:
    """Every echo, its two words as ``words``. Without the language model there are none."""
    uses: dict[str, int] = defaultdict(int)
    for number in range(1, len(book.pages) + 1):
        for token in analysis.page(number).tokens:
            uses[token.lemma.lower()] += 1
    for page, start, end in prose_paragraphs(book):
        tokens = [t for t in analysis.page(page.number).tokens if start <= t.start < end]
        words = [token for token in tokens if token.text[0].isalpha()]
        yield from _in_paragraph(page, words, uses, speech)


def _in_paragraph(
    page: Page, words: Sequence[Token], uses: dict[str, int], speech: Quotations
) -> Iterator[RhythmPlace]:
    last: dict[str, int] = {}
    for at, token in enumerate(words):
        lemma = token.lemma.lower()
        if uses[lemma] >= _THEME or not _is_heard(token, lemma):
            continue
        before = last.get(lemma)
        last[lemma] = at
        if before is None or not _ON_THE_SPOT < at - before <= _BREATH:
            continue
        if (
            token.text == words[before].text
            and not _is_meant(words, before, at)
            and not _spoken(page, (words[before], token), speech)
        ):
            yield RhythmPlace(
                kind=Stumble.ECHO,
                span=page.span(words[before].start, token.end),
                words=tuple(page.span(each.start, each.end) for each in (words[before], token)),
            )


def _is_heard(token: Token, lemma: str) -> bool:
    return (
        token.tag.startswith(_TAGS)
        and not token.tag.startswith("NNP")
        and token.text.islower()
        and len(lemma) > 3
        and zipf(lemma) < _COMMON
        and not (token.tag.startswith("NN") and is_thing(lemma))
    )


def _is_meant(words: Sequence[Token], first: int, second: int) -> bool:
    """Whether the words beside them come back as well: “all the splashing and all the splashing”."""
    beside = [
        {words[place].text.lower() for place in (at - 1, at + 1) if 0 <= place < len(words)}
        for at in (first, second)
    ]
    return not beside[0].isdisjoint(beside[1])


def _spoken(page: Page, pair: Sequence[Token], speech: Quotations) -> bool:
    return any(speech.speaks(page.number, token.start) for token in pair)
