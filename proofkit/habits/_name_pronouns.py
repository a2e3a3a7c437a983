"""Which pronouns can only mean one character: he, she, it or they, where the grammar leaves no other."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence

from proofkit.analysis import Analysis, PageAnalysis, Sentence, Token
from proofkit.book import Span
from proofkit.habits._name_mentions import Mention

_PRONOUNS = {
    "he": "he", "him": "he", "his": "he", "himself": "he",
    "she": "she", "her": "she", "hers": "she", "herself": "she",
    "it": "it", "its": "it", "itself": "it",
    "they": "they", "them": "they", "their": "they", "theirs": "they", "themselves": "they",
}  # fmt: skip


def pronouns_of(
    analysis: Analysis, people: Iterable[Sequence[Mention]], mentions: Sequence[Mention]
) -> Mapping[Span, Mapping[str, tuple[Span, ...]]]:
    """For each character, by its first place, the pronouns that mean it and where they stand."""
    owner = {mention.span: group[0].span for group in people for mention in group}
    found: dict[Span, dict[str, list[Span]]] = defaultdict(lambda: defaultdict(list))
    by_page: dict[int, list[Span]] = defaultdict(list)
    for mention in mentions:
        by_page[mention.span.page].append(mention.span)
    for number, spans in by_page.items():
        own = analysis.page(number)
        for sentence in own.sentences:
            inside = [s for s in spans if sentence.start <= s.start and s.end <= sentence.end]
            who = {owner.get(span) for span in inside}
            if len(who) == 1 and (one := who.pop()) is not None:
                for pronoun, span in _pronouns(own, sentence, number, inside[0]):
                    found[one][pronoun].append(span)
    return {
        one: {pronoun: tuple(spans) for pronoun, spans in own.items()} for one, own in found.items()
    }


def _pronouns(
    own: PageAnalysis, sentence: Sentence, number: int, name: Span
) -> Iterable[tuple[str, Span]]:
    """The he's and she's after the name, in a sentence with no other noun for a person."""
    tokens = own.tokens[sentence.first : sentence.last]
    if any(_may_be_meant(token) for token in tokens):
        return
    for token in tokens:
        pronoun = _PRONOUNS.get(token.text.lower())
        if pronoun in ("he", "she") and token.start > name.end and token.dep in ("nsubj", "poss"):
            yield pronoun, Span(page=number, start=token.start, end=token.end)


def _may_be_meant(token: Token) -> bool:
    """Another noun that does something."""
    return token.pos == "NOUN" and token.dep in ("nsubj", "nsubjpass", "dative")
