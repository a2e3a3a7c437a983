"""Does a sentence ask by its form? A verb before its subject, after *what* and its like or at the start."""

from __future__ import annotations

import re

_SUBJECT = r"(?:you|he|she|it|they|we|I|that|this|these|those|there|the|my|your|his|her|our|their|any\w+|every\w+|some\w+)"
_VERB = r"(?:is|are|was|were|do|does|did|can|could|will|would|shall|should|has|have|had|am|must)(?:n['’]t)?"
_LEAD = r"(?:(?:So|And|But|Oh|Well|Please|Now|Then|Mum|Dad|Mama|Papa),? )?"
_WHAT = re.compile(
    rf"{_LEAD}(?:(?:where|why|how|when|what|who|whom|whose \w+|which \w+|what (?:kind of \w+|sort of \w+|(?!there|he|she|it|they|we|you|I\b)\w+)"
    rf"|how (?:many|much|old|far|long|big|often|soon)(?: \w+)?) {_VERB} {_SUBJECT}\b"
    rf"|(?:where|who|how|what)(?:['’]s|['’]re) (?:you|he|she|it|they|that|this|there|the|my|your|his|her)\b"
    rf"|who (?:is|was|are|were) (?:it|there|that|this|you|she|he|they)\b)",
    re.IGNORECASE,
)
_WHETHER = re.compile(
    rf"{_LEAD}(?:do|does|did|is|are|was|can|could|have|has|am|shall)(?:n['’]t)? (?:you|he|she|it|they|we|I) \w+",
    re.IGNORECASE,
)
# Requests in disguise, greetings, exclamations and sayings, and what a writer only calls a question.
_NOT_ASKED = re.compile(
    r"\b(?:do you know|how do you do|would you|will you|could you|have it|was it not|do you hear|what do you know|what is more"
    r"|what is worse|so (?:do|did|is|are|was|were|can|could|have|has|shall|am)|how are you|what did (?:he|she|they|it) do but|have you ever"
    r"|did you ever|don['’]t you|do it|do they but|how (?:is|was|were|are) the)\b"
    r"|\b(?:what|how|why|who) (?:not|about)\b|['’]s (?:the|my|your|his|her) .*\b(?:is|was|are|were)\b",
    re.IGNORECASE,
)
# "Who was the winner is written here": a question that is the subject of a verb of its own.
_SUBJECT_OF = re.compile(r"\b(?:is|was|are|were)\b.*\b(?:is|was|are|were)\b", re.IGNORECASE)
_TAG = re.compile(
    r", (?:is|are|was|were|do|does|did|ca|could|wo|would|sha|should|have|has|had|must)n['’]t (?:I|you|he|she|it|we|they|there)$"
)
_MANY = 30  # words: longer sentences may have lost sight of their beginning


def asks_what(sentence: str) -> bool:
    """Whether the sentence begins with what, where or the like and then a verb before its subject."""
    own = _SUBJECT_OF.search(sentence) is not None
    return _WHAT.match(sentence) is not None and not own and _may_ask(sentence)


def asks_whether(sentence: str) -> bool:
    """Whether the sentence begins with a verb before a pronoun, or ends so: *Did he go; It is, isn't it*."""
    if _TAG.search(sentence):
        return True
    return _WHETHER.match(sentence) is not None and _may_ask(sentence)


def _may_ask(sentence: str) -> bool:
    return not (
        "," in sentence.partition(" ")[2]
        or ":" in sentence
        or ";" in sentence
        or _NOT_ASKED.search(sentence)
        or len(sentence.split()) > _MANY
    )
