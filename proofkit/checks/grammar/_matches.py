"""From the grammar engine's matches to our issues: one helper for every check that it feeds."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Callable, Iterator

from proofkit.analysis import Analysis, Match
from proofkit.book import Book
from proofkit.checks.grammar._sorting import Sort, sort_of
from proofkit.issue import Issue, Tier, issue_at
from proofkit.words.dictionary import Dictionary, dictionary
from proofkit.words.quotations import Quotations, quotations_of
from proofkit.words.vocabulary import WORD, opens_sentence

_SPOKEN_TIMES = 0.85
_MOST_READINGS = 3
_STOP = re.compile(r"[.!?…\n]")
# Letters left out by the ear: runnin', 'em, th', o' the, ain't.
_DIALECT = re.compile(
    r"[a-z]in['’](?![a-z])|(?<![\w])['’](?:em|er|im|ere|ave|is|e|at)\b|\bain['’]t\b"
    r"|\b(?:o|an|th|t|wi)['’](?=\s)",
    re.IGNORECASE,
)
_NO_NAMES = frozenset(
    ["I", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"]
)
_GOES_ON = re.compile(r"[-‑]|['’]\w")


def issues_for(
    book: Book, analysis: Analysis, check: str, message: Callable[[Match], str] | str
) -> Iterator[Issue]:
    """The issues of one check: the matches sorted to it that suit a story, alike ones as one issue."""
    scene: _Scene | None = None
    alike: dict[tuple[str, str, Tier], list[tuple[Match, Sort]]] = defaultdict(list)
    for match, sort in sorted_matches(analysis, check):
        scene = scene or _Scene(book, analysis)
        tier = scene.tier(match, sort)
        if tier is not None:
            alike[(match.rule, _with_neighbours(book, match), tier)].append((match, sort))
    for (_, _, tier), group in alike.items():
        yield _issue(book, group, tier, check, message)


def sorted_matches(analysis: Analysis, check: str) -> Iterator[tuple[Match, Sort]]:
    """The matches that the table gives to a check, each with its row."""
    for match in analysis.matches:
        sort = sort_of(match)
        if sort is not None and sort.check == check:
            yield match, sort


def row_for_book(book: Book, analysis: Analysis, check: str, message: str) -> Iterator[Issue]:
    """All matches of a check as one issue at the first of them: for matters of house style.

    Pages in broken lines are left alone: a line end there does a comma's work.
    """
    scene: _Scene | None = None
    found = []
    for match, sort in sorted_matches(analysis, check):
        scene = scene or _Scene(book, analysis)
        broken = "\n" in book.page(match.page).prose.strip().replace("\n\n", " ")
        if not broken and scene.tier(match, sort, names=True) is not None:
            found.append((match, sort))
    if found:
        yield _issue(book, found, found[0][1].tier, check, message)


def _issue(
    book: Book,
    group: list[tuple[Match, Sort]],
    tier: Tier,
    check: str,
    message: Callable[[Match], str] | str,
) -> Issue:
    match, sort = group[0]
    spans = [book.page(m.page).span(m.start, m.end) for m, _ in group]
    return issue_at(
        book,
        spans[0],
        check=check,
        tier=tier,
        message=message if isinstance(message, str) else message(match),
        confidence=sort.confidence * (1.0 if tier is sort.tier else _SPOKEN_TIMES),
        suggestions=_readings(book, match),
        related=spans[1:],
    )


class _Scene:
    """What surrounds a match: who speaks, whose names these are, what language it is."""

    def __init__(self, book: Book, analysis: Analysis) -> None:
        self._book = book
        self._analysis = analysis
        self._quotations: Quotations = quotations_of(book)
        self._words: Dictionary = dictionary(analysis.english)

    def tier(self, match: Match, sort: Sort, *, names: bool = False) -> Tier | None:
        """How to put the match to the author, or None to be silent. ``names``: they don't matter."""
        page = self._book.page(match.page)
        prose = page.prose
        if prose[match.start : match.end] != page.text[match.start : match.end]:
            return None
        if _cut_from_a_word(prose, match) or _twice(prose, match):
            return None
        if not names and self._names(prose, match):
            return None
        sentence = _sentence_at(prose, match)
        if _DIALECT.search(sentence) or self._foreign(sentence):
            return None
        spoken = self._quotations.speaks(match.page, match.start)
        return sort.spoken if spoken else sort.tier

    def _names(self, prose: str, match: Match) -> bool:
        for word in WORD.finditer(prose, match.start, match.end):
            if word.group()[0].isupper() and word.group() not in _NO_NAMES:
                if self._analysis.vocabulary.is_name(word.group()):
                    return True
                if not opens_sentence(prose, word.start()):
                    return True
        return False

    def _foreign(self, sentence: str) -> bool:
        """Whether two or more words of the sentence are not English: a song, a greeting, a sound."""
        unknown = {
            word
            for word in WORD.findall(sentence)
            if word.islower() and not self._words.knows(word)
        }
        return len(unknown) >= 2


def _readings(book: Book, match: Match) -> list[str]:
    """The first few replacements. The one that keeps the tense of the quoted verb leads."""
    past = _quote(book, match).lower() == "was"
    readings = dict.fromkeys(r for r in match.replacements if r.strip())
    return sorted(readings, key=lambda reading: past and reading != "were")[:_MOST_READINGS]


def _with_neighbours(book: Book, match: Match) -> str:
    """The quote with a word on either side, so that a refrain is one matter and two slips are two."""
    prose = book.page(match.page).prose
    before = WORD.findall(prose[: match.start][-40:])[-1:]
    after = WORD.findall(prose[match.end : match.end + 40])[:1]
    return " ".join([*before, *_quote(book, match).split(), *after]).lower()


def _quote(book: Book, match: Match) -> str:
    return book.page(match.page).text[match.start : match.end]


def _cut_from_a_word(prose: str, match: Match) -> bool:
    """Whether the match is a piece of a longer word, or broken off: "'tis", "sou'-wester", "wh--what"."""
    before, first = prose[: match.start][-1:], prose[match.start : match.start + 1]
    shortened = before in ("'", "’") and first.islower()
    return shortened or before in ("-", "‑") or bool(_GOES_ON.match(prose, match.end))


def _twice(prose: str, match: Match) -> bool:
    """Whether the word at fault stands beside itself, as in "the long, long road" or "tap tap"."""
    word = prose[match.start : match.end].lower()
    if " " in word:
        return False
    before = WORD.findall(prose[: match.start].lower()[-40:])
    after = WORD.findall(prose[match.end : match.end + 40].lower())
    return word in (*before[-1:], *after[:1])


def in_dialect(prose: str, at: int) -> bool:
    """Whether the sentence around ``at`` leaves out letters as a dialect does: *runnin', o' the, 'em*."""
    stops = [prose.rfind(stop, 0, at) for stop in ".!?…"]
    ends = [end for stop in ".!?…" if (end := prose.find(stop, at)) >= 0]
    return _DIALECT.search(prose, max(stops) + 1, min(ends, default=len(prose))) is not None


def _sentence_at(prose: str, match: Match) -> str:
    start = max((m.end() for m in _STOP.finditer(prose, 0, match.start)), default=0)
    end = _STOP.search(prose, match.end)
    return prose[start : end.start() if end else len(prose)]
