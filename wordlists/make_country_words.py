"""Make ``country-words.tsv``: words of one country and what the other says. Run: python wordlists/make_country_words.py

VarCon's voc.tab (2020.12.07, https://github.com/en-wl/wordlist, branch v1, commit b22230cc; licence in
``varcon-README.txt``) pairs American words with British ones, and warns that it "is generally not suitable for
automatic conversion": corn, chips, pants and boot are words of both countries that mean different things. So a
word of voc.tab is kept only if it stands below as plain: nobody in the other country says it, in any sense that
a story for small children has. The pairs that voc.tab lacks are our own, chosen by the same rule.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

HERE = Path(__file__).resolve().parent
SOURCE = HERE / "varcon-voc.tab"
HEADER = """\
# Made by make_country_words.py: words of one country, and what the other says. Pairs of varcon-voc.tab, VarCon 2020.12.07,
# Copyright 2000-2019 Kevin Atkinson, 2016 Benjamin Titze (licence: varcon-README.txt), and our own.
# English it belongs to, word, what the other English has, words that make it another thing when they follow
"""

# Words of voc.tab that are plain; the first is the form for one.
PLAIN_AMERICAN = """
anyplace; ashcan; garbage can; trashcan; billfold; busy signal; candy; checking account; clothespin;
cotton candy; diaper; drug store; dumpster; faucet; flashlight; freeway; gasoline; mailman; math; overpass;
pacifier; railroad; someplace; stroller; thumbtack; traffic circle; turn signal; undershirt; vacation;
windshield; zip code
"""
PLAIN_BRITISH = """
pocket money; dustbin; dustman; nappy; lorry; motorway; petrol; postcode; windscreen; spanner; engaged tone;
clothes peg; drawing-pin; ring road; candy floss; maths; fairy cake; pram; rubbish-bin; current account
"""
# Where voc.tab's partner is only one of two, or British English says it otherwise.
BETTER = {
    "stroller": "pushchair",
    "trashcan": "dustbin/bin",
    "garbage can": "dustbin/bin",
    "lorry": "truck",
    "dustman": "garbage collector",
    "dustbin": "trash can/garbage can",
    "rubbish-bin": "trash can/garbage can",
    "drug store": "chemist’s",
    "pram": "baby carriage/stroller",
    "gasoline": "petrol",
    "petrol": "gas",
    "motorway": "freeway/highway",
    "freeway": "motorway",
}
NOT_BEFORE = {
    "candy": "cane canes floss apple apples stripe stripes striped",
    "last fall": "of from was into down",
    "next fall": "of from was into down",
    "every fall": "of from was into down",
}
IRREGULAR = {"dustman": "dustmen", "mailman": "mailmen"}
NO_PLURAL = (
    "anyplace", "someplace", "candy", "gasoline", "math", "maths", "petrol", "cotton candy", "candy floss",
    "pocket money",
)  # fmt: skip

OWN_AMERICAN = """
sidewalk = pavement; crosswalk = zebra crossing; popsicle = ice lolly; ladybug = ladybird;
mailbox = postbox/letterbox; parking lot = car park; gas station = petrol station; jump rope = skipping rope;
eggplant = aubergine; band-aid = plaster; stuffed animal = soft toy; trash can = dustbin/bin;
garbage truck = dustcart/bin lorry; drugstore = chemist’s; license plate = number plate; washcloth = flannel;
baby carriage = pram; streetcar = tram; candy store = sweetshop;
teeter-totter = seesaw; mail carrier = postman/postwoman; crossing guard = lollipop lady/lollipop man;
fire truck = fire engine
"""
OWN_AMERICAN_ONE = """
gotten = got; zucchini = courgette/courgettes; tic-tac-toe = noughts and crosses; jell-o = jelly;
last fall = last autumn; in the fall of = in the autumn of; next fall = next autumn; every fall = every autumn;
played checkers = played draughts; game of checkers = game of draughts; on the weekend = at the weekend;
on weekends = at weekends; cilantro = coriander
"""
OWN_BRITISH = """
zebra crossing = crosswalk; ice lolly = popsicle; ladybird = ladybug; postbox = mailbox; letterbox = mailbox/mail slot;
pushchair = stroller; car park = parking lot; petrol station = gas station; skipping rope = jump rope;
aubergine = eggplant; courgette = zucchini; sticking plaster = band-aid; soft toy = stuffed animal;
number plate = license plate; tea towel = dish towel; sweetshop = candy store; sweet shop = candy store;
greengrocer = grocer; ironmonger = hardware store; dustcart = garbage truck; bin lorry = garbage truck;
rucksack = backpack; rubbish bin = trash can; lollipop lady = crossing guard; lollipop man = crossing guard;
bin bag = trash bag; wheelie bin = trash can; plimsoll = sneaker; fortnight = two weeks; cardie = cardigan
"""
OWN_BRITISH_ONE = """
wellies = rain boots; wellingtons = rain boots; wellington boots = rain boots; telly = TV; whilst = while;
noughts and crosses = tic-tac-toe; at the weekend = on the weekend; at weekends = on weekends;
played draughts = played checkers; game of draughts = game of checkers; queued = lined up; queuing = lining up;
queueing = lining up; candyfloss = cotton candy; hoovered = vacuumed; hoovering = vacuuming; fishmonger = fish seller;
packet of crisps = bag of chips; bag of crisps = bag of chips
"""


def rows() -> Iterator[tuple[str, str, str, str]]:
    """Every row of the table: the English, the word, the other's words, what may not follow."""
    table = dict(_of_voc_tab())
    for english, plain in (("american", PLAIN_AMERICAN), ("british", PLAIN_BRITISH)):
        for word in _split(plain):
            better = BETTER.get(word) or table[english, word]
            yield from _with_plural(english, word, better)
    for english, pairs in (("american", OWN_AMERICAN), ("british", OWN_BRITISH)):
        for pair in _split(pairs):
            yield from _with_plural(english, *pair.split(" = "))
    for english, pairs in (("american", OWN_AMERICAN_ONE), ("british", OWN_BRITISH_ONE)):
        for pair in _split(pairs):
            word, better = pair.split(" = ")
            yield english, word, better, NOT_BEFORE.get(word, "")


def _of_voc_tab() -> Iterator[tuple[tuple[str, str], str]]:
    for line in SOURCE.read_text(encoding="utf-8").splitlines():
        american, british, *_ = line.split("\t")
        for word in american.split(","):
            yield ("american", word), "/".join(british.split(","))
        for word in british.split(","):
            yield ("british", word), "/".join(american.split(","))


def _with_plural(english: str, word: str, better: str) -> Iterator[tuple[str, str, str, str]]:
    yield english, word, better, NOT_BEFORE.get(word, "")
    if word not in NO_PLURAL:
        others = better.split("/")
        yield english, _plural(word), "/".join(map(_plural, others)), NOT_BEFORE.get(word, "")


def _plural(word: str) -> str:
    if word in IRREGULAR:
        return IRREGULAR[word]
    if word.endswith(("’s", "weeks")):
        return word
    if word.endswith("man"):
        return word[:-3] + "men"
    if word.endswith("y") and word[-2] not in "aeiou":
        return word[:-1] + "ies"
    return word + ("es" if word.endswith(("s", "x", "ch", "sh")) else "s")


def _split(text: str) -> list[str]:
    return [" ".join(part.split()) for part in text.split(";")]


def main() -> None:
    """Write the table beside the list."""
    made = dict.fromkeys("\t".join(row) for row in sorted(rows()))
    (HERE / "country-words.tsv").write_text(HEADER + "\n".join(made) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
