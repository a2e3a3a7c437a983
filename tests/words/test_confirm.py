from __future__ import annotations

from proofkit.settings import English
from proofkit.words.confirm import WordToConfirm, words_to_confirm
from proofkit.words.dictionary import dictionary
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of

BOOK = book_of(
    "Pendlebur wound the clock. The clock said whirrtick.",
    "“Whirrtick,” said Pendlebur’s goose. The goose was realy cross.",
    "Anna wore a gray hat. Pendlebur sighed. “C’est tout!”",
)
BRITISH = dictionary(English.BRITISH)


def confirmed(**raised: object) -> tuple[WordToConfirm, ...]:
    places = [u for w in raised for u in vocabulary_of(BOOK).uses[w].spans]
    return words_to_confirm(BOOK, vocabulary_of(BOOK), BRITISH, raised=places)


def test_each_word_once_with_its_count_and_pages_most_used_first() -> None:
    assert confirmed()[:2] == (
        WordToConfirm(word="Pendlebur", count=3, pages=(1, 2, 3)),
        WordToConfirm(word="whirrtick", count=2, pages=(1, 2)),
    )


def test_what_is_raised_as_a_misspelling_is_not_asked_about_again() -> None:
    assert "realy" in {each.word for each in confirmed()}
    assert "realy" not in {each.word for each in confirmed(realy=True)}


def test_known_names_and_the_other_spelling_need_no_confirming() -> None:
    assert {"Anna", "gray", "goose", "clock"}.isdisjoint(each.word for each in confirmed())


def test_a_plain_english_book_has_nothing_to_confirm() -> None:
    book = book_of("I don’t know, said Mr Brown, whether it’s half-past two. We’ll see!")
    assert words_to_confirm(book, vocabulary_of(book), BRITISH) == ()


def test_what_is_clipped_keeps_its_apostrophe() -> None:
    book = book_of("“Give ’im the frimblin’ pot,” said Zed. “’Ome, lad, wi’ ’im!”")
    words = [each.word for each in words_to_confirm(book, vocabulary_of(book), BRITISH)]
    assert words == ["’im", "frimblin’", "wi’", "’Ome"]


def test_marks_of_quotations_are_no_apostrophes() -> None:
    book = book_of("‘Frimbles’ was all he said. ‘Glorbs!’ A ‘zimble’ sat in the glorbs’ nest.")
    words = {each.word for each in words_to_confirm(book, vocabulary_of(book), BRITISH)}
    assert words == {"Frimbles", "glorbs", "zimble"}
