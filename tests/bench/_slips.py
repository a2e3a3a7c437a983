"""Slips of the pen, kind by kind: where in a clean text each could happen, and what it would look like."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace

from proofkit.analysis import Analysis
from proofkit.book import Book, Page
from proofkit.settings import English
from proofkit.words.english import votes
from proofkit.words.lists import word_set
from proofkit.words.quotations import Quotation, quotations_of
from proofkit.words.variants import other_english, variants
from proofkit.words.vocabulary import vocabulary_of

_SMALL = word_set(
    "of to in on at for with from by into and but that it he she they we you his her their was were is are had"
)
_ARTICLES = word_set("a an the")
_WORD = re.compile(r"(?<![\w'’-])[a-z]+(?![\w'’-])")
# One who is spoken to: a name, or what people call each other; with a mark after it, or called out first.
_CALLED_BY = word_set(
    "sir madam ma'am ma’am children friend friends dear darling boys girls mother father mum mummy mom dad daddy mamma mama papa"
    " grandma grandpa granny uncle aunt auntie child son daughter brother sister fellow chap lad lady ladies"
)
_ADDRESS = re.compile(
    r"(?<=[a-z])(?P<comma>,) (?P<who>(?:(?:my|dear|old|little|young|Mr\.?|Mrs\.?|Miss|Uncle|Aunt|Doctor|Captain) )*[\w’']+)(?=[.!?,;]|$)"
)
_CALLED = re.compile(
    r"(?:^|[.!?] )(?P<who>[A-Z]\w+(?: [A-Z]\w+)?)(?P<comma>,) "
    r"(?=(?:I|you|we|what|why|how|where|who|when|do|don['’]t|can|will|are|is|have|it['’]s|please|let['’]s|come|look|go|tell|get|wait)\b)"
)
# After these words the name says who was spoken of: my brother, Ben; or goes on with a list.
_SPOKEN_OF = re.compile(
    r"\b(?:my|your|his|her|our|their|the|a|an|this|that|is|was|am|are|were)(?: [\w-]+){0,2}$|[A-Z]\w+$|\b(?:of|and|or|by|named|called)(?: \w+)?$"
)
_MID_STOP = re.compile(
    r"(?<!\bMr)(?<!\bMrs)(?<!\bDr)(?<!\bSt)(?<!\bMs)(?<=[a-z]{2})\.(?= (?:[A-Z][a-z]*) [a-z])"
)
_STOP_BEFORE_SPEECH = re.compile(r"(?<=[a-z]{2})\.(?= [\"“'‘][A-Z])")
_LAST_STOP = re.compile(r"(?<=[a-z]{2})\.(?=[\"”'’]?\s*$)")
_APOSTROPHE = re.compile(r"(?<=[A-Za-z])['’](?=[a-z]{1,2}\b)")
_SENTENCE_START = re.compile(r"(?<=[a-z]{2}[.!?] )[A-Z](?=[a-z]* )")
_LONE_I = re.compile(r"\bI\b(?!['’.])")
_NAME = re.compile(r"(?<=[a-z] )[A-Z](?=[a-z]{2,})")
# Compounds that no house writes open: of three words, relations, numbers, a quality and a part of somebody.
# Two nouns with a hyphen (sand-pit) are open or one word in as many books.
_HYPHEN = re.compile(
    r"(?<![\w'’-])(?:[a-z]{2,}-[a-z]+(?:-[a-z]+)+|(?:self|great|well|ill)-[a-z]{3,}|(?:twen|thir|for|fif|six|seven|eigh|nine)ty-[a-z]+"
    r"|[a-z]{3,}-(?:looking|[a-z]{3,}ed))(?![\w'’-])"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Slip:
    """The characters ``start`` to ``end`` of a page, written ``wrong``.

    ``reach`` is where on the wrong page an issue counts as about it.
    """

    page: int
    start: int
    end: int
    wrong: str
    reach: tuple[int, int]


Source = Callable[[Book, Analysis, Page], Iterator[Slip]]


def planted(book: Book, slip: Slip) -> Book:
    """The book with the slip in it."""
    page = book.page(slip.page)
    by = len(slip.wrong) - (slip.end - slip.start)
    text = page.text[: slip.start] + slip.wrong + page.text[slip.end :]
    parts = tuple(
        replace(p, start=p.start + by * (p.start >= slip.end), end=p.end + by * (p.end >= slip.end))
        for p in page.paragraphs
    )
    notes = tuple((s + by * (s >= slip.end), e + by * (e >= slip.end)) for s, e in page.notes)
    changed = replace(page, text=text, paragraphs=parts, notes=notes)
    return replace(book, pages=(*book.pages[: slip.page - 1], changed, *book.pages[slip.page :]))


def slip_at(page: Page, start: int, end: int, wrong: str) -> Slip:
    """A slip that is found only by an issue that touches it."""
    return Slip(
        page=page.number, start=start, end=end, wrong=wrong, reach=(start, start + len(wrong))
    )


def words_of(page: Page) -> Iterator[re.Match[str]]:
    """The page's words in lower case that no mark joins to another."""
    yield from _WORD.finditer(page.prose)


def _doubled_small(_: Book, __: Analysis, page: Page) -> Iterator[Slip]:
    for word in words_of(page):
        if word.group() in _SMALL | _ARTICLES:
            yield slip_at(page, word.end(), word.end(), f" {word.group()}")


def _doubled_other(_: Book, __: Analysis, page: Page) -> Iterator[Slip]:
    for word in words_of(page):
        if word.group() not in _SMALL | _ARTICLES and len(word.group()) > 3:
            yield slip_at(page, word.end(), word.end(), f" {word.group()}")


def _dropped(words: frozenset[str]) -> Source:
    def source(_: Book, __: Analysis, page: Page) -> Iterator[Slip]:
        for word in words_of(page):
            if word.group() in words and page.prose[word.end() : word.end() + 1] == " ":
                yield slip_at(page, word.start(), word.end() + 1, "")

    return source


def _whole_on(book: Book, page: Page) -> Iterator[Quotation]:
    for quotation in quotations_of(book).speech:
        if (span := quotation.span) and span.page == page.number and not quotation.reopenings:
            yield quotation


def _lost_mark(*, closing: bool) -> Source:
    def source(book: Book, _: Analysis, page: Page) -> Iterator[Slip]:
        for quotation in _whole_on(book, page):
            mark = quotation.closing if closing else quotation.opening
            whole = quotation.span
            assert mark is not None
            assert whole is not None
            at = mark.span
            end = page.prose.find("\n\n", whole.end)
            reach = (whole.start, len(page.prose) - 1 if end < 0 else end - 1)
            yield Slip(page=page.number, start=at.start, end=at.end, wrong="", reach=reach)

    return source


def _moved_mark(book: Book, _: Analysis, page: Page) -> Iterator[Slip]:
    for quotation in _whole_on(book, page):
        assert quotation.closing is not None
        mark = quotation.closing.span
        if page.prose[mark.start - 1] in ",.":
            text = page.prose[mark.start : mark.end] + page.prose[mark.start - 1]
            yield slip_at(page, mark.start - 1, mark.end, text)


def _lost_address(book: Book, analysis: Analysis, page: Page) -> Iterator[Slip]:
    for quotation in _whole_on(book, page):
        for part in quotation.parts:
            inner = page.prose[part.start : part.end]
            for match in (*_CALLED.finditer(inner), *_ADDRESS.finditer(inner)):
                last = match["who"].split()[-1]
                name = last[0].isupper() and analysis.vocabulary.is_name(last)
                own = re.match(r"(?:my|dear|old|little) ", match["who"]) is not None
                if not (name or (last.lower() in _CALLED_BY and (own or " " not in match["who"]))):
                    continue
                if match.re is _ADDRESS and not _is_addressed(inner, match, own=own):
                    continue
                at = part.start + match.start("comma")
                yield slip_at(page, at, at + 1, "")


def _is_addressed(inner: str, match: re.Match[str], *, own: bool) -> bool:
    """Whether the name after a comma calls somebody: no second name of one spoken of, no list."""
    rest = inner[match.end() :]
    listed = re.match(r",? (?:and|or) |, (?:the|a|an|his|her|my) |, [A-Z]\w+,", rest)
    return listed is None and (own or _SPOKEN_OF.search(inner[: match.start()]) is None)


def _lost(pattern: re.Pattern[str]) -> Source:
    """What the pattern finds, left out."""

    def source(_: Book, __: Analysis, page: Page) -> Iterator[Slip]:
        for match in pattern.finditer(page.prose):
            yield slip_at(page, *match.span(), "")

    return source


def _stop_at_end(*, of_page: bool) -> Source:
    def source(_: Book, __: Analysis, page: Page) -> Iterator[Slip]:
        last = len(page.prose.rstrip())
        for p in page.paragraphs:
            match = _LAST_STOP.search(page.prose, p.start, p.end)
            if (
                match
                and (p.end >= last) is of_page
                and len(page.prose[p.start : p.end].split()) > 4
            ):
                yield slip_at(page, *match.span(), "")

    return source


def _lowered(pattern: re.Pattern[str]) -> Source:
    def source(_: Book, __: Analysis, page: Page) -> Iterator[Slip]:
        for match in pattern.finditer(page.prose):
            yield slip_at(page, *match.span(), match.group().lower())

    return source


def _name_lowered(_: Book, analysis: Analysis, page: Page) -> Iterator[Slip]:
    for match in _NAME.finditer(page.prose):
        word = re.match(r"\w+", page.prose[match.start() :])
        if (
            word
            and analysis.vocabulary.is_name(word.group())
            and (analysis.vocabulary.count(word.group()) > 1)
        ):
            yield slip_at(page, *match.span(), match.group().lower())


def _hyphen(_: Book, __: Analysis, page: Page) -> Iterator[Slip]:
    for match in _HYPHEN.finditer(page.prose):
        parts = match.group().split("-")
        if "and" not in parts and len(set(parts)) == len(parts) and max(map(len, parts)) > 2:
            yield slip_at(page, *match.span(), " ".join(parts))


def _other_english(*, told: bool) -> Source:
    """A spelling of the other English alone, in a text that has something else to tell its own, or nothing.

    A form at home in both (realized, learned) is no slip; where nothing else tells which English the text is
    in, nobody could say which of the two it should be.
    """

    def source(book: Book, analysis: Analysis, page: Page) -> Iterator[Slip]:
        known, own, other = variants(), analysis.english, other_english(analysis.english)
        for word in words_of(page):
            wrong = known.in_english(word.group(), other)
            if wrong and known.belongs_to(word.group()) is own and known.belongs_to(wrong) is other:
                slip = slip_at(page, *word.span(), wrong)
                changed = planted(book, slip)
                left = votes(changed, vocabulary_of(changed))
                if told is ((left.british if own is English.BRITISH else left.american) > 0):
                    yield slip

    return source


PRINT_KINDS: Mapping[str, Source] = {
    "small word doubled": _doubled_small,
    "longer word doubled": _doubled_other,
    "small word dropped": _dropped(_SMALL),
    "article dropped": _dropped(_ARTICLES),
    "closing mark lost": _lost_mark(closing=True),
    "opening mark lost": _lost_mark(closing=False),
    "closing mark moved": _moved_mark,
    "comma of address lost": _lost_address,
    "stop lost, page end": _stop_at_end(of_page=True),
    "stop lost, paragraph end": _stop_at_end(of_page=False),
    "stop lost, before capital": _lost(_MID_STOP),
    "stop lost, before speech": _lost(_STOP_BEFORE_SPEECH),
    "apostrophe lost": _lost(_APOSTROPHE),
    "capital lost, sentence": _lowered(_SENTENCE_START),
    "capital lost, name": _name_lowered,
    "capital lost, I": _lowered(_LONE_I),
    "the other English": _other_english(told=True),
    "the other English, untold": _other_english(told=False),
    "hyphen lost": _hyphen,
}
