"""Words that the book's English spells in two ways, and that the book spells in both: ageing, aging.

The pairs are VarCon's (``wordlists/varcon.tsv``; licence: ``wordlists/varcon-README.txt``). What other habits
tell of is left to them: -ise and -ize, past forms, and the words of ``wordlists/two-spellings.txt``.
"""

from __future__ import annotations

from proofkit.analysis import Analysis
from proofkit.habits.endings import ending_of
from proofkit.habits.past_forms import WORDS
from proofkit.habits.usage import Usage
from proofkit.words.two_spellings import family_by_word
from proofkit.words.variants import variants


def mixed_usages(analysis: Analysis) -> tuple[Usage, ...]:
    """For each such word the places of its spellings; ``matter`` is the one that dictionaries prefer.

    Names are left out.
    """
    vocabulary, found = analysis.vocabulary, {}
    for word in vocabulary.uses:
        forms = () if _is_told_elsewhere(word) else variants().accepted(word, analysis.english)
        present = [f for f in forms if vocabulary.count(f) and not vocabulary.is_name(f)]
        if len(present) > 1:
            places = {form: vocabulary.uses[form].spans for form in present}
            found[forms[0]] = Usage(matter=forms[0], places=places)
    return tuple(usage for _, usage in sorted(found.items()))


def _is_told_elsewhere(word: str) -> bool:
    return word in WORDS or ending_of(word) is not None or word in family_by_word()
