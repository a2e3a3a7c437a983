"""A shortened word without its apostrophe, or with it in the wrong place.

What it finds
    *dont*, *itll*, *whove*, *oclock* and their like, *did'nt*, *its'*, and *childrens, everyones* before
    what is owned. Short forms that are also words are taken for such where nothing else can be meant (*Ill
    come, he cant go, Lets play, shell be late*) and else left to the eye.

Why a reader minds
    A child learns the word from the page.

Example
    I dont like peas.

Better
    I don't like peas.

When to let it stand
    In a note that a child in the story wrote.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.marks._short_forms import misplaced, without_apostrophe
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words import nearby

NAME = "marks/missing-apostrophe"
NEEDS = frozenset({Need.TEXT})

_OWNERS = {
    "childrens": "children's", "womens": "women's", "mens": "men's", "womans": "woman's", "childs": "child's",
    "grandchildrens": "grandchildren's",
}  # fmt: skip
_MODALS = {"cant": "can't", "wont": "won't", "hes": "he's", "hows": "how's"}
_PLAIN = (
    "be|do|make|go|come|take|give|get|have|tell|show|help|find|try|see|look|run|play|eat|sit|stay|stop|wait|"
    "start|ask|say|keep|let|put|bring|buy|build|catch|call|carry|wear|win|leave|never|just|always|also|"
    "only|not|need|want|like|love|know|think|sing|fly|swim|jump|climb|fetch|follow|hide|open|use|walk|write|read|miss|meet|hold|share|speak|work|pay|pick|carry|pull|push|save|send|teach|try|turn"
)
# What opens a clause, so that its subject comes next.
_OPENS = (
    r"(?:^|\n|[.!?…\"“‘] ?|\b(?:and|but|then|so|because|if|or|think|hope|know|maybe|perhaps|sure|says?|said|that)"
    r" |, )"
)
# Ill weeds grow apace, and her ill luck; but Ill go means I'll. A shell may be found, but never finds.
_CONTRACTED = re.compile(
    rf"(?<![\w'’-])(?:(?P<i>Ill(?= (?:{_PLAIN})\b)|Id(?= (?:{_PLAIN}|better|rather|been|seen|gone|got)\b)"
    r"|Im(?= \w)|im(?= (?:not|so|very|sorry|sure|too|just|only|going|coming|afraid|hungry|tired|here|a|the)\b))"
    rf"|(?P<lets>Lets(?= (?:{_PLAIN}|all|pretend|both)\b)))(?![\w'’-])"
)
_AFTER_OPENING = re.compile(
    rf"{_OPENS}(?P<word>ill(?= (?:{_PLAIN})\b)|id(?= (?:like|love|rather|better|never|be|have)\b)"
    r"|[Ss]hell(?= (?:be|never|have to|need|want|come|go|know|find|get|help|tell|love|like)\b)"
    r"|[Hh]ell(?= (?:be|never|have to|need|want|come|go|know|find|get|help|tell|love|like)\b)"
    r"|[Ss]hed(?= (?:better|rather|like to|love to|never|been|be|have)\b)"
    r"|[Ww]ed(?= (?:better|rather|like to|love to|never|been|be|have)\b)"
    r"|[Ww]ell(?= (?:need|miss|meet|soon)\b)"
    r"|Were(?= (?:going|coming|leaving|having|getting|making|not)\b(?! \w+ed\b)[^?\n]*[.!]))(?![\w'’-])"
)
_AMBIGUOUS = {
    "ill": "I'll", "id": "I'd", "im": "I'm", "lets": "let's", "shell": "she'll", "hell": "he'll", "shed": "she'd",
    "wed": "we'd", "well": "we'll", "were": "we're",
}  # fmt: skip
_WONT = re.compile(r"\b(?:was|is|as|his|her|their|my|its|usual) $")
_WONT_TO = re.compile(r" (?:\w+ )?to ")
# *They hed to go, ye hes it*: had and has as some characters say them.
_DIALECT_HAD = re.compile(r"\b(?:I|you|ye|he|she|it|we|they|them|who) $", re.IGNORECASE)
_WORD = re.compile(r"(?<![\w'’])[Ii]ts['’](?= [^\W\d_])|(?<![\w'’-])[^\W\d_]+(?![\w-]|['’]\w)")
_MARKED = re.compile(r"(?<![\w'’-])[^\W\d_]+['’][^\W\d_]+(?![\w'’-])")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield one issue for each word that lacks its apostrophe, or has it in the wrong place."""
    places: dict[tuple[str, str], list[Span]] = defaultdict(list)
    for page in book.pages:
        for start, end, better in sorted(_found(page.prose)):
            word = page.prose[start:end]
            if not (analysis.vocabulary.is_name(word) and better[0] != "I"):
                places[word, better].append(page.span(start, end))
    apostrophe = "’" if any("’" in page.text for page in book.pages) else "'"
    for (word, better), spans in places.items():
        yield issue_at(
            book,
            spans[0],
            check=NAME,
            tier=Tier.ERROR,
            message=_message(word),
            suggestions=[better.replace("'", apostrophe)],
            confidence=0.9,
            related=spans[1:],
        )


def _message(word: str) -> str:
    if word.lower().startswith("its") and not word[-1].isalpha():
        return "its takes no apostrophe here"
    return "an apostrophe is missing" if word.isalpha() else "the apostrophe is in the wrong place"


def _found(prose: str) -> Iterator[tuple[int, int, str]]:
    """Start, end and right form of each word at fault."""
    for match in _WORD.finditer(prose):
        better = _better(match.group())
        if better and not _another_word(prose, match):
            yield match.start(), match.end(), better
    for match in _MARKED.finditer(prose):
        word = match.group().replace("’", "'")
        if form := misplaced().get(word.lower()):
            yield match.start(), match.end(), _in_case_of(word, form)
    for match in (*_CONTRACTED.finditer(prose), *_AFTER_OPENING.finditer(prose)):
        group = match.lastgroup or ""
        word = match[group]
        yield match.start(group), match.end(group), _in_case_of(word, _AMBIGUOUS[word.lower()])


def _another_word(prose: str, match: re.Match[str]) -> bool:
    """Whether the letters are a word of their own here: *as was his wont*, *mens* before a stop."""
    word = match.group().lower()
    before = nearby.before(prose, match.start())
    if word == "wont":
        return _WONT.search(before) is not None or _WONT_TO.match(prose, match.end()) is not None
    if word == "cant":
        return re.search(r"\b(?:a|the|of) $", before) is not None
    if word in ("hed", "hes"):
        return _DIALECT_HAD.search(before) is not None or prose.startswith(" to ", match.end())
    if word == "hows":
        return re.search(r"\b(?:and|the) $", before) is not None
    return word in _OWNERS and not prose.startswith(" ", match.end())


def _better(word: str) -> str:
    """How the word should be written, or "" where it is right."""
    lower = word.lower()
    if lower[:-1] == "its" and not word[-1].isalpha():
        return word[:-1]
    short = without_apostrophe().get(lower) or _MODALS.get(lower) or _OWNERS.get(lower, "")
    return _in_case_of(word, short)


def _in_case_of(word: str, short: str) -> str:
    return short[:1].upper() + short[1:] if word[:1].isupper() else short
