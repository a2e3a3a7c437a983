"""``proofkit rulings-from`` on a Word copy that was worked in; one check finds every goat."""

from __future__ import annotations

import re
import tomllib
import zipfile
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

import pytest
from lxml import etree
from typer.testing import CliRunner, Result

from proofkit import pipeline
from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Check, Need
from proofkit.cli.answering import answers_in
from proofkit.cli.main import app
from proofkit.engines import analyse
from proofkit.issue import Issue, Tier, issue_at
from proofkit.readers.word_comments import Comment, comments_in
from proofkit.settings import Settings
from tests.reports.word_copies import name_of, parts_of
from tests.reports.word_files import W, paragraph, write

CHECK = "spacing/two-spaces"  # one that there is
W14 = "http://schemas.microsoft.com/office/word/2010/wordml"
W15 = "http://schemas.microsoft.com/office/word/2012/wordml"
EXTENDED = "http://schemas.microsoft.com/office/2011/relationships/commentsExtended"
LINES = (
    "The goat climbed the hill and looked at the sea.",
    "A second goat came up the hill behind her.",
    "Then they saw a boat, and in the boat a goat with a hat.",
    "Home went every goat at last, and that was that.",
)


def every_goat(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    for page in book.pages:
        for at in re.finditer("goat", page.prose):
            yield issue_at(
                book,
                page.span(*at.span()),
                check=CHECK,
                tier=Tier.QUERY,
                message="a goat",
                confidence=0.9,
                suggestions=["sheep"],
            )


@pytest.fixture
def copy(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The Word copy of a manuscript with four goats."""
    goats = Check(name=CHECK, needs=frozenset({Need.TEXT}), find=every_goat, handbook="")
    monkeypatch.setattr(pipeline, "all_checks", lambda: (goats,))
    # A check of the text needs no engine.
    monkeypatch.setattr(analyse.Analyst, "ask", lambda *_: None)
    monkeypatch.setenv("PROOFKIT_CACHE", str(tmp_path / "cache"))
    folder = tmp_path / "book"
    folder.mkdir()
    manuscript = write(folder / "goats.docx", "".join(map(paragraph, LINES)))
    run("check", manuscript, "--format", "word", "--output", folder)
    return folder / "goats - proof queries.docx"


def run(*arguments: str | Path) -> Result:
    return CliRunner().invoke(app, list(map(str, arguments)))


@dataclass(frozen=True, kw_only=True)
class Work:
    """What an author does with one comment."""

    answer: str = ""
    resolved: bool = False


def worked_in(copy: Path, work: Mapping[int, Work], mended: Mapping[str, str]) -> None:
    """The copy as Word saves it when comments were answered and words changed."""
    parts = parts_of(copy.read_bytes())
    root = etree.fromstring(parts["word/comments.xml"])
    extended = etree.Element(f"{{{W15}}}commentsEx")
    for number, comment in enumerate(list(root)):
        done = work.get(number, Work())
        own = f"0000000{number}"
        comment[-1].set(f"{{{W14}}}paraId", own)
        state = etree.SubElement(extended, f"{{{W15}}}commentEx")
        state.set(f"{{{W15}}}paraId", own)
        state.set(f"{{{W15}}}done", str(int(done.resolved)))
        if done.answer:
            answer = f"0000010{number}"
            root.append(_comment(str(100 + number), done.answer, answer))
            state = etree.SubElement(extended, f"{{{W15}}}commentEx")
            for name, value in (("paraId", answer), ("paraIdParent", own), ("done", "0")):
                state.set(f"{{{W15}}}{name}", value)
    document = parts["word/document.xml"].decode()
    for old, new in mended.items():
        assert old in document
        document = document.replace(old, new)
    relations = etree.fromstring(parts["word/_rels/document.xml.rels"])
    relation = etree.SubElement(relations, f"{{{etree.QName(relations).namespace}}}Relationship")
    relation.attrib.update({"Id": "rId99", "Type": EXTENDED, "Target": "commentsExtended.xml"})
    parts |= {
        "word/comments.xml": etree.tostring(root),
        "word/document.xml": document.encode(),
        "word/commentsExtended.xml": etree.tostring(extended),
        "word/_rels/document.xml.rels": etree.tostring(relations),
    }
    with zipfile.ZipFile(copy, "w") as package:
        for name, part in parts.items():
            package.writestr(name, part)


def _comment(number: str, text: str, paragraph_id: str) -> etree._Element:
    xml = (
        f'<w:comment xmlns:w="{W}" xmlns:w14="{W14}" w:id="{number}" w:author="Ann">'
        f'<w:p w14:paraId="{paragraph_id}"><w:r><w:t>{text}</w:t></w:r></w:p></w:comment>'
    )
    return etree.fromstring(xml)


def stets(copy: Path) -> list[dict[str, object]]:
    file = copy.parent / "proofkit.toml"
    return tomllib.loads(file.read_text(encoding="utf-8"))["stet"] if file.exists() else []


def test_what_was_answered_stands_and_what_was_changed_is_mended(copy: Path) -> None:
    before = (copy.parent / "goats.docx").read_bytes()
    work = {0: Work(answer="Stet: she is a goat"), 1: Work(resolved=True, answer="I like her")}
    last = '{}</w:t></w:r><w:commentRangeEnd w:id="3"/>'
    worked_in(copy, work, {"a hat": "a red hat", last.format("goat"): last.format("lamb")})
    result = run("rulings-from", copy)
    assert result.exit_code == 0, result.output
    assert [each["because"] for each in stets(copy)] == ["she is a goat", "I like her"]
    assert "A second ›goat‹ came" in str(stets(copy)[1]["line"])
    assert "4 comments: 2 to stand, 1 mended, 1 still open." in result.stdout
    assert (copy.parent / "goats.docx").read_bytes() == before


def test_changed_words_are_mended_even_where_the_comment_was_resolved(copy: Path) -> None:
    worked_in(copy, {0: Work(resolved=True)}, {">goat<": ">sheep<"})
    result = run("rulings-from", copy)
    assert "4 comments: 0 to stand, 4 mended, 0 still open." in result.stdout
    assert stets(copy) == []


def test_a_ruling_is_not_lost_when_the_words_beside_were_mended(copy: Path) -> None:
    worked_in(copy, {1: Work(answer="stet")}, {"A second ": "A second small "})
    result = run("rulings-from", copy)
    assert "4 comments: 1 to stand, 0 mended, 3 still open." in result.stdout
    assert len(stets(copy)) == 1


def test_what_stands_is_let_stand_in_the_manuscript_and_not_written_twice(copy: Path) -> None:
    worked_in(copy, {3: Work(answer="stet, the last one")}, {})
    assert "Let stand: " in run("rulings-from", copy).stdout
    assert "1 let stand earlier" in run("check", copy.parent / "goats.docx").stdout
    again = run("rulings-from", copy)
    assert "Stands already: " in again.stdout
    assert len(stets(copy)) == 1


def test_a_copy_that_nobody_answered_rules_nothing(copy: Path) -> None:
    result = run("rulings-from", copy)
    assert "4 comments: 0 to stand, 0 mended, 4 still open." in result.stdout
    assert stets(copy) == []


@pytest.mark.parametrize("name", ["goats.docx", "plain.txt", "nowhere.docx"])
def test_what_is_no_copy_is_refused_in_a_sentence(copy: Path, name: str) -> None:
    (copy.parent / "plain.txt").write_text("The goat.", encoding="utf-8")
    result = run("rulings-from", copy.parent / name)
    assert result.exit_code == 2
    assert name in result.stderr
    assert result.stderr.count("\n") == 1


@pytest.mark.parametrize(
    ("text", "answers", "resolved", "stet", "because"),
    [
        ("Read “a”. Why. [k7f2]", (), False, False, ""),
        ("Read “a”. Why. [k7f2]", ("yes, thanks",), False, False, ""),
        ("Read “a”. Why. [k7f2]", ("STET",), False, True, ""),
        ("Read “a”. Why. [k7f2]", ("“Stet” – her word",), False, True, "her word"),
        ("Read “a”. Why. [k7f2]", ("Stetson is a hat",), False, False, ""),
        ("Read “a”. Why. [k7f2] stet: as Mum says", (), False, True, "as Mum says"),
        ("Read “a”. Why. [k7f2]", ("hm", "it rhymes"), True, True, "hm it rhymes"),
    ],
)
def test_how_answers_are_read(
    *, text: str, answers: tuple[str, ...], resolved: bool, stet: bool, because: str
) -> None:
    comment = Comment(author="proofkit", text=text, resolved=resolved, answers=answers)
    (answer,) = answers_in([comment])
    assert (answer.key, answer.stet, answer.because) == ("k7f2", stet, because)


def test_comments_of_others_are_none_of_its_business(copy: Path) -> None:
    assert list(answers_in([Comment(author="Ann", text="Stet! [k7f2]", resolved=True)])) == []
    assert {comment.author for comment in comments_in(copy)} == {"proofkit"}
    assert [comment.words for comment in comments_in(copy)] == ["goat"] * 4
    assert name_of(_comment("1", "x", "0")) == "comment"
