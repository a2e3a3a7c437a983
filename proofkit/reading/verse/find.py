"""Find a book's verse and read it: rhymes, metre, stumbles, refrains.

A book is verse, or has verse in it, where stanzas are set in lines and their lines rhyme: a lucky rhyme
among lines of dialogue is no poem. So at least RHYMING of the lines must rhyme perfectly with another
line nearby that ends in another word. Unrhymed prose is never scanned, unless the author says that the
book is verse.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

from proofkit.book import Book, Span
from proofkit.reading.verse.layout import Block, Set, blocks_in_lines, single_lines
from proofkit.reading.verse.metre import Scanned, scanned
from proofkit.reading.verse.poem import (
    FailedRhyme,
    Line,
    Pair,
    RhymeKind,
    Stanza,
    Stumble,
    Verse,
)
from proofkit.reading.verse.refrains import odd_refrains
from proofkit.reading.verse.scheme import (
    Ends,
    Kinds,
    Schemed,
    kinds_of,
    letters_of,
    pairs_of,
    schemed,
)
from proofkit.reading.verse.stumbles import FEWEST_LINES, MOST, stumbles
from proofkit.reading.verse.syllables import WORD, Word, words_of
from proofkit.settings import English

RHYMING = 0.4
_FEWEST_LINES = 4
_WHOLE = 0.6  # of the story's words
_FEWEST_STANZAS = 3  # before each line of a stanza may have a number of beats of its own
_TO_ONE = 4  # rhymes kept to one that fails, where several fail
_FEWEST_FIRST_RHYMES = 5  # the first and third lines of a stanza rhyme as they please
_FEWEST_RHYMES = 4  # in the whole poem, where only one other stands in the same place
_FIRST_RHYMES = (2, 0)
_FEWEST_FOR_METRE = 4  # lines


def verse_of(book: Book, english: English, *, told: bool | None = None) -> Verse | None:
    """The book's verse, or None where it has none.

    ``told`` is the author's word: True has every line set as verse read so, False none.
    """
    if told is False:
        return None
    blocks = blocks_in_lines(book)
    kinds = [_kinds(block, english) for block in blocks]
    if told is None:
        kept = [_rhymes(own, len(block)) for block, own in zip(blocks, kinds, strict=True)]
        blocks, kinds = _verse_only(blocks, kinds, kept)
    if sum(map(len, blocks)) < _FEWEST_LINES:
        return _across_pages(book, english)
    return _read(book, blocks, kinds, english)


def _across_pages(book: Book, english: English) -> Verse | None:
    """Verse of a line or two a page, whose rhymes stand on the pages that follow."""
    lines = single_lines(book)
    for size in (4, 2):
        blocks = tuple(lines[at : at + size] for at in range(0, len(lines), size))
        kinds = [_kinds(block, english) for block in blocks]
        if len(lines) >= 2 * _FEWEST_LINES and _share(kinds, len(lines)) >= RHYMING:
            return _read(book, blocks, kinds, english)
    return None


def _verse_only(
    blocks: Sequence[Block], kinds: Sequence[Kinds], rhymes: Sequence[bool]
) -> tuple[tuple[Block, ...], list[Kinds]]:
    """The blocks that rhyme, with those that do not if most do: a weak stanza of a poem is of it."""
    lines = sum(map(len, blocks))
    rhyming = sum(len(block) for block, own in zip(blocks, rhymes, strict=True) if own)
    everything = lines > 0 and rhyming / lines >= 0.5
    kept = [at for at, own in enumerate(rhymes) if own or everything]
    return tuple(blocks[at] for at in kept), [kinds[at] for at in kept]


def _rhymes(kinds: Kinds, length: int) -> bool:
    return _share([kinds], length) >= RHYMING


def _share(kinds: Sequence[Kinds], lines: int) -> float:
    """The share of lines that rhyme perfectly with another nearby."""
    rhyming = 0
    for own in kinds:
        perfect = [
            pair
            for pair, kind in own.items()
            if kind is RhymeKind.PERFECT and pair[1] - pair[0] <= 3
        ]
        rhyming += len({place for pair in perfect for place in pair})
    return rhyming / lines if lines else 0.0


def _kinds(block: Block, english: English) -> Kinds:
    return kinds_of([_ends(line) for line in block], english)


def _ends(line: Set) -> Ends:
    words = [match.group() for match in WORD.finditer(line.text)]
    return tuple(words[-2:]) or ("",)


def _read(book: Book, blocks: Sequence[Block], kinds: Sequence[Kinds], english: English) -> Verse:
    form = schemed(kinds, [len(block) for block in blocks])
    words = [[words_of(line.text, english) for line in block] for block in blocks]
    poem = _clear(scanned(words, _groupings(blocks, form)))
    found = _stumbles(blocks, words, poem) if poem else ()
    if sum(map(bool, found)) > max(1, MOST * len(found)):
        poem, found = None, ()
    stanzas = _stanzas(blocks, kinds, words, form, poem, found)
    schemes = Counter(stanza.scheme for stanza in stanzas)
    return Verse(
        stanzas=stanzas,
        metre=poem.metre if poem else None,
        scheme=schemes.most_common(1)[0][0] if form.clear else "",
        whole=_words_in(blocks) >= _WHOLE * book.words,
        failed_rhymes=_failed(blocks, kinds, form),
        odd_refrains=odd_refrains([line for block in blocks for line in block]),
    )


def _clear(poem: Scanned | None) -> Scanned | None:
    return poem if poem and poem.clear and len(poem.costs) >= _FEWEST_FOR_METRE else None


def _stumbles(
    blocks: Sequence[Block], words: Sequence[Sequence[tuple[Word, ...]]], poem: Scanned
) -> tuple[Stumble | None, ...]:
    lines = [line for block in blocks for line in block]
    return stumbles(lines, [line for stanza in words for line in stanza], poem, poem.expected)


def _words_in(blocks: Sequence[Block]) -> int:
    return sum(len(WORD.findall(line.text)) for block in blocks for line in block)


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


def _failed(
    blocks: Sequence[Block], kinds: Sequence[Kinds], form: Schemed
) -> tuple[FailedRhyme, ...]:
    """The rhymes of the form that are not there, where the rhymes of the same place elsewhere are."""
    if not form.clear or sum(map(len, blocks)) < FEWEST_LINES:
        return ()
    kept: Counter[tuple[int, int]] = Counter()
    failed: list[tuple[tuple[int, int], FailedRhyme]] = []
    for block, own in zip(blocks, kinds, strict=True):
        for first, second in pairs_of(form.forms[len(block)]):
            place = _place(first, second)
            if (first, second) not in own:
                failed.append((place, _failure(block[first], block[second])))
            elif own[first, second] is not RhymeKind.IDENTICAL:
                kept[place] += 1
    failures = Counter(place for place, _ in failed)
    return tuple(failure for place, failure in failed if _doubted(place, kept, failures[place]))


def _doubted(place: tuple[int, int], kept: Counter[tuple[int, int]], failures: int) -> bool:
    if place == _FIRST_RHYMES and kept[place] < _FEWEST_FIRST_RHYMES:
        return False
    if failures > 1:
        return kept[place] >= _TO_ONE * failures
    return kept[place] >= 2 or (kept[place] == 1 and kept.total() >= _FEWEST_RHYMES)


def _place(first: int, second: int) -> tuple[int, int]:
    """Couplets are alike wherever they stand; of alternate rhymes the first and the second are not."""
    distance = second - first
    return distance, first % 2 if distance == 2 else 0


def _failure(first: Set, second: Set) -> FailedRhyme:
    partner_span, partner = _last_word(first)
    span, word = _last_word(second)
    return FailedRhyme(span=span, word=word, partner_span=partner_span, partner=partner)


def _last_word(line: Set) -> tuple[Span, str]:
    *_, last = WORD.finditer(line.text)
    start = line.span.start
    span = replace(line.span, start=start + last.start(), end=start + last.end())
    return span, last.group()
