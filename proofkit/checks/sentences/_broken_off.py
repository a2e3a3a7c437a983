"""Lines that can be no sentence yet: what they still want stands in the next paragraph or overleaf.

*Mama was buying ¶ Tom's bananas*: a verb without its object. It may lack it for good where the object came
first: *all that she was buying, the book he read*.
"""

from __future__ import annotations

import re

from proofkit.words.lists import word_set

# Nothing ends in these.
_LEADS_ON = word_set("""
the a an of and or but as from that if when his my her their our your its these those every because while until
although than whose which nor
""")
# Nor in these, unless what they belong to came first (*to shave with, as ill as she was*).
_STRANDED = word_set("""
to by with at for in on into was is were are am be been under over behind through about without between
towards toward onto upon near like called named has had have can could will would should must might may
""")
_WANTS_OBJECT = word_set("""
buy buys bought buying bring brings brought bringing take takes took taking make makes made making give gives gave
giving find finds found finding want wants wanted wanting need needs needed have put puts putting get gets
got getting meet met carry carries carried carrying catch catches caught catching fetch fetched fetching
use used using wear wears wore wearing love loves loved loving like likes liked visit visits visited visiting call
calls called calling thank thanked thanking tell tells told telling say says said see sees saw seeing hear
hears heard hold holds held holding hug hugs hugged hugging kiss kissed kissing greet greeted invite invited
inviting chase chased chasing feed fed feeding sell sells sold selling show shows showed showing send sent
choose chose choosing follow follows followed following lick licked licking hide hid spot spotted
""")
# What may be the object already: words that ask or say which, and those that often have a clause to themselves.
_OBJECT_BEFORE = re.compile(
    r"\b(?:what|which|whom?|whose|that|all|everything|anything|nothing|something|how|where|when|as|than|to be|be|been"
    r"|was|were|is being|got|too|enough|(?<!no )one|ones|things?|first|last|only|best)\b",
    re.IGNORECASE,
)
_PROGRESSIVE = re.compile(
    r"\b(?:am|is|are|was|were|been|be|kept|keeps|started|began) (?:\w+ly |not |always |still )?\w+ing$"
)
# The thing before the one who acts: the hat Tom wore, a place to visit.
_CLAUSE = re.compile(
    r"\b(?:the|a|an|his|her|my|your|their|our|this|these|those|some|any|no) (?:\w+ ){1,3}?"
    r"(?:(?:I|he|she|it|we|you|they|[A-Z]\w+|the \w+)\b.*|(?:\w+ )?to) \w+$"
)
_SENTENCE = re.compile(r"[.!?…:;]['\"”’)]*\s+|[\"“]")
_NEW = re.compile(
    r"\W*(?:He|She|It|They|We|I|You|The|A|An|Then|But|And|So|One|When|There|This|That|These|If|In|On|At|As|Now|Suddenly|Soon)\b"
)


def breaks_off(line: str, after: str | None) -> bool:
    """Whether a paragraph that ends without a stop is carried on by the next, ``after``, capital or not."""
    words = re.findall(r"[\w'’-]+", line)
    last = words[-1] if words else ""
    if last in _LEADS_ON:
        return True
    if after is not None and _NEW.match(after):
        return False
    if last in _STRANDED and last != "like":
        return True
    clause = _SENTENCE.split(line.rstrip())[-1]
    if after is None or last not in _WANTS_OBJECT or _CLAUSE.search(clause):
        return False
    before = clause[: -len(last)].rstrip()
    if _PROGRESSIVE.search(clause):
        before = re.sub(
            r"\b(?:was|were|been|be|is)\b(?= (?:\w+ly |not |always |still )?\w*$)", "", before
        )
    return _OBJECT_BEFORE.search(before) is None
