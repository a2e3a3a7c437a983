"""How a book uses a common noun that may be a character's name: Jackal, the jackal, the Jackal."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass, field

from proofkit.analysis import Analysis, PageAnalysis
from proofkit.book import Book, Page, Span
from proofkit.checks.consistency._noun_phrase import Edge, joined_before, left_edge
from proofkit.words.frequency import zipf
from proofkit.words.lists import word_set
from proofkit.words.vocabulary import opens_sentence

_HYPHENS = ("-", "‑")
_SINGULAR_VERBS = frozenset({"was", "is", "has", "isn't", "wasn't"})
_RAREST_COMMON_NOUN = 2.5
_KINDS = ("kind", "sort", "type", "bit", "piece")
NEVER_A_ROLE = word_set(
    """
    god lord heaven sun moon earth north south east west mother father
    """
)

# Bare in lower case these are common nouns all the same: snow fell, the smell of honey.
MASSES = word_set(
    """
    school church town bed home court class camp college market sea prison hospital work play
    breakfast lunch dinner supper
    snow rain hail wind storm thunder lightning fire smoke water ice frost fog mist cloud
    sand mud dust earth stone wood gold silver iron glass paper silk wool cotton honey sugar
    salt pepper ginger cinnamon butter cheese bread milk jam cake toffee fudge coffee tea
    pumpkin rice corn night day dawn dusk spring summer autumn winter light darkness love
    hope joy faith grace death sleep fear anger luck time silence music magic justice truth
    beauty
    """
)


@dataclass(slots=True, kw_only=True)
class RoleUses:
    """Every place of one word, by article and capital. Capitals at a sentence's start are apart.

    ``bare_start``: without an article at a sentence's start, where the capital proves nothing but
    the missing article does: a common noun would have one.
    """

    bare_capital: list[Span] = field(default_factory=list)
    bare_lower: list[Span] = field(default_factory=list)
    bare_start: list[Span] = field(default_factory=list)
    the_capital: list[Span] = field(default_factory=list)
    the_lower: list[Span] = field(default_factory=list)

    @property
    def as_name(self) -> int:
        """How often it does a name's work, capital and all."""
        return len(self.bare_capital) + len(self.bare_start)


def role_uses(book: Book, analysis: Analysis) -> Mapping[str, RoleUses]:
    """The uses of every word that has a capital inside sentences somewhere and is a common noun."""
    words = {
        use.word
        for use in analysis.vocabulary.uses.values()
        if use.capitals_inside
        and not _is_plural(use.word)
        and use.word not in NEVER_A_ROLE
        and use.word not in MASSES
        and zipf(use.word) >= _RAREST_COMMON_NOUN
    }
    uses: dict[str, RoleUses] = defaultdict(RoleUses)
    for page in book.pages:
        own = analysis.page(page.number)
        for at, token in enumerate(own.tokens):
            word = token.text.lower()
            if word in words and not (token.text.isupper() and len(token.text) > 1):
                _count(uses[word], page, own, at)
    return uses


def stands_alone(own: PageAnalysis, at: int) -> bool:
    """Whether the noun has no article, owner or adjective, and describes no other: Crow flew off."""
    joined = joined_before(own, at)
    return (
        left_edge(own, at) is Edge.BARE
        and not _is_part_of_a_longer_name(own, at)
        and (joined is None or own.tokens[joined].text[0].isupper())
    )


def _is_plural(word: str) -> bool:
    return word.endswith("s") and not word.endswith("ss")


def _count(uses: RoleUses, page: Page, own: PageAnalysis, at: int) -> None:
    edge = left_edge(own, at)
    if _is_part_of_a_longer_name(own, at):
        return
    if edge is Edge.THE:
        _count_with_the(uses, page, own, at)
    elif edge is Edge.BARE and not is_address(own, at):
        _count_bare(uses, page, own, at)
    elif edge is Edge.DESCRIBED and own.tokens[at].text.islower() and _is_subject(own, at):
        # Clever rabbit ran: a common noun would need an article here too.
        uses.bare_lower.append(page.span(own.tokens[at].start, own.tokens[at].end))


def _count_with_the(uses: RoleUses, page: Page, own: PageAnalysis, at: int) -> None:
    """Right after "the"; not King of the Beasts, all the beasts, or a title: The Clock."""
    token, article = own.tokens[at], own.tokens[at - 1]
    before = own.tokens[at - 2].text.lower() if at > 1 else ""
    if article.text.lower() != "the" or before in ("of", "all"):
        return
    if article.text == "The" and not opens_sentence(page.prose, article.start):
        return
    span = page.span(article.start, token.end)
    (uses.the_capital if token.text[0].isupper() else uses.the_lower).append(span)


def _count_bare(uses: RoleUses, page: Page, own: PageAnalysis, at: int) -> None:
    token = own.tokens[at]
    span = page.span(token.start, token.end)
    if token.text[0].isupper():
        opens = opens_sentence(page.prose, token.start)
        (uses.bare_start if opens else uses.bare_capital).append(span)
    elif _does_a_nouns_work(own, at):
        uses.bare_lower.append(span)


def _is_part_of_a_longer_name(own: PageAnalysis, at: int) -> bool:
    """Jackal Rock, jackal skin, jackal-headed, the Jackal of the Hills."""
    tokens = own.tokens
    if at and tokens[at - 1].text in _HYPHENS:
        return True
    after = [token.text for token in tokens[at + 1 : at + 4]]
    if not after or tokens[at + 1].start - tokens[at].end > 1:
        return False
    if after[0] == "of":
        return any(word[0].isupper() for word in after[1:])
    return after[0] in _HYPHENS or (
        tokens[at + 1].pos in ("NOUN", "PROPN") and tokens[at + 1].tag != "POS"
    )


def is_address(own: PageAnalysis, at: int) -> bool:
    """Spoken to, marks on both sides: "Here I am, Queen!" Anyone may be called by what he is."""
    before = own.tokens[at - 1].text if at else ""
    after = own.tokens[at + 1].text if at + 1 < len(own.tokens) else ""
    return before in tuple(",\"'“‘") and after in tuple(",.!?:;")


def _does_a_nouns_work(own: PageAnalysis, at: int) -> bool:
    """Whether a bare lower-case word is the subject or object of a verb, as only a name can be."""
    token = own.tokens[at]
    if _is_subject(own, at):
        return True
    if token.pos not in ("NOUN", "PROPN") or token.tag in ("NNS", "NNPS"):
        return False
    if at > 1 and own.tokens[at - 1].text == "of" and own.tokens[at - 2].lemma in _KINDS:
        return False
    return token.dep in ("nsubj", "dobj", "pobj", "dative") and joined_before(own, at) is None


def _is_subject(own: PageAnalysis, at: int) -> bool:
    """Whether a finite verb follows; after "and" one that can only have a single subject."""
    after = own.tokens[at + 1] if at + 1 < len(own.tokens) else None
    if after is None or own.tokens[at].pos not in ("NOUN", "PROPN"):
        return False
    if joined_before(own, at) is not None:
        return after.text.lower() in _SINGULAR_VERBS
    return after.tag in ("VBD", "VBZ", "MD") and not _is_described_by_noun(own, at)


def _is_described_by_noun(own: PageAnalysis, at: int) -> bool:
    return at > 0 and own.tokens[at - 1].pos not in (
        "ADJ",
        "ADV",
        "CCONJ",
        "SCONJ",
        "PUNCT",
        "VERB",
    )
