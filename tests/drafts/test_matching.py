from __future__ import annotations

from dataclasses import replace

from proofkit.drafts.draft import Draft
from proofkit.drafts.matching import compared
from proofkit.drafts.status import Comparison, Ended, Standing, Status
from proofkit.issue import Tier
from tests.drafts.making import book_of, draft_of_texts, drafted, slips_in

ONE = (
    "One mornign the goose walked down to the lake. The lake was flat and grey.\n\n"
    "She looked for her brother, and he was not there."
)
TWO = (
    "Nobody knew where the the wind had gone. Even the reeds stood still.\n\n"
    "A boat lay upside down on the shore, and a crow sat on it."
)
THREE = "The goose put one foot  into the water. It was cold, and it was very early"
BOOK = (ONE, TWO, THREE)
CLEAN = tuple(
    text.replace("mornign", "morning").replace("the the", "the").replace("  ", " ")
    for text in (ONE, TWO, THREE + ".")
)


def statuses(*drafts: tuple[str, ...]) -> dict[str, Status]:
    """The status of each slip after the last of some drafts, by its words."""
    return by_words(comparison(*drafts))


def comparison(*drafts: tuple[str, ...]) -> Comparison:
    made = [draft_of_texts(*texts, number=number) for number, texts in enumerate(drafts, 1)]
    return compared(made[:-1], made[-1])


def by_words(result: Comparison) -> dict[str, Status]:
    every: tuple[Standing | Ended, ...] = (*result.issues, *result.ended)
    return {each.issue.quote: each.status for each in every}


ALL_STILL_THERE = dict.fromkeys(("mornign", "the the", "  ", ""), Status.STILL_THERE)
ALL_FIXED = dict.fromkeys(ALL_STILL_THERE, Status.FIXED)


def test_in_a_first_draft_all_is_new() -> None:
    assert set(statuses(BOOK).values()) == {Status.NEW}


def test_what_nobody_touched_is_still_there() -> None:
    assert statuses(BOOK, BOOK) == ALL_STILL_THERE


def test_what_was_mended_is_fixed() -> None:
    assert statuses(BOOK, CLEAN) == ALL_FIXED


def test_a_page_put_in_leaves_the_rest_matched() -> None:
    new = "Far away a bell rang twice, and a dog began to bark at it."
    assert statuses(BOOK, (new, ONE, TWO, new + " Then it slept.", THREE)) == ALL_STILL_THERE


def test_pages_moved_leave_the_rest_matched() -> None:
    assert statuses(BOOK, (TWO, THREE, ONE)) == ALL_STILL_THERE
    assert statuses(BOOK, (THREE, TWO, ONE)) == ALL_STILL_THERE


def test_a_paragraph_moved_to_another_page_leaves_the_rest_matched() -> None:
    first, second = ONE.split("\n\n")
    assert statuses(BOOK, (second, TWO, first + "\n\n" + THREE)) == ALL_STILL_THERE


def test_pages_joined_and_parted_leave_the_rest_matched() -> None:
    assert statuses(BOOK, ("\n\n".join(BOOK),)) == ALL_STILL_THERE
    assert statuses(("\n\n".join(BOOK),), BOOK) == ALL_STILL_THERE


def test_a_name_changed_all_through_leaves_the_rest_matched() -> None:
    named = tuple(text.replace("goose", "Mabel Moss").replace("the wind", "Wilf") for text in BOOK)
    here = ("The Bertha Bertha said no. Bertha sat. Bertha  ran to Bertha.", *named)
    there = tuple(text.replace("Bertha", "Olive").replace("Mabel", "Dora") for text in here)
    assert {each.status for each in comparison(here, there).issues} == {Status.STILL_THERE}


def test_words_changed_beside_a_slip_leave_it_still_there() -> None:
    now = (
        ONE.replace("One mornign the goose", "Early one mornign a goose"),
        TWO.replace("knew where the the wind had", "could say where the the breeze has"),
        THREE.replace("one foot  into", "her left foot  in"),
    )
    assert statuses(BOOK, now) == ALL_STILL_THERE


def test_a_slip_whose_sentence_was_cut_is_gone_with_its_text() -> None:
    now = (
        ONE.removeprefix("One mornign the goose walked down to the lake. "),
        TWO.removeprefix("Nobody knew where the the wind had gone. "),
    )
    assert statuses(BOOK, now) == dict.fromkeys(ALL_STILL_THERE, Status.GONE_WITH_TEXT)


def test_a_sentence_put_in_the_place_of_another_mends_nothing() -> None:
    now = ONE.replace(
        "One mornign the goose walked down to the lake.", "It had been a long and bitter night."
    )
    assert statuses((ONE,), (now,)) == {"mornign": Status.GONE_WITH_TEXT}


def test_a_short_sentence_is_fixed_or_gone() -> None:
    assert statuses(("He ran. Teh teh. She ran.",), ("He ran. The. She ran.",)) == {
        "teh": Status.FIXED
    }
    assert statuses(("He ran. Then wiht. She ran.",), ("He ran. She ran.",)) == {
        "wiht": Status.GONE_WITH_TEXT
    }


def test_a_slip_made_again_is_back_again() -> None:
    again = dict.fromkeys(ALL_STILL_THERE, Status.BACK_AGAIN)
    assert statuses(BOOK, CLEAN, BOOK) == again
    assert statuses(BOOK, CLEAN, CLEAN, tuple(reversed(CLEAN)), BOOK) == again


def test_a_slip_that_comes_back_with_its_text_is_back_again() -> None:
    assert statuses(BOOK, (ONE, THREE), BOOK)["the the"] is Status.BACK_AGAIN


def test_what_is_back_again_is_still_there_after_that() -> None:
    assert statuses(BOOK, CLEAN, BOOK, BOOK) == ALL_STILL_THERE


def test_the_same_slip_made_elsewhere_is_new() -> None:
    first, second = "The hen went wiht the pig.", "Off went the dog wiht the cat and the drum."
    clean = (first.replace("wiht", "with"), second.replace("wiht", "with"))
    assert statuses((first, clean[1]), clean, (clean[0], second)) == {"wiht": Status.NEW}


def test_of_two_equal_slips_in_a_refrain_the_one_mended_is_fixed() -> None:
    verse = "Away went teh geese, over the hill and far from home."
    pages = (f"Dawn came up. {verse}", f"Noon came by. {verse}", f"Dusk fell down. {verse}")
    now = (pages[0], pages[1].replace("teh", "the"), pages[2])
    result = comparison(pages, now)
    assert [each.issue.page for each in result.ended] == [2]
    assert [each.before.page for each in result.issues if each.before] == [1, 3]


def test_a_slip_mended_with_another_slip_is_fixed_and_new() -> None:
    assert statuses(("He ran wiht her to teh sea.",), ("He ran wiht her to geeese sea.",)) == {
        "wiht": Status.STILL_THERE,
        "teh": Status.FIXED,
        "geeese": Status.NEW,
    }


def test_what_the_author_lets_stand_is_let_stand_and_never_counted_as_fixed() -> None:
    book = book_of(*BOOK)
    found = slips_in(book)
    last = drafted(book, found)
    now = drafted(book, found, number=2, stand=[found[0].key])
    result = compared([last], now)
    assert by_words(result)["mornign"] is Status.LET_STAND
    assert result.counts().let_stand == 1
    clean = draft_of_texts(*CLEAN, number=3)
    assert len(compared([last, now], clean).fixed) == 3
    assert compared([last, now], clean).counts(Tier.ERROR).fixed == 2


def test_a_ruling_taken_back_makes_an_issue_still_there() -> None:
    book = book_of(*BOOK)
    found = slips_in(book)
    last = drafted(book, found, stand=[issue.key for issue in found])
    assert by_words(compared([last], drafted(book, found, number=2))) == ALL_STILL_THERE


def test_an_issue_with_several_places_is_still_there_until_the_last_is_mended() -> None:
    def both(*texts: str, number: int) -> Draft:
        draft = draft_of_texts(*texts, number=number)
        first, *others = draft.issues
        return replace(draft, issues=(replace(first, related=tuple(o.span for o in others)),))

    last = both("She sat wiht him.", "He ran wiht her.", number=1)
    now = both("She sat with him.", "He ran wiht her.", number=2)
    assert by_words(compared([last], now)) == {"wiht": Status.STILL_THERE}
    done = draft_of_texts("She sat with him.", "He ran with her.", number=3)
    assert by_words(compared([last, now], done)) == {"wiht": Status.FIXED}


def test_what_was_not_looked_at_is_not_fixed_and_comes_back_as_still_there() -> None:
    book = book_of(*BOOK)
    first, last = drafted(book, slips_in(book)), drafted(book, slips_in(book), number=3)
    unlooked = drafted(book, (), number=2, complete=False)
    assert set(by_words(compared([first], unlooked)).values()) == {Status.NO_LONGER_RAISED}
    assert by_words(compared([first, unlooked], last)) == ALL_STILL_THERE


def test_what_a_newer_proofkit_no_longer_raises_is_not_fixed_but_what_was_mended_is() -> None:
    now = drafted(book_of(CLEAN[0], TWO, THREE), (), number=2, version="1.1")
    result = by_words(compared([draft_of_texts(*BOOK)], now))
    assert result.pop("mornign") is Status.FIXED
    assert set(result.values()) == {Status.NO_LONGER_RAISED}


def test_what_settings_or_rulings_took_away_from_the_same_text_is_not_fixed() -> None:
    now = drafted(book_of(*BOOK), (), number=2)
    assert set(by_words(compared([draft_of_texts(*BOOK)], now)).values()) == {
        Status.NO_LONGER_RAISED
    }


def test_what_went_because_of_a_change_elsewhere_is_fixed() -> None:
    now = drafted(book_of(ONE, TWO, CLEAN[2]), (), number=2)
    assert by_words(compared([draft_of_texts(*BOOK)], now))["mornign"] is Status.FIXED


def test_another_check_that_asks_about_untouched_words_asks_nothing_new() -> None:
    book = book_of(*BOOK)
    found = slips_in(book)
    other = [replace(issue, check="words/other", key="other") for issue in found[:1]]
    now = drafted(book, (*other, *found[1:]), number=2)
    assert by_words(compared([drafted(book, found)], now)) == ALL_STILL_THERE


def test_whether_an_issue_came_from_the_change_is_told() -> None:
    now = (ONE.replace("flat", "wiht"), TWO, THREE)
    result = comparison(BOOK, now)
    assert {each.issue.quote for each in result.issues if each.from_change} == {"wiht"}
    assert [issue.quote for issue in result.from_change] == ["wiht"]


def test_the_counts_add_up() -> None:
    now = (CLEAN[0].replace("flat", "wiht"), TWO, "It was late.")
    counts = comparison(BOOK, now).counts()
    assert (counts.fixed, counts.new, counts.still_there, counts.gone_with_text) == (1, 1, 1, 2)


def test_an_empty_draft_and_an_empty_page_are_compared_too() -> None:
    assert statuses(BOOK, ("",)) == dict.fromkeys(ALL_STILL_THERE, Status.GONE_WITH_TEXT)
    assert statuses(("", "***"), BOOK) == dict.fromkeys(ALL_STILL_THERE, Status.NEW)
