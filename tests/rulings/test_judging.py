from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

import pytest

from proofkit.book import Book
from proofkit.issue import Issue, with_keys
from proofkit.own_file import read_own_file
from proofkit.rulings.judging import Judgement, judged
from proofkit.rulings.ruling import Ruling, rulings_in
from tests.rulings.drafts import book_of, found, issue, ruled

FIRST = "Pim the goose went up the the hill and looked for the moon behind the mill"
SECOND = "His brother then went up the the hill and called all night with a tin horn"
OTHER = "In the mornign there was snow on the roof of the barn and on the gate"


def written(file: Path, text: str) -> tuple[Ruling, ...]:
    file.write_text(text, encoding="utf-8")
    return rulings_in(read_own_file(file))


def standing(judgement: Judgement) -> list[tuple[str, int]]:
    return [(each.issue.quote, each.issue.span.page) for each in judgement.let_stand]


def still_open(judgement: Judgement) -> list[tuple[str, int]]:
    return [(each.quote, each.span.page) for each in judgement.open]


def after(file: Path, book: Book, chosen: Sequence[int], *texts: str) -> Judgement:
    """The rulings made on some of a book's issues, in a draft of other texts."""
    issues = found(book)
    rulings = ruled(file, book, issues, *(issues[number] for number in chosen))
    draft = book_of(*texts)
    return judged(draft, found(draft), rulings)


def test_without_rulings_all_is_open() -> None:
    book = book_of(FIRST, OTHER)
    assert judged(book, found(book), ()) == Judgement(open=found(book))


def test_one_place_stands_and_the_order_of_the_others_is_kept(file: Path) -> None:
    judgement = after(file, book_of(FIRST, OTHER, SECOND), [1], FIRST, OTHER, SECOND)
    assert standing(judgement) == [("mornign", 2)]
    assert still_open(judgement) == [("the the", 1), ("the the", 3)]
    assert judgement.idle == ()


def test_the_second_of_two_equal_slips_stands_when_the_first_is_mended(file: Path) -> None:
    mended = FIRST.replace("the the", "the")
    judgement = after(file, book_of(FIRST, SECOND), [1], mended, SECOND)
    assert standing(judgement) == [("the the", 2)]


def test_the_first_of_two_equal_slips_does_not_lend_its_ruling_when_it_is_mended(
    file: Path,
) -> None:
    mended = FIRST.replace("the the", "the")
    judgement = after(file, book_of(FIRST, SECOND), [0], mended, SECOND)
    assert still_open(judgement) == [("the the", 2)]
    assert len(judgement.idle) == 1


def test_two_equal_slips_that_change_places_keep_their_own_rulings(file: Path) -> None:
    judgement = after(file, book_of(FIRST, SECOND), [0], SECOND, FIRST)
    assert standing(judgement) == [("the the", 2)]


def test_an_equal_slip_that_comes_later_is_not_let_stand(file: Path) -> None:
    for texts, page in (((FIRST, SECOND), 1), ((SECOND, FIRST), 2)):
        judgement = after(file, book_of(FIRST), [0], *texts)
        assert standing(judgement) == [("the the", page)]
        assert len(judgement.open) == 1
        file.unlink()


def test_lines_that_differ_in_nothing_stand_for_one_each(file: Path) -> None:
    one = after(file, book_of(FIRST, FIRST), [0], FIRST, FIRST)
    assert (len(one.let_stand), len(one.open)) == (1, 1)
    both = after(file, book_of(FIRST, FIRST), [1], FIRST, FIRST)
    assert (standing(both), both.open) == ([("the the", 1), ("the the", 2)], ())


def test_words_that_are_gone_leave_an_idle_ruling(file: Path) -> None:
    judgement = after(file, book_of(FIRST, OTHER), [1], FIRST, OTHER.replace("mornign", "morning"))
    assert [each.line for each in judgement.idle] == [3]
    assert still_open(judgement) == [("the the", 1)]


def test_a_neighbour_that_changes_costs_no_ruling(file: Path) -> None:
    changed = OTHER.replace("the mornign there", "that mornign deep")
    assert standing(after(file, book_of(OTHER), [0], changed)) == [("mornign", 1)]


def test_all_of_the_line_but_the_neighbours_may_change(file: Path) -> None:
    changed = "Nobody knew why. In the mornign there was such a smell of fish about"
    assert standing(after(file, book_of(OTHER), [0], changed)) == [("mornign", 1)]


def test_another_slip_of_the_same_words_far_away_is_open(file: Path) -> None:
    judgement = after(file, book_of(OTHER), [0], "Then came a bright and windy mornign by the sea")
    assert still_open(judgement) == [("mornign", 1)]
    assert len(judgement.idle) == 1


def test_a_ruling_holds_for_its_own_check_alone(file: Path) -> None:
    book = book_of(OTHER)
    rulings = ruled(file, book, found(book), found(book)[0])
    other = with_keys(book, [issue(book, found(book)[0].span, check="spelling/other")])
    assert judged(book, other, rulings).open == other


def test_a_matter_of_several_places_stands_when_its_first_place_is_gone(file: Path) -> None:
    book = book_of("a bed-time story for a goose", "and then at bed-time came the moon", "the end")
    spans = [book.page(n).span(at, at + 8) for n, at in ((1, 2), (2, 12))]
    grouped = with_keys(book, [issue(book, spans[0], related=spans[1:])])
    rulings = ruled(file, book, grouped, grouped[0])
    draft = book_of("a good story for a goose", "and then at bed-time came the moon", "the end")
    left = with_keys(draft, [issue(draft, draft.page(2).span(12, 20))])
    assert len(judged(draft, left, rulings).let_stand) == 1


def test_a_key_alone_is_enough_and_a_line_alone_too(file: Path) -> None:
    book = book_of(FIRST, OTHER)
    key = found(book)[1].key
    assert standing(judged(book, found(book), written(file, f'[[stet]]\nkey = "{key}"\n'))) == [
        ("mornign", 2)
    ]
    line = '[[stet]]\nline = "In the ›mornign‹ there was snow"\n'
    assert standing(judged(book, found(book), written(file, line))) == [("mornign", 2)]


@pytest.mark.parametrize("word", ["mornign", "Mornign", "mornign."])
def test_a_word_stands_wherever_it_is_the_whole_of_what_is_at_fault(file: Path, word: str) -> None:
    book = book_of(OTHER, "A mornign", "the mornign the mornign")
    issues = (*found(book), *with_keys(book, [whole_page(book, 2)]))
    judgement = judged(book, issues, written(file, f'[[stet]]\nword = "{word}"\n'))
    assert len(judgement.let_stand) == 4
    assert [each.quote for each in judgement.open] == ["A mornign"]


def whole_page(book: Book, number: int) -> Issue:
    page = book.page(number)
    return issue(book, page.span(0, len(page.text)), check="reading/long-sentence")


def test_a_word_in_one_check_is_open_in_another(file: Path) -> None:
    book = book_of(OTHER)
    (one,) = found(book)
    for check, stands in (("spelling/slip", 1), ("spelling/other", 0)):
        rulings = written(file, f'[[stet]]\nword = "mornign"\ncheck = "{check}"\n')
        judgement = judged(book, [one], rulings)
        assert (len(judgement.let_stand), len(judgement.idle)) == (stands, 1 - stands)


def test_an_owner_of_the_word_stands_with_it(file: Path) -> None:
    book = book_of("Honkers’s hat and Honkers")
    issues = with_keys(book, [issue(book, book.page(1).span(*at)) for at in ((0, 9), (18, 25))])
    assert not judged(book, issues, written(file, '[[stet]]\nword = "Honkers"\n')).open


def test_a_whole_check_stands_beside_a_place_of_it(file: Path) -> None:
    book = book_of(FIRST, OTHER, SECOND)
    issues = found(book)
    rulings = ruled(file, book, issues, issues[0])
    whole = replace(rulings[0], key="", place=None, check="repetition/twice")
    idle = replace(whole, check="commas/none")
    judgement = judged(book, issues, (*rulings, whole, idle))
    assert still_open(judgement) == [("mornign", 2)]
    assert [each.ruling for each in judgement.let_stand] == [rulings[0], whole]
    assert judgement.idle == (idle,)
