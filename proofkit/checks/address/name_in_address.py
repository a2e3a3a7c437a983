"""No comma beside the name of the one who is spoken to.

What it finds
    "Hello Crow!", "Help me Mum!", "Thank you my son." Inside speech only: a greeting or an
    exclamation before a name; a name, or a word such as Mum or "my child", at the end of what is
    said to it; a name at the beginning before "you", "I", "please" or a question. A kinship word that
    stands for a name gets its capital in the same stroke.

Why a reader minds
    The comma is the little turn of the head. "Let's eat, Grandma" and "Let's eat Grandma" are two
    stories.

Example
    "Good morning Goose!"

Better
    "Good morning, Goose!"

When to let it stand
    In verse that wants no pause, and where a publisher sets "Oh no" and "Yes sir" as one breath.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass

from proofkit.analysis import Analysis, PageAnalysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.dictionary import dictionary
from proofkit.words.quotations import quotations_of

NAME = "address/name-in-address"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_KIN_WORDS = """
mother father mum mom mummy mommy mama mamma dad daddy papa grandmother grandfather grandma
grandpa granny gran grandad granddad nana auntie aunty
"""
_KIN = frozenset(_KIN_WORDS.split())
_NOT_NAMES_WORDS = """
God Lord Will May Heavens Goodness English I Santa Sunday Monday Friday Saturday
"""
_NOT_NAMES = frozenset(_NOT_NAMES_WORDS.split())
# Who may be spoken to: a name with or without a title, a kinship word, "my dear friend".
_SPOKEN_TO = re.compile(
    r"(?:(?:Mr|Mrs|Ms|Dr|Miss|Uncle|Aunt|Auntie|King|Queen|Prince|Princess|Old|Little|Big|Mother|Father)\.?\s+)?"
    r"\b[A-Z][a-z]\w*(?![\w'’-])"
    rf"|\b(?:{'|'.join(sorted(_KIN))})\b(?!['’-])"
    r"|\bmy\s+(?:(?:dear|little|dearest|good|old|sweet)\s+)?(?:friends?|child|children|son|daughter|dear|king|queen"
    r"|lord|lady|love|darling|boy|girl|one|brother|sister|people|prince|princess)\b(?!['’-])"
)
# A clause that is nothing but a greeting, a cry or a call: what follows is the one who is meant.
_GREETING = re.compile(
    r"(?:oh |o )?(?:hello|hi|hey|good (?:morning|evening|afternoon|day|night)|good-?bye|bye|bye-bye"
    r"|goodnight|thank you(?: so much| very much)?|thanks|please|sorry|i(?:['’]m| am) sorry|well done|come on|come here"
    r"|come back|wake up|hurry up|get up|look out|watch out|be careful|happy birthday|welcome(?: home| back)?"
    r"|congratulations|of course|oh|oh no|no|yes|okay|ok|all right|never mind|good luck|help me|excuse me)",
    re.IGNORECASE,
)
_LAST_BEFORE = re.compile(
    r"\b(?:me|you|us|it|now|here|there|please|again|today|tonight|tomorrow|too|then|down|away|home)$",
    re.IGNORECASE,
)
# "They call me Ben", "Are you Ben?", "I give you my son": no one is spoken to by that name.
_NAMES_OR_GIVES = re.compile(
    r"\b(?:call|calls|called|name|named|give|gives|gave|given|bring|brought|show|showed|find|make|made|sell|sold|send|wed|marry|christen"
    r"|let (?:me|him|her)|(?:are|were|is) (?:you|it|there|here)|(?:is|was) (?:now|then|here|there)|that['’]s)\b"
    r"|^(?:and|or|but)\b",
    re.IGNORECASE,
)
_AFTER_NAME = re.compile(
    r"\s+(?:I|I['’](?:m|ve|ll|d)|you|you['’]re|please|let['’]s|what|why|how"
    r"|(?:where|can|may|will|shall|do|did|are|could|would|have) (?:is|are|I|we|you|my|the))\b"
)
_CLAUSE_START = re.compile(r"[.!?,;:—–…\n]\s*")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each name spoken to without its comma, the same words as one."""
    alike: dict[str, list[tuple[Span, str]]] = defaultdict(list)
    for quotation in quotations_of(book).speech:
        for part in quotation.parts if quotation.whole else ():
            speech = _Speech(part=part, text=book.quote(part), analysis=analysis)
            for start, end, reading in speech.missing():
                span = Span(page=part.page, start=part.start + start, end=part.start + end)
                alike[book.quote(span)].append((span, reading))
    for places in alike.values():
        (first, reading), *others = places
        yield issue_at(
            book,
            first,
            check=NAME,
            tier=Tier.ERROR,
            message="a comma beside the one spoken to",
            confidence=0.85,
            suggestions=[reading],
            related=[span for span, _ in others],
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Speech:
    """Some words between quotation marks, and what is known of them."""

    part: Span
    text: str
    analysis: Analysis

    def missing(self) -> Iterator[tuple[int, int, str]]:
        """Where a comma is missing beside a name, in this text, and how the words there should read."""
        for match in _SPOKEN_TO.finditer(self.text):
            if not self._may_be_spoken_to(match.group()):
                continue
            before, after = self.text[: match.start()], self.text[match.end() :]
            name = _capitalised(match.group())
            if self._said_to(match, before, after):
                word = re.search(r"[\w'’-]+\s+$", before)
                if word:
                    yield word.start(), match.end(), f"{word.group().rstrip()}, {name}"
            elif not _clause(before) and (follows := _AFTER_NAME.match(after)):
                first = re.match(r"\s+[\w'’]+", follows.group())
                if first:
                    yield (
                        match.start(),
                        match.end() + first.end(),
                        f"{name}, {first.group().strip()}",
                    )

    def _may_be_spoken_to(self, words: str) -> bool:
        last = words.rsplit(maxsplit=1)[-1]
        if words.lower() in _KIN or words.startswith("my"):
            return True
        use = self.analysis.vocabulary.use(last)
        if use is None or last in _NOT_NAMES or use.capitals_inside <= use.lower:
            return False
        # Once may be chance ("He said, If you…"): a common word is a name only from twice on.
        common = dictionary(self.analysis.english).knows(last.lower())
        return use.capitals_inside > 1 or not common

    def _said_to(self, name: re.Match[str], before: str, after: str) -> bool:
        """Whether what comes before is said to the name, which nothing but a mark follows."""
        clause = " ".join(_clause(before).split())
        if not clause or not re.match(r"\s*(?:[.!?,…]|$)", after):
            return False
        if _GREETING.fullmatch(clause):
            return True
        if " " not in clause or _NAMES_OR_GIVES.search(clause) or after.lstrip().startswith(","):
            return False
        return bool(_LAST_BEFORE.search(clause)) or (
            name.group().startswith("my") and self._after_noun(self.part.start + name.start())
        )

    def _after_noun(self, at: int) -> bool:
        """Whether the word before character ``at`` of the page is a noun: "your power my child"."""
        page: PageAnalysis = self.analysis.page(self.part.page)
        before = [token for token in page.tokens if token.end <= at]
        return bool(before) and before[-1].pos == "NOUN"


def _clause(before: str) -> str:
    """The words since the last mark, or since the speech began."""
    return _CLAUSE_START.split(before)[-1].strip()


def _capitalised(name: str) -> str:
    """The name as it should be written: a kinship word that stands for a name takes a capital."""
    return name.capitalize() if name in _KIN else name
