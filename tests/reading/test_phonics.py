"""The phases of Letters and Sounds (DfES 2007), by words of its word banks, written down from memory."""

from __future__ import annotations

import pytest

from proofkit.problem import Unusable
from proofkit.reading.bands import band_named
from proofkit.reading.graphemes import phase_of
from proofkit.reading.phonics import decodable, is_tricky, phase_for
from tests.marked import book_of

BANKS = {
    2: """at sat pat tap sap it is sit pit tip pip sip an in nip pan pin tin tan nap am man mam mat map Tim
        dad sad dim dip din did Sid and tag gag gig gap nag sag gas pig dig got on not pot top dog pop God
        Mog can cot cop cap cat cod kid kit Kim Ken kick sock sack dock pick sick pack ticket pocket get pet
        ten net pen peg met men neck up mum run mug cup sun mud sunset rim rip ram rat rag rug rot rocket
        had him his hot hut hop hum hit hat has hack hug but big back bet bad bag bed bud beg bug bun bus
        bat bit bucket of if off fit fin fun fig fog puff huff cuff fan fat lap let leg lot lit bell fill
        doll tell sell less hiss mass mess boss fuss kiss pots pans""",
    3: """jam Jill jet jog Jack jug jab van vat vet visit velvet will win wag web wig wax cobweb wicked mix
        fix box tax six taxi exit yap yes yet yell yum-yum zip zigzag buzz jazz quiz quit quick quack liquid
        chop chin chug check such chip chill much rich chicken ship shop shed shell fish shock cash bash
        hush rush them then that this with moth thin thick path bath ring rang hang song wing rung king long
        sing ping-pong wait hail pain aim sail main tail rain bait see feel weep feet jeep seem meet week
        deep keep high sigh light might night right sight fight tight tonight coat load goat loaf road soap
        oak toad foal boatman zoo boot hoof zoom cool food root moon rooftop look foot cook good book took
        wood wool hook hood bar car bark card cart hard jar park market farmyard for fork cord cork sort born
        worn fort torn cornet fur burn urn burp curl hurt surf turn turnip curds now down owl cow how bow pow
        town towel oil boil coin join soil toil poison tinfoil ear dear fear hear gear near tear year rear
        beard air fair hair lair pair sure lure assure insure pure cure secure manure mature hammer letter
        rocker ladder supper dinner boxer better summer banner""",
    4: """went best tilt lift lost tuft hump belt sent nest gift stop step spot trip grip frog flag from flip
        green train crisp swift stand blend spring string shrink strap splash children lunchbox sandpit
        windmill softest floating toast shampoo helper""",
    5: """day play may say stray clay spray tray out about cloud scout found proud sprout loud tie lie pie
        cried tried spied fried replied sea seat bead read meat treat heap least steamy repeat boy toy joy
        oyster destroy cowboy annoy enjoy girl sir bird shirt skirt birth third first thirteen thirsty clue
        blue glue true rue tissue venue value rescue argue saw paw raw claw jaw lawn yawn law shawl when
        wheel which white whenever whisper dolphin elephant alphabet prophet blew chew grew drew screw crew
        brew flew threw stew few new dew mildew nephew renew toe hoe doe foe woe goes tomatoes haul launch
        haunted August author automatic make came take game race same snake amaze escape these theme scene
        complete extreme like time pine ripe shine slide prize nice invite inside bone pole home woke those
        stone explode alone flute prune rude rule huge cube tube computer""",
}  # fmt: skip
LATE_LETTERS = {
    "i": "find wild pint", "o": "cold old told both", "c": "cent cell city", "g": "gent gym giant",
    "u": "put push full", "ow": "low grow snow", "ie": "chief field thief", "ea": "head dead bread",
    "y": "by my fly very funny", "ch": "school chef Christmas", "ou": "shoulder you",
}  # fmt: skip


@pytest.mark.parametrize("phase", BANKS)
def test_each_word_of_a_bank_can_be_read_at_its_phase(phase: int) -> None:
    words = [part for word in BANKS[phase].lower().split() for part in word.split("-")]
    late = {word: needed for word in words if (needed := phase_of(word) or 9) > phase}
    assert set(late) <= ({"and"} if phase == 2 else set())  # its words have it, its letters don't


@pytest.mark.parametrize("phase", [3, 4, 5])
def test_few_words_of_a_bank_could_be_read_before(phase: int) -> None:
    words = [part for word in BANKS[phase].lower().split() for part in word.split("-")]
    early = [word for word in words if (phase_of(word) or 9) < phase]
    # Phase 4 has words of two syllables in which each consonant begins or ends one.
    assert set(early) <= {"shampoo", "helper"}


@pytest.mark.parametrize("letters", LATE_LETTERS)
def test_second_sounds_of_known_letters_are_of_phase_5(letters: str) -> None:
    assert {
        word: phase_of(word.lower()) for word in LATE_LETTERS[letters].split()
    } == dict.fromkeys(LATE_LETTERS[letters].split(), 5)


@pytest.mark.parametrize(
    "word", ["said", "were", "one", "two", "eye", "thought", "people", "beautiful"]
)
def test_irregular_words_are_of_no_phase(word: str) -> None:
    assert phase_of(word) is None


def test_tricky_words_come_with_their_phase() -> None:
    assert is_tricky("the", 2)
    assert not is_tricky("they", 2)
    assert is_tricky("they", 3)
    assert is_tricky("friend", 5)
    assert not is_tricky("friend", 4)


def test_a_page_is_counted_word_by_word() -> None:
    found = decodable(book_of("The fat cat said, “Jump!”", "The cat's kite – a beautiful one."), 2)
    assert found.words == 11
    assert found.decodable == 4  # fat cat cat a
    assert found.tricky == {"the": 2}
    assert [(late.word, late.phase) for late in found.not_yet] == [
        ("beautiful", None), ("jump", 4), ("kite", 5), ("one", None), ("said", None),
    ]  # fmt: skip
    assert found.share == pytest.approx(4 / 11)
    assert found.share_with_tricky == pytest.approx(6 / 11)


def test_more_can_be_read_from_phase_to_phase() -> None:
    book = book_of(
        "Mum and the goat sat in the train. “Come here,” said the clown, “and shake my hand!”"
    )
    shares = [decodable(book, phase).share for phase in (2, 3, 4, 5)]
    assert shares == sorted(shares)
    assert len(set(shares)) == len(shares)


def test_contractions_are_of_phase_4_at_the_earliest() -> None:
    assert phase_of("it's") == 4
    assert phase_of("don't") == 5
    assert phase_of("wouldn't") == 5


def test_an_empty_book_has_nothing_to_read() -> None:
    found = decodable(book_of(""), 5)
    assert (found.words, found.share, found.not_yet) == (0, 0.0, ())


def test_only_who_reads_alone_needs_a_phase() -> None:
    assert phase_for(band_named("picture")) is None
    assert phase_for(band_named("early-reader")) == 5


def test_there_is_no_phase_1_to_read_at() -> None:
    with pytest.raises(Unusable, match="choose 2 to 5"):
        decodable(book_of("A cat sat."), 1)


# The examples of Year 1 in the national curriculum, English Appendix 1: Spelling (DfE 2013, Open
# Government Licence), written down from memory: a second witness, from after the programme.
YEAR_1 = """
off well miss buzz back rain wait train paid afraid oil join coin point soil day play say way stay boy toy
enjoy annoy made came same take safe these theme complete five ride like time side home those woke hope hole
June rule rude use tube tune car start park arm garden see tree green meet week sea dream meat each head bread
meant instead her term verb person better under summer winter sister girl bird shirt first third turn hurt
church burst Thursday food pool moon zoo soon book took foot wood good boat coat road coach goal toe goes out
about mouth around sound now how brown down town own blow snow grow show blue clue true rescue Tuesday new few
grew flew drew threw lie tie pie cried tried dried chief field thief high night light bright right for short
born horse morning more score before wore shore saw draw yawn crawl author August dinosaur astronaut air fair
pair hair chair dear hear beard near year bear pear wear bare dare care share scared very happy funny party
family dolphin alphabet phonics elephant when which wheel while kit skin frisky sketch hunting hunted hunter
buzzing buzzed buzzer jumping jumped jumper unhappy undo unload catch fetch kitchen notch hutch have live give
"""


def test_the_words_of_year_1_can_be_read_by_its_phase() -> None:
    assert [word for word in YEAR_1.lower().split() if phase_of(word) is None] == []
