"""A child's form of a word, in what the story tells: goed, catched, sheeps, hisself.

What it finds
    Irregular words made regular, and plurals made twice: "goed, runned, catched, teached", "mans,
    childrens, sheeps, mices", "gooder, bestest", "hisself, theirselves". Inside speech nothing is said,
    nor where the book has the word more than twice.

Why a reader minds
    Children drop these forms when they hear the usual ones often enough, and they hear them in books.

Example
    The fox catched a cold.

Better
    The fox caught a cold.

When to let it stand
    When a child tells the story.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.quotations import quotations_of

NAME = "grammar/child-form"
NEEDS = frozenset({Need.TEXT})

# What is also another word (singed, putted, leafs) is left out.
_USUAL = """
goed went, wented went, runned ran, catched caught, teached taught, buyed bought, bringed brought,
brung brought, thinked thought, eated ate, ated ate, drinked drank, drawed drew, growed grew, knowed knew,
throwed threw, blowed blew, breaked broke, maked made, taked took, comed came, sitted sat, swimmed swam,
builded built, weared wore, teared tore, choosed chose, writed wrote, rided rode, falled fell, feeled felt,
keeped kept, sleeped slept, sweeped swept, losted lost, meeted met, payed paid, selled sold,
telled told, speaked spoke, standed stood, stealed stole, sticked stuck, winned won, bited bit,
hided hid, getted got, gived gave, heared heard, hurted hurt, shutted shut, cutted cut, hitted hit,
digged dug, feeded fed, fighted fought, finded found, forgetted forgot, freezed froze, holded held, shooted shot,
mans men, womans women, childs children, childrens children, mouses mice, mices mice,
sheeps sheep, deers deer, gooses geese, geeses geese, foots feet, feets feet, tooths teeth, teeths teeth,
oxes oxen, loafs loaves, thiefs thieves, shelfs shelves,
gooder better, goodest best, bestest best, badder worse, baddest worst, worser worse, worstest worst,
mostest most, funner more fun, hisself himself, theirself themselves, theirselves themselves,
themself themselves, ourselfs ourselves, themselfs themselves, yourselfs yourselves
"""
_READINGS = dict(pair.split(maxsplit=1) for pair in _USUAL.replace("\n", " ").split(","))


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each such word outside speech, all its places together."""
    quotations = None
    for form, reading in _READINGS.items():
        use = analysis.vocabulary.use(form)
        if use is None or use.count > 2 or analysis.vocabulary.is_name(form):
            continue
        quotations = quotations or quotations_of(book)
        spans = [span for span in use.spans if not quotations.speaks(span.page, span.start)]
        if spans:
            quote = book.quote(spans[0])
            yield issue_at(
                book,
                spans[0],
                check=NAME,
                tier=Tier.ERROR,
                message="a child's form; grown-ups have another",
                confidence=0.8,
                suggestions=[reading.capitalize() if quote[0].isupper() else reading],
                related=spans[1:],
            )
