"""Twelve manuscripts for Word, each with something that is easily lost or moved when a file is copied."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

from tests.reports.word_files import paragraph, run, table, text_box, write

_LABELLED = "<w:p><w:pPr><w:pStyle w:val='Heading2'/></w:pPr><w:r><w:t>Spread {}</w:t></w:r></w:p>"
_BREAK = '<w:r><w:br w:type="page"/></w:r>'
_ENDING = paragraph("And that was the end of the matter, as far as the otter was concerned.")


def nested_tables(path: Path) -> Path:
    inner = table((paragraph("A small otter sat inside a smaller box."), paragraph("It hummed.")))
    outer = table(
        (
            paragraph("Once there was a box."),
            paragraph("In the box was another box.") + inner + "<w:p/>",
        ),
        (paragraph("Nobody had ", run("ever", "<w:i/>"), " opened it."), paragraph("Until today!")),
    )
    return write(
        path, paragraph("The Otter’s Box", properties='<w:pStyle w:val="Title"/>') + outer + _ENDING
    )


def text_boxes(path: Path) -> Path:
    box = text_box(paragraph("A sign said keep out of the pond."))
    return write(
        path,
        paragraph("The otter read the sign ", box, "twice, and went straight in.") + _ENDING,
    )


def tracked_changes(path: Path) -> Path:
    by = 'w:author="Ann" w:date="2026-01-02T03:04:05Z"'
    deleted = f'<w:del w:id="1" {by}><w:r><w:delText>slowly </w:delText></w:r></w:del>'
    inserted = f'<w:ins w:id="2" {by}>{run("very quick", "<w:b/>")}</w:ins>'
    moved_from = f'<w:moveFrom w:id="3" {by}>{run("gone ")}</w:moveFrom>'
    moved_to = f'<w:moveTo w:id="4" {by}>{run("here again ")}</w:moveTo>'
    restyled = run("whiskers", f'<w:i/><w:rPrChange w:id="5" {by}><w:rPr/></w:rPrChange>')
    joined = f'<w:rPr><w:del w:id="6" {by}/></w:rPr>'
    return write(
        path,
        paragraph("The otter ", deleted, "was ", inserted, "ly across the ", moved_from, "river.")
        + paragraph("It shook its ", restyled, " and ", moved_to, "it ", properties=joined)
        + paragraph("looked for a fish.")
        + _ENDING,
    )


def fields(path: Path) -> Path:
    def mark(kind: str) -> str:
        return f'<w:r><w:fldChar w:fldCharType="{kind}"/></w:r>'

    code = '<w:r><w:instrText xml:space="preserve"> REF otter \\h </w:instrText></w:r>'
    complex_ = (
        mark("begin")
        + code
        + mark("separate")
        + run("the old ")
        + run("mill", "<w:u w:val='single'/>")
        + mark("end")
    )
    one_run = (
        '<w:r><w:t xml:space="preserve">They met at </w:t><w:fldChar w:fldCharType="begin"/>'
        '<w:instrText xml:space="preserve"> DATE </w:instrText><w:fldChar w:fldCharType="separate"/>'
        '<w:t>dawn</w:t><w:fldChar w:fldCharType="end"/><w:t xml:space="preserve"> by the weir.</w:t></w:r>'
    )
    simple = f'<w:fldSimple w:instr=" AUTHOR ">{run("Otto Reed")}</w:fldSimple>'
    folio = '<w:fldSimple w:instr=" PAGE "><w:r><w:t>1</w:t></w:r></w:fldSimple>'
    return write(
        path,
        paragraph("They walked to ", complex_, " before breakfast.")
        + paragraph(one_run)
        + paragraph("A letter lay there from ", simple, ", the postman.")
        + paragraph(folio)
        + _ENDING,
    )


def notes(path: Path) -> Path:
    def reference(kind: str, number: int) -> str:
        return f'<w:r><w:{kind}Reference w:id="{number}"/></w:r>'

    footnotes = (
        '<w:footnote w:type="separator" w:id="-1"><w:p><w:r><w:separator/></w:r></w:p></w:footnote>'
        '<w:footnote w:type="continuationSeparator" w:id="0"><w:p><w:r><w:continuationSeparator/></w:r></w:p></w:footnote>'
        f'<w:footnote w:id="2">{paragraph("<w:r><w:footnoteRef/></w:r>", " An otter is not a beaver.")}'
        f"{paragraph('Nor is it a stoat.')}</w:footnote>"
    )
    endnotes = f'<w:endnote w:id="3">{paragraph("The mill stood until last year.")}</w:endnote>'
    return write(
        path,
        paragraph(
            "The otter",
            reference("footnote", 2),
            " liked the mill",
            reference("endnote", 3),
            " best of all.",
        )
        + _ENDING,
        footnotes=footnotes,
        endnotes=endnotes,
    )


def right_to_left(path: Path) -> Path:
    hebrew = run("שלום", "<w:rtl/><w:lang w:bidi='he-IL'/>")
    arabic = run("مرحبا بك", "<w:rtl/>")
    return write(
        path,
        paragraph("“", hebrew, "!” said the otter from over the sea.")
        + paragraph("“", arabic, ",” said the heron.", properties="<w:bidi/>")
        + _ENDING,
    )


def commented(path: Path) -> Path:
    around = '<w:commentRangeStart w:id="{0}"/>{1}<w:commentRangeEnd w:id="{0}"/><w:r><w:commentReference w:id="{0}"/></w:r>'
    comments = "".join(
        f'<w:comment w:id="{n}" w:author="Edie" w:initials="E">{paragraph("Lovely.")}</w:comment>'
        for n in (0, 41)
    )
    return write(
        path,
        paragraph(
            "The otter ",
            around.format(0, run("dived ", "<w:b/>")),
            "under the ",
            around.format(41, "<w:r><w:t>bridge</w:t></w:r>"),
            " at once.",
        )
        + _ENDING,
        comments=comments,
    )


def wrapped(path: Path) -> Path:
    linked = run("the long ") + run("weir", '<w:u w:val="single"/>')
    link = f'<w:hyperlink w:anchor="weir">{linked}</w:hyperlink>'
    bookmark = f'<w:bookmarkStart w:id="7" w:name="weir"/>{run("weir")}<w:bookmarkEnd w:id="7"/>'
    control = f'<w:sdt><w:sdtPr><w:alias w:val="Name"/></w:sdtPr><w:sdtContent>{run("Miss Heron")}</w:sdtContent></w:sdt>'
    smart = f'<w:smartTag w:uri="u" w:element="place">{run("Reedham")}</w:smartTag>'
    proof = '<w:proofErr w:type="spellStart"/>'
    whole = f"<w:sdt><w:sdtContent>{paragraph('A whole paragraph lived in a frame of its own.')}</w:sdtContent></w:sdt>"
    return write(
        path,
        paragraph("They swam to ", link, ", which is a ", bookmark, ".")
        + paragraph(control, " came from ", smart, " with a ", proof, "baskett of eels.")
        + whole
        + _ENDING,
    )


def mixed(path: Path) -> Path:
    """Formats that change inside words, and characters that Word writes as elements or in two pieces."""
    pieces = (
        run("Sp", "<w:b/>") + run("la", "<w:i/><w:color w:val='FF0000'/>") + run("sh", '<w:rStyle w:val="Loud"/>')
        + "<w:r><w:rPr><w:b/></w:rPr><w:t>!</w:t><w:tab/><w:t>The otter</w:t><w:br/><w:t>dried its well</w:t>"
        "<w:noBreakHyphen/><w:t>kept fur</w:t></w:r>"
    )  # fmt: skip
    accents = (
        run("The caf")
        + run("e")
        + run("\u0301", "<w:i/>")
        + run(" was\u00a0shut and the re\u00adceipt  lost")
    )
    symbol = '<w:r><w:sym w:font="Wingdings" w:char="F04A"/></w:r>'
    return write(
        path,
        paragraph(pieces, " with", run("out", "<w:vanish/>"), " a towel.")
        + paragraph(accents, ", said a zero\u200bwidth fish ", symbol, ".")
        + _ENDING,
    )


def broken_pages(path: Path) -> Path:
    """Page marks in the line of their text, breaks inside paragraphs, pages without words."""
    return write(
        path,
        paragraph("Page 1: Page by page the otter read on.")
        + paragraph("Page 2")
        + paragraph(
            "It read of ships. ",
            "<w:r><w:lastRenderedPageBreak/><w:t>It read of </w:t><w:br/><w:t>storms.</w:t></w:r>",
        )
        + paragraph("Page 3")
        + paragraph(
            "Page 4",
            "<w:r><w:br/></w:r>",
            "It read and it read.",
            "<w:r><w:br/></w:r>",
            "Page 5",
            "<w:r><w:br/></w:r>",
            "It read of storms.",
        )
        + _ENDING,
    )


def strict(path: Path) -> Path:
    return write(
        path,
        paragraph("Even in the strict", run("est", "<w:i/>"), " of schools an otter may swim.")
        + _ENDING,
        strict=True,
    )


def two_hundred_pages(path: Path) -> Path:
    body = "".join(
        paragraph(
            f"On page {n} the otter ",
            run("swam", "<w:i/>"),
            f" past {n} lilies and ",
            run(f"{n} frogs", "<w:b/>"),
            ".",
        )
        + paragraph("“Mind the reeds!” called the heron, who minded everything.", _BREAK)
        for n in range(1, 201)
    )
    return write(path, body + _ENDING)


FILES: Mapping[str, Callable[[Path], Path]] = {
    made.__name__: made
    for made in (
        nested_tables,
        text_boxes,
        tracked_changes,
        fields,
        notes,
        right_to_left,
        commented,
        wrapped,
        mixed,
        broken_pages,
        strict,
        two_hundred_pages,
    )
}
