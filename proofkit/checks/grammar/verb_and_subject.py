"""A verb that goes with a neighbour, not with its subject.

What it finds
    "The boats on the water was blue", "my sister and I was late", "the key to the boxes were gone",
    "there were a goat": was and were, is and are, has and have, do and does, and in a few plain cases
    other verbs, held against the word that they belong to, however far before it stands, or behind it in
    a question. Where somebody speaks it is asked about, unless that voice is no plain English in other
    ways as well ("we was goin'"). Left alone are wishes ("as if it were"), collective nouns ("the family
    were"), and verbs that a word before them keeps bare ("made the boy do it").

Why a reader minds
    The ear hears the word next to the verb, the mind the one it belongs to; whoever reads aloud trips.

Example
    The boats on the water was blue.

Better
    The boats on the water were blue.

When to let it stand
    When the one who tells the story talks so, from the first page to the last.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from proofkit.analysis import Analysis, Token
from proofkit.book import Book, Page, Span
from proofkit.checks.check import Need
from proofkit.checks.grammar._clauses import (
    STOPS,
    clause_before,
    kept_bare,
    last_of_list,
    phrase_start,
)
from proofkit.checks.grammar._inverted import after_modal, inverted_subject
from proofkit.checks.grammar._numbers import Number, number_of
from proofkit.checks.grammar._subjects import subject_of
from proofkit.checks.grammar._voices import tier_at
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.dictionary import Dictionary, dictionary
from proofkit.words.lists import word_set

NAME = "grammar/verb-and-subject"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

# The form for he, for they and for I.
_SETS = (("was", "were", "was"), ("is", "are", "am"), ("has", "have", "have"), ("does", "do", "do"))
_FORMS = {form: row for row in _SETS for form in row if form != "am"}
_NOT = ("n't", "n’t")
_WISHES = word_set("""
if though whether wish wished wishes unless lest suppose supposing imagine rather would
""")
_DESCRIBING = frozenset("DT PDT CD JJ JJR JJS NN NNS RB HYPH PRP$ VBN".split())
_FAR = 40  # tokens
_ONE_THING = word_set(
    "a an no another every such nothing nobody something somebody someone any some his her my this that"
)
_SURE, _SPOKEN = 0.75, 0.55
_COUNTED_UP = frozenset("DT CD PRP$ JJ NN NNS NNP".split())


@dataclass(frozen=True, slots=True, kw_only=True)
class _Found:
    """``pattern``  the words that disagree, as a voice would have them again."""

    span: Span
    reading: str
    why: str
    pattern: tuple[str, str]


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each verb that its subject asks another form of; a query where somebody speaks."""
    words = dictionary(analysis.english)
    alike: dict[tuple[str, str, Tier], list[_Found]] = defaultdict(list)
    voiced = Counter[tuple[str, str]]()
    for page in book.pages:
        for found in _on_page(page, analysis.page(page.number).tokens, words):
            tier = tier_at(book, analysis, page, found.span.start)
            if tier:
                alike[found.why, found.reading, tier].append(found)
                voiced[found.pattern] += tier is Tier.QUERY
    for (why, reading, tier), group in alike.items():
        if tier is Tier.QUERY and voiced[group[0].pattern] > 1:
            continue
        yield issue_at(
            book,
            group[0].span,
            check=NAME,
            tier=tier,
            message=why,
            confidence=_SURE if tier is Tier.ERROR else _SPOKEN,
            suggestions=[reading],
            related=[found.span for found in group[1:]],
        )


def _on_page(page: Page, tokens: Sequence[Token], words: Dictionary) -> Iterator[_Found]:
    for at, token in enumerate(tokens):
        row = _FORMS.get(token.text.lower())
        found = _auxiliary(page, tokens, at, row, words) if row else None
        if found:
            yield found


def _auxiliary(
    page: Page, tokens: Sequence[Token], at: int, row: tuple[str, str, str], words: Dictionary
) -> _Found | None:
    """A form of be, have or do that doesn't suit its subject."""
    if at and tokens[at - 1].text.lower() == "there":
        return _after_there(page, tokens, at, row, words)
    one, many, speaker = row
    verb = tokens[at].text.lower()
    if verb in ("has", "does") and after_modal(tokens, at):
        return _mended(page, tokens, at, many, "after such a word the verb stands bare", "would")
    inverted = inverted_subject(tokens, at)
    subject = subject_of(tokens, at) if inverted is None else inverted
    if subject is None or (inverted is None and tokens[at].text[0].isupper()):
        return None
    number = number_of(tokens, subject, max(at, subject), words)
    if number is None:
        return None
    wanted = {Number.ONE: one, Number.MANY: many, Number.SPEAKER: speaker}[number]
    if wanted == verb or (inverted is None and _may_stand(tokens, subject, at, number)):
        return None
    return _mended(
        page, tokens, at, wanted, _why(tokens, subject, at, number), tokens[subject].text
    )


def _mended(
    page: Page, tokens: Sequence[Token], at: int, wanted: str, why: str, subject: str
) -> _Found:
    """The verb, with its "not" if that is joined to it, in the form that is wanted."""
    verb, last = tokens[at], tokens[at]
    wanted = wanted.capitalize() if verb.text[0].isupper() else wanted
    if at + 1 < len(tokens) and tokens[at + 1].text in _NOT and tokens[at + 1].start == verb.end:
        last = tokens[at + 1]
    return _Found(
        span=page.span(verb.start, last.end),
        reading=wanted + (last.text if last is not verb else ""),
        why=why,
        pattern=(verb.text.lower(), subject.lower()),
    )


def _after_there(
    page: Page, tokens: Sequence[Token], at: int, row: tuple[str, str, str], words: Dictionary
) -> _Found | None:
    """*There were a goat*, *there was two goats*: what there is stands behind the verb, alone."""
    one, many, _ = row
    place = at + 1
    while place < len(tokens) and tokens[place].tag in _DESCRIBING:
        place += 1
    noun = next(
        (i for i in range(place - 1, at, -1) if tokens[i].tag in ("NN", "NNS", "NNP")), None
    )
    if noun is None or noun < place - 2 or one not in ("was", "is"):
        return None
    number = number_of(tokens, noun, noun, words)
    first = next(t.text.lower() for t in tokens[at + 1 :] if t.tag != "RB")
    if number is Number.ONE and first in _ONE_THING and not _listed(tokens, noun):
        wanted = one
    elif number is Number.MANY and first not in ("a", "an", "this", "that"):
        wanted = many
    else:
        return None
    wished = tokens[at].text == "were" and any(
        token.text.lower() in _WISHES for token in clause_before(tokens, at)
    )
    if wanted == tokens[at].text or wished:
        return None
    word = tokens[noun].text
    why = f"the verb belongs to “{word}”, which {'is only one' if wanted == one else 'are more than one'}"
    return _mended(page, tokens, at, wanted, why, word)


def _listed(tokens: Sequence[Token], noun: int) -> bool:
    """Whether more may be counted up after the noun: *a goat, a hen and a pig*."""
    for place in range(noun + 1, min(noun + _FAR, len(tokens) - 2)):
        token, following, then = tokens[place : place + 3]
        if token.text[0] in STOPS:
            return False
        if token.text in ("and", ","):
            if token.text == "," and following.text == "and":
                following, then = then, following
            acts = following.tag == "NNP" and then.tag == "VBD"
            return following.tag in _COUNTED_UP and not acts
    return False


def _may_stand(tokens: Sequence[Token], subject: int, at: int, number: Number) -> bool:
    """Whether a wish, a bare verb or a list explains the form."""
    verb = tokens[at].text
    before = [token.text.lower() for token in clause_before(tokens, subject)]
    if verb == "were" and any(word in _WISHES for word in before):
        return True
    after = tokens[at + 1].text.lower() if at + 1 < len(tokens) else ""
    said = {*before, tokens[phrase_start(tokens, subject)].text.lower()}
    if after in ("i", "you", "he", "she", "they", "we") and said & {"what", "which"}:
        return True  # "what business have you here"
    helped = any(token.tag in ("MD", "TO") for token in tokens[subject + 1 : at])
    if verb in ("have", "do") and (helped or kept_bare(tokens, subject)):
        return True
    if verb == "were" and before[-1:] == ["as"] and tokens[subject].text == "it":
        return True
    first = phrase_start(tokens, subject)
    if number is not Number.MANY and last_of_list(tokens, first):
        return True
    previous = tokens[first - 1].text.lower() if first else ""
    pronoun = tokens[subject].text.lower() in ("he", "she", "they", "we", "i")
    return previous in ("of", "let", "than", "except") and not pronoun


def _why(tokens: Sequence[Token], subject: int, at: int, number: Number) -> str:
    word = tokens[subject].text
    if number is Number.SPEAKER or word.lower() in ("you", "he", "she", "it", "they", "we"):
        return f"the verb doesn't go with “{word}”"
    if any(token.tag == "CC" for token in tokens[subject:at]):
        return "two are meant, so the verb should be the one for many"
    if number is Number.MANY:
        return f"the verb belongs to “{word}”, which are more than one"
    return f"the verb belongs to “{word}”, which is only one"
