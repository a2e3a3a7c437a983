"""A verb's participle where its past belongs, or the other way about.

What it finds
    "The goat drunk the water", "Rosa taken the key", "she had went home", "the cake was ate": forms
    that can only be the one, in the place of the other. Where somebody speaks, a single one in the book
    is asked about; more of them are a voice. Left alone are groups of words that hold a participle of
    their own: "his sister gone, he wept", "the path taken by the fox".

Why a reader minds
    Small children are still learning took and taken; they learn them by ear, from books.

Example
    The goat drunk the water.

Better
    The goat drank the water.

When to let it stand
    When the one who tells the story talks so on purpose.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from proofkit.analysis import Analysis, Token
from proofkit.book import Book, Page
from proofkit.checks.check import Need
from proofkit.checks.grammar._clauses import opens_clause, phrase_start
from proofkit.checks.grammar._voices import tier_at
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.forms import participle_by_past, past_by_participle, past_forms
from proofkit.words.lists import word_set

NAME = "grammar/participle-for-past"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

# What a participle further on may hang on: "had her friends fed and the dog taken home".
_HOLDS = word_set("""
have has had having 've ’ve 'd ’d 's ’s be am is are was were been being get gets got getting gotten find
finds found finding see saw seen hear heard feel felt want wanted leave left make made keep kept with
without like 're ’re 'm ’m need needed watch watched
""")
_HAVE = word_set("have has had having 've ’ve")
_BE = word_set("is are was were been being be am")
_TURNED = _HAVE | _BE | word_set("n't n’t not than")  # "had he taken", "was she known"
_NOMINATIVES = word_set("i he she we they")
# With two objects a participle may keep one: "the boy given the key".
_TWO_OBJECTS = frozenset({"given", "shown", "forgiven", "forbidden"})
# Adjectives in their own right, or other words as well.
_NO_PROOF = word_set("born worn sworn drawn swollen torn borne hidden")
# Pasts that some writers have as participles too.
_BOTH = word_set("showed proved sewed mowed")
_OBJECTS = word_set("the a an his her their its my our your some it him them me us these those")
_NEVER_AFTER = word_set("by from with of")
_OPENS = word_set(
    "then so because but when while where that if until till and since although though"
)
# Pasts that are adjectives or other words too, where be stands before them.
_ALSO_OTHER = word_set("broke fell bore wound woke awoke sank shrank lay")
_WANDERING = word_set(
    "not n't n’t never already just also always all ever even only almost nearly soon yet often so quite long"
)
_CLAUSE = word_set("what whatever all everything how")
_FINITE = frozenset({"VBD", "VBZ", "VBP", "MD"})
_ENDS = frozenset('.!?:;"“”‘…—–(')


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each such form; in speech a query, where only one voice does it, and once."""
    spoken = []
    for page in book.pages:
        tokens = analysis.page(page.number).tokens
        for at, reading, why in _on_page(tokens):
            tier = tier_at(book, analysis, page, tokens[at].start)
            if tier is Tier.ERROR:
                yield _issue(book, page, tokens[at], reading, why, tier)
            elif tier:
                spoken.append(_issue(book, page, tokens[at], reading, why, tier))
    if len(spoken) == 1:
        yield from spoken


def _issue(book: Book, page: Page, token: Token, reading: str, why: str, tier: Tier) -> Issue:
    return issue_at(
        book,
        page.span(token.start, token.end),
        check=NAME,
        tier=tier,
        message=why,
        confidence=0.75 if tier is Tier.ERROR else 0.5,
        suggestions=[reading],
    )


def _on_page(tokens: Sequence[Token]) -> Iterator[tuple[int, str, str]]:
    for at in range(1, len(tokens)):
        word = tokens[at].text
        past, participle = past_by_participle().get(word), participle_by_past().get(word)
        if past and _stands_as_past(tokens, at):
            yield at, past, f"“{word}” needs a helping verb; the past is “{past}”"
        elif participle and word not in _BOTH and _stands_as_participle(tokens, at):
            yield at, participle, f"after a helping verb it is “{participle}”"


def _stands_as_past(tokens: Sequence[Token], at: int) -> bool:
    """Whether a subject, or an "and" after another past, stands right before the participle."""
    subject = at - 1
    if tokens[subject].tag == "RB" and subject and tokens[subject].text.lower() not in _HOLDS:
        subject -= 1
    word = tokens[subject].text
    first = phrase_start(tokens, subject)
    it = word.lower() == "it" and opens_clause(tokens, first)
    if word.lower() in _NOMINATIVES or (it and not _held(tokens, first)):
        return first == 0 or tokens[first - 1].text.lower() not in _TURNED
    after = tokens[at + 1].text.lower() if at + 1 < len(tokens) else "."
    if after in _NEVER_AFTER or after[0] in "-‑" or tokens[at].text in _NO_PROOF:
        return False
    takes = after in _OBJECTS and tokens[at].text not in _TWO_OBJECTS
    if word == "who":
        return True
    if word in ("which", "that"):
        return takes and _free(tokens, subject)
    if word == "and":
        verb = subject - 1 - (tokens[subject - 1].tag in ("RP", "RB"))
        beside = tokens[verb].text in past_forms() and tokens[verb].tag == "VBD"
        return (takes and _free(tokens, subject)) or (beside and _nominative(tokens, verb - 1))
    named = tokens[subject].tag.startswith("NN")
    return named and _opens_clause(tokens, first) and (takes or _sole_verb(tokens, first, at))


def _held(tokens: Sequence[Token], first: int) -> bool:
    """Whether a verb that may have a participle beside its object stands right before: *see it written*."""
    return first > 0 and tokens[first - 1].text.lower() in _HOLDS


def _nominative(tokens: Sequence[Token], at: int) -> bool:
    return at >= 0 and tokens[at].text.lower() in (*_NOMINATIVES, "it", "who")


def _free(tokens: Sequence[Token], at: int) -> bool:
    """Whether a past, and nothing that a participle could hang on, stands before in the sentence."""
    before = _sentence_before(tokens, at)
    past = any(token.tag == "VBD" for token in before)
    return past and not any(token.text.lower() in _HOLDS for token in before)


def _opens_clause(tokens: Sequence[Token], first: int) -> bool:
    """Whether the phrase begins a clause, so that no verb before can have it as object."""
    if not first or tokens[first - 1].text[0] in _ENDS or tokens[first - 1].text == ",":
        return True
    word = tokens[first - 1].text.lower()
    return word in _OPENS and (word != "and" or _free(tokens, first))


def _sole_verb(tokens: Sequence[Token], first: int, at: int) -> bool:
    """Whether the clause has no other verb, and is no aside that hangs on another: *his hat gone, he ran*."""
    before = _sentence_before(tokens, first)
    aside = first > 0 and tokens[first - 1].text == ","
    if aside and any(token.tag in _FINITE for token in before):
        return False
    if tokens[first].text.lower() in ("a", "an", "with", "all", "every", "no"):
        return False
    for token in tokens[at + 1 :]:
        opens = token.text.lower() in _OPENS and tokens[at - 1].tag == "NNP"
        if token.text[0] in _ENDS or token.tag == "CC" or opens:
            return token.start > tokens[at].end + 1
        if token.tag in _FINITE:
            return False
    return False


def _stands_as_participle(tokens: Sequence[Token], at: int) -> bool:
    """Whether have or be stands right before the past form: *had went*, *was ate*."""
    helper = at - 1
    while helper and tokens[helper].text.lower() in _WANDERING:
        helper -= 1
    if tokens[helper].text in _NOMINATIVES or tokens[helper].text in ("you", "I"):
        helper -= 1
        return _asks(tokens, helper)
    word = tokens[helper].text.lower()
    if word in _BE and tokens[at].text in _ALSO_OTHER:
        return False
    if word not in _HAVE and word not in _BE:
        return False
    if word == "be" and tokens[helper - 1].tag not in ("MD", "TO"):
        return False
    ends = at + 1 >= len(tokens) or tokens[at + 1].text[0] in _ENDS
    if ends or word in ("be", "having") or tokens[helper - 1].tag == "MD":
        return True
    before = [token.text.lower() for token in _sentence_before(tokens, helper)]
    return not any(word in _CLAUSE for word in before[-4:])


def _asks(tokens: Sequence[Token], helper: int) -> bool:
    """Whether a have before its subject opens a question: *Have you saw*, *where has he went*."""
    if helper < 0 or tokens[helper].text.lower() not in ("have", "has"):
        return False
    return tokens[helper].text[0].isupper() or (
        helper > 0 and tokens[helper - 1].tag in ("WRB", "WP", "WDT")
    )


def _sentence_before(tokens: Sequence[Token], at: int) -> Sequence[Token]:
    first = at
    while first and tokens[first - 1].text[0] not in _ENDS:
        if tokens[first - 1].text == "," and tokens[first].text in _NOMINATIVES:
            break
        first -= 1
    return tokens[first:at]
