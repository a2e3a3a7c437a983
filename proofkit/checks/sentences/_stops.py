"""Which stop a sentence wants."""

from __future__ import annotations

import re

_AUXILIARY = (
    r"(?:is|are|was|were|do|does|did|can|could|will|would|shall|should|has|have|had|must|may|might)"
)
_SUBJECT = r"(?:you|he|she|it|we|they|I|there|this|that|the|my|your|his|her|our|their|any\w+|some\w+|[A-Z]\w+)"
_ASKS = re.compile(
    rf"(?:(?:But|And|So|Oh|Well|Now|Then|Please),? )?"
    rf"(?:(?:What|Who|Why|Where|How|When|Which|Whose)(?: (?:many|much|old|far|long|big|\w+))?(?:n't)? {_AUXILIARY}"
    rf" {_SUBJECT}|Wh(?:o|at)(?:'s|’s| is| was| are| were)\b"
    r"|(?:Is|Are|Was|Were|Do|Does|Did|Can|Could|Will|Would|Shall|Should|Has|Have|May)(?:n['’]t)? "
    r"(?:you|he|she|it|we|they|I|there|this|that)\b)"
)


def asks(sentence: str) -> bool:
    """Whether the sentence asks by the order of its words. *When she came* begins one that tells."""
    words = sentence.strip(" \n\"“‘'")
    return _ASKS.match(words) is not None and not (words.startswith("When") and "," in words)


def stop_for(before: str) -> str:
    """The stop for the sentence that ends where ``before`` ends: a question mark or a full stop."""
    last = re.split(r"[.!?…]['’\"”)]*\s+|[,:] [\"“‘']|\n", before)[-1]
    return "?" if asks(last) else "."
