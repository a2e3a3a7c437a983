"""A noun or verb twice in a row.

What it finds
    A noun, a verb or another word of some length that stands twice with nothing between (*the house
    house*), in the middle of a sentence. Words that are doubled for effect are left alone: what
    describes (*a big big cat, far far away*), sounds and calls (*tap tap, run run*), numbers, names,
    verse, and whatever the book doubles more than once.

Why a reader minds
    The eye skips it, the voice trips over it.

Example
    They came to a small house house by the sea.

Better
    They came to a small house by the sea.

When to let it stand
    When it is meant: then a comma between the two makes that plain.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable

from proofkit.analysis import Analysis, PageAnalysis
from proofkit.book import Book, Page
from proofkit.checks.check import Need
from proofkit.checks.repetition.doubled_word import NEVER_TWICE
from proofkit.checks.sentences._verse import in_verse, verse_at
from proofkit.checks.spacing._gaps import undisturbed
from proofkit.checks.speech._seams import paragraph_at
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words import nearby
from proofkit.words.frequency import zipf
from proofkit.words.lists import word_set
from proofkit.words.quotations import quotations_of

NAME = "repetition/doubled-long-word"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_TWICE = re.compile(r"(?<![\w'’-])([a-z]{3,})([ \u00a0]+)\1(?![\w'’-])")
# Sounds, movements that are heard as sounds, calls and words of the nursery.
_FOR_EFFECT = word_set("""
tick tock tickety clip clop clippety trot splash splish splosh drip drop plop plip pitter patter bang boom crash
clang cling clink clank clack click cluck chug choo puff whoosh swish swoosh swash zoom vroom beep honk toot
hoot hiss buzz hum thump bump thud knock tap rap rattle roar growl grrr woof bark meow miaow purr moo quack
oink neigh baa bleat cheep chirp tweet caw ribbit croak squeak squawk squelch squish squash crunch munch
chomp gulp slurp glug yum yuck snip snap snore snort sniff sneeze ting ding dong ring jingle jangle
clap stamp stomp tramp march step hop skip jump bounce bound creep crawl slide swing sway rock roll spin twirl
flap flutter flip flop wiggle waggle wriggle giggle ha ho hee tickle wave shake shiver scratch scrub brush wash
sweep chop pound beat drum strum row rowed dig push pull heave tug run walk climb swim paddle fly splutter
bye night peek boo wake sleep hush sweet look listen wait stop help please come gone hurry hello hallo
hooray hurrah hurray more most much many such long less home round down over away along again ever never
always often only very really quite well good great later soon half little
crack creak fizz flash glow gobble nibble nudge pant peck pinch poke pop prod scamper scrape scurry sizzle slap slip
wee old big bad sad hot wet red dry shy sly new odd raw icy pop hop pat pit zip zap hum ear wow pow nod
slither smack snuffle sob splat squirt swirl tinkle tiptoe trip trumpet twinkle twit waddle whack whirr whizz
""")
# Grammar never has these twice, whatever the model takes them for.
_NEVER = word_set(
    "then than even just still first second last other same than there's where when would could should might "
    "must been being have about after before between during through whose either neither once"
)
# Children's words that describe are doubled (big, soft, blue), long ones hardly ever.
_LONG = 7
_LONG_AND_DOUBLED = word_set(
    "beautiful wonderful terrible horrible delicious enormous gigantic ginormous"
)
_DOUBLING = frozenset(("ADJ", "ADV", "INTJ", "NUM", "X", "SYM"))
# Of shorter words only nouns with their article are sure: the cat cat.
_SHORT = 4
_AFTER_ARTICLE = re.compile(r"\b(?:the|a|an|his|her|my|your|their|our|its)\s+$", re.IGNORECASE)
_KNOWN = 3.0  # on the Zipf scale: a rarer word may be a sound
_OFTEN = 5  # times in the book, the two included
_LEAST = 5  # words in its sentence: a shorter one may be a cry


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each longer word that stands twice."""
    if in_verse(book):
        return
    pairs = Counter(m[1] for page in book.pages for m in _TWICE.finditer(page.prose))
    quotations = quotations_of(book)
    for page in book.pages:
        known = analysis.page(page.number)
        for match in _TWICE.finditer(page.prose):
            if pairs[match[1]] > 1 or not undisturbed(page, *match.span()):
                continue
            if _slip(page, match, analysis) and not _describes(known, match):
                spoken = quotations.speaks(page.number, match.start())
                yield _issue(book, page, match, spoken=spoken)


def _slip(page: Page, match: re.Match[str], analysis: Analysis) -> bool:
    """Whether a common word stands twice, and not three times, inside a whole sentence of prose."""
    word = match[1]
    if word in NEVER_TWICE or word in _FOR_EFFECT or word == "that":
        return False
    if len(word) < _SHORT and not _AFTER_ARTICLE.search(nearby.before(page.prose, match.start())):
        return False
    if zipf(word) < _KNOWN and analysis.vocabulary.count(word) < _OFTEN:
        return False
    before = re.split(r"[.!?…:;\"“”\n]", nearby.before(page.prose, match.start()))[-1]
    after = re.split(r"[.!?…:;\"“”\n]", nearby.after(page.prose, match.end()))[0]
    if before.rstrip().endswith(",") or word in (*before.split()[-1:], *after.split()[:1]):
        return False
    sentence = before + word + after
    whole = len(sentence.split()) >= _LEAST and bool(before.strip())
    return whole and not verse_at(page, *paragraph_at(page, match.start()))


def _describes(known: PageAnalysis, match: re.Match[str]) -> bool:
    """Whether the second word is one that describes, counts or cries out.

    Of two like nouns the model takes the first for an adjective, so that it tells nothing.
    """
    word = match[1]
    kinds = [t.pos for t in known.tokens if match.start() <= t.start < match.end()]
    if not kinds or word in _NEVER:
        return not kinds
    if len(word) > _LONG and word not in _LONG_AND_DOUBLED and not word.endswith(("ly", "ing")):
        return False
    return kinds[-1] in _DOUBLING


def _issue(book: Book, page: Page, match: re.Match[str], *, spoken: bool) -> Issue:
    return issue_at(
        book,
        page.span(*match.span()),
        check=NAME,
        tier=Tier.QUERY if spoken else Tier.ERROR,
        message="a word twice",
        suggestions=[match[1]],
        confidence=0.6 if spoken else 0.75,
    )
