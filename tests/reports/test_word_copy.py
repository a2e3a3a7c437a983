"""The Word copy: nothing is changed but that comments are there, each at exactly its words."""

from __future__ import annotations

import re
import zipfile
from collections.abc import Iterable
from datetime import UTC, datetime
from pathlib import Path

import pytest

from examples.make_examples import FORMATS, HERE, NAME
from proofkit.book import Book, Span, counted_words
from proofkit.issue import Issue, Tier, issue_at, with_keys
from proofkit.problem import Unusable
from proofkit.readers.characters import kept
from proofkit.readers.read import read
from proofkit.reading.measure import measure
from proofkit.report import RankedIssue, Report, report_of
from proofkit.reports.word_copy.copy import as_word_copy
from proofkit.reports.writing import write_report
from proofkit.settings import English
from tests.reports.hard_word_files import FILES
from tests.reports.word_copies import anchored, comments_in, looks, parts_of
from tests.reports.word_files import paragraph, write

MADE = datetime(2026, 11, 25, 9, 30, tzinfo=UTC)
DOCUMENT, COMMENTS = "word/document.xml", "word/comments.xml"
LISTS = {"[Content_Types].xml", "word/_rels/document.xml.rels"}
HARD = sorted(FILES)
BESIDE = {"notes", "text_boxes"}  # those with words that lie beside the text


def asked(book: Book, page: int, start: int, end: int, *suggestions: str) -> Issue:
    return issue_at(
        book,
        Span(page=page, start=start, end=end),
        check="spelling/slip",
        tier=Tier.QUERY,
        message="is this meant",
        confidence=0.5,
        suggestions=suggestions,
    )


def everywhere(book: Book) -> list[Issue]:
    """An issue at words, at the gap after them, at parts of them, and across them and their neighbours."""
    found = []
    step = max(1, book.words // 400)
    for page in book.pages:
        words = [match.span() for match in counted_words(page.text)]
        for at, (start, end) in list(enumerate(words))[::step]:
            spans = {(start, end), (start + 1, end), (start, words[min(at + 2, len(words) - 1)][1])}
            spans |= {(end, words[at + 1][0])} if at + 1 < len(words) else set()
            # Between two paragraphs there is no character that a comment could lie over.
            real = [span for span in sorted(spans) if page.text[slice(*span)].strip("\n")]
            found += [asked(book, page.number, *span) for span in real]
    return found


def report(book: Book, issues: Iterable[Issue]) -> Report:
    return report_of(
        book,
        with_keys(book, issues),
        english=English.BRITISH,
        age_band="picture",
        words_to_confirm=(),
        reading=measure(book),
        engines=(),
    )


def copied(path: Path, issues: Iterable[Issue] | None = None) -> tuple[Report, dict[str, bytes]]:
    """The report on a file and the parts of its copy; every word has an issue if none are given."""
    book = read(path)
    made = report(book, everywhere(book) if issues is None else issues)
    return made, parts_of(as_word_copy(made, path, MADE))


def comments_part(parts: dict[str, bytes]) -> dict[str, tuple[str, str]]:
    return {n: c for n, c in comments_in(parts[COMMENTS]).items() if c[0] == "proofkit"}


def in_order(made: Report) -> list[RankedIssue]:
    return sorted(made.issues, key=lambda i: (i.page, i.start, i.tier is Tier.QUERY, i.end, i.rank))


@pytest.fixture(params=HARD)
def hard(request: pytest.FixtureRequest, tmp_path: Path) -> Path:
    return FILES[request.param](tmp_path / f"{request.param}.docx")


def test_nothing_but_the_comments_is_new(hard: Path) -> None:
    before = hard.read_bytes()
    made, after = copied(hard)
    old = parts_of(before)
    new = frozenset(comments_part(after))
    assert len(new) == len(made.issues) > 10
    assert looks(after[DOCUMENT], new=new) == looks(old[DOCUMENT])
    changed = {name for name in after if after[name] != old.get(name)}
    assert changed <= {DOCUMENT, COMMENTS} | LISTS
    assert set(old) <= set(after)
    assert hard.read_bytes() == before


def test_every_comment_lies_over_exactly_its_words(hard: Path) -> None:
    made, after = copied(hard)
    texts = comments_part(after)
    anchors = anchored(after[DOCUMENT])
    exact = 0
    for issue, (number, (_, text)) in zip(in_order(made), texts.items(), strict=True):
        if "in the " in text:
            continue  # Word passes over comments in notes and text boxes
        got, wanted = plainly(anchors[number]), plainly(issue.quote)
        if hard.stem in BESIDE and "\n\n" in wanted:
            # It begins in the text and goes on in a note or a box.
            assert got and wanted.startswith(got)
            continue
        exact += 1
        assert got == wanted, issue
    assert exact > 10


def plainly(text: str) -> str:
    """The text as a page has it: tabs are spaces, broken lines are trimmed, paragraphs' ends no characters."""
    shown = re.sub(
        r"\n{3,}", "\n\n", kept(text).replace("\t", " ")
    )  # an empty paragraph shows nothing
    lines = shown.strip("\n").split("\n")
    return "\n".join(line.strip(" ") if len(lines) > 1 else line for line in lines)


def test_the_copy_is_read_as_the_same_book(hard: Path, tmp_path: Path) -> None:
    made = report(read(hard), everywhere(read(hard)))
    copy = tmp_path / "copy.docx"
    write_report(copy, as_word_copy(made, hard, MADE))
    old, new = read(hard), read(copy)
    assert (new.pages, new.title, new.remarks) == (old.pages, old.title, old.remarks)


def test_comments_that_are_there_already_stay(tmp_path: Path) -> None:
    path = FILES["commented"](tmp_path / "c.docx")
    _, after = copied(path)
    before = comments_in(parts_of(path.read_bytes())[COMMENTS])
    both = comments_in(after[COMMENTS])
    assert {n: both[n] for n in before} == before
    assert anchored(after[DOCUMENT])["0"] == "dived "
    assert anchored(after[DOCUMENT])["41"] == "bridge"
    assert min(int(n) for n in comments_part(after)) == 42


@pytest.mark.parametrize(
    ("name", "words", "where", "anchor"),
    [
        ("notes", "beaver", "in the footnote, “beaver”:", ""),
        ("notes", "last", "in the endnote, “last”:", ""),
        ("text_boxes", "pond", "in the text box, “pond”:", ""),
    ],
)
def test_what_lies_beside_the_text_has_its_comment_where_word_can_show_it(
    tmp_path: Path, name: str, words: str, where: str, anchor: str
) -> None:
    path = FILES[name](tmp_path / "c.docx")
    book = read(path)
    page = next(page for page in book.pages if words in page.text)
    at = page.text.index(words)
    _, after = copied(path, [asked(book, page.number, at, at + len(words))])
    ((number, (_, text)),) = comments_part(after).items()
    assert text.startswith(f"Query: {where}")
    assert anchored(after[DOCUMENT]) == {number: anchor}


def test_an_issue_about_no_words_stands_at_its_label_or_its_paragraph(tmp_path: Path) -> None:
    path = FILES["broken_pages"](tmp_path / "c.docx")
    book = read(path)
    blank = next(page for page in book.pages if not page.text)
    second = next(page for page in book.pages if page.label == "Page 2")
    issues = [asked(book, page.number, 0, 0) for page in (blank, second)]
    issues.append(asked(book, second.number, 3, 3))
    _, after = copied(path, issues)
    assert list(anchored(after[DOCUMENT]).values()) == [
        "Page 2",
        "It read of ships. It read of \nstorms.",
        "Page 3",
    ]


@pytest.mark.parametrize("suffix", FORMATS)
def test_the_example_has_a_copy_from_every_format(suffix: str, tmp_path: Path) -> None:
    path = HERE / f"{NAME}{suffix}"
    made, after = copied(path)
    anchors = anchored(after[DOCUMENT])
    for issue, number in zip(in_order(made), comments_part(after), strict=True):
        assert plainly(anchors[number]) == plainly(issue.quote), issue
    copy = tmp_path / "copy.docx"
    copy.write_bytes(as_word_copy(made, path, MADE))
    old, new = read(path), read(copy)
    assert [(p.text, p.label, p.emphasis) for p in new.pages] == [
        (p.text, p.label, p.emphasis) for p in old.pages
    ]
    assert new.title == old.title


def test_italics_come_into_the_clean_copy(tmp_path: Path) -> None:
    path = tmp_path / "otter.md"
    path.write_text("# Otter\n\n## Page 1\n\nIt was *very* wet.\n\n## Page 2\n\nAnd *so was it*.\n")
    copy = tmp_path / "copy.docx"
    book = read(path)
    copy.write_bytes(as_word_copy(report(book, everywhere(book)), path, MADE))
    assert [p.emphasis for p in read(copy).pages] == [p.emphasis for p in book.pages]
    assert any(p.emphasis for p in book.pages)


def test_a_file_that_changed_after_it_was_checked_is_refused(tmp_path: Path) -> None:
    path = write(tmp_path / "c.docx", paragraph("The otter swam away."))
    book = read(path)
    made = report(book, everywhere(book))
    write(path, paragraph("The otter swam a way."))
    with pytest.raises(Unusable, match="changed after it was checked"):
        as_word_copy(made, path, MADE)


def test_a_copy_of_a_copy_has_no_comment_twice(tmp_path: Path) -> None:
    path = FILES["wrapped"](tmp_path / "c.docx")
    book = read(path)
    issues = everywhere(book)
    once = report(book, issues[:20])
    copy = tmp_path / "copy.docx"
    copy.write_bytes(as_word_copy(once, path, MADE))
    first = comments_part(parts_of(copy.read_bytes()))
    _, after = copied(copy, issues)
    again = comments_part(after)
    assert {n: again[n] for n in first} == first
    assert len({text for _, text in again.values()}) == len(again) == len(issues)


def test_without_issues_the_copy_is_the_manuscript(tmp_path: Path) -> None:
    path = FILES["mixed"](tmp_path / "c.docx")
    _, after = copied(path, [])
    assert after == parts_of(path.read_bytes())


def with_type(path: Path, kind: str) -> Path:
    """A file of the otter's that calls itself a template or a document with macros."""
    write(path, paragraph("The otter swam away."))
    parts = parts_of(path.read_bytes())
    types = parts["[Content_Types].xml"].decode()
    old = "vnd.openxmlformats-officedocument.wordprocessingml.document.main"
    assert old in types
    parts["[Content_Types].xml"] = types.replace(old, kind).encode()
    with zipfile.ZipFile(path, "w") as package:
        for name, part in parts.items():
            package.writestr(name, part)
    return path


@pytest.mark.parametrize("some", [True, False])
def test_a_copy_of_a_template_is_a_document(tmp_path: Path, *, some: bool) -> None:
    kind = "vnd.openxmlformats-officedocument.wordprocessingml.template.main"
    path = with_type(tmp_path / "otter.dotx", kind)
    _, after = copied(path, None if some else [])
    types = after["[Content_Types].xml"]
    assert b"wordprocessingml.template.main" not in types
    assert types.count(b"wordprocessingml.document.main") == 1
    assert types.count(b"wordprocessingml.comments") == some


def test_a_document_with_macros_is_refused_in_a_sentence(tmp_path: Path) -> None:
    path = with_type(tmp_path / "otter.docm", "vnd.ms-word.document.macroEnabled.main")
    with pytest.raises(Unusable, match="save the manuscript as"):
        copied(path)
