"""Short forms whose full stop does not end a sentence. Gathered by hand from everyday English."""

from __future__ import annotations

import re

from proofkit.words.lists import word_set

ABBREVIATIONS = word_set(
    "mr mrs ms messrs dr prof rev st sr jr capt col gen sgt lt maj hon mme mlle mt ft rd ave no nos vol "
    "vols fig figs ch pp p ed eds etc eg ie cf viz vs v al esq co ltd inc bros dept approx min sec "
    "oz lb lbs in yd yds cm mm km kg jan feb mar apr jun jul aug sep sept oct nov dec mon tue tues wed "
    "thu thurs fri sat sun am pm ps nb ha"
)
_LAST = re.compile(r"((?:[^\W\d_]\.)+|[^\W\d_]+\.)$")
_ALSO_WORDS = word_set("in no sun sat mar may min ha ed fig ave al co sec am v p hon mon wed dec")


def ends_in_abbreviation(text: str) -> bool:
    """Whether the full stop at the very end of ``text`` belongs to a short form or an initial."""
    match = _LAST.search(text)
    if match is None:
        return False
    word = match.group()[:-1]
    if "." in word or (len(word) == 1 and word.isupper() and word != "I"):
        return True
    return word.lower() in ABBREVIATIONS and word not in _ALSO_WORDS
