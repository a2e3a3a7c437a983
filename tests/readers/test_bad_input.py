"""Files that can't be read: one clear sentence each, and nothing left open or changed."""

from __future__ import annotations

import os
import zipfile
from pathlib import Path

import pytest

from proofkit.book import Book
from proofkit.problem import Unusable
from proofkit.readers import package
from proofkit.readers import read as reading
from proofkit.readers.language import looks_english
from proofkit.readers.read import read
from tests.readers.reading import read_text, texts
from tests.readers.writers import W, word_paragraph, write_odt, write_rtf, write_word, zipped

OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + b"\0" * 1000


def refusal(path: Path) -> str:
    """The sentence that a file is refused with; it names the file and is plain."""
    with pytest.raises(Unusable) as caught:
        read(path)
    sentence = str(caught.value)
    assert path.name in sentence
    assert sentence.endswith(".")
    assert not any(word in sentence.lower() for word in ("errno", "traceback", "exception", "none"))
    return sentence


def refusal_of(folder: Path, data: bytes, name: str = "goose.docx") -> str:
    path = folder / name
    path.write_bytes(data)
    return refusal(path)


def test_a_missing_file(tmp_path: Path) -> None:
    assert "no file" in refusal(tmp_path / "goose.docx")


def test_a_folder(tmp_path: Path) -> None:
    assert "is a folder" in refusal(tmp_path)


def test_an_empty_file(tmp_path: Path) -> None:
    assert "is empty" in refusal_of(tmp_path, b"")


@pytest.mark.parametrize("data", [b" \n\n\f\n", b"***\n\n...\n", b"\xef\xbb\xbf"])
def test_a_text_without_words(tmp_path: Path, data: bytes) -> None:
    assert "no words" in refusal_of(tmp_path, data, "goose.txt")


def test_documents_without_words(tmp_path: Path) -> None:
    assert "no words" in refusal(write_word(tmp_path / "goose.docx", word_paragraph("")))
    assert "no words" in refusal(write_odt(tmp_path / "goose.odt", "<text:p/>"))
    assert "no words" in refusal(write_rtf(tmp_path / "goose.rtf", r"\par\par"))


@pytest.mark.parametrize(
    ("data", "what"),
    [
        (b"\x89PNG\r\n\x1a\n" + bytes(200), "a picture"),
        (b"\xff\xd8\xff\xe0" + bytes(200), "a picture"),
        (b"GIF89a" + bytes(200), "a picture"),
        (b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n", "a PDF"),
        (b"\x1f\x8b" + bytes(200), "an archive"),
        (b"<!DOCTYPE html><html><p>Tick.</p></html>", "a web page"),
        (b'<?xml version="1.0"?><x>Tick.</x>', "a web page or an XML file"),
        (bytes(range(256)) * 20, "isn't text"),
        (zipped({"mimetype": b"application/epub+zip", "a.html": b"x"}), "something other"),
        (zipped({"[Content_Types].xml": b"<x/>", "xl/workbook.xml": b"<x/>"}), "something other"),
        (zipped({"Index/Document.iwa": b"x"}), "Pages document"),
    ],
)
def test_what_is_no_manuscript(tmp_path: Path, data: bytes, what: str) -> None:
    assert what in refusal_of(tmp_path, data).replace("a compressed archive", "an archive")


def test_old_and_locked_word_files(tmp_path: Path) -> None:
    old = refusal_of(tmp_path, OLE + "WordDocument".encode("utf-16-le"), "goose.doc")
    assert "save it as .docx" in old
    locked = refusal_of(tmp_path, OLE + "EncryptedPackage".encode("utf-16-le"))
    assert "password" in locked


def test_a_locked_opendocument(tmp_path: Path) -> None:
    parts = {
        "mimetype": b"application/vnd.oasis.opendocument.text",
        "META-INF/manifest.xml": b"<manifest><encryption-data/></manifest>",
        "content.xml": b"\x8f\x00gibberish",
    }
    assert "password" in refusal_of(tmp_path, zipped(parts), "goose.odt")


@pytest.mark.parametrize("share", [0.2, 0.5, 0.9, 0.99])
def test_a_truncated_word_file(tmp_path: Path, share: float) -> None:
    path = write_word(tmp_path / "goose.docx", word_paragraph("Tick. " * 500))
    data = path.read_bytes()
    assert "cut short" in refusal_of(tmp_path, data[: int(len(data) * share)])


def test_a_word_file_with_a_spoilt_part(tmp_path: Path) -> None:
    path = write_word(tmp_path / "goose.docx", word_paragraph("Tick. " * 500))
    data = bytearray(path.read_bytes())
    at = data.index(b"word/document.xml") + 40
    data[at : at + 20] = bytes(20)
    assert "damaged" in refusal_of(tmp_path, bytes(data))


@pytest.mark.parametrize("body", [b"<w:document><w:body>", b"not xml at all", b"<x/>"])
def test_a_word_file_with_bad_xml(tmp_path: Path, body: bytes) -> None:
    parts = {"[Content_Types].xml": b"<Types/>", "word/document.xml": body}
    assert refusal_of(tmp_path, zipped(parts))


def test_a_package_that_claims_to_unpack_to_gigabytes(tmp_path: Path) -> None:
    path = tmp_path / "goose.docx"
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as bomb:
        bomb.writestr("[Content_Types].xml", "<Types/>")
        with bomb.open("word/document.xml", "w") as part:
            for _ in range(210):
                part.write(bytes(1_000_000))
    assert "unpacks to far more" in refusal(path)


def test_a_package_that_lies_about_its_size(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(package, "_LARGEST_PART", 1_000)
    path = write_word(tmp_path / "goose.docx", word_paragraph("Tick. " * 5000))
    assert "unpacks to far more" in refusal(path)


@pytest.mark.parametrize(
    "head",
    [
        '<!DOCTYPE w [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;">]>',
        '<!DOCTYPE w [<!ENTITY a SYSTEM "file:///etc/hostname">]>',
        '<!DOCTYPE w SYSTEM "http://127.0.0.1:9/x.dtd">',
    ],
)
def test_xml_with_entities(tmp_path: Path, head: str) -> None:
    body = f"{head}<w:document {W}><w:body>{word_paragraph('Tick.')}</w:body></w:document>"
    parts = {"[Content_Types].xml": b"<Types/>", "word/document.xml": body.encode()}
    assert "entities" in refusal_of(tmp_path, zipped(parts))
    utf16 = {"[Content_Types].xml": b"<Types/>", "word/document.xml": body.encode("utf-16")}
    assert "entities" in refusal_of(tmp_path, zipped(utf16))


def test_deeply_nested_xml(tmp_path: Path) -> None:
    deep = "<w:sdt><w:sdtContent>" * 5000 + "</w:sdtContent></w:sdt>" * 5000
    assert "damaged" in refusal(write_word(tmp_path / "goose.docx", deep))


def test_deeply_nested_rich_text(tmp_path: Path) -> None:
    path = tmp_path / "goose.rtf"
    path.write_bytes(b"{\\rtf1 " + b"{" * 100_000 + b"Tick." + b"}" * 100_001)
    assert texts(read(path)) == ["Tick."]


def test_deeply_nested_markdown(tmp_path: Path) -> None:
    assert "Tick." in texts(read_text(tmp_path, "> " * 40 + "Tick.\n", ".md"))[0]
    assert "no words" in refusal_of(tmp_path, b"> " * 5_000 + b"Tick.\n", "goose.md")


def test_no_permission(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "goose.txt"
    path.write_text("Tick.", encoding="utf-8")

    def refuse(*_: object, **__: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", refuse)
    assert "permissions" in refusal(path)


def test_links_in_a_circle(tmp_path: Path) -> None:
    (tmp_path / "goose.docx").symlink_to(tmp_path / "gander.docx")
    (tmp_path / "gander.docx").symlink_to(tmp_path / "goose.docx")
    assert "can't be opened" in refusal(tmp_path / "goose.docx")


def test_a_pipe_is_no_file(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "goose.txt")
    assert "no ordinary file" in refusal(tmp_path / "goose.txt")


def test_a_name_with_a_zero_byte() -> None:
    with pytest.raises(Unusable):
        read(Path("goose\0.txt"))


def test_a_text_beyond_all_bounds(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(reading, "_LARGEST_TEXT", 1_000)
    assert "longer than any" in refusal_of(tmp_path, b"Tick. " * 1_000, "goose.txt")


@pytest.mark.parametrize("suffix", [".docx", ".odt", ".rtf", ".md", ".txt", ""])
def test_wrong_and_missing_extensions(tmp_path: Path, suffix: str) -> None:
    def renamed(path: Path) -> Book:
        return read(path.rename(tmp_path / f"renamed{suffix}"))

    assert texts(renamed(write_word(tmp_path / "a", word_paragraph("Tick.")))) == ["Tick."]
    assert texts(renamed(write_odt(tmp_path / "b", "<text:p>Tick.</text:p>"))) == ["Tick."]
    assert texts(renamed(write_rtf(tmp_path / "c", r"Tick.\par"))) == ["Tick."]
    assert texts(read_text(tmp_path, "##\nTick.\n\n##\nTock.\n", suffix)) == ["Tick.", "Tock."]
    if suffix != ".md":
        assert texts(read_text(tmp_path, "Tick *tock*.\n", suffix)) == ["Tick *tock*."]


def test_the_file_is_closed_and_unchanged(tmp_path: Path) -> None:
    path = write_word(tmp_path / "goose.docx", word_paragraph("Tick."))
    before = (path.read_bytes(), path.stat().st_mtime_ns)
    descriptors = Path("/proc/self/fd")
    open_before = len(list(descriptors.iterdir())) if descriptors.exists() else 0
    read(path)
    refusal_of(tmp_path, path.read_bytes()[:200], "cut.docx")
    if open_before:
        assert len(list(descriptors.iterdir())) == open_before
    assert (path.read_bytes(), path.stat().st_mtime_ns) == before


@pytest.mark.parametrize(
    ("text", "english"),
    [
        (
            "The goose sat on the clock and it ticked. She liked that very much, but the clock did not. "
            * 2,
            True,
        ),
        ("Quack! Quack!", True),
        (
            "Die Gans saß auf der alten Uhr, und sie tickte. Das war ihr recht, aber der Uhr war es nicht recht. "
            * 2,
            False,
        ),
        (
            "L’oie était assise sur la vieille horloge, et elle faisait tic tac. Cela lui plaisait bien, mais pas à l’horloge. "
            * 2,
            False,
        ),
        (
            "De gans zat op de oude klok en die tikte. Dat vond ze heel fijn, maar de klok vond het niet zo fijn. "
            * 2,
            False,
        ),
        (
            "La oca estaba sentada en el viejo reloj y hacía tictac. A ella le gustaba mucho, pero al reloj no tanto. "
            * 2,
            False,
        ),
        (
            "Gåsen satt på den gamla klockan och den tickade. Det tyckte hon om, men klockan tyckte inte om det alls. "
            * 2,
            False,
        ),
    ],
)
def test_whether_it_is_english(tmp_path: Path, text: str, english: bool) -> None:  # noqa: FBT001
    assert looks_english(read_text(tmp_path, text)) is english


@pytest.mark.slow
@pytest.mark.parametrize("suffix", [".txt", ".md", ".rtf", ".docx", ".odt"])
def test_a_novel_of_five_megabytes(tmp_path: Path, suffix: str) -> None:
    line = "The goose sat on the old clock and it ticked all day, and nobody minded at all. "
    paragraphs = [line * 5] * 12_500
    path = tmp_path / f"novel{suffix}"
    if suffix == ".docx":
        write_word(path, "".join(map(word_paragraph, paragraphs)))
    elif suffix == ".odt":
        write_odt(path, "".join(f"<text:p>{p}</text:p>" for p in paragraphs))
    elif suffix == ".rtf":
        write_rtf(path, "".join(f"{p}\\par\n" for p in paragraphs))
    else:
        path.write_text("\n\n".join(paragraphs), encoding="utf-8")
    book = read(path)
    assert not book.paginated
    assert book.words == 17 * 5 * 12_500
