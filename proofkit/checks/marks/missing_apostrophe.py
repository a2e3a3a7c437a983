"""A shortened word without its apostrophe.

What it finds
    *dont*, *didnt*, *youre*, *thats* and their like, *its'*, and *childrens, womans* before what is owned.
    Short forms that are also words are taken for such where nothing else can be meant (*Ill come,
    he cant go, Lets play*) and else left to the eye (*well, were*).

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
from collections.abc import Iterable

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words import nearby

NAME = "marks/missing-apostrophe"
NEEDS = frozenset({Need.TEXT})

_SHORT = (
    "don't didn't isn't wasn't couldn't wouldn't shouldn't doesn't haven't hasn't hadn't aren't weren't "
    "mustn't needn't you're they're you've they've we've I've I'm you'll they'll that's what's here's he'd you'd they'd ain't "
    "there's where's who's could've would've should've"
)
_WRITTEN = {short.replace("'", ""): short for short in _SHORT.split()}
_OWNERS = {
    "childrens": "children's", "womens": "women's", "mens": "men's", "womans": "woman's", "childs": "child's",
    "grandchildrens": "grandchildren's",
}  # fmt: skip
_MODALS = {"cant": "can't", "wont": "won't", "hes": "he's", "shes": "she's"}
_PLAIN = (
    "be|do|make|go|come|take|give|get|have|tell|show|help|find|try|see|look|run|play|eat|sit|stay|stop|wait|"
    "start|ask|say|keep|let|put|bring|buy|build|catch|call|carry|wear|win|leave|never|just|always|also|"
    "only|not|need|want|like|love|know|think|sing|fly|swim|jump|climb|fetch|follow|hide|open|use|walk|write|read|miss|meet"
)
# Ill weeds grow apace, and her ill luck; but Ill go means I'll.
_CONTRACTED = re.compile(
    rf"(?<![\w'’-])(?P<word>Ill(?= (?:{_PLAIN})\b)|Id(?= (?:{_PLAIN}|better|rather|been|seen|gone|got)\b)"
    rf"|Im(?= \w)|Lets(?= (?:{_PLAIN}|all|pretend|both)\b))(?![\w'’-])"
)
_WONT = re.compile(r"\b(?:was|is|as|his|her|their|my|its|usual) $")
_KNOWN = _WRITTEN | _OWNERS | _MODALS | {"ill": "I'll", "id": "I'd", "im": "I'm", "lets": "let's"}
_WORD = re.compile(r"(?<![\w'’])[Ii]ts['’](?= [^\W\d_])|(?<![\w'’-])[^\W\d_]+(?![\w-]|['’]\w)")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield one issue for each word that lacks its apostrophe."""
    places: dict[str, list[Span]] = defaultdict(list)
    for page in book.pages:
        for match in (*_WORD.finditer(page.prose), *_CONTRACTED.finditer(page.prose)):
            if _better(match.group()) and not _another_word(page.prose, match):
                places[match.group()].append(page.span(*match.span()))
    apostrophe = "’" if any("’" in page.text for page in book.pages) else "'"
    for word, spans in places.items():
        yield issue_at(
            book,
            spans[0],
            check=NAME,
            tier=Tier.ERROR,
            message="its takes no apostrophe here"
            if word.lower().startswith("its")
            else "an apostrophe is missing",
            suggestions=[_better(word).replace("'", apostrophe)],
            confidence=0.9,
            related=spans[1:],
        )


def _another_word(prose: str, match: re.Match[str]) -> bool:
    """Whether the letters are a word of their own here: *as was his wont*, *mens* before a stop."""
    word = match.group().lower()
    if word == "wont":
        return _WONT.search(nearby.before(prose, match.start())) is not None or prose.startswith(
            " to ", match.end()
        )
    if word == "cant":
        return re.search(r"\b(?:a|the|of) $", nearby.before(prose, match.start())) is not None
    if word in _OWNERS:
        return not prose.startswith(" ", match.end())
    return word in ("ill", "id", "im", "lets") and "word" not in match.re.groupindex


def _better(word: str) -> str:
    """How the word should be written, or "" where it is right."""
    if word[:-1].lower() == "its" and not word[-1].isalpha():
        return word[:-1]
    short = _WRITTEN.get(word) or _KNOWN.get(word.lower(), "")
    return short[:1].upper() + short[1:] if word[:1].isupper() else short
