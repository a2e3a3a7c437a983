"""Which issue first, and which of two that want the same words.

The order, and why:

1. Errors before queries. The table says "mend no. 1 to 11": whoever works down it can mend with a
   pencil as far as the errors go, and then sit back to think. A check that isn't sure enough for
   that says query, however grave the matter, so a query never has to overtake an error.
2. Then by what a row is worth to the author: how likely it is to be true, times how much it would
   embarrass the printed book. A picture book is read aloud, fifty times over, by someone who sees
   every word: a wrong or misspelt word is stumbled over each time; a missing stop or quotation mark
   makes the reader take the wrong breath; a stray space is seen by few; and a matter of house style
   by nobody but another proofreader.
3. Ties in the order of the book, so that the author turns its pages once.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from proofkit.book import Book
from proofkit.issue import Issue, Tier

# How much it would embarrass the printed book, 0 to 1. The longest beginning of a check's name
# counts, so that a new check has its family's weight and a new family the usual one.
_USUAL = 0.6
_WEIGHTS: dict[str, float] = {
    "spelling/": 1.0,
    "words/": 1.0,
    "grammar/confused-words": 1.0,
    "grammar/sound-alike": 1.0,
    "grammar/missing-": 1.0,
    "repetition/": 0.95,
    "grammar/": 0.9,
    "consistency/name-spelt-two-ways": 0.9,
    "sentences/": 0.85,
    "capitals/": 0.85,
    "speech/": 0.8,
    "consistency/": 0.75,
    "address/": 0.75,
    "pages/": 0.75,
    "commas/": 0.65,
    "spacing/": 0.7,
    "english/": 0.5,
    "marks/": 0.5,
    "consistency/compound-two-ways": 0.5,
    "consistency/quotation-marks-two-ways": 0.5,
    "consistency/nesting-two-ways": 0.5,
    "consistency/marks-curly-and-straight": 0.4,
    "consistency/dash-two-ways": 0.4,
    "consistency/broken-off-two-ways": 0.4,
    "consistency/capital-after-colon-two-ways": 0.4,
    "consistency/typeface-two-ways": 0.4,
    "consistency/speaker-two-ways": 0.4,
    "consistency/heading-two-ways": 0.4,
    "consistency/ellipsis-two-ways": 0.35,
    "consistency/ellipsis-spaced-two-ways": 0.3,
    "consistency/label-two-ways": 0.3,
    "consistency/serial-comma-two-ways": 0.25,
    "consistency/stop-and-mark-two-ways": 0.25,
    "verse/": 0.7,
    "reading/": 0.3,
    "grammar/comma-": 0.1,
}
# These say how a page reads or a line scans: more than one a spread would be a lecture.
_MEASURES = ("reading/", "verse/")
# Below this share of true ones an author who "mends" them spoils as much as they save: ask instead.
_LIKELY = 0.6
# An issue this long without a reading of its own is about a passage, not about its words.
_PASSAGE = 60


def ranked(book: Book, issues: Iterable[Issue]) -> tuple[Issue, ...]:
    """The issues, most worth mending first; ``book`` says where each stands.

    An issue in matter that is not story (back matter, a note) counts half: few read it aloud.
    """
    return tuple(
        sorted(
            issues,
            key=lambda issue: (
                issue.tier is not Tier.ERROR,
                -round(_worth(book, issue), 6),
                issue.span,
                issue.check,
            ),
        )
    )


def asked_where_unsure(issues: Iterable[Issue]) -> tuple[Issue, ...]:
    """The issues, each error that is less than likely put as a query: only the sure may say "mend"."""
    return tuple(
        replace(issue, tier=Tier.QUERY) if issue.confidence < _LIKELY else issue for issue in issues
    )


def without_rivals(issues: Iterable[Issue]) -> tuple[Issue, ...]:
    """The issues, less those that want words which a better one wants, in the order of the book.

    Of two issues that overlap the surer stays; of two as sure, the graver, then the one that names
    fewer words. Two that lead to the same text are one: it keeps the fewer words and the higher
    confidence. An issue about a whole passage, such as a page too long, is nobody's rival.
    """
    kept: list[Issue] = []
    for issue in sorted(issues, key=_preference):
        rivals = [other for other in kept if _compete(issue, other)]
        if not rivals:
            kept.append(issue)
        elif len(rivals) == 1 and _narrower_twin(issue, rivals[0]):
            kept[kept.index(rivals[0])] = _merged(issue, rivals[0])
    return tuple(sorted(kept, key=lambda issue: (issue.span, issue.check)))


def one_measure_a_spread(book: Book, issues: Iterable[Issue]) -> tuple[Issue, ...]:
    """The issues; of those that only measure (how it reads, how it scans) one a spread, the surest.

    It keeps the others' places where they are of the same check; ``proofkit reading`` tells all. Where
    no pages are marked all stay: the whole story is one run.
    """
    if not book.paginated:
        return tuple(issues)
    kept: list[Issue] = []
    measured: dict[object, list[Issue]] = {}
    for issue in issues:
        if issue.check.startswith(_MEASURES):
            page = book.page(issue.span.page)
            measured.setdefault(page.spread or f"page {page.number}", []).append(issue)
        else:
            kept.append(issue)
    for here in measured.values():
        best = min(here, key=lambda issue: (-issue.confidence * weight(issue.check), issue.span))
        others = [i.span for i in here if i.check == best.check and i is not best]
        kept.append(replace(best, related=(*best.related, *others)))
    return tuple(sorted(kept, key=lambda issue: (issue.span, issue.check)))


def weight(check: str) -> float:
    """How much an issue of this check would embarrass the printed book, 0 to 1."""
    names = [name for name in _WEIGHTS if check.startswith(name)]
    return _WEIGHTS[max(names, key=len)] if names else _USUAL


def _worth(book: Book, issue: Issue) -> float:
    prose = book.page(issue.span.page).prose[issue.span.start : issue.span.end]
    aside = bool(issue.quote.strip()) and not prose.strip()
    return issue.confidence * weight(issue.check) * (0.5 if aside else 1.0)


def _preference(issue: Issue) -> tuple[float, float, int, object, str, str]:
    length = issue.span.end - issue.span.start
    first = issue.suggestions[0] if issue.suggestions else ""
    return (-issue.confidence, -weight(issue.check), length, issue.span, issue.check, first)


def _compete(one: Issue, other: Issue) -> bool:
    if one.span.page != other.span.page or _about_passage(one) or _about_passage(other):
        return False
    first, second = sorted((one.span, other.span))
    return second.start < first.end or first == second


def _about_passage(issue: Issue) -> bool:
    return not issue.suggestions and issue.span.end - issue.span.start > _PASSAGE


def _narrower_twin(issue: Issue, kept: Issue) -> bool:
    """Whether ``issue`` lies inside ``kept`` and its first reading makes the same text of it."""
    start, end = issue.span.start - kept.span.start, issue.span.end - kept.span.start
    inside = start >= 0 and issue.span.end <= kept.span.end and issue.span != kept.span
    if not (inside and issue.suggestions and kept.suggestions):
        return False
    return kept.quote[:start] + issue.suggestions[0] + kept.quote[end:] == kept.suggestions[0]


def _merged(narrow: Issue, wide: Issue) -> Issue:
    related = tuple(dict.fromkeys((*narrow.related, *wide.related)))
    surer = max(narrow, wide, key=lambda issue: issue.confidence)
    return replace(narrow, confidence=surer.confidence, tier=surer.tier, related=related)
