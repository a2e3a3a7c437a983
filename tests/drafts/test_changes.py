from __future__ import annotations

from collections.abc import Sequence

from hypothesis import given
from hypothesis import strategies as st

from proofkit.drafts.changes import Change, PageChange, WordChange, changes_between
from proofkit.drafts.tokens import longest_rise
from tests.drafts.making import draft_of_texts
from tests.drafts.test_matching import BOOK, ONE, THREE, TWO

NEW = "Far away a bell rang twice, and a dog began to bark at it."


def changes(was: Sequence[str], now: Sequence[str]) -> tuple[PageChange, ...]:
    return changes_between(draft_of_texts(*was), draft_of_texts(*now, number=2))


def only_words(was: str, now: str) -> tuple[WordChange, ...]:
    (page,) = changes((was, NEW), (now, NEW))
    return page.words


def test_a_draft_like_the_one_before_has_no_changes() -> None:
    assert changes(BOOK, BOOK) == ()


def test_a_word_replaced_is_told_with_the_words_around_it() -> None:
    assert only_words(ONE, ONE.replace("flat", "still")) == (
        WordChange(
            change=Change.REPLACED,
            was="flat",
            now="still",
            before="lake. The lake was",
            after="and grey. She looked",
        ),
    )


def test_words_put_in_and_cut_are_told_with_their_marks() -> None:
    (added,) = only_words(ONE, ONE.replace("The lake", "Oh, how wide, the lake"))
    assert (added.change, added.was, added.now) == (Change.REPLACED, "The", "Oh, how wide, the")
    (cut,) = only_words(ONE, ONE.replace(" and grey.", "."))
    assert (cut.change, cut.was, cut.now) == (Change.REPLACED, "flat and grey.", "flat.")
    (cut,) = only_words(ONE, ONE.replace(" for her brother,", ""))
    assert (cut.change, cut.was, cut.now) == (Change.CUT, "for her brother,", "")
    (added,) = only_words(ONE, ONE.replace("She looked", "She looked and looked"))
    assert (added.change, added.was, added.now) == (Change.ADDED, "", "and looked")


def test_a_mark_is_a_change_and_a_mark_that_stands_alone_too() -> None:
    (mark,) = only_words("She said no, and left.", "She said no and left.")
    assert (mark.was, mark.now) == ("no,", "no")
    (dash,) = only_words("She said no – and left.", "She said no — and left.")
    assert (dash.was, dash.now) == ("–", "—")


def test_of_spaces_no_more_is_told_than_that_they_changed() -> None:
    (page,) = changes(BOOK, (ONE, TWO, THREE.replace("  ", " ")))
    assert page.spacing
    assert page.words == ()


def test_a_page_put_in_moves_none_of_the_others() -> None:
    (page,) = changes(BOOK, (ONE, NEW, TWO, THREE))
    assert (page.was, page.now and page.now.number, page.others) == (None, 2, ())


def test_a_page_taken_out_is_told_after_the_one_it_followed() -> None:
    first, second = changes(BOOK, (ONE.replace("flat", "still"), THREE))
    assert first.now is not None
    assert (second.now, second.was and second.was.number) == (None, 2)


def test_a_page_that_was_carried_elsewhere_is_moved() -> None:
    (page,) = changes((*BOOK, NEW), (NEW, *BOOK))
    assert page.moved
    assert (page.was and page.was.number, page.now and page.now.number) == (4, 1)
    assert page.words == ()


def test_a_page_moved_and_changed_is_both() -> None:
    (page,) = changes((*BOOK, NEW), (NEW.replace("twice", "once"), *BOOK))
    assert page.moved
    assert [(change.was, change.now) for change in page.words] == [("twice,", "once,")]


def test_a_paragraph_carried_to_another_page_is_moved_and_not_cut_and_written_anew() -> None:
    first, second = ONE.split("\n\n")
    now = (first, TWO, f"{THREE}.\n\n{second}")
    away, here = changes((ONE, TWO, f"{THREE}."), now)
    assert [(c.change, c.was, c.page) for c in away.words] == [(Change.MOVED_AWAY, second, 3)]
    assert [(c.change, c.now, c.page) for c in here.words] == [(Change.MOVED_HERE, second, 1)]


def test_words_carried_over_are_told_though_pages_before_them_moved_up() -> None:
    first, second = ONE.split("\n\n")
    away, here = changes((NEW, ONE, TWO), (first, f"{second}\n\n{TWO}"))[1:]
    assert [(c.change, c.was, c.page) for c in away.words] == [(Change.MOVED_AWAY, second, 2)]
    assert [(c.change, c.now, c.page) for c in here.words] == [(Change.MOVED_HERE, second, 2)]


def test_words_carried_to_another_place_on_their_page_are_cut_and_added() -> None:
    first, second = ONE.split("\n\n")
    words = only_words(f"{first}\n\n{second}", f"{second}\n\n{first}")
    assert {change.change for change in words} == {Change.CUT, Change.ADDED}
    assert len({change.was or change.now for change in words}) == 1


def test_a_page_parted_in_two_is_made_of_one() -> None:
    first, second = TWO.split("\n\n")
    pages = changes(BOOK, (ONE, first, second, THREE))
    put_in = [page for page in pages if page.was is None]
    assert [page.others for page in put_in] == [(2,)]


def test_two_pages_joined_leave_one_whose_words_went_to_the_other() -> None:
    pages = changes(BOOK, (ONE, f"{TWO}\n\n{THREE}"))
    assert [page.others for page in pages if page.now is None] == [(2,)]


def test_blank_pages_are_paired_too() -> None:
    assert changes(("", ONE, "", TWO), ("", ONE, "", TWO)) == ()
    (page,) = changes((ONE, TWO), (ONE, "", TWO))
    assert page.was is None


@given(st.lists(st.integers(0, 9), max_size=12))
def test_the_longest_rise_rises_and_none_is_longer(numbers: list[int]) -> None:
    rise = longest_rise(numbers)
    chosen = [numbers[at] for at in sorted(rise)]
    assert chosen == sorted(set(chosen))
    best = [0] * len(numbers)
    for at, number in enumerate(numbers):
        best[at] = 1 + max((best[b] for b in range(at) if numbers[b] < number), default=0)
    assert len(rise) == max(best, default=0)


@given(st.lists(st.sampled_from([ONE, TWO, THREE, NEW, "", "***"]), max_size=5), st.data())
def test_a_draft_and_itself_never_differ_whatever_its_pages(
    pages: list[str], data: st.DataObject
) -> None:
    assert changes(pages, pages) == ()
    other = data.draw(st.permutations(pages))
    assert all(page.words == () for page in changes(pages, other))
