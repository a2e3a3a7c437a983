"""Two hundred random edits elsewhere in a book leave every ruling in force, each on its own place."""

from __future__ import annotations

import copy
import random
from collections.abc import Callable, Sequence
from pathlib import Path

import pytest

from proofkit.rulings.judging import judged
from proofkit.rulings.ruling import Ruling
from tests.rulings.drafts import Draft, Word, draft_of, found, ruled

# "up the the hill and" stands three times: nothing that a key is made from tells them apart.
STORY = (
    "Once a goose called Pim went up the the hill and looked for the moon behind the mill.",
    "Honk said Pim in the mornign when the frost was on the gate and the pond was hard as a plate.",
    "So her brother Tom went up the the hill and called for the moon with a long tin horn.",
    "All the geese flew over with a honk-a-lonk that woke the miller and his seven sleepy daughters.",
    "Down came the snow on the roof on the the barn and on the miller who had lost his hat.",
    "Then the miller too went up the the hill and sat in the snow beside the two small geese.",
    "There was the moon in the pond all round and yellow and it was there the the whole time.",
)
RULED = (
    1,
    2,
    5,
    3,
)  # by their order among all issues: a slip, the second and third "hill", the call
WORDS = ("softly", "and", "the", "then", "Pim", "moon", "very", "old", "snow", "once", "the", "a")
EQUAL = "went up the the hill and"
EDITS = 200


Edit = Callable[[Draft, random.Random, set[int]], None]


def insert(draft: Draft, chance: random.Random, kept: set[int]) -> None:
    page, at = gap(draft, chance, kept)
    page.insert(at, Word(chance.choice(WORDS)))


def insert_sentence(draft: Draft, chance: random.Random, kept: set[int]) -> None:
    page, at = gap(draft, chance, kept)
    page[at:at] = [Word(chance.choice(WORDS)) for _ in range(9)]


def insert_equal(draft: Draft, chance: random.Random, kept: set[int]) -> None:
    page, at = gap(draft, chance, kept)
    page[at:at] = [Word(word) for word in EQUAL.split()]


def delete(draft: Draft, chance: random.Random, kept: set[int]) -> None:
    page, at = word(draft, chance, kept)
    del page[at]


def replace(draft: Draft, chance: random.Random, kept: set[int]) -> None:
    page, at = word(draft, chance, kept)
    page[at] = Word(chance.choice(WORDS))


def break_page(draft: Draft, chance: random.Random, kept: set[int]) -> None:
    page, at = gap(draft, chance, kept)
    where = draft.pages.index(page)
    draft.pages[where : where + 1] = [page[:at], page[at:]]


def join_pages(draft: Draft, chance: random.Random, kept: set[int]) -> None:
    if len(draft.pages) > 2:
        where = chance.randrange(len(draft.pages) - 1)
        draft.pages[where : where + 2] = [draft.pages[where] + draft.pages[where + 1]]


def move_page(draft: Draft, chance: random.Random, kept: set[int]) -> None:
    page = draft.pages.pop(chance.randrange(len(draft.pages)))
    draft.pages.insert(chance.randrange(len(draft.pages) + 1), page)


def gap(draft: Draft, chance: random.Random, kept: set[int]) -> tuple[list[Word], int]:
    """A page and a place in it that is not between two words that must stay."""
    while True:
        page = chance.choice(draft.pages)
        at = chance.randrange(len(page) + 1)
        if not (0 < at < len(page) and {id(page[at - 1]), id(page[at])} <= kept):
            return page, at


def word(draft: Draft, chance: random.Random, kept: set[int]) -> tuple[list[Word], int]:
    """A page and a word on it that need not stay."""
    free = [
        (page, at) for page in draft.pages for at in range(len(page)) if id(page[at]) not in kept
    ]
    return chance.choice(free)


# What changes no more than words that no key is made from, and leaves the pages as they are.
FAR: tuple[Edit, ...] = (insert, insert_sentence, delete, replace)
ANY: tuple[Edit, ...] = (*FAR, insert_equal, break_page, join_pages, move_page)


def dice(seed: int) -> random.Random:
    return random.Random(seed)  # noqa: S311 - chance, not secrecy


def start(file: Path) -> tuple[Draft, tuple[Ruling, ...], list[list[Word]]]:
    """The story, the rulings made on it, and for each the words that stand."""
    draft = draft_of(*STORY)
    book = draft.book()
    issues = found(book)
    chosen = [issues[number] for number in RULED]
    places = []
    for issue in chosen:
        page = draft.pages[issue.span.page - 1]
        first = book.page(issue.span.page).text[: issue.span.start].count(" ")
        places.append(page[first : first + len(issue.quote.split())])
    assert [draft.span(words) for words in places] == [issue.span for issue in chosen]
    return draft, ruled(file, book, issues, *chosen), places


def stay(draft: Draft, places: Sequence[Sequence[Word]], neighbours: int) -> set[int]:
    """The words that stand by a ruling, with so many to either side."""
    kept = set()
    for words in places:
        page = next(page for page in draft.pages if words[0] in page)
        at = page.index(words[0])
        kept |= {id(w) for w in page[max(0, at - neighbours) : at + len(words) + neighbours]}
    return kept


def hold(draft: Draft, rulings: Sequence[Ruling], places: Sequence[Sequence[Word]]) -> None:
    """Every ruling is in force, on the words that it was made on."""
    book = draft.book()
    judgement = judged(book, found(book), rulings)
    standing = {id(each.ruling): each.issue.span for each in judgement.let_stand}
    assert judgement.idle == ()
    assert [standing[id(ruling)] for ruling in rulings] == [draft.span(words) for words in places]


@pytest.mark.parametrize("seed", range(EDITS))
def test_one_edit_anywhere_but_in_the_words_themselves(file: Path, seed: int) -> None:
    draft, rulings, places = start(file)
    hold(draft, rulings, places)
    chance = dice(seed)
    edit = chance.choice(ANY)
    # An equal slip in the very line of one that stands could be taken for it by anybody.
    edit(draft, chance, stay(draft, places, 8 if edit is insert_equal else 0))
    hold(draft, rulings, places)


@pytest.mark.parametrize("seed", range(5))
def test_two_hundred_edits_one_after_another(file: Path, seed: int) -> None:
    draft, rulings, places = start(file)
    chance = dice(seed)
    kept = stay(draft, places, 2) | {
        id(word) for page in draft.pages for word in page if word.text in EQUAL.split()
    }
    before = copy.copy(draft.book())
    for _ in range(EDITS):
        chance.choice(FAR)(draft, chance, kept)
        hold(draft, rulings, places)
    assert draft.book() != before


@pytest.mark.parametrize("seed", range(40))
def test_ten_edits_of_every_kind_between_two_drafts(file: Path, seed: int) -> None:
    draft, rulings, places = start(file)
    chance = dice(seed)
    for _ in range(10):
        chance.choice(FAR)(draft, chance, stay(draft, places, 2))
    hold(draft, rulings, places)
