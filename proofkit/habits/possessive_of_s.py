"""James's or James': the possessive of one person's name that ends in s.

New Hart's Rules and The Chicago Manual of Style ask for 's where it is spoken (James's), and Hart for the
bare apostrophe with names of antiquity (Moses'), which are left out here; newspapers mostly leave the s
off. A family (the Tibbses' cat) is a plural and stands apart.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage
from proofkit.words.dictionary import dictionary
from proofkit.words.lists import word_set
from proofkit.words.quotations import quotations_of
from proofkit.words.vocabulary import Vocabulary

MATTER = "possessive-of-s"
FORMS = ("James's", "James'")

_OWNER = re.compile(
    r"(?<![\w'’-])(?P<name>[A-Z][^\W\d_]+s)(?P<mark>['’])(?P<s>s?)(?![\w'’])(?P<bare>(?=\s+[a-z]))?"
)
_FAMILY = re.compile(r"\b(?:[Tt]he|[Aa]ll|[Bb]oth|[Tt]wo|[Tt]hree|[Oo]ther)(?: \w+)? $")
_ANTIQUITY = word_set(
    "moses jesus achilles ulysses hercules socrates mars venus odysseus zeus midas brutus"
)
_BEFORE = 24  # characters


def usage(book: Book, analysis: Analysis) -> Usage:
    """Every such possessive, the name with its apostrophe; one without s counts only before a word."""
    words = dictionary(analysis.english).words
    places = _places(book, analysis.vocabulary)
    return usage_of(MATTER, ((form, s) for form, s in places if not _is_plural(book, s, words)))


def in_form(owner: str, form: str) -> str:
    """The possessive ("James'") in the other form or in its own."""
    bare = re.sub(r"(?<=['’])s$", "", owner)
    return bare + "s" if form == FORMS[0] else bare


def _places(book: Book, vocabulary: Vocabulary) -> Iterator[tuple[str, Span]]:
    closing = {
        quotation.closing.span for quotation in quotations_of(book).singles if quotation.closing
    }
    for page in book.pages:
        for match in _OWNER.finditer(page.prose):
            name, before = (
                match["name"],
                page.prose[max(0, match.start() - _BEFORE) : match.start()],
            )
            if not _is_a_person(name, vocabulary) or _FAMILY.search(before):
                continue
            if match["s"]:
                yield FORMS[0], page.span(*match.span())
            elif match["bare"] is not None and page.span(*match.span("mark")) not in closing:
                yield FORMS[1], page.span(*match.span())


def _is_plural(book: Book, span: Span, words: frozenset[str]) -> bool:
    """Swift Enterprises', the Giants': a word of many."""
    return re.split("['’]", book.quote(span).lower())[0] in words


def _is_a_person(name: str, vocabulary: Vocabulary) -> bool:
    """Whether the book has the name by itself, and not as the plural of another."""
    use = vocabulary.use(name)
    alone = use is not None and not use.lower and use.usual_form[0].isupper()
    return alone and name.lower() not in _ANTIQUITY and not vocabulary.is_name(name[:-1])
