"""A list of three or more with its first comma missing.

What it finds
    Two nouns in the plural side by side before "and" and a third ("spiders beetles and bees"), the
    same with names that the book also has on their own ("Nell Otto and Pip"), and with verbs ("ran
    jumped and sang").

Why a reader minds
    The voice needs the comma to know that a list has begun.

Example
    The box was full of ribbons buttons and beads.

Better
    The box was full of ribbons, buttons and beads.

When to let it stand
    When the two words are one thing or one person: sports shoes and socks, Nell Otto and her brother.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from proofkit.analysis import Analysis, Token
from proofkit.book import Book, Page, Span
from proofkit.checks.check import Need
from proofkit.checks.commas._rows import Missing, rows
from proofkit.issue import Issue, Tier
from proofkit.settings import Settings
from proofkit.words.lists import word_set
from proofkit.words.vocabulary import Vocabulary

NAME = "commas/missing-in-list"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

# Plurals that stand before a noun as it were its adjective: sports day, clothes pegs.
_MODIFIERS = word_set(
    """
    sports clothes savings arms goods customs games ladies gentlemen means news series species
    sales woods glasses trousers scissors swimming always perhaps sometimes besides upstairs
    """
)
_TITLES = word_set(
    "Mr Mrs Ms Dr Miss Mister Uncle Aunt Auntie Cousin King Queen Prince Princess Father Mother Old Little"
)
# After these a participle may stand: got dressed, looked painted, sat huddled.
_LEANS_ON_NEXT = word_set(
    """
    was were had did is are has been went came got kept let made used gone looked felt seemed sounded
    became appeared remained stayed lay sat stood grew turned left found saw heard smelt smelled
    tasted wanted needed ordered said asked cried thought knew called named
    """
)
_ALONE = 2
_AUXILIARY_WITHIN = 3


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue each."""
    places = (place for page in book.pages for place in _on_page(book, page, analysis))
    yield from rows(book, NAME, places)


def _on_page(book: Book, page: Page, analysis: Analysis) -> Iterator[Missing]:
    tokens = analysis.page(page.number).tokens
    for at in range(1, len(tokens) - 3):
        first, second = tokens[at], tokens[at + 1]
        third = _after_joint(tokens, at + 2)
        if third is None or second.start != first.end + 1:
            continue
        if (
            _are_plurals(first, second, third)
            or _are_verbs(tokens, at, third)
            or _are_names(book, (first, second, third), analysis.vocabulary)
        ):
            yield Missing(
                span=page.span(first.start, second.end),
                reading=f"{first.text}, {second.text}",
                message="a comma between the first two of a list",
                tier=Tier.ERROR,
                confidence=0.75,
            )


def _after_joint(tokens: Sequence[Token], at: int) -> Token | None:
    """The word after "and" or "or", which a comma may come before."""
    if tokens[at].text == ",":
        at += 1
    if at + 1 < len(tokens) and tokens[at].text in ("and", "or"):
        return tokens[at + 1]
    return None


def _are_plurals(first: Token, second: Token, third: Token) -> bool:
    """Both end in s, so that neither can be one word's describing part."""
    words = (first.text, second.text)
    return (
        all(word.islower() and word.endswith("s") and not word.endswith("ss") for word in words)
        and first.tag == "NNS"
        and first.text not in _MODIFIERS
        # A verb in s after a plural would be a fault of its own; the model may take a noun for one.
        and (second.tag == "NNS" or (second.tag == "VBZ" and third.tag == "NNS"))
        and third.pos in ("NOUN", "ADJ", "PROPN", "DET")
    )


def _are_verbs(tokens: Sequence[Token], at: int, third: Token) -> bool:
    """Three in the past; the model takes some for participles where a comma is lost."""
    first, second = tokens[at], tokens[at + 1]
    three = (first, second, third)
    before = {token.lemma for token in tokens[max(0, at - _AUXILIARY_WITHIN) : at]}
    return (
        all(token.tag in ("VBD", "VBN") and token.text.islower() for token in three)
        and _LEANS_ON_NEXT.isdisjoint((first.text, second.text))
        and before.isdisjoint(("be", "have", "get"))
        and tokens[at - 1].pos in ("NOUN", "PROPN", "PRON", "ADV", "CCONJ")
    )


def _are_names(book: Book, three: Sequence[Token], vocabulary: Vocabulary) -> bool:
    """Three names, of which the first two also stand alone, as a first and a second name don't."""
    if not all(token.text[:1].isupper() and vocabulary.is_name(token.text) for token in three):
        return False
    first, second, _ = three
    if first.text in _TITLES or _times_together(book, first.text, second.text, vocabulary) > 1:
        return False
    return all(_times_alone(book, token.text, vocabulary) >= _ALONE for token in (first, second))


def _times_together(book: Book, first: str, second: str, vocabulary: Vocabulary) -> int:
    """How often the second stands right after the first: Reddy Fox is one."""
    use = vocabulary.use(second)
    before = [book.page(span.page).prose[: span.start] for span in use.spans] if use else []
    return sum(text.endswith(f"{first} ") for text in before)


def _times_alone(book: Book, name: str, vocabulary: Vocabulary) -> int:
    """How often a name stands inside sentences with no capital right before or after it."""
    use = vocabulary.use(name)
    return sum(_is_alone(book, span) for span in use.spans) if use else 0


def _is_alone(book: Book, span: Span) -> bool:
    text = book.page(span.page).prose
    before, after = text[: span.start].rstrip(" "), text[span.end : span.end + 2]
    last = before.rpartition(" ")[2]
    return not (last[:1].isupper() and last[-1:].isalpha()) and not after.strip()[:1].isupper()
