"""Who is spoken of where: names, nouns for people and animals, and pronouns, outside speech."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from proofkit.analysis import Analysis, PageAnalysis, Token
from proofkit.book import Book, Page, Span
from proofkit.habits.tokens import token_at
from proofkit.words.people import OWN, pronoun_of
from proofkit.words.quotations import quotations_of

PRONOUNS = {
    "he": "he", "him": "he", "his": "he", "himself": "he",
    "she": "she", "her": "she", "hers": "she", "herself": "she",
    "it": "it", "its": "it", "itself": "it",
}  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Trace:
    """One word of the story that means somebody.

    ``at``        its place among the page's tokens; of a name, its last word's
    ``sentence``  the number of its sentence on the page
    ``who``       whom it names, as ``people_of`` was told; the noun itself; "" for a pronoun
    ``sex``       "he" or "she" if the word asks for it, "" if it may be either, "it" for an it
    """

    span: Span
    at: int
    sentence: int
    who: str
    sex: str

    @property
    def is_pronoun(self) -> bool:
        """Whether it is he, her, its or the like."""
        return not self.who


def people_of(
    book: Book, analysis: Analysis, named: Mapping[Span, tuple[str, str]]
) -> Iterator[tuple[Page, tuple[Trace, ...]]]:
    """Each page with its traces in order. ``named`` gives for a name's place who it is, and the sex."""
    spoken: dict[int, list[Span]] = defaultdict(list)
    for span in quotations_of(book).spoken:
        spoken[span.page].append(span)
    by_page: dict[int, dict[int, tuple[Span, str, str]]] = defaultdict(dict)
    for span, (who, sex) in named.items():
        own = analysis.page(span.page)
        at = token_at(own, span.end)
        if at is not None:
            by_page[span.page][at] = (span, who, sex)
    for page in book.pages:
        own = analysis.page(page.number)
        said = _inside(own, spoken[page.number])
        traces = _traces(page, own, by_page[page.number])
        yield page, tuple(trace for trace in traces if not said[trace.at])


def bound_to(own: PageAnalysis, pronoun: Trace, inside: Sequence[Trace]) -> Trace | None:
    """The subject that the grammar ties the pronoun to: Anna shook her head, Tom hurt himself."""
    token = own.tokens[pronoun.at]
    word = token.text.lower()
    if word.endswith("self"):
        verb = verb_over(own, pronoun.at)
    elif token.dep == "poss" and own.tokens[token.head].text.lower() in OWN:
        if own.tokens[token.head].dep not in ("dobj", "pobj"):
            return None
        verb = verb_over(own, token.head)
    else:
        return None
    subjects = [
        trace
        for trace in inside
        if not trace.is_pronoun
        and own.tokens[trace.at].dep == "nsubj"
        and own.tokens[trace.at].head == verb
        and trace.at < pronoun.at
    ]
    return subjects[0] if len(subjects) == 1 else None


def verb_over(own: PageAnalysis, at: int) -> int:
    """The nearest verb that the word hangs on."""
    for _ in range(4):
        at = own.tokens[at].head
        if own.tokens[at].pos in ("VERB", "AUX"):
            break
    return at


def _inside(own: PageAnalysis, spoken: list[Span]) -> list[bool]:
    """For every token, whether it stands in speech."""
    said = [False] * len(own.tokens)
    stretches = iter(sorted(spoken))
    stretch = next(stretches, None)
    for at, token in enumerate(own.tokens):
        while stretch is not None and stretch.end <= token.start:
            stretch = next(stretches, None)
        said[at] = stretch is not None and stretch.start <= token.start
    return said


def _traces(
    page: Page, own: PageAnalysis, names: Mapping[int, tuple[Span, str, str]]
) -> Iterator[Trace]:
    covered = {at for at, (span, _, _) in names.items() for at in _tokens_of(own, at, span)}
    for number, sentence in enumerate(own.sentences):
        for at in range(sentence.first, sentence.last):
            token = own.tokens[at]
            span = page.span(token.start, token.end)
            if at in names:
                name, who, sex = names[at]
                yield Trace(span=name, at=at, sentence=number, who=who, sex=sex)
            elif (pronoun := PRONOUNS.get(token.text.lower())) is not None:
                yield Trace(span=span, at=at, sentence=number, who="", sex=pronoun)
            elif at not in covered and (asked := _sex(token)) is not None:
                yield Trace(span=span, at=at, sentence=number, who=token.lemma.lower(), sex=asked)


def _tokens_of(own: PageAnalysis, at: int, span: Span) -> Iterator[int]:
    while at >= 0 and own.tokens[at].start >= span.start:
        yield at
        at -= 1


def _sex(token: Token) -> str | None:
    if token.pos == "PROPN" and token.dep in ("nsubj", "nsubjpass"):
        return ""  # somebody named but once, at a sentence's beginning
    if token.pos not in ("NOUN", "PROPN", "PRON", "ADJ") or token.tag in ("NNS", "NNPS"):
        return None
    return pronoun_of(token.lemma.lower())
