"""One word of a page, and what stands around it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from proofkit.analysis import Analysis, Token
from proofkit.book import Book, Page, Span
from proofkit.words.vocabulary import opens_sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """One token of a page."""

    page: Page
    tokens: Sequence[Token]
    at: int

    @property
    def token(self) -> Token:
        return self.tokens[self.at]

    @property
    def opens(self) -> bool:
        return opens_sentence(self.page.prose, self.token.start)

    @property
    def span(self) -> Span:
        return self.page.span(self.token.start, self.token.end)

    @property
    def before(self) -> str:
        token = self.near(-1)
        return token.text.lower() if token else ""

    def near(self, by: int) -> Token | None:
        """The token so many places on, if only a space parts it from its neighbour."""
        place = self.at + by
        if not 0 <= place < len(self.tokens):
            return None
        first, second = sorted((self.at, place))
        between = self.page.prose[self.tokens[first].end : self.tokens[second].start]
        return self.tokens[place] if between == " " else None

    def alone(self) -> bool:
        """Whether no hyphen or apostrophe joins it to a longer word."""
        text, token = self.page.prose, self.token
        around = text[max(0, token.start - 1) : token.start] + text[token.end : token.end + 1]
        owned = text[token.end : token.end + 2] in ("'s", "’s")
        return not set(around) & set("-‑_@/#" if owned else "-‑_@/#'’‘")


def places_of(book: Book, analysis: Analysis, word: str) -> Iterator[Place]:
    """Every place of the word, given in lower case, whatever its capitals."""
    use = analysis.vocabulary.use(word)
    for number in use.pages if use else ():
        tokens = analysis.page(number).tokens
        for at, token in enumerate(tokens):
            if token.text.lower() == word:
                yield Place(page=book.page(number), tokens=tokens, at=at)


def every_place(book: Book, analysis: Analysis) -> Iterator[Place]:
    """Every word of the book that another follows."""
    for page in book.pages:
        tokens = analysis.page(page.number).tokens
        for at in range(len(tokens) - 1):
            yield Place(page=page, tokens=tokens, at=at)
