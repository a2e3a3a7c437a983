"""All kinds of slip that are planted."""

from __future__ import annotations

from collections.abc import Mapping

from tests.bench._grammar_slips import GRAMMAR_KINDS
from tests.bench._slips import PRINT_KINDS, Source
from tests.bench._word_slips import WORD_KINDS

KINDS: Mapping[str, Source] = {**PRINT_KINDS, **GRAMMAR_KINDS, **WORD_KINDS}
