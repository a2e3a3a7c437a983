from __future__ import annotations

from proofkit.book import Book, Page, Paragraph
from proofkit.reading.verse.find import verse_of
from proofkit.reading.verse.poem import RhymeKind, StumbleKind, Verse
from proofkit.settings import English
from tests.marked import book_of

OTTER = tuple(
    """\
The otter has a silver boat
He sails it down the bay
He wears his father's yellow coat
On every rainy day

He ties it to the willow root
When all the stars are bright
He plays upon a wooden flute
And whistles half the night

The moon comes up to hear him play
And dances on the foam
And when the night is nearly day
The otter paddles home""".split("\n\n")
)
DIALOGUE = (
    "“Where is the cat?”\n\n“In the garden.”\n\n“Has he had breakfast?”\n\n“I gave him a fish.”\n\n"
    "“And who let him out?”\n\n“It was Benny.”"
)


def verse(*pages: str, told: bool | None = None) -> Verse:
    found = verse_of(book_of(*pages), English.BRITISH, told=told)
    assert found is not None
    return found


def test_a_poem_is_found_and_read() -> None:
    found = verse(*OTTER)
    assert found.whole
    assert found.metre is not None
    assert found.metre.name == "iambic, 4 and 3 beats in turn"
    assert found.scheme == "ABAB"
    assert [stanza.page for stanza in found.stanzas] == [1, 2, 3]
    assert found.lines[1].stresses == "x/x/x/"
    assert found.lines[1].beats == 3
    assert not found.stumbles
    assert not found.failed_rhymes
    assert {pair.kind for pair in found.stanzas[0].pairs} == {RhymeKind.PERFECT}


def test_a_paragraph_a_line_is_verse_as_well() -> None:
    assert verse(*(page.replace("\n", "\n\n") for page in OTTER)).scheme == "ABAB"


def test_two_lines_a_page_rhyme_across_the_pages() -> None:
    halves = []
    for page in OTTER:
        lines = page.replace("silver boat", "silver cup").split("\n")
        halves += ["\n".join(lines[:2]), "\n".join(lines[2:])]
    found = verse(*halves)
    assert [stanza.page for stanza in found.stanzas] == [1, 3, 5]
    assert found.stanzas[0].scheme == "ABCB"


def test_verse_run_together_is_found_and_not_doubted() -> None:
    pages = [page.replace("\n", " ") for page in OTTER]
    pages[1] = pages[1].replace("wooden flute", "drum")
    found = verse(*pages)
    assert found.whole
    assert [len(stanza.lines) for stanza in found.stanzas] == [4, 4, 4]
    assert not found.stumbles
    assert not found.failed_rhymes


def test_prose_and_dialogue_are_no_verse() -> None:
    prose = "Mum opened the door. The hall was dark, and something went bump upstairs."
    assert verse_of(book_of(prose, DIALOGUE), English.BRITISH) is None


def test_the_author_knows_best() -> None:
    assert verse_of(book_of(*OTTER), English.BRITISH, told=False) is None
    assert verse(DIALOGUE, told=True).scheme == ""


def test_a_song_in_a_story_is_verse_in_part() -> None:
    story = "Otter sat down on the bank, took up his flute and sang to the moon. " * 20
    found = verse(story, OTTER[0], story)
    assert not found.whole
    assert [line.span.page for line in found.lines] == [2, 2, 2, 2]


def test_what_is_not_story_is_not_scanned() -> None:
    text = "\n\n".join(OTTER)
    page = Page(number=1, text=text, paragraphs=(Paragraph(start=0, end=len(text)),))
    noted = Page(number=1, text=text, paragraphs=page.paragraphs, notes=((0, len(OTTER[0])),))
    found = verse_of(Book(path="example", title="", pages=(noted,)), English.BRITISH)
    assert found is not None
    assert found.lines[0].text == "He ties it to the willow root"


def test_a_beat_short_and_a_beat_long() -> None:
    pages = list(OTTER)
    pages[1] = pages[1].replace("He plays upon a wooden flute", "He plays a flute")
    (line,) = verse(*pages).stumbles
    assert line.stumble is not None
    assert line.stumble.kind is StumbleKind.SHORT
    assert (line.stumble.beats, line.stumble.expected) == (2, 4)
    pages[1] = OTTER[1].replace("When all the stars", "When all the lovely little stars")
    (line,) = verse(*pages).stumbles
    assert line.stumble is not None
    assert line.stumble.kind is StumbleKind.LONG


def test_a_stress_on_the_wrong_syllable_points_at_its_word() -> None:
    pages = list(OTTER)
    pages[2] = pages[2].replace("The otter paddles", "The giraffe paddles")
    book = book_of(*pages)
    found = verse_of(book, English.BRITISH)
    assert found is not None
    (line,) = found.stumbles
    assert line.stumble is not None
    assert line.stumble.kind is StumbleKind.STRESS
    assert book.quote(line.stumble.span) == "giraffe"


def test_a_rhyme_that_fails_names_its_partner() -> None:
    pages = list(OTTER)
    pages[2] = pages[2].replace("paddles home", "paddles north")
    (failed,) = verse(*pages).failed_rhymes
    assert (failed.partner, failed.word) == ("foam", "north")


def test_rough_verse_is_not_held_against_a_metre() -> None:
    found = verse(
        "Bim bam bosh, the kettle's on the hob\nMister Mole has found himself a job\nHe digs\n"
        "He digs and he digs till his spade is worn thin\nAnd then he comes in\nWith earth on his chin",
        "Bim bam bosh, what a terrible din\nThere's a hole in the hall\nAnd a hole in the wall\n"
        "And a hole where the postman can't get in at all\nBim bam\nHe's digging as fast as he can",
    )
    assert found.metre is None
    assert not found.stumbles
    assert found.lines[0].stresses == ""
