"""Two sentences joined by nothing but a comma.

What it finds
    A comma with a whole sentence on each side, each with its own subject and verb, and no joining
    word (*and, but, because*) between them. Lists of three (*they ate, they drank, they slept*), very short
    pairs, verse, questions at the end (*isn't it*) and reporting clauses are left alone.

Why a reader minds
    The voice stumbles on: there is no place to breathe where a new thought begins.

Example
    The stick was not mine, it belonged to my uncle.

Better
    The stick was not mine. It belonged to my uncle.

When to let it stand
    In speech that tumbles out in one breath, and where the halves balance (*one was red, one was blue*).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from proofkit.analysis import Analysis, PageAnalysis, Sentence, Token
from proofkit.book import Book, Page
from proofkit.checks.check import Need
from proofkit.checks.sentences._verse import in_verse, verse_at
from proofkit.checks.speech._seams import paragraph_at
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.lists import word_set
from proofkit.words.quotations import quotations_of
from proofkit.words.reporting import has_reporting_verb, reports

NAME = "sentences/comma-splice"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_PAST_PRESENT = frozenset(("VBD", "VBZ", "VBP", "MD"))
_SUBJECTS = frozenset(("nsubj", "nsubjpass", "expl"))
_PRONOUNS = word_set("i he she it we they you this that there")
# Anywhere in the left side, these may make it lean on the right one.
_SUBORDINATORS = word_set(
    "if when whenever while as because since although though unless until till before after once "
    "wherever whether whatever whoever so such too enough however"
)
# The right side is no sentence of its own after these, nor the left one where it opens with them.
_LEANING = _SUBORDINATORS | word_set(
    "that where which who whom whose what why how for with by in on at from to about upon and an but or nor than "
    "like even just only not no neither never had were should more sooner hardly scarcely rather "
    "therefore yet let"
)
_LEANING_LEFT = _SUBORDINATORS | word_set(
    "which who whom whose what why how for to upon and but or let had were should do does did now"
)
_TIMES = word_set("day time moment minute night morning year first next last more faster")
_PARENTHETIC = word_set(
    "think suppose know mean see guess hope wonder believe fear say says tell swear bet hear sure afraid told heard remember recall promise assure expect seemed seems"
)
_OPENERS = frozenset(
    ("sometimes", "then", "now", "soon", "suddenly", "maybe", "may", "perhaps", "here", "there")
)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each comma that joins two sentences."""
    if in_verse(book):
        return
    quotations = quotations_of(book)
    for page in book.pages:
        known = analysis.page(page.number)
        for sentence in known.sentences:
            if verse_at(page, sentence.start, sentence.end) or verse_at(
                page, *paragraph_at(page, sentence.start)
            ):
                continue
            for comma in _splices(page, known, sentence):
                spoken = quotations.speaks(page.number, known.tokens[comma].start)
                yield _issue(book, page, known.tokens, comma, spoken=spoken)


def glued_splices(page: Page, known: PageAnalysis) -> frozenset[int]:
    """Where on the page a comma without its space joins two sentences: *They went home,it was dark*."""
    return frozenset(
        known.tokens[comma].start
        for sentence in known.sentences
        for comma in range(sentence.first + 1, sentence.last - 1)
        if known.tokens[comma].text == ","
        and known.tokens[comma].end == known.tokens[comma + 1].start
        and _joins(page, known.tokens, _around(known.tokens, sentence, comma), glued=True)
        and not has_reporting_verb(page.prose[sentence.start : known.tokens[comma].start])
    )


def _around(tokens: Sequence[Token], sentence: Sentence, comma: int) -> tuple[int, int, int]:
    """The comma, where the words before it begin, and where those after it end."""
    marks = tuple(',;:–—"“”…?!.')
    before = [at for at in range(sentence.first, comma) if tokens[at].text in marks]
    after = [at for at in range(comma + 1, sentence.last) if tokens[at].text in marks]
    return before[-1] + 1 if before else sentence.first, comma, after[0] if after else sentence.last


def _splices(page: Page, known: PageAnalysis, sentence: Sentence) -> Iterator[int]:
    """The places of the commas in one sentence that join two sentences."""
    tokens = known.tokens
    marks = [
        at
        for at in range(sentence.first, sentence.last)
        if tokens[at].text in (",", ";", ":", "–", "—", '"', "“", "”", "...", "…", "?", "!")
    ]
    edges = [sentence.first - 1, *marks, sentence.last]
    found = [
        edges[i]
        for i in range(1, len(edges) - 1)
        if tokens[edges[i]].text == ","
        and _begins(tokens, edges[: i + 1])
        and not _third(tokens, edges[i], edges[i + 1])
        and _joins(page, tokens, (edges[i - 1] + 1, edges[i], edges[i + 1]))
    ]
    if len(found) == 1:
        yield found[0]


def _begins(tokens: Sequence[Token], edges: Sequence[int]) -> bool:
    """Whether the left side begins the sentence or the speech, but for an *Oh* or a name."""
    before = edges[:-1]
    if len(before) > 1 and tokens[before[-1]].text == "," and before[-1] - before[-2] <= 3:
        before = before[:-1]
    return len(before) == 1 or tokens[before[-1]].text not in (",", ";", ":", "–", "—")


def _third(tokens: Sequence[Token], comma: int, after: int) -> bool:
    """Whether the right side is only the second of three: *they ate, they drank, they slept*."""
    following = [token.text.lower() for token in tokens[after : after + 5]]
    if len(following) < 5 or following[0] != ",":
        return False
    if following[1] == "and":
        return any(token.dep in _SUBJECTS for token in tokens[after + 2 : after + 5])
    return following[1] == tokens[comma + 1].text.lower()


def _joins(
    page: Page, tokens: Sequence[Token], edges: tuple[int, int, int], *, glued: bool = False
) -> bool:
    start, comma, end = edges
    if _words(tokens, start, comma) < 3 or _words(tokens, comma + 1, end) < 3 or end - start < 9:
        return False
    after = page.prose[tokens[comma].end :]
    if tokens[comma - 1].end != tokens[comma].start or glued is (after[:1] in (" ", "\n")):
        return False
    if reports(after, loosely=True):
        return False
    return _left_whole(tokens, start, comma) and _right_whole(tokens, comma, end)


def _words(tokens: Sequence[Token], start: int, end: int) -> int:
    return sum(token.text[0].isalnum() for token in tokens[start:end])


def _left_whole(tokens: Sequence[Token], start: int, comma: int) -> bool:
    words = [token.text.lower() for token in tokens[start:comma]]
    if words[0] in _LEANING_LEFT or set(words) & _SUBORDINATORS or words[1].endswith("ing"):
        return False
    if (words[0] == "the" and words[1] in _TIMES) or set(words[:3]) & {"seemed", "seems"}:
        return False
    if words[-1] in ("is", "was", "says", "said"):
        return False
    verb = _first_clause(tokens, start, comma)
    return verb is not None and tokens[verb].dep not in ("relcl", "advcl", "csubj", "acl", "pcomp")


def _right_whole(tokens: Sequence[Token], comma: int, end: int) -> bool:
    first = comma + 1
    words = [token.text.lower() for token in tokens[first : first + 5]]
    if set(words) & {"so", "such", "too"}:
        return False
    verb = _first_clause(tokens, first, end)
    if words[0] in _LEANING or verb is None or tokens[verb].dep in ("relcl", "acl"):
        return False
    subject = next(
        i for i in range(first, end) if tokens[i].dep in _SUBJECTS and tokens[i].head == verb
    )
    if subject > comma + 4 or subject > verb:
        return False
    if words[0] in _PRONOUNS and set(words[1:5]) & _PARENTHETIC:
        return False
    return subject == first or tokens[first].head == subject or words[0] in _OPENERS


def _first_clause(tokens: Sequence[Token], start: int, end: int) -> int | None:
    """The place of the first finite verb between two places that has its subject there too."""
    for at in range(start, end):
        token = tokens[at]
        if token.dep not in _SUBJECTS or not start <= token.head < end or token.head < at:
            continue
        if _finite(tokens, token.head, start, end):
            return token.head
    return None


def _finite(tokens: Sequence[Token], verb: int, start: int, end: int) -> bool:
    if tokens[verb].tag in _PAST_PRESENT:
        return True
    return any(
        tokens[i].tag in _PAST_PRESENT
        and tokens[i].head == verb
        and tokens[i].dep.startswith("aux")
        for i in range(start, end)
    )


def _issue(book: Book, page: Page, tokens: Sequence[Token], comma: int, *, spoken: bool) -> Issue:
    before, after = tokens[comma - 1], tokens[comma + 1]
    word = page.text[before.start : before.end]
    following = page.text[after.start : after.end]
    return issue_at(
        book,
        page.span(before.start, after.end),
        check=NAME,
        tier=Tier.QUERY if spoken else Tier.ERROR,
        message="a comma joins two whole sentences",
        suggestions=[
            f"{word}. {following[0].upper()}{following[1:]}",
            f"{word}; {following}",
        ],
        confidence=0.45 if spoken else 0.55,
    )
