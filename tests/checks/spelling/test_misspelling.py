from __future__ import annotations

from proofkit.analysis import Analysis
from proofkit.book import Book, Page, Paragraph, Role
from proofkit.checks.spelling.misspelling import find
from proofkit.issue import Issue, Tier
from proofkit.settings import English, Settings
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of


def issues(book: Book) -> list[Issue]:
    analysis = Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book))
    return sorted(find(book, analysis, Settings()), key=lambda issue: issue.span)


def with_last_paragraph(role: Role, text: str) -> Book:
    story = "The goose slept."
    last = Paragraph(start=len(story) + 2, end=len(story) + 2 + len(text), role=role)
    paragraphs = (Paragraph(start=0, end=len(story)), last)
    page = Page(number=1, text=f"{story}\n\n{text}", paragraphs=paragraphs)
    return Book(path="example", title="", pages=(page,))


def test_a_plain_slip_is_told_in_the_back_matter_and_the_dedication() -> None:
    for role in (Role.BACK_MATTER, Role.DEDICATION):
        found = issues(with_last_paragraph(role, "With thanks to everyone who recieved a copy."))
        assert [issue.quote for issue in found] == ["recieved"]
        assert found[0].suggestions[0] == "received"


def test_notes_and_the_imprint_are_let_be() -> None:
    for role in (Role.NOTE, Role.IMPRINT, Role.RUNNING_HEAD, Role.FOLIO, Role.AUTHOR):
        text = "With thanks to everyone who recieved a copy."
        assert issues(with_last_paragraph(role, text)) == []


def test_names_in_the_back_matter_are_let_be() -> None:
    assert issues(with_last_paragraph(Role.BACK_MATTER, "Thanks to Recievo Wory.")) == []


def test_the_less_likely_a_slip_the_less_sure_the_issue() -> None:
    plain, doubtful = issues(book_of("It was realy good. They sat by the wotre and ate."))
    assert plain.tier is Tier.ERROR
    assert plain.confidence > doubtful.confidence


def test_curly_marks_stay_curly() -> None:
    (issue,) = issues(book_of("She did’nt want to go to bed."))
    assert issue.suggestions[0] == "didn’t"
