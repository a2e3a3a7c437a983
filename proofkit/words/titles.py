"""Words that stand before a name and belong to it: Mr, Aunt, King, and the kin words that are names alone."""

from __future__ import annotations

from proofkit.words.lists import word_set

_HIS_TITLES = word_set(
    """
    mr sir master mister lord king prince duke baron emperor uncle father grandfather grandpa
    grandad granddad brother señor monsieur herr signor baba
    """
)
_HER_TITLES = word_set(
    """
    mrs ms miss lady madam queen princess duchess baroness empress aunt auntie aunty mother
    grandmother grandma granny gran nana sister señora señorita madame mademoiselle frau signora
    mama dame
    """
)
# Such a title tells nothing of a "he" or a "she".
_THEIR_TITLES = word_set(
    """
    dr doctor professor prof captain colonel general major sergeant admiral judge mayor president
    cousin chief saint st farmer baby teacher nurse officer inspector constable reverend baker
    miller old little
    """
)
_HIS_KIN = word_set(
    "father dad daddy papa pa pop grandfather grandpa grandad granddad granddaddy grampa baba uncle"
)
_HER_KIN = word_set(
    """
    mother mum mom mummy mommy mama mamma ma grandmother grandma granny gran nana nanna
    auntie aunty aunt abuela
    """
)

TITLES = _HIS_TITLES | _HER_TITLES | _THEIR_TITLES
KIN_NAMES = _HIS_KIN | _HER_KIN


def pronoun_of_title(word: str) -> str | None:
    """The pronoun, "he" or "she", that a title or kin word (in lower case, no point) asks for, if one."""
    if word in _HIS_TITLES | _HIS_KIN:
        return "he"
    return "she" if word in _HER_TITLES | _HER_KIN else None
