"""A checked picture book, made by hand: what the reports are tried on."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from types import MappingProxyType

from proofkit.book import Book, Page, Paragraph, Role, Span
from proofkit.engines.note import EngineNote
from proofkit.issue import Issue, Tier, issue_at, with_keys
from proofkit.problem import Notice
from proofkit.reading.measure import measure
from proofkit.report import Report, report_of
from proofkit.settings import English
from proofkit.words.confirm import WordToConfirm

SPREADS = (
    "Nell was a goat, and she lived in a lighthouse with old Mr Brannock.",
    (
        "Every night Mr Brannock climbed the the ninety-nine steps to light the lamp.\n\n"
        "Every night Nell climbed up behind him. Clip-clop, clip-clop, clip-clop."
    ),
    "“Good evening Nell,” said Mr Brannock. “Mind the bucket .”\n\nNell did not mind the bucket.",
    (
        "But one night a storm came in form the sea. It rattled the windows and it banged the door and "
        "it blew the weather vane clean off the roof, and all the gulls came down and sat in the kitchen "
        "in a long wet row, and Nell gave every one of them a biscuit, because that is what her mother "
        "would have done."
    ),
    "“The lamp!” cried Mister Brannock. “I have turned my ankle, and who will light the lamp?",
    "Nell looked at the steps. She looked at the matches.\n\nThen she  took the box in her teeth",
    "Up and up and up she went. Clip-clop, clip-clop, clip-clop.",
    "Fffft! went the match.\n\nFffft! went the next one.",
    "And then, at last, the lamp was lit. It’s light went round and round over the dark water.",
    "Far away a little boat turned, and came safely home.",
)

_ENGINES = (
    EngineNote(name="language model", version="en_core_web_sm 3.8.0", ran=True),
    EngineNote(name="grammar engine", version="6.8", ran=True),
)


def book(
    *texts: str,
    paginated: bool = True,
    path: str = "Goat manuscript.docx",
    title: str = "The Lighthouse Goat",
) -> Book:
    """A book of one page to a spread, after a title page; or one run where it is not paginated."""
    if not paginated:
        pages: tuple[Page, ...] = (_page(1, "\n\n".join(texts)),)
    else:
        front = _page(1, "The Lighthouse Goat", role=Role.TITLE)
        pages = (
            front,
            *(_page(n + 1, text, spread=n, label=f"Spread {n}") for n, text in enumerate(texts, 1)),
        )
    return Book(path=path, title=title, pages=pages, paginated=paginated)


def _page(
    number: int, text: str, *, spread: int | None = None, label: str = "", role: Role = Role.STORY
) -> Page:
    paragraphs, at = [], 0
    for block in text.split("\n\n"):
        paragraphs.append(Paragraph(start=at, end=at + len(block), role=role))
        at += len(block) + 2
    return Page(
        number=number,
        text=text,
        paragraphs=tuple(paragraphs),
        label=label,
        spread=spread,
        role=role,
    )


def slip(
    of: Book,
    quote: str,
    *suggestions: str,
    check: str,
    message: str,
    tier: Tier = Tier.ERROR,
    confidence: float = 0.9,
    also: Iterable[Span] = (),
) -> Issue:
    """An issue at the first place of ``quote``."""
    page = next(page for page in of.pages if quote in page.text)
    start = page.text.index(quote)
    return issue_at(
        of,
        Span(page=page.number, start=start, end=start + len(quote)),
        check=check,
        tier=tier,
        message=message,
        confidence=confidence,
        suggestions=suggestions,
        related=also,
    )


def slips(of: Book) -> tuple[Issue, ...]:
    """What is wrong with the goat's book, most worth mending first."""
    query = Tier.QUERY
    return (
        slip(
            of,
            "form",
            "from",
            check="grammar/confused-words",
            message="a wrong word that is a word",
        ),
        slip(of, "the the", "the", check="repetition/doubled-word", message="a word twice"),
        slip(
            of,
            "It’s",
            "Its",
            check="grammar/its",
            message="“it’s” means “it is”; the light is its own",
        ),
        slip(
            of,
            "teeth",
            "teeth.",
            check="sentences/no-stop",
            message="no full stop at the end of the page",
        ),
        slip(
            of,
            "evening Nell",
            "evening, Nell",
            check="address/no-comma",
            message="a comma before the one spoken to",
        ),
        slip(
            of,
            "lamp?",
            "lamp?”",
            check="speech/not-closed",
            message="speech that is opened and not closed",
        ),
        slip(
            of,
            "bucket .",
            "bucket.",
            check="spacing/space-before-stop",
            message="a space before a full stop",
        ),
        slip(
            of,
            "she  took",
            "she took",
            check="spacing/two-spaces",
            message="two spaces between words",
        ),
        slip(
            of,
            "Mister",
            "Mr",
            check="consistency/name-spelt-two-ways",
            tier=query,
            message="elsewhere the book has Mr (4 times)",
            confidence=0.8,
        ),
        slip(
            of,
            SPREADS[3],
            check="reading/heavy-spread",
            tier=query,
            message="63 words, where no other spread has more than 23",
            confidence=0.5,
        ),
    )


def goat(
    of: Book | None = None,
    *,
    issues: Iterable[Issue] | None = None,
    paginated: bool = True,
    notices: tuple[Notice, ...] = (),
    path: str = "Goat manuscript.docx",
    title: str = "The Lighthouse Goat",
    let_stand: Mapping[str, str] = MappingProxyType({}),
) -> Report:
    """The report on the goat's book, with all of its slips unless other issues are given.

    ``let_stand`` has the checks whose slips the author lets stand, and the reason for each.
    """
    of = of or book(*SPREADS, paginated=paginated, path=path, title=title)
    found = _keyed(of, slips(of) if issues is None else tuple(issues))
    return report_of(
        of,
        [issue for issue in found if issue.check not in let_stand],
        let_stand=[(i, let_stand[i.check]) for i in found if i.check in let_stand],
        english=English.BRITISH,
        age_band="picture",
        words_to_confirm=tuple(_words_to_confirm(of)),
        reading=measure(of),
        engines=_ENGINES,
        notices=notices,
    )


def _keyed(of: Book, issues: tuple[Issue, ...]) -> list[Issue]:
    keyed = {(issue.span, issue.check): issue for issue in with_keys(of, issues)}
    return [keyed[issue.span, issue.check] for issue in issues]


def _words_to_confirm(of: Book) -> Iterator[WordToConfirm]:
    for word in ("Brannock", "Fffft"):
        counts = {page.number: page.text.count(word) for page in of.pages if word in page.text}
        if counts:
            yield WordToConfirm(word=word, count=sum(counts.values()), pages=tuple(counts))
