"""Read one poem: its scheme, its metre, its stumbles."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace

from proofkit.reading.verse.failed_rhymes import failed_rhymes
from proofkit.reading.verse.layout import Block, Set
from proofkit.reading.verse.metre import Scanned, scanned
from proofkit.reading.verse.poem import (
    FailedRhyme,
    Line,
    Metre,
    Pair,
    RhymeKind,
    Stanza,
    Stumble,
)
from proofkit.reading.verse.scheme import (
    Ends,
    Kinds,
    Schemed,
    kinds_of,
    letters_of,
    pairs_of,
    schemed,
)
from proofkit.reading.verse.stumbles import MOST, stumbles
from proofkit.reading.verse.syllables import WORD, Word, words_of
from proofkit.settings import English

_FEWEST_STANZAS = 3  # before each line of a stanza may have a number of beats of its own
_FEWEST_FOR_METRE = 4  # lines


@dataclass(frozen=True, slots=True, kw_only=True)
class Poem:
    """One poem as read; ``rhymed``: whether it keeps a scheme."""

    stanzas: tuple[Stanza, ...]
    metre: Metre | None
    rhymed: bool
    failed_rhymes: tuple[FailedRhyme, ...]


def rhymes_of(block: Block, english: English) -> Kinds:
    """How the lines of a stanza rhyme."""
    return kinds_of([_ends(line) for line in block], english)


def metre_of(lines: Sequence[str], english: English) -> tuple[Metre, tuple[str, ...]] | None:
    """The metre that fits some lines best, clear or not, and how each is read in it: "x/x/x/x/"."""
    poem = scanned([[words_of(line, english) for line in lines]], [[0] * len(lines)])
    if poem is None:
        return None
    read = (fits.get(beats) for fits, beats in zip(poem.fits, poem.expected, strict=True))
    return poem.metre, tuple(fit.pattern if fit else "" for fit in read)


def read_poem(blocks: Sequence[Block], english: English) -> Poem:
    """Read the stanzas of one poem."""
    kinds = [rhymes_of(block, english) for block in blocks]
    form = schemed(kinds, [len(block) for block in blocks])
    words = [[words_of(line.text, english) for line in block] for block in blocks]
    poem = _clear(scanned(words, _groupings(blocks, form)))
    found = _stumbles(blocks, words, poem) if poem else ()
    if sum(map(bool, found)) > max(1, MOST * len(found)):
        poem, found = None, ()
    return Poem(
        stanzas=_stanzas(blocks, kinds, words, form, poem, found),
        metre=poem.metre if poem else None,
        rhymed=form.clear,
        failed_rhymes=failed_rhymes(blocks, kinds, form),
    )


def _ends(line: Set) -> Ends:
    words = [match.group() for match in WORD.finditer(line.text)]
    return tuple(words[-2:]) or ("",)


def _clear(poem: Scanned | None) -> Scanned | None:
    return poem if poem and poem.clear and len(poem.costs) >= _FEWEST_FOR_METRE else None


def _stumbles(
    blocks: Sequence[Block], words: Sequence[Sequence[tuple[Word, ...]]], poem: Scanned
) -> tuple[Stumble | None, ...]:
    lines = [line for block in blocks for line in block]
    return stumbles(lines, [line for stanza in words for line in stanza], poem, poem.expected)


def _groupings(blocks: Sequence[Block], form: Schemed) -> list[list[int]]:
    """Which lines may have a number of beats of their own: all the same, every second, by place, by rhyme."""
    ways = [
        [0 for block in blocks for _ in block],
        [at % 2 for block in blocks for at in range(len(block))],
    ]
    lengths = Counter(map(len, blocks))
    usual, often = lengths.most_common(1)[0]
    if often >= _FEWEST_STANZAS and len(lengths) == 1:
        ways.append([at for block in blocks for at in range(len(block))])
    if len(lengths) == 1 and usual == 5 and form.forms[5] == "AABBA":
        ways.append([int(at in (2, 3)) for block in blocks for at in range(5)])
    if len(lengths) == 1 and usual == 6 and form.forms[6] == "AABCCB":
        ways.append([int(at in (2, 5)) for block in blocks for at in range(6)])
    return ways


def _stanzas(
    blocks: Sequence[Block],
    kinds: Sequence[Kinds],
    words: Sequence[Sequence[tuple[Word, ...]]],
    form: Schemed,
    poem: Scanned | None,
    found: Sequence[Stumble | None],
) -> tuple[Stanza, ...]:
    stanzas, at = [], 0
    for block, own, spoken in zip(blocks, kinds, words, strict=True):
        shape = form.forms[len(block)] if form.clear else None
        lines = []
        for line, letter, line_words in zip(
            block, letters_of(len(block), own, shape), spoken, strict=True
        ):
            stumble = found[at] if found else None
            lines.append(replace(_line(line, line_words, poem, at), letter=letter, stumble=stumble))
            at += 1
        stanzas.append(
            Stanza(
                page=block[0].span.page,
                lines=tuple(lines),
                scheme="".join(line.letter for line in lines),
                pairs=_pairs(shape, own),
            )
        )
    return tuple(stanzas)


def _pairs(form: str | None, kinds: Kinds) -> tuple[Pair, ...]:
    return tuple(
        Pair(first=first, second=second, kind=kinds.get((first, second), RhymeKind.NONE))
        for first, second in pairs_of(form or "")
    )


def _line(line: Set, words: Sequence[Word], poem: Scanned | None, at: int) -> Line:
    plain = sum(len(word.readings[0].syllables) for word in words)
    if poem is None:
        return Line(span=line.span, text=line.text, syllables=plain)
    fit = poem.fits[at].get(poem.expected[at]) or min(
        poem.fits[at].values(), key=lambda fit: fit.cost, default=None
    )
    pattern = fit.pattern if fit else ""
    return Line(span=line.span, text=line.text, syllables=len(pattern) or plain, stresses=pattern)
