"""The proofreader's checklist: what is looked at in a picture book when every word has been read.

After the usual tasks of a proofreader and the usual parts of an imprint page (New Hart's Rules, ch. 1;
Editors Canada's professional standards, E4 and E8), in our own sentences.
"""

from __future__ import annotations

from proofkit.reports.handoff.paper import Paper, Part

_GROUPS = (
    (
        "The text",
        (
            "The text is all there: first and last line of each page agree with the manuscript.",
            "Nothing is set twice, and nothing runs on where a line or a paragraph should end.",
            "Spelling, hyphens, capitals, numbers and names follow the style sheet.",
            "Each speech opens and closes with its marks; one kind of mark throughout.",
            "Refrains and sounds are the same letter by letter wherever they come again, unless meant otherwise.",
            "No word is broken at a line’s end; no short line stands alone at the head or foot of a page.",
            "What is in italics, capitals or display type is so on purpose, and everywhere alike.",
        ),
    ),
    (
        "Titles and headings",
        (
            "The title is the same on the cover, spine, half-title, title page and imprint page.",
            "Author and illustrator are spelt alike in every place, and in the same order.",
            "Headings are worded and set alike; a contents list agrees with them and with the pages.",
        ),
    ),
    (
        "Pages and folios",
        (
            "All pages are there and in order; the extent is what was planned.",
            "Right-hand pages have odd numbers, left-hand pages even ones.",
            "Folios that are printed run on without a gap or a repeat, and stand in one place.",
            "Running heads, where there are any, have the right wording on the right side.",
            "A page without a folio is without one on purpose.",
        ),
    ),
    (
        "Pictures and captions",
        (
            "Each picture stands with the words that it shows, and shows what they say: who, how many, what colour.",
            "Captions and labels belong to their pictures, and are spelt as in the text.",
            "Lettering inside the pictures is read as the text is.",
            "No word lies in the fold, too near the edge, or where the picture hides it.",
        ),
    ),
    (
        "Imprint page, cover and ISBN",
        (
            "The imprint page has the publisher with the address, the edition, the printer and the country.",
            "It has the year, the copyright in words and in pictures, and the author’s moral right if asserted.",
            "The year of copyright and the year of first publication agree.",
            "The ISBN has thirteen digits, and is the same on the imprint page, the back cover and under the bar code.",
            "Dedication and thanks name everyone rightly.",
            "The blurb agrees with the story: names, places, what happens.",
        ),
    ),
    (
        "Second proofs",
        (
            "Each correction that was marked was made, and nothing else was changed.",
            "Near every correction the line ends, the page ends and the folios are still right.",
        ),
    ),
)


def checklist() -> Paper:
    """The checklist, with a box at each thing to look at."""
    return Paper(
        name="Checklist",
        about="Some of this can be seen only once the pages are set. Tick what you have looked at.",
        parts=tuple(Part(heading=head, lists=items, to_tick=True) for head, items in _GROUPS),
    )
