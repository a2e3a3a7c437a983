"""Words that, after a name, make the name of a place."""

from __future__ import annotations

from proofkit.words.lists import word_set

# Geographers' words: as good as always part of the name.
LANDFORMS = word_set(
    """
    hill hills river mountain mountains lake island islands valley bay ocean falls desert
    """
)
# Made by people, and yet part of the name as a rule: Crumb Street, Alder School, Far Forest.
ADDRESSES = word_set("street road lane avenue square castle park forest school plains bridge")
# Words that are part of a name if the author says so.
FEATURES = LANDFORMS | word_set(
    """
    village forest plains plain street road lane bridge park square castle beach sea wood
    woods farm school town city cottage house tower garden market mill harbour harbor
    station
    """
)
