"""Find a book's verse and read it: rhymes, metre, stumbles, refrains.

A book is verse, or has verse in it, where stanzas are set in lines and their lines rhyme: a lucky rhyme
among lines of dialogue is no poem. So at least RHYMING of the lines must rhyme perfectly with another
line nearby that ends in another word. Unrhymed prose is never scanned, unless the author says that the
book is verse. Verse whose line ends were lost on the way is found by its rhymes; since its lines are a
guess, no line and no rhyme of it is doubted.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

from proofkit.book import Book
from proofkit.reading.verse.layout import Block, blocks_in_lines, rejoined_lines, single_lines
from proofkit.reading.verse.poem import RhymeKind, Verse
from proofkit.reading.verse.read_poem import read_poem, rhymes_of
from proofkit.reading.verse.refrains import odd_refrains
from proofkit.reading.verse.scheme import Kinds
from proofkit.reading.verse.syllables import WORD
from proofkit.settings import English

RHYMING = 0.4
_FEWEST_LINES = 4
_LONGEST_PICTURE_BOOK = 3000  # words
_WHOLE = 0.6  # of the story's words


def verse_of(book: Book, english: English, *, told: bool | None = None) -> Verse | None:
    """The book's verse, or None where it has none.

    ``told`` is the author's word: True has every line set as verse read so, False none.
    """
    if told is False:
        return None
    blocks = blocks_in_lines(book)
    kinds = [rhymes_of(block, english) for block in blocks]
    if told is None:
        kept = [_rhymes(own, len(block)) for block, own in zip(blocks, kinds, strict=True)]
        blocks = _verse_only(blocks, kept)
    if sum(map(len, blocks)) < _FEWEST_LINES:
        return _across_pages(book, english)
    return _read(book, blocks, english)


def _across_pages(book: Book, english: English) -> Verse | None:
    """Verse of a line or two a page, whose rhymes stand on the pages that follow."""
    lines = single_lines(book)
    for size in (4, 2):
        blocks = tuple(lines[at : at + size] for at in range(0, len(lines), size))
        kinds = [rhymes_of(block, english) for block in blocks]
        if len(lines) >= 2 * _FEWEST_LINES and _share(kinds, len(lines)) >= RHYMING:
            return _read(book, blocks, english)
    return _run_together(book, english)


def _run_together(book: Book, english: English) -> Verse | None:
    """Verse whose line ends were lost: a picture book's sentences rhyme at their ends all through."""
    if book.words > _LONGEST_PICTURE_BOOK:
        return None
    blocks = rejoined_lines(book)
    lines = sum(map(len, blocks))
    kinds = [rhymes_of(block, english) for block in blocks]
    if lines >= 2 * _FEWEST_LINES and _share(kinds, lines) >= RHYMING:
        return _unjudged(_read(book, blocks, english))
    return None


def _unjudged(verse: Verse) -> Verse:
    """The verse without what may only seem wrong because a line end was missed."""
    stanzas = (
        replace(stanza, lines=tuple(replace(line, stumble=None) for line in stanza.lines))
        for stanza in verse.stanzas
    )
    return replace(verse, stanzas=tuple(stanzas), failed_rhymes=())


def _verse_only(blocks: Sequence[Block], rhymes: Sequence[bool]) -> tuple[Block, ...]:
    """The blocks that rhyme, with those that do not if most do: a weak stanza of a poem is of it."""
    lines = sum(map(len, blocks))
    rhyming = sum(len(block) for block, own in zip(blocks, rhymes, strict=True) if own)
    everything = lines > 0 and rhyming / lines >= 0.5
    return tuple(block for block, own in zip(blocks, rhymes, strict=True) if own or everything)


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


def _read(book: Book, blocks: Sequence[Block], english: English) -> Verse:
    whole = _words_in(blocks) >= _WHOLE * book.words
    poems = [read_poem(own, english) for own in ([blocks] if whole else _poems(book, blocks))]
    stanzas = tuple(stanza for poem in poems for stanza in poem.stanzas)
    schemes = Counter(stanza.scheme for poem in poems if poem.rhymed for stanza in poem.stanzas)
    return Verse(
        stanzas=stanzas,
        metre=poems[0].metre if len(poems) == 1 else None,
        scheme=schemes.most_common(1)[0][0] if schemes else "",
        whole=whole,
        failed_rhymes=tuple(failed for poem in poems for failed in poem.failed_rhymes),
        odd_refrains=odd_refrains([line for block in blocks for line in block]),
    )


def _words_in(blocks: Sequence[Block]) -> int:
    return sum(len(WORD.findall(line.text)) for block in blocks for line in block)


def _poems(book: Book, blocks: Sequence[Block]) -> list[list[Block]]:
    """The songs of a story, each on its own: stanzas with nothing but white between them are one."""
    poems: list[list[Block]] = []
    for block in blocks:
        if poems and _adjoin(book, poems[-1][-1], block):
            poems[-1].append(block)
        else:
            poems.append([block])
    return poems


def _adjoin(book: Book, first: Block, second: Block) -> bool:
    end, start = first[-1].span, second[0].span
    if end.page == start.page:
        return not book.page(end.page).prose[end.end : start.start].strip()
    between = (book.page(number).prose for number in range(end.page + 1, start.page))
    rest = (book.page(end.page).prose[end.end :], book.page(start.page).prose[: start.start])
    return not any(text.strip() for text in (*rest, *between))
