"""Spellings at home in both Englishes that in one sense belong to the other: told by the words beside them.

Everybody tells a story, checks a door and tires of walking; a British house has storeys, a British bank
cheques and a British bicycle tyres. The pairs and their senses are VarCon's (``wordlists/varcon.txt``) and
New Hart's Rules'; the words that show the sense are our own. A sense that no neighbour shows stays silent.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from proofkit.book import Book, Span
from proofkit.settings import English
from proofkit.words.variants import cased_like

_REACH = 60  # characters on either side that may show the sense
_OWNER = (
    r"(?:the|a|an|this|that|these|those|my|your|his|her|its|our|their|each|every|one|some|no|any)"
)
_NUMBER = (
    r"(?:\d+|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|twenty|thirty|forty|fifty|"
    r"sixty|seventy|eighty|ninety|hundred|thousand|million|few|many|several|couple of|half a)"
)
_ORDER = r"(?:first|second|third|fourth|fifth|sixth|top|upper|lower|lowest|highest|ground|last)"
_MONEY = r"(?:pounds?|dollars?|euros?|pence|rand|rupees|shillings?|naira|kronor|francs)"
_MAY_DO = (
    r"(?:(?:had|has|have|need|needs|needed|want|wants|wanted|try|tried|like|likes|liked|love|loves|loved|"
    r"began|begin|start|started|used|time|how|and|able|going|not) to|must|can|could|should|would|will|"
    r"let['’]s|I|we|they|you|\w+['’]ll|don['’]t|didn['’]t|can['’]t|never|always|often|who)"
)
_SHE = r"(?:he|she|it|who|always|never|often|then|everybody|everyone|nobody)"
_APART = r"(?:open|apart|loose|off|free|up|out|away|from)"
_BUILDING = (
    r"(?:high|tall|up|down|house|home|building|tower|block|hotel|hospital|castle|palace|mansion|cottage|"
    r"tree ?house|inn|barn|school|flats|bus)"
)
_COMPUTING = (
    r"(?i)\b(?:computers?|robots?|cod(?:e|ed|ing)|software|laptops?|apps?|machines?|tablets?)\b"
)
_PRACTISED = (
    r"(?:football|choir|band|piano|violin|dance|swimming|cricket|rugby|hockey|netball|target)"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Rule:
    """``forms`` are wrong where ``before`` ends the text in front and ``after`` starts the text behind.

    ``unless`` is looked for all around. ``why`` says more than that the spelling is the other English's.
    """

    english: English
    forms: Mapping[str, str]
    before: str = ""
    after: str = ""
    unless: str = ""
    why: str = field(default="")


def _british(forms: str, before: str = "", after: str = "", unless: str = "") -> _Rule:
    pairs = dict(pair.split(":") for pair in forms.split())
    return _Rule(english=English.BRITISH, forms=pairs, before=before, after=after, unless=unless)


_TIRES = "tire:tyre tires:tyres"
_STORIES = "story:storey stories:storeys"
_CHECKS = "check:cheque checks:cheques"
_PROGRAMS = "program:programme programs:programmes"
_DRAFTS = "draft:draught drafts:draughts"
_NOUN = "in British English the noun has a c"
_RULES: tuple[_Rule, ...] = (
    _british("tire:tyre", _OWNER + " ", r"(?!-wom)"),
    _british(
        "tires:tyres", r"(?:the|his|her|its|my|your|our|these|those|of|two|three|four|both|all) "
    ),
    _british(
        _TIRES,
        r"\b(?:flat|spare|rubber|bicycle|bike|car|tractor|lorry|truck|front|back|rear|old|new|burst|worn|"
        r"muddy|squashy|bumpy|huge|inflatable) ",
    ),
    _british(_TIRES, after=r" (?:swings?|tracks?|marks?|pump|irons?|shop)\b"),
    _british(
        "curb:kerb curbs:kerbs",
        r"\b(?:on|off|at|by|over|along|from|against|beside|near|onto|to|up|down|towards?|reached|of|for) "
        r"(?:the|a|each|every)(?: \w+)? ",
        unless=r"\bcurbs? (?:on|to|for) (?:my|your|his|her|our|their)|\bwells?\b|\bbucket",
    ),
    _british(
        _CHECKS,
        r"\b(?:wr(?:ite|ote|ites|iting|itten)|cash(?:ed|es|ing)?|sign(?:ed|s|ing)?)(?: (?:out|him|her|me|us|them))?"
        r"(?: (?:a|an|the|that|my|your|his|her|their|our))?(?: \w+)? ",
    ),
    _british(_CHECKS, r"\b(?:bank|blank|pay|birthday|royalty) "),
    _british(_CHECKS, after=rf" (?:for|of) (?:[£$€]\s?\d|(?:[\w-]+ ){{1,3}}{_MONEY}\b)"),
    _british(
        _PROGRAMS,
        rf"(?:\b{_OWNER}|\bof|{_NUMBER})(?: [\w'’]+)? ",
        unless=_COMPUTING,
    ),
    _british(
        _PROGRAMS,
        r"\b(?:television|tv|telly|radio|theatre|concert|school|favourite|wildlife|nature|music|news|quiz|"
        r"training|reading) ",
        unless=_COMPUTING,
    ),
    _british("meters:metres micrometers:micrometres", _NUMBER + " "),
    _british(
        "meter:metre micrometer:micrometre",
        rf"\b(?:{_NUMBER}|a|square|cubic) ",
        r" (?:long|high|deep|wide|tall|thick|away|apart|and|of|or|from|below|above|square|in)\b",
    ),
    _british(
        _DRAFTS,
        r"\b(?:cold|icy|chilly|nasty|terrible|freezing|awful|no|slight|sudden|feel|felt a) ",
    ),
    _british(
        _DRAFTS,
        after=r" (?:bl[eo]w(?:s|ing)?|came|comes|coming|crept|under|through|of (?:cold |fresh |icy |warm )?"
        r"(?:air|wind|water|milk|ale|cider|medicine))\b",
    ),
    _british(
        "license:licence licenses:licences",
        rf"\b(?:{_OWNER}|driving|fishing|dog|pilot['’]s|tv|television|marriage|{_NUMBER})(?: \w+['’]s)? ",
    ),
    _british("practice:practise", rf"\b{_MAY_DO} "),
    _british("practices:practises", rf"\b{_SHE} "),
    _british(
        "prize:prise",
        r"\b(?:to|could|can|must|would|will|and|they|we|you|I|not) ",
        rf" (?:[\w'’]+ ){{0,4}}{_APART}\b",
    ),
    _british(
        "prized:prised prizes:prises prizing:prising",
        after=rf" (?:(?:it|them|the|a|an|his|her|its|my|two|both) (?:[\w'’]+ ){{0,3}})?{_APART}\b",
    ),
    _british(_STORIES, rf"\b(?:{_NUMBER}|single|double|multi|{_ORDER})-", r"(?! books?)"),
    _british(_STORIES, rf"\b{_NUMBER} ", rf" (?:\w+ )?{_BUILDING}\b"),
    _british(
        _STORIES,
        rf"\b{_ORDER} ",
        rf" (?:windows?|balcony|of (?:the|a|his|her|our|their|my) (?:\w+ )?{_BUILDING})\b",
    ),
    _british("lupines:lupins"),
    _british(
        "lupine:lupin", rf"\b{_OWNER}(?: \w+)? ", r"[.,;:!?]| (?:and|in|by|with|that|grew|was)\b"
    ),
    _british(
        "jibe:gybe jibes:gybes jibed:gybed jibing:gybing",
        r"\b(?:boat|dinghy|yacht|ship|sloop|sailor|captain|mainsail)s? (?:\w+ )?",
    ),
    _british("groin:groyne groins:groynes", after=" (?:on|along|of) the (?:beach|shore|sands?)"),
    _british("bark:barque barks:barques", r"\b(?:three-masted|sailing|old pirate) "),
    _british("mat:matt", after=" (?:black|white|grey|green|blue|red|paint|varnish|finish)"),
    _british("naughts:noughts", after=" and crosses"),
    _Rule(
        english=English.BRITISH,
        forms={"practise": "practice"},
        before=rf"\b(?:{_OWNER}|{_PRACTISED}|out of|in|need|more|of|much) ",
        unless=r"\b(?:in|more|of|much) practise (?:the|my|your|his|her|our|their|it)\b|"
        r"\b(?:let|make|made|help|helped|hear|heard|watch|watched|see|saw) \w+ practise\b",
        why=_NOUN,
    ),
    _Rule(
        english=English.AMERICAN,
        forms={"mum": "mom"},
        before=r"\b(?:my|your|his|her|our|their|and) ",
    ),
    _Rule(
        english=English.AMERICAN,
        forms={
            f"{stem}yses": f"{stem}yzes"
            for stem in (
                "anal",
                "reanal",
                "paral",
                "catal",
                "hydrol",
                "dial",
                "psychoanal",
                "electrol",
            )
        },
        before=rf"\b{_SHE} ",
    ),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class SenseUse:
    """A spelling in a sense of the other English: its places, what it is here, and why if that needs saying."""

    word: str
    better: str
    spans: tuple[Span, ...]
    why: str


def uses_by_sense(book: Book, english: English) -> Iterator[SenseUse]:
    """All of them, a word at a time."""
    found: dict[tuple[str, str, str], list[Span]] = {}
    texts = [(page, page.prose, page.prose.lower()) for page in book.pages]
    for rule in _RULES:
        for word, better in rule.forms.items() if rule.english is english else ():
            for page, prose, lower in texts:
                for at in _places(word, prose, lower):
                    if _shows(rule, prose, at, at + len(word)):
                        spans = found.setdefault((word, better, rule.why), [])
                        spans.append(page.span(at, at + len(word)))
    for (word, better, why), places in found.items():
        own = tuple(sorted(set(places)))
        yield SenseUse(word=word, better=cased_like(better, book.quote(own[0])), spans=own, why=why)


def _places(word: str, prose: str, lower: str) -> Iterator[int]:
    """Where the whole word stands, whatever its capitals."""
    at = lower.find(word) if len(lower) == len(prose) else -1
    while at >= 0:
        end = at + len(word)
        if not prose[at - 1 : at].isalnum() and not re.match(r"\w|['’]\w", prose[end : end + 2]):
            yield at
        at = lower.find(word, end)


def _shows(rule: _Rule, prose: str, start: int, end: int) -> bool:
    before, after = prose[max(0, start - _REACH) : start], prose[end : end + _REACH]
    return (
        (not rule.before or re.search(rf"(?i)(?:^|\b){rule.before}$", before) is not None)
        and (not rule.after or re.match(rf"(?i){rule.after}", after) is not None)
        and (
            not rule.unless
            or not re.search(rf"(?i){rule.unless}", before + prose[start:end] + after)
        )
    )
