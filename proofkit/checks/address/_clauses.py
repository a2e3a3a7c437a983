"""Whether a clause is complete, so that a name after it can only be the one who is spoken to.

"I saw Tilly" wants its object, "Where are you going" wants nothing more. Judged by the clause's last
word and by what its first words have asked for; tags are taken from the words before the name alone.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from proofkit.analysis import Token
from proofkit.checks.address._spoken_to import Kind
from proofkit.words.lists import word_set

# A clause that is nothing but a greeting, a cry or a call: what follows is the one who is meant.
_GREETING = re.compile(
    r"(?:(?:oh|o|ah|and|but|well|so|yes|no|now),? )*"
    r"(?:hello|hullo|hi|hey|hallo|good (?:morning|evening|afternoon|day|night)|good-?bye|bye|bye-bye|farewell"
    r"|goodnight|thank you(?: so much| very much)?|(?:many )?thanks|please|sorry|i(?:['’]m| am) (?:so |very )?sorry|well done|come on"
    r"|come here|come along|come back|wake up|hurry up|hurry|get up|look out|watch out|be careful|careful|happy birthday"
    r"|welcome(?: home| back)?|congratulations|of course(?: not)?|oh|oh no|ah|aha|no|yes|yeah|okay|ok|all right|right|never mind|good luck"
    r"|help me|excuse me|hush|quick|quickly|look|listen|wait|come|run|sh+|ssh+|surely|certainly|indeed|alas|bravo|hurrah|hurray"
    r"|nonsense|poor me|dear me|why not|not (?:now|yet|me|at all)|forgive me|pardon me|see you(?: soon| later| tomorrow)?|what now"
    r"|do come|sleep well|go on|go away|sit down|stand up|and you|what['’]s (?:up|wrong|that|this|the matter)|there you are"
    r"|really|right again|quite right|very good|very well|well (?:sung|tried|played)|aye|true|great heavens|by the way|here we are|so there"
    r"|how do you do|how are you|if you please|sure|hulloa|good-(?:night|day|morning|evening)|goodness|my goodness|goodness me|bless you|same to you|over here|up here|not so fast)",
    re.IGNORECASE,
)
# What opens a call, if the words after the name can't be about its bearer: "Now Ben you know…"
_OPENING = re.compile(
    r"(?:and|but|so|now|well|then|here|there|come now|now then|why)", re.IGNORECASE
)
_NAMING = re.compile(
    r"\b(?:call|christen|label|term)(?:s|ed|d|ing)?(?: \w+)?$|\bnam(?:e|es|ed|ing) (?:me|him|her|it|them|us|you)$|\bnamed$|\blong live$"
)
_GIVES = (
    r"\b(?:give|gave|given|giving|bring|brought|show|showed|find|found|make|made|sell|sold|send|sent|wed|marry"
    r"|buy|bought|lend|hand|pass|fetch|owe)s?"
)
_GIVING = re.compile(rf"{_GIVES} \w+$|\bi promise$")
_GIVING_SOMEONE = re.compile(rf"{_GIVES} (?:\w+ )+")
# "Are you Ben?", "It is now Ben…": the name says who somebody is.
_WHO_IS = re.compile(
    r"(?:^|\b(?:and|but|so|then|oh|why) )(?:are|were|is|was|am) (?:you|it|this|that|there|here|i|he|she)$"
    r"|\b(?:is|was|it['’]s|here['’]s|that['’]s|there['’]s|where['’]s|who['’]s|are|were) (?:now|then|here|there|only|just|really|too|called|not|still|also)$"
    r"|\b(?:that|it|this|there|who|he|she)['’]s$"
)
_QUESTION = re.compile(
    r"^(?:(?:and|but|so|then|oh|well|now|please|why) )?(what|which|who|whom|whose|where|why|how|when)\b(.*)$"
)
_SUBJECT = re.compile(r"\b(?:you|we|i|he|she|it|they|your|my|our|the|this|that|these|those)\b")
_PRONOUNS = word_set(
    """
    me us you it them him mine yours ours hers theirs myself yourself yourselves himself herself
    everything nothing something anything this that
    """
)
_DEED = word_set("do doing did say said saying like liked know see hear heard")
_ADVERBS = word_set(
    """
    here there please again today tonight tomorrow yesterday too now then away home together soon
    yet either instead everywhere anywhere somewhere anymore inside outside downstairs upstairs
    well fast hard long later once ever alone already quickly slowly quietly carefully much indeed
    sometimes forever nearby overhead abroad ahead anyway though first enough late early straight
    perhaps maybe course afterwards meanwhile somehow forward indoors outdoors lot right else bit
    """
)
_PARTICLES = word_set("up down out off back in on over along round around through by away aside")
_MOVES = word_set(
    """
    come comes coming came go goes going went gone get getting sit sitting stand standing climb hop
    jump lie lying hurry run running move fly flying walk walking grow growing look looking dive hold
    roll row pitch bustle cuddle calm slow speed lean line trot tuck duck sneak creep crawl join shove
    hang carry shut settle step swim crawl march turn bend cheer watch drop keep go
    """
)
# Verbs that need no object, in the forms that end a clause.
_WITHOUT_OBJECT = word_set(
    """
    go going gone come coming wait waiting listen listening look looking run running sleep sleeping
    stand standing sit sitting cry crying laugh laughing dance dancing talk talking
    live lives living stay staying hurry smile smiling shout shouting happen happened happening
    matter arrive begin work working die dying fall fell falling fly flying swim rest walk walking
    sneeze cough worry worrying fight fighting shiver shivering dream dreaming joke joking lie lying
    fret fuss bother hesitate drift tremble trembling grow growing disappear weep weeping swimming starving freezing raining snowing mean been wake
    snore snoring done finished giggle giggling jump jumping agree exist rise sink hide hiding
    """
)
_LINKS = word_set(
    """
    am are is was were be been being 'm 're 's ’m ’re ’s feel feels felt look looks looked get got
    getting become seem seems sound sounds smell smells so very too quite
    """
)
_DETERMINERS = word_set(
    """
    a an the my your his her our their its this that these those some any no every each both
    another such what which one two three four five six seven eight nine ten many several
    """
)
# The name after these says which: your friend Ben, the river Limpet, the word Mum.
_PERSONS = word_set(
    """
    friend brother sister cousin uncle aunt son daughter mother father husband wife king queen
    prince princess boy girl man woman child baby teacher doctor nurse captain farmer dog cat puppy
    kitten pony horse bear rabbit bird fish teddy doll dragon giant fairy witch wizard monster mouse
    lion tiger monkey elephant neighbour servant master lady lord lad lass twin hero hen goat sheep
    cow donkey pig saint sir mr mrs miss
    """
)
_NAMING_NOUNS = word_set("word name")
_NAMED_NOUNS = _PERSONS | word_set(
    """
    letter song book story poem ship boat river lake mountain planet island street city
    town village country land month day number part role page team colour old young little big good
    great clever poor dear brave
    """
)
# Nothing that bears a name of its own.
_THING_WORDS = """
time times way thing matter food dinner breakfast lunch supper tea bread cake water milk hand head hair eye
nose ear mouth face foot leg arm tail heart back mind room bed school door window tree help work money
idea plan question answer trouble problem wrong world night morning afternoon evening moment minute hour
week year sun rain snow wind fire sky sea garden ground floor wall table chair hat coat shoe bag box key
bucket basket ball game party present birthday secret turn fault lesson homework promise truth lie joke
pleasure luck chance advice permission surprise noise sound voice power magic place home bath hurry
mistake mess lunchbox lantern umbrella blanket pillow towel cup plate bowl spoon knife soup porridge egg
fun nonsense love care attention breath life wish dream sleep rest hunger courage strength
"""
_THINGS = word_set(_THING_WORDS)
# No girls, oh dear, all right children, you boys.
_DESCRIBES = re.compile(r"\b(?:no|oh|o|right|you)$")
_JOINS_ON = ("-", "‑", "'", "‘", "’", '"', "“")
_IN = word_set("in on by through along around round")
_ENTERS = word_set("come coming go going get getting climb climbing hop jump join move moving")
# "What are you looking at (Ben)?", where "What did you say to (Ben)?" wants its name.
_OPEN_PREPOSITION = re.compile(
    r"\b(?:(?:look|star|laugh|point|shout|peer|smil)\w* at|(?:look|wait|cry|ask)\w* for|(?:talk|think|cry|laugh|worry)\w* (?:about|of)"
    r"|(?:come|came|coming) from)$"
)
_YOU_ARE = re.compile(
    r"\b(?:you|i|we)(?:['’](?:re|m)| (?:are|am|were|look|feel)) (?:\w+ ){0,2}\w+$"
)
_SOME = word_set("a an some any no more much of")
_OWN = word_set("my your our a an this that his her")
_POLITE = word_set("sir madam ma'am ma’am")
_EPITHETS = word_set(
    "old little good great big young poor dear brave clever kind silly naughty wise sweet lucky mean bad"
)
_DEGREES = word_set("so very too really quite")
# "That's what we'll do": the object came first.
_WHAT_WE_DO = re.compile(r"\b(?:what|all|everything) (?:you|we|i|he|she|they|it)\S*(?: \w+)* \w+$")
# "I know where it is", "tell me who you are": the question inside has all it needs.
_WHERE_IT_IS = re.compile(
    r"\b(?:where|what|who|how) (?:it|he|she|they|you|we|i)(?: (?:is|are|was|were|am|do|did|can)|['’](?:s|re))$"
)
_DONT_KNOW = re.compile(r"\bi (?:don['’]t|do not) know$")
_TAG = re.compile(
    r"(?:(?:do|does|did|can|could|will|would|shall|should|have|has|must|may|might)(?:n['’]t)?|won['’]t|can['’]t|shan['’]t|isn['’]t|aren['’]t"
    r"|wasn['’]t|weren['’]t) (?:you|we|i|it|he|she|they)"
)
_SPEAKER = word_set("i you we my your our let it there me us 's i'm i’m don't let's don’t let’s")
_THINKS = re.compile(
    r"\b(?:i|we|do you|don['’]t you) (?:do |don['’]t |really )*(?:think|hope|believe|suppose|fear|wish|feel|reckon|guess|know)$|\bdo you (?:hear|see)$"
)


def is_greeting(clause: str, kind: Kind) -> bool:
    """Whether the words are only a greeting, an exclamation or a call."""
    if kind is Kind.HEARERS and _DESCRIBES.search(clause.lower()):
        return False
    return _GREETING.fullmatch(clause) is not None or _TAG.fullmatch(clause.lower()) is not None


def is_opening(clause: str) -> bool:
    """Whether the words only open a call, which must then go on: *Now, Ben, you know that.*"""
    return _OPENING.fullmatch(clause) is not None


def begins(clause: str) -> bool:
    """Whether the clause is a mere "well" or "now", after which a name and a comma are an address."""
    return clause.lower() in ("well", "now", "oh well", "well now", "now now")


def thinks(clause: str) -> bool:
    """Whether the clause is "I think", "I hope" and the like, which "that" may follow."""
    return _THINKS.search(clause.lower()) is not None


def is_complete(tokens: Sequence[Token], kind: Kind) -> bool:
    """Whether the clause wants nothing more, so that what follows is no object or complement of it."""
    words = [token.text.lower() for token in tokens]
    if len(words) < 2 or _describes(words) or not any(t.pos in ("VERB", "AUX") for t in tokens):
        return False
    clause = _joined(tokens)
    if _WHO_IS.search(clause) or _NAMING.search(clause):
        return False
    if asked := _QUESTION.match(clause):
        return _answers(asked[1], asked[2], tokens, kind)
    small = _ends_in_small_word(words, clause, kind)
    return _ends_in_full_word(tokens, clause, kind) if small is None else small


def _ends_in_full_word(tokens: Sequence[Token], clause: str, kind: Kind) -> bool:
    """Whether a verb without object, an adjective or a noun ends the clause well."""
    words = [token.text.lower() for token in tokens]
    if words[-1] in _WITHOUT_OBJECT or (tokens[-1].tag == "RB" and words[-1].endswith("ly")):
        return words[-1] not in ("mean", "been") and tokens[-2].pos != "ADJ"  # good-looking
    if _WHERE_IT_IS.search(clause):
        return True
    if kind is not Kind.NAME and _DONT_KNOW.search(clause):
        return True
    if _WHAT_WE_DO.search(clause) and tokens[-1].pos in ("VERB", "AUX"):
        return True
    addressed = not _SPEAKER.isdisjoint(words) or kind is not Kind.NAME
    return _ends_in_adjective(tokens, kind) or (addressed and _ends_in_noun(tokens, kind))


def _describes(words: Sequence[str]) -> bool:
    """No girls, such twins, fine-looking boys, "best friends", this here lady, the LATE Captain."""
    return (
        words[-1] in ("no", "such", "a", "an", "the")
        or words[-2] in _JOINS_ON
        or words[-2:] in (["this", "here"], ["that", "there"])
    )


def _ends_in_small_word(words: Sequence[str], clause: str, kind: Kind) -> bool | None:
    """Whether a pronoun, adverb or particle ends the clause well; None where none of them ends it."""
    last, before = words[-1], words[-2]
    if last in _PRONOUNS:
        girls = kind is Kind.HEARERS and last in ("you", "us")  # you girls
        this = last in ("this", "that") and before not in _DEED
        return not (girls or this or _GIVING.search(clause))
    if last in _ADVERBS:
        return True
    if last in _IN:
        return before in _ENTERS or words[-3:-1] in (["let", "me"], ["let", "us"])
    if last in _PARTICLES:
        return before in _MOVES or before in _PRONOUNS
    if last == "so":
        return before in ("think", "hope", "say", "said", "suppose", "guess", "told")
    return None


def _answers(asked: str, rest: str, tokens: Sequence[Token], kind: Kind) -> bool:
    """Whether a question is complete: where *what* or *who* is the object, any verb may end it."""
    words = [token.text.lower() for token in tokens]
    if not _SUBJECT.search(rest):
        return words[-1] in ("happened", "wrong", "now", "matter", "next", "else")
    small = _ends_in_small_word(words, "", kind)
    if small is not None:
        return small
    if words[-1] in _WITHOUT_OBJECT or (words[-1] == "name" and asked == "what"):
        return True
    if words[-1] in ("he", "she", "they", "we") and words[-2] in ("is", "are", "was", "were"):
        return True
    if asked in ("what", "which", "whom", "who") and (
        tokens[-1].tag in ("VB", "VBG", "VBN") or _OPEN_PREPOSITION.search(rest)
    ):
        return True
    return _ends_in_adjective(tokens, kind) or _ends_in_noun(tokens, kind)


def _ends_in_adjective(tokens: Sequence[Token], kind: Kind) -> bool:
    """You are so kind; not: you are a kind (…), it is old (Rat), be good (children)."""
    if tokens[-1].pos != "ADJ" or tokens[-1].text.isupper():
        return False
    if kind is Kind.HEARERS and not _YOU_ARE.search(_joined(tokens)):
        return False  # "be good children", "they are real children"
    near = [token.text.lower() for token in tokens[-4:-1]]
    if tokens[-1].text.lower() in _EPITHETS and near[-1] not in _DEGREES:
        return False
    return not _LINKS.isdisjoint(near) and _DETERMINERS.isdisjoint(near[-2:])


def _ends_in_noun(tokens: Sequence[Token], kind: Kind) -> bool:
    last, before = tokens[-1], tokens[-2].text.lower()
    word, lemma = last.text.lower(), last.lemma.lower()
    if last.pos != "NOUN" or not word.isalpha() or last.text[0].isupper():
        return False
    if kind is Kind.MINE:
        return _GIVING_SOMEONE.search(_joined(tokens)) is None
    # The name of one can't say who many are: "I like your shoes Ben".
    if last.tag == "NNS":
        return True
    named = _NAMING_NOUNS | (_NAMED_NOUNS if kind is Kind.NAME else _PERSONS)
    if word in named or lemma in named:
        return False
    if kind is Kind.HEARERS:
        return before in _OWN
    # After "a", "some" and the like a noun bears no name: "I'd like some paste Ben".
    return kind is Kind.KIN or word in _THINGS or lemma in _THINGS or before in _SOME


def is_polite(who: str) -> bool:
    """Whether the words are Sir or Madam, which stand for nobody who is spoken of."""
    return who.lower() in _POLITE


def may_precede_sir(tokens: Sequence[Token]) -> bool:
    """Whether no article, adjective or preposition claims the "sir" that follows."""
    last = tokens[-1]
    own = _DETERMINERS - {"this", "that", "one"}
    return last.text.lower() not in own and last.pos not in ("ADJ", "ADP", "CCONJ", "DET")


def _joined(tokens: Sequence[Token]) -> str:
    text = ""
    for token, before in zip(tokens, (None, *tokens), strict=False):
        gap = " " if before is not None and token.start > before.end else ""
        text += gap + token.text.lower()
    return text
