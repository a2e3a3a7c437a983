"""Places where a sentence has all it needs and another begins with a capital, told by grammar.

*She sat down Tom brought the soup*: what comes before has its verb, asks for nothing more, and can't take
what follows into itself: *I hope Tom brings soup, the day Tom came, the hat Tom wore* all could.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from proofkit.analysis import Analysis, Token
from proofkit.book import Page
from proofkit.words.dictionary import dictionary
from proofkit.words.frequency import zipf
from proofkit.words.lists import word_set
from proofkit.words.reporting import has_reporting_verb
from proofkit.words.vocabulary import Vocabulary

_COMMON = 3.5  # Zipf value: a rarer word may be a name that the book has only here
_FINITE = frozenset(("VBD", "VBZ", "VBP", "MD"))
# What may end a sentence. A noun is followed by a clause of its own too: the hat Tom wore.
_ENDS = frozenset(("NN", "NNS", "RB", "RP", "PRP", "VBN", "JJ", "JJR"))
# With these a clause opens that has its subject still to come: with a leap Tom was over.
_FRONTED = frozenset(("IN", "TO", "VBG", "VBN", "RB"))
_RESTS = word_set("""
go going gone come coming care cry crying sleep sleeping laugh laughing wait waiting listen tremble trembling run running
play playing dance dancing sing singing talk talking eat eating eaten fly flying swim swimming fall falling smile smiling
ran slept cried laughed danced sang fell flew swam smiled waited listened trembled left worked arrived died work
""")
_NOUNS = frozenset(("NN", "NNS", "NNP", "NNPS"))
_SUBORDINATES = word_set("""
when while if as before after until till because since though although where whenever wherever once unless than
like that what which who whom whose how why whether lest so such every whatever whoever however
""")
# After these a clause may follow with nothing between: I hope Tom comes, I am glad Tom came.
_TAKE_A_CLAUSE = word_set("""
know knows knew known think thinks thought hope hopes hoped wish wishes wished believe believes believed guess guessed
suppose supposed say says said tell tells told see sees saw seen feel feels felt hear heard hears find found finds
dream dreamed dreamt mean means meant fear feared bet pretend pretended understand understood show showed shown
notice noticed learn learned learnt realise realised realize realized remember remembered imagine imagined
sure glad sorry afraid happy pleased certain proud aware surprised lucky thankful likely true forget forgot
let make made makes help helped watch watched expect expected decide decided promise promised swear swore
""")
# And after these a clause that says which: the day Tom came, all I know, the way Tom does it.
_TAKE_WHICH = word_set("""
day night morning evening afternoon time times moment minute instant second hour week month year summer winter spring
autumn place way reason spot all everything anything nothing something everyone anyone those one ones thing things
more less most least best only first last next now again then still yet even just perhaps maybe soon there here too
also not never always often ever almost
""")
_MOVED = word_set("""
went came ran looked stood sat lay laughed smiled slept cried wept lived waited turned stopped began started
goes comes runs looks stands sits lies laughs smiles sleeps lives waits turns stops begins starts""")
_STATES = word_set("be feel look become get grow seem very so quite too")
_OBJECTS = frozenset(("DT", "PRP", "PRP$"))
_AFTER_OBJECT = frozenset(("DT", "PRP$", "NN", "NNS", "JJ", "RP"))
_LONGEST = 40  # tokens to look back over


def unstopped(page: Page, tokens: Sequence[Token], analysis: Analysis) -> Iterator[int]:
    """The tokens with which a new sentence begins though nothing ended the one before."""
    for at in range(3, len(tokens) - 2):
        before, word, after = tokens[at - 1 : at + 2]
        if not word.text[0].isupper() or not (before.text.isalpha() and before.text.islower()):
            continue
        gaps = page.prose[before.end : word.start], page.prose[word.end : after.start]
        open_class = word.text.endswith(("ing", "ly"))
        if before.dep == "compound" and not open_class:
            continue
        if before.tag not in _ENDS and before.text not in _RESTS:
            continue
        if gaps != (" ", " ") or not after.text[0].islower():
            continue
        clause = _clause(tokens, at)
        if not any(token.tag in _FINITE for token in clause[1:]):
            continue
        if is_common(word.text, analysis) or (
            _tells(tokens, at, analysis.vocabulary) and _is_whole(clause)
        ):
            yield at


def _clause(tokens: Sequence[Token], at: int) -> Sequence[Token]:
    """The words since the last mark."""
    first = at
    while first and at - first < _LONGEST and _is_word(tokens[first - 1]):
        first -= 1
    return tokens[first:at]


def _is_word(token: Token) -> bool:
    return token.text in ("-", "‑") or any(map(str.isalpha, token.text))


def _is_whole(clause: Sequence[Token]) -> bool:
    """Whether the words leave nothing open that a clause could fill."""
    words = [token.text.lower() for token in clause]
    if len(words) < 3 or has_reporting_verb(" ".join(words)):
        return False
    if not _SUBORDINATES.isdisjoint(words) or not _TAKE_A_CLAUSE.isdisjoint(words):
        return False
    if words[-1] in _TAKE_WHICH or not _TAKE_WHICH.isdisjoint(words[:3]):
        return False
    if clause[0].tag == "CC":
        clause = clause[1:]
    last = max((place + 1 for place, token in enumerate(clause) if token.tag == "CC"), default=0)
    return clause[0].tag not in _FRONTED and last < len(clause) and clause[last].tag not in _FRONTED


def _tells(tokens: Sequence[Token], at: int, vocabulary: Vocabulary) -> bool:
    """Whether a name or I begins a sentence with a verb that wants nothing of the words before."""
    word, verb = tokens[at], tokens[at + 1]
    if not (word.text == "I" or vocabulary.is_name(word.text)) or verb.tag not in _FINITE:
        return False
    if tokens[at - 1].tag not in ("NN", "NNS"):
        return not tokens[at - 1].tag.startswith("JJ") or tokens[at - 2].lemma in _STATES
    after = [verb, *(token for token in tokens[at + 2 : at + 5] if token.tag != "RB")]
    return len(after) > 1 and _is_full(after)


def _is_full(words: Sequence[Token]) -> bool:
    """Whether a verb and what follows have no gap that a noun before them could fill (*the hat Tom wore*)."""
    verb, then = words[:2]
    after = words[2] if len(words) > 2 else None
    if verb.tag == "MD" or verb.lemma == "have":
        return after is not None and after.tag in ("DT", "PRP$")
    if then.tag in _OBJECTS:
        # The hill I told you about, but not: the hill I told you a story.
        return then.tag != "PRP" or (after is not None and after.tag in _AFTER_OBJECT)
    if verb.lemma == "be":
        return then.tag in ("JJ", "VBG")
    moves = verb.text in _MOVED and then.text[0].isalpha()
    stranded = then.tag == "IN" and (after is None or not after.text[0].isalpha())
    return moves and not stranded


def is_common(word: str, analysis: Analysis) -> bool:
    """Whether the capital stands on an ordinary word, which only a sentence's beginning can ask for."""
    known, lower = dictionary(analysis.english), word.lower()
    use = analysis.vocabulary.use(lower)
    return (
        word.istitle()
        and lower in known.words
        and lower not in known.capitals
        and use is not None
        and use.capitals_inside < 2
        and zipf(lower) > _COMMON
    )
