"""Verbs in -ise or in -ize: which ending the book has where English has both.

Oxford has -ize, other British publishers -ise. Words with one ending only are no part of the matter: advertise,
advise, surprise and their like end in -ise everywhere, as their ending is no Greek -izein (the list of Oxford
Dictionaries), size and prize in -ize, and analyse in -yse in all of Britain. VarCon has no pair for them, but for
apprise, which it also knows as a rare word for to value.
"""

from __future__ import annotations

import re

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.habits.usage import Usage
from proofkit.words.variants import variants

MATTER = "-ise or -ize"
ISE, IZE = "-ise", "-ize"
FORMS = (ISE, IZE)
_APPRISE = re.compile(r"(?i)appri[sz](?:e[ds]?|ing)")


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every habit takes the two
    """The places of either ending: verbs, and the nouns made of them. Names are left out."""
    places: dict[str, list[Span]] = {}
    for word, use in analysis.vocabulary.uses.items():
        form = ending_of(word)
        if form and (variants().takes_capital(word) or not analysis.vocabulary.is_name(word)):
            places.setdefault(form, []).extend(use.spans)
    return Usage(
        matter=MATTER, places={form: tuple(sorted(spans)) for form, spans in places.items()}
    )


def ending_of(word: str) -> str | None:
    """The ending of a word that has both in British English; None for all others."""
    partner = variants().ise_ize(word)
    if partner is None or _APPRISE.fullmatch(word):
        return None
    # The two differ in one letter, and s comes before z.
    return ISE if word.lower() < partner.lower() else IZE
