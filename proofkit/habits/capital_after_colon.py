"""What follows a colon: a capital or a small letter.

British books go on in lower case (New Hart's Rules); Chicago has a capital where two or more sentences
follow. Some houses give a capital to a whole sentence and none to a phrase, so the two are told apart.
"""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterator

from proofkit.analysis import Analysis, Token
from proofkit.book import Book, Page, Span
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage
from proofkit.words.dictionary import dictionary
from proofkit.words.reporting import has_reporting_verb

MATTER = "capital-after-colon"
FORMS = ("lower case", "capital")

_COLON = re.compile(r"(?<=[\w”’\"')]): (?P<word>[^\W\d_]+)(?P<after>[ ,;.!?][^\W\d_]?|[’'\-])")
_SENTENCE = re.compile(r"[.!?\n]")
_BEFORE = 60  # characters before the colon that may say whose words follow
_FINITE = ("VBD", "VBZ", "VBP", "MD")
# What these bring in is shown as it was written.
_SHOWN = re.compile(
    r"\b(?:sign|note|notice|letter|label|poster|card|words?|read|wrote|sang|song|title|called|thought"
    r"|wondered|this|said)\b",
    re.IGNORECASE,
)
_SPEAKER = re.compile(r"(?:^|\n)[\w’'.]+(?: [\w’'.]+){0,2}$")


def usage(book: Book, analysis: Analysis) -> Usage:
    """Every colon in a sentence with words of the story after it; each place is the word's first letter."""
    return usage_of(MATTER, ((form, span) for form, span, _ in _places(book, analysis)))


def after_clauses(book: Book, analysis: Analysis) -> Usage:
    """Where a whole sentence follows. A capital on a phrase would go for a sentence too."""
    return usage_of(
        MATTER,
        (
            (form, span)
            for form, span, clause in _places(book, analysis)
            if clause or form == "capital"
        ),
    )


def after_phrases(book: Book, analysis: Analysis) -> Usage:
    """Where less than a sentence follows. A small letter on a sentence would go for a phrase too."""
    return usage_of(
        MATTER,
        (
            (form, span)
            for form, span, clause in _places(book, analysis)
            if not clause or form == "lower case"
        ),
    )


def _places(book: Book, analysis: Analysis) -> Iterator[tuple[str, Span, bool]]:
    for page in book.pages:
        tokens = analysis.page(page.number).tokens
        for match in _COLON.finditer(page.prose):
            start = match.start("word")
            if _says_nothing(page, match, analysis) or _is_name(tokens, start, analysis):
                continue
            form = FORMS[match["word"][0].isupper()]
            yield form, page.span(start, start + 1), _is_clause(page.prose, tokens, start)


def _says_nothing(page: Page, match: re.Match[str], analysis: Analysis) -> bool:
    """A word that has its capital anyway, words in capitals, and what is shown as somebody wrote it."""
    word = match["word"]
    known = dictionary(analysis.english)
    has_its_own = word == "I" or word not in (word.lower(), word.capitalize())
    if has_its_own or analysis.vocabulary.is_name(word) or word.lower() not in known.words:
        return True
    if word[0].isupper() and match["after"][-1:].isupper() and match["after"] != " I":
        return True
    before = page.prose[max(0, match.start() - _BEFORE) : match.start()]
    sentence = _SENTENCE.split(before)[-1]
    if has_reporting_verb(sentence) or _SHOWN.search(sentence) or _SPEAKER.search(before):
        return True
    return any(start <= match.start("word") < end for start, end in page.emphasis)


def _is_name(tokens: tuple[Token, ...], start: int, analysis: Analysis) -> bool:
    """Whether the model takes the word for a name and the book has it with its capital only."""
    at = bisect_left(tokens, start, key=lambda token: token.start)
    if at == len(tokens) or tokens[at].tag not in ("NNP", "NNPS"):
        return False
    use = analysis.vocabulary.use(tokens[at].text)
    return use is None or not use.lower


def _is_clause(prose: str, tokens: tuple[Token, ...], start: int) -> bool:
    """Whether a verb of its own makes a sentence of what follows; where nothing is known, it does."""
    first = bisect_left(tokens, start, key=lambda token: token.start)
    if first == len(tokens):
        return True
    stop = _SENTENCE.search(prose, start)
    end = stop.start() if stop else len(prose)
    own = [token for token in tokens[first:] if token.start < end]
    return own[0].tag == "VB" or any(token.tag in _FINITE for token in own)
