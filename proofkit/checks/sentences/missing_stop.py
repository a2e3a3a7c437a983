"""Two sentences with nothing between them.

What it finds
    A small word with a capital that begins a sentence (*He, Then, The, There*) straight after a word
    in small letters, with no stop between: *up the hill He ran*; and a name, *I* or any other word with a
    capital where the sentence before has all it needs (*she sat down Tom laughed*). Titles and signs in capitals, verse, and
    thoughts without marks (*he thought What a day*) are left alone. Where the sentence can't end
    before it (*and She ran*), the capital is the slip.

Why a reader minds
    The voice runs on over the end of the sentence and has to turn back.

Example
    The fox ran up the hill He was late.

Better
    The fox ran up the hill. He was late.

When to let it stand
    Where the capital belongs to a title or a name.
"""

from __future__ import annotations

import re
from collections.abc import Container, Iterable
from itertools import pairwise

from proofkit.analysis import Analysis
from proofkit.book import Book, Page
from proofkit.checks.check import Need
from proofkit.checks.sentences._stops import stop_for
from proofkit.checks.sentences._unstopped import is_common, unstopped
from proofkit.checks.sentences._verse import in_verse, verse_at
from proofkit.checks.spacing._gaps import undisturbed
from proofkit.checks.speech._seams import paragraph_at
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words import nearby
from proofkit.words.lists import word_set
from proofkit.words.reporting import has_reporting_verb
from proofkit.words.vocabulary import Vocabulary

NAME = "sentences/missing-stop"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_BEGINNERS = (
    "He|She|It|They|We|You|The|A|An|This|That|These|Those|There|Then|But|And|So|Or|When|While|If|As|In|On|At|"
    "To|For|With|From|By|His|Her|Its|Their|My|Your|Our|Where|What|Who|How|Why|Which|Because|Until|Before|"
    "After|Once|Now|Soon|Suddenly|Next|Later|Finally|Every|Everyone|Everybody|Nobody|Nothing|Some|Somebody|"
    "Someone|Something|All|Not|No|Yes|Oh|Just|Even|Still|Perhaps|Maybe|Never|Two|Three|Both|Each|Many|Most|"
    "Please|Let|Was|Is|Are|Were|Do|Did|Can|Could|Would|Very|Up|Down|Out|Inside|Outside|Behind|Under|Over|"
    "Through|Around|Along|Today|Tomorrow|Here|Another|Instead|However|Only|Of|Sometimes|Often|Always|Everything|Anything|Later|More|Much|Such|Since|Though|Although|During|Whenever|Whoever|Quickly|Slowly|Quietly|"
    "(?:Have|Had|Has|Shall|Should|Must|May|Am|Will)(?= (?:you|we|he|she|they|I|it)\\b)|One(?= (?:of|day|morning|night|by)\\b)"
    "|Give|Send|Take|Bring|Come|Go|Tell|Put|Get|Keep|Hurry|Wait"
)
_PLACE = re.compile(
    rf"(?<![\w'’-])(?P<before>[^\W\d_]['’\w-]*[^\W\d_])(?P<gap>[ \u00a0]+)(?P<word>(?:{_BEGINNERS})(?:['’][a-z]+)?)"
    r"(?=(?:[ \u00a0]+(?P<next>[\w'’-]+)|[,;]))"
)
_PAIR = re.compile(r"(?P<before>[^\W\d_]+) (?P<word>[^\W\d_]+)")
# Nothing ends in one of these: the capital after it is the slip.
_LEADS_ON = word_set(
    "the a an my your his her its our their and but or of from into than every because if when "
    "while although until very some any no this these that which who whose am been as"
)
# So it is after these, unless a subject follows them (*nowhere to live in They were cold*).
_STRANDED = word_set("was is were are be by with at to for in on")
_SUBJECTS = word_set("He She It They We You There")
_OPENERS = word_set("My Your His Her Their Our This That Then When But So If As These Those")
# After these a word in capitals is spelt or named, or a sentence that somebody thinks begins.
_NAMES_IT = word_set(
    "letter letters word words sign signs note notes song songs book called named says say title vitamin "
    "capital titled reads read god lord"
)
_BEFORE_TITLES = word_set("The A An Our My Your His Her Their This That All Every Two Three")
_OF_GOD = word_set("He His You Your")
_GOD = ("god", "lord", "jesus", "allah")
_THOUGHT = 40  # characters
_QUESTION = re.compile(
    r"What|Who|How|Why|Where|When|Oh|Yes|No|Please|Let|Is|Are|Do|Did|Can|Could|Would|You|I|We|My"
)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each place where a sentence begins and the one before has no stop."""
    if in_verse(book):
        return
    for page in book.pages:
        found = list(_PLACE.finditer(page.prose))
        others = _others(page, analysis, {match.start("word") for match in found})
        every = sorted([*found, *others], key=lambda place: place.start())
        lines = {place for pair in pairwise(every) if _joined(page, *pair) for place in pair}
        for match in every:
            if match in lines or not undisturbed(page, *match.span()):
                continue
            if match in others:
                yield _begun(book, page, match, analysis)
            elif not _on_purpose(page, match, analysis):
                yield _issue(book, page, match)


def _others(page: Page, analysis: Analysis, known: Container[int]) -> list[re.Match[str]]:
    """Where grammar says that a sentence begins with a name, with I, or with any other word."""
    tokens = analysis.page(page.number).tokens
    places = [
        _PAIR.match(page.prose, tokens[at - 1].start)
        for at in unstopped(page, tokens, analysis)
        if tokens[at].start not in known
    ]
    return [p for p in places if p and not verse_at(page, *paragraph_at(page, p.start()))]


def _begun(book: Book, page: Page, match: re.Match[str], analysis: Analysis) -> Issue:
    before, word = match["before"], match["word"]
    stop = stop_for(page.prose[paragraph_at(page, match.start())[0] : match.end("before")])
    stopped = f"{before}{stop} {word}"
    return issue_at(
        book,
        page.span(*match.span()),
        check=NAME,
        tier=Tier.ERROR,
        message="no full stop between two sentences",
        suggestions=[stopped, f"{before} {word.lower()}"]
        if is_common(word, analysis)
        else [stopped],
        confidence=0.75,
    )


def _joined(page: Page, first: re.Match[str], second: re.Match[str]) -> bool:
    """Whether lines of verse were set as one: two such capitals, and no stop between them."""
    between = page.prose[first.end() : second.start("word")]
    return re.search(r"[.!?…\n]", between) is None


def _on_purpose(page: Page, match: re.Match[str], analysis: Analysis) -> bool:
    """Whether the capital belongs to a title, a sign, a line of verse or a thought without marks."""
    if _titled(match, analysis.vocabulary) or match["before"] in _NAMES_IT:
        return True
    if match["before"][0].isupper() and not _after_name(match, analysis.vocabulary):
        return True
    near = nearby.before(page.prose, match.end("before"))[-_THOUGHT:]
    clause = re.split(r"[.!?,;:\"“”]", near)[-1]
    if has_reporting_verb(clause) and _QUESTION.fullmatch(match["word"]):
        return True
    return verse_at(page, *paragraph_at(page, match.start()))


def _titled(match: re.Match[str], vocabulary: Vocabulary) -> bool:
    """Whether the capital is part of a title or name: *The Rat*, *Our Magazine*, *He* for God."""
    word, following = match["word"], match["next"] or ""
    if word in _OF_GOD and any(map(vocabulary.count, _GOD)):
        return True
    if not following[:1].isupper() or following == "I":
        return False
    return word in _BEFORE_TITLES or not vocabulary.is_name(following)


def _after_name(match: re.Match[str], vocabulary: Vocabulary) -> bool:
    """Whether a name ends the sentence before: *There lived Crocodile She was old*."""
    plain = match["word"] in _SUBJECTS | _OPENERS and (match["next"] or "A")[0].islower()
    return plain and vocabulary.is_name(match["before"])


def _issue(book: Book, page: Page, match: re.Match[str]) -> Issue:
    before, gap, word = match["before"], match["gap"], match["word"]
    small = before + gap + word[0].lower() + word[1:]
    start = paragraph_at(page, match.start())[0]
    stop = stop_for(page.prose[start : match.end("before")])
    leads_on = before in _LEADS_ON or (before in _STRANDED and word not in _SUBJECTS)
    return issue_at(
        book,
        page.span(*match.span()),
        check=NAME,
        tier=Tier.ERROR,
        message="a capital inside the sentence"
        if leads_on
        else "no full stop between two sentences",
        suggestions=[small] if leads_on else [f"{before}{stop}{gap}{word}", small],
        confidence=0.7 if leads_on else 0.8,
    )
