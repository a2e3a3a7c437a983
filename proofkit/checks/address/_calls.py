"""Greetings, exclamations and calls: the words after which whoever is named is spoken to."""

from __future__ import annotations

import re

from proofkit.checks.address._spoken_to import Kind
from proofkit.words.lists import word_set

# A clause that is nothing but a greeting, a cry or a call: what follows is the one who is meant.
_GREETING = re.compile(
    r"(?:(?:oh|o|ah|and|but|well|so|yes|no|now),? )*"
    r"(?:hello|hullo|hi|hey|hallo|good (?:morning|evening|afternoon|day|night)|good-?bye|bye|bye-bye|farewell"
    r"|goodnight|thank you(?: so much| very much)?|(?:many )?thanks|please|sorry|i(?:['’]m| am) (?:so |very )?sorry|well done|come on"
    r"|come here|come along|come back|wake up|hurry up|hurry|get up|look out|watch out|be careful|careful|happy birthday"
    r"|welcome(?: home| back)?|congratulations|of course(?: not)?|oh|oh no|ah|aha|no|yes|yeah|okay|ok|all right|right|never mind|good luck"
    r"|help me|excuse me|hush|quick|quickly|look|listen|wait|come|run|sh+|ssh+|surely|certainly|indeed|alas|bravo|hurrah|hurray"
    r"|nonsense|poor me|dear me|why not|not (?:now|yet|me|at all)|forgive me|pardon me|see you(?: soon| later| tomorrow)?|what now"
    r"|do come|sleep well|go on|go away|sit down|stand up|and you|what['’]s (?:up|wrong|that|this|the matter)|there you are"
    r"|really|right again|quite right|very good|very well|well (?:sung|tried|played)|aye|true|great heavens|by the way|here we are|so there"
    r"|how do you do|how are you|if you please|(?:now )?(?:look|see) here|(?:look|watch) out now|(?:good )?gracious(?: me)?|good heavens|my word|it['’]s no (?:good|use)|(?:do )?you know what|guess what|sure|hulloa|good-(?:night|day|morning|evening)|goodness|my goodness|goodness me|bless you|same to you|over here|up here|not so fast|i say|steady(?: now| there)?|(?:trot|run|hurry) along(?: now)?|all through|just as you (?:say|like|please)|keep still|hold on|no use"
    r"|for shame|what for|why do you ask|(?:so|and so) (?:you|we|i|he|she|they|it) (?:did|do|have|are|is|was|were|can|will|must)|too|as well|so long|on the contrary|at your service|no doubt|to be sure|if you (?:like|will|can|want to))",
    re.IGNORECASE,
)
# What opens a call, if the words after the name can't be about its bearer: "Now Ben you know…"
_OPENING = re.compile(
    r"(?:and|but|so|now|well|then|here|there|come now|now then|why)", re.IGNORECASE
)
# No girls, oh dear, all right children, you boys.
_DESCRIBES = re.compile(r"\b(?:no|oh|o|right|you)$")
_POLITE = word_set("sir madam ma'am ma’am")
_TAG = re.compile(
    r"(?:(?:do|does|did|can|could|will|would|shall|should|have|has|must|may|might)(?:n['’]t)?|won['’]t|can['’]t|shan['’]t|isn['’]t|aren['’]t"
    r"|wasn['’]t|weren['’]t) (?:you|we|i|it|he|she|they)"
)
_THINKS = re.compile(
    r"\b(?:i|we|do you|don['’]t you) (?:do |don['’]t |really )*(?:think|hope|believe|suppose|fear|wish|feel|reckon|guess|know)$|\bdo you (?:hear|see)$"
)


def is_greeting(clause: str, kind: Kind) -> bool:
    """Whether the words are only a greeting, an exclamation or a call."""
    if kind is Kind.HEARERS and _DESCRIBES.search(clause.lower()):
        return False
    return _GREETING.fullmatch(clause) is not None or _TAG.fullmatch(clause.lower()) is not None


def is_opening(clause: str) -> bool:
    """Whether the words only open a call, which must then go on: *Now, Ben, you know that.*"""
    return _OPENING.fullmatch(clause) is not None


def begins(clause: str) -> bool:
    """Whether the clause is a mere "well" or "now", after which a name and a comma are an address."""
    return clause.lower() in ("well", "now", "oh well", "well now", "now now", "here")


def thinks(clause: str) -> bool:
    """Whether the clause is "I think", "I hope" and the like, which "that" may follow."""
    return _THINKS.search(clause.lower()) is not None


def is_polite(who: str) -> bool:
    """Whether the words are Sir or Madam, which stand for nobody who is spoken of."""
    return who.lower() in _POLITE
