"""An owner without its apostrophe.

What it finds
    A word with s straight before the thing that is owned: *the kings crown*, *Pips hat*. Words that take an s
    without an apostrophe (*a sports day, his trousers pocket*) and things given to several (*gave the
    boys apples*) are left alone. Whether one owner is meant or several is for you to say: the likelier is
    shown first.

Why a reader minds
    Without the mark there are several kings, and the crown hangs in the air.

Example
    She saw the kings crown.

Better
    She saw the king's crown.

When to let it stand
    Where the first word only says what kind of thing it is.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from proofkit.analysis import Analysis, Token
from proofkit.book import Book, Page
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.lists import word_set

NAME = "marks/owner-without-apostrophe"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_BEFORE_OWNER = frozenset(("DT", "PRP$", "JJ", "IN"))
_GOVERNING = frozenset(("VBD", "VBZ", "VB", "VBG", "VBN", "IN", "RP", "TO"))
_DESCRIBING = frozenset(("JJ", "CD"))
_MOST = 4  # describing words: Tilly's nine old grey geese
_THINGS = frozenset(("NN", "NNS"))
# Words in s that stand before another noun as they are, and words that are no owners.
_AS_THEY_ARE = word_set("""
sports clothes glasses arms goods savings customs headquarters news means trousers pyjamas pajamas pants shorts
jeans scissors tights this is was has does its his hers theirs ours yours as always perhaps sometimes towards
backwards forwards upwards downwards besides afterwards indoors outdoors upstairs downstairs lots loads
heaps piles dozens hundreds thousands millions sets pairs kinds sorts types games arts crafts systems
series species bus gas glass grass class cross boss dress mess brass moss christmas plus yes us
""")
_NOT_OWNED = word_set(
    "today yesterday tomorrow tonight people folk everybody everyone everything nothing something home"
)
# After these several may be given something, or be seen to do it (*told the boys stories, heard the dogs bark*).
_GIVING = word_set("""
give gives gave given giving tell tells told telling show shows showed shown bring brings brought buy bought
send sends sent lend lent hand handed offer offered ask asks asked teach taught teaches feed feeds fed pay paid sell
sold promise promised wish wished let lets make makes made making help helps helped hear hears heard see sees saw
watch watches watched watching feel felt notice noticed call called
""")
_PLURAL_AFTER = word_set(
    "all both many several these those some two three four five six seven eight nine ten"
)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each owner that lacks its apostrophe."""
    apostrophe = "’" if any("’" in page.text for page in book.pages) else "'"
    for page in book.pages:
        tokens = analysis.page(page.number).tokens
        for at in range(len(tokens) - 1):
            if _owns(page, tokens, at) and _in_place(tokens, at):
                if _is_noun(tokens, at):
                    yield _issue(book, page, tokens, at, apostrophe)
                elif _is_name(tokens[at].text, analysis):
                    yield _issue(book, page, tokens, at, apostrophe, name=True)


def _owns(page: Page, tokens: Sequence[Token], at: int) -> bool:
    """Whether a word in s stands straight before a small noun, or one that is described."""
    word, thing = tokens[at], tokens[at + 1]
    if not word.text.endswith("s") or word.text.lower() in _AS_THEY_ARE or len(word.text) < 4:
        return False
    if word.text.endswith("ss") or page.prose[word.end : thing.start] != " ":
        return False
    place = at + 1
    while tokens[place].tag in _DESCRIBING and place - at < _MOST and place + 1 < len(tokens):
        place += 1
    thing = tokens[place]
    plain = thing.text.islower() and thing.text.isalpha() and thing.text not in _NOT_OWNED
    return plain and thing.tag in _THINGS and page.prose[thing.end : thing.end + 1] != "-"


def _is_noun(tokens: Sequence[Token], at: int) -> bool:
    word = tokens[at]
    described = tokens[at + 1].tag in _DESCRIBING
    return (
        at > 0
        and word.text.islower()
        and word.tag in ("NNS", "VBZ")
        and tokens[at - 1].tag in _BEFORE_OWNER
        and not described
        and word.lemma != tokens[at + 1].lemma
    )


def _governor(tokens: Sequence[Token], at: int) -> Token | None:
    """The word before the owner's phrase, or None where the phrase begins a sentence."""
    first = at - 1
    while first >= 0 and tokens[first].tag in ("DT", "PRP$", "JJ", "CD", "NNP"):
        first -= 1
    return tokens[first] if first >= 0 else None


def _in_place(tokens: Sequence[Token], at: int) -> bool:
    """Whether what follows the owner can't be a verb: a verb or preposition rules both, or a verb follows."""
    before = _governor(tokens, at)
    if before is not None and before.text.lower() in _GIVING:
        return False
    governed = before is not None and before.tag in _GOVERNING
    return governed or _verb_follows(tokens, at + 2)


def _verb_follows(tokens: Sequence[Token], after: int) -> bool:
    """Whether the clause has its verb after the phrase: *the kings crown was*."""
    return any(token.tag in ("VBD", "VBZ", "MD") for token in tokens[after : after + 3])


def _is_name(word: str, analysis: Analysis) -> bool:
    """Whether the word is a name of the book and an s, and no name itself (*Chris, the Smiths*)."""
    vocabulary = analysis.vocabulary
    name = word[:-1]
    return (
        word[0].isupper()
        and vocabulary.is_name(name)
        and vocabulary.count(name) > max(1, 2 * vocabulary.count(word))
    )


def _issue(
    book: Book, page: Page, tokens: Sequence[Token], at: int, apostrophe: str, *, name: bool = False
) -> Issue:
    word = tokens[at]
    one, several = f"{word.text[:-1]}{apostrophe}s", f"{word.text}{apostrophe}"
    near = {token.text.lower() for token in tokens[max(0, at - 2) : at]}
    readings = [several, one] if near & _PLURAL_AFTER else [one, several]
    return issue_at(
        book,
        page.span(word.start, word.end),
        check=NAME,
        tier=Tier.ERROR,
        message="an apostrophe is missing",
        suggestions=readings[:1] if name else readings,
        confidence=0.8,
    )
