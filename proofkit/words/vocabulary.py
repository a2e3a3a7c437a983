"""The book's own words: how often, how spelt and where each one stands."""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Mapping
from dataclasses import dataclass

from proofkit.book import Book, Span

# Letters of any script, joined by apostrophes or hyphens inside the word.
WORD = re.compile(r"[^\W\d_]+(?:['’\-‑][^\W\d_]+)*")
_OPENERS = " \t\n\"'“‘(«[–—-…"
_CLOSERS = "”’)»"
# The point of "Mr. Tock" ends no sentence.
_ENDS_IN_TITLE = re.compile(r"(?<![\w'’])(?:Mr|Mrs|Ms|Dr|Prof|St|Capt)\.$")
_LONGEST_TITLE = 6  # characters, with the one before it
_ENDERS = ".!?:…"  # and the empty string: a text's own beginning


@dataclass(frozen=True, slots=True, kw_only=True)
class Use:
    """One word (in lower case) in one book.

    ``forms``            each way it is written, with how often
    ``spans``            every place, in the book's order
    ``capitals_inside``  how often it has a capital where a sentence doesn't ask for one
    """

    word: str
    forms: Mapping[str, int]
    spans: tuple[Span, ...]
    capitals_inside: int

    @property
    def count(self) -> int:
        """How often the word stands in the story."""
        return len(self.spans)

    @property
    def lower(self) -> int:
        """How often it is written wholly in lower case."""
        return self.forms.get(self.word, 0)

    @property
    def usual_form(self) -> str:
        """The way the book writes it most often."""
        return max(self.forms, key=lambda form: (self.forms[form], form))

    @property
    def pages(self) -> tuple[int, ...]:
        """The pages it stands on, each once, in order."""
        return tuple(dict.fromkeys(span.page for span in self.spans))


@dataclass(frozen=True, slots=True, kw_only=True)
class Vocabulary:
    """Every word of a book's story, by its lower-case form."""

    uses: Mapping[str, Use]

    def use(self, word: str) -> Use | None:
        """The word's use, whatever its capitals here, or None if the story lacks it."""
        return self.uses.get(word.lower())

    def count(self, word: str) -> int:
        """How often the story has the word."""
        use = self.use(word)
        return use.count if use else 0

    def is_name(self, word: str) -> bool:
        """Whether the book treats the word as a name: capitals inside sentences, seldom lower case."""
        use = self.use(word)
        return use is not None and use.capitals_inside > use.lower

    @property
    def names(self) -> tuple[Use, ...]:
        """All words that the book treats as names, in alphabetical order."""
        return tuple(use for word, use in sorted(self.uses.items()) if self.is_name(word))


def vocabulary_of(book: Book) -> Vocabulary:
    """Count every word of the book's story. Possessive 's is left off: Goose's counts as Goose."""
    forms: dict[str, Counter[str]] = defaultdict(Counter)
    spans: dict[str, list[Span]] = defaultdict(list)
    capitals: Counter[str] = Counter()
    for page in book.pages:
        prose = page.prose
        for match in WORD.finditer(prose):
            form = _without_possessive(match.group())
            word = form.lower()
            forms[word][form] += 1
            spans[word].append(page.span(match.start(), match.start() + len(form)))
            if (
                form[0].isupper()
                and not form.isupper()
                and not opens_sentence(prose, match.start())
            ):
                capitals[word] += 1
    return Vocabulary(
        uses={
            word: Use(
                word=word,
                forms=dict(forms[word]),
                spans=tuple(spans[word]),
                capitals_inside=capitals[word],
            )
            for word in spans
        }
    )


def opens_sentence(text: str, at: int) -> bool:
    """Whether the word at ``at`` may take a capital by its place alone: a sentence, a speech, a line."""
    before = at
    while before and text[before - 1] in _OPENERS:
        before -= 1
    skipped = text[before:at]
    # After “Stop!” a capital may open a sentence; after “Stop,” it can't.
    last = text[max(0, before - 2) : before].rstrip(_CLOSERS)
    if _ENDS_IN_TITLE.search(text[max(0, before - _LONGEST_TITLE) : before]):
        return False
    return last[-1:] in _ENDERS or "\n" in skipped or skipped.strip() != ""


def _without_possessive(form: str) -> str:
    return form[:-2] if form[-2:] in ("'s", "’s") and len(form) > 2 else form
