"""The little sentences that bring speech in: *said the fox*, *she whispered*, *a small voice called*.

The verbs were gathered by hand from grammars' lists of reporting verbs and from what animals and
people do in stories for small children. SAYING holds verbs that can do nothing else beside speech;
MANNER holds those that may also stand on their own (*he smiled*).
"""

from __future__ import annotations

import re

from proofkit.words.lists import word_set

SAYING = word_set("""
say says said saying ask asks asked asking answer answers answered answering reply replies replied replying
cry cries cried crying shout shouts shouted shouting call calls called calling whisper whispers whispered
whispering exclaim exclaims exclaimed exclaiming explain explains explained explaining add adds added adding
tell tells told telling mutter mutters muttered muttering murmur murmurs murmured scream screams screamed
screaming yell yells yelled yelling announce announces announced announcing beg begs begged begging
repeat repeats repeated order orders ordered demand demands demanded
suggest suggests suggested agree agrees agreed promise promises promised warn warns warned
wonder wonders wondered wondering think thinks thought thinking protest protests protested
remark remarks remarked declare declares declared inquire inquires inquired enquire enquires enquired
respond responds responded retort retorts retorted insist insists insisted admit admits admitted
complain complains complained command commands commanded plead pleads pleaded mumble mumbles mumbled
stammer stammers stammered gasp gasps gasped observe observed interrupt interrupts interrupted
conclude concluded advise advises advised sang sing sings singing chant chants chanted chanting
boast boasts boasted quoth remind reminds reminded imagine imagined state stated
correct corrected urge urged confess confessed assure assured object objected reason reasoned
ventured persisted pursued resumed squeak squeaks squeaked squeal squealed roar roars roared
growl growls growled howl howled bark barked hiss hissed croak croaks croaked bellow bellowed
moan moaned groan groaned wail wailed sob sobbed snap snapped snarl snarled grumble grumbled
chirp chirped chirrup chirruped tweet tweeted hoot hooted quack quacked bleat bleated moo mooed miaow miaowed
meow meowed purr purred chatter chattered cheer cheered chorus chorused boom boomed thunder thundered
trumpet trumpeted buzz buzzed pipe piped drawl drawled blurt blurted cackle cackled screech screeched
shriek shrieked whimper whimpered whine whined yelp yelped echo echoed sniff sniffed
rasp rasped breathe breathed holler hollered splutter spluttered stutter stuttered coo cooed croon crooned
lisp lisped prompt prompted gush gushed trill trilled crow crowed cluck clucked grunt grunted
""")

MANNER = word_set("""
laugh laughs laughed laughing smile smiles smiled smiling grin grins grinned giggle giggles giggled giggling
chuckle chuckles chuckled sigh sighs sighed sighing nod nods nodded weep wept frown frowned shrug shrugged
wink winked pant panted puff puffed beam beamed yawn yawned snort snorted sneer sneered scold scolded
tease teased joke joked invite invited greet greets greeted welcome welcomed comfort comforted
read reads wrote write writes pray prayed swear swore hear heard hears
bawl bawled snigger sniggered gulp gulped scoff scoffed coax coaxed sung thank thanked taunt taunted praise praised
spoke speak speaks speaking talk talked talking teach taught teaches instruct instructed
""")

# Verbs that bring speech in only where nothing follows that they could take instead (*began to run*).
_WEAK = word_set(
    "continue continues continued begin begins began decide decides decided go goes went return returned"
)
_TAKES = r"(?!\s+(?:to|\w+ing|off|back|away|home|up|down|in|into|out|over|through|along|towards?|by|for|and)\b)"

_WEAK_VERB = "(?:" + "|".join(sorted(_WEAK)) + r")\b" + _TAKES
_VERB = "(?:" + "|".join(sorted(SAYING)) + "|" + _WEAK_VERB + ")"
_EITHER = "(?:" + "|".join(sorted(SAYING | MANNER)) + "|" + _WEAK_VERB + ")"
_PRONOUN = r"(?:he|she|it|they|we|I|you|ha|everyone|everybody|someone|somebody|nobody|both|all|another|others|people)"
_DETERMINER = r"(?:the|a|an|his|her|its|my|our|their|your|this|that|one|some|old|little|poor|dear)"
_BETWEEN = (
    r"(?:\w+ly|had|would|then|also|just|only|soon|always|again|all|both|to (?:him|her|it)self)"
)


def _clause(verb: str) -> re.Pattern[str]:
    return re.compile(
        rf"\s*(?:{verb}\b(?!-)"
        rf"|{_PRONOUN}\s+(?:{_BETWEEN}\s+){{0,2}}{verb}\b"
        rf"|{_DETERMINER}\s+(?:[\w'’-]+\s+){{1,4}}?{verb}\b"
        rf"|(?:[A-Z][\w'’-]+\.?\s+){{1,3}}(?:{_BETWEEN}\s+){{0,2}}{verb}\b)"
    )


_CERTAIN = _clause(_VERB)
_POSSIBLE = _clause(_EITHER)
_WORDS = re.compile(r"[^\W\d_]+")


def reports(after: str, *, loosely: bool = False) -> bool:
    """Whether the words after a speech begin a sentence that says who spoke.

    ``loosely`` also takes verbs of manner (*he smiled*), for rules that must rather keep silent.
    """
    return (_POSSIBLE if loosely else _CERTAIN).match(after) is not None


def has_reporting_verb(words: str, *, loosely: bool = False) -> bool:
    """Whether any of the words can bring speech in."""
    verbs = SAYING | MANNER if loosely else SAYING
    return any(_base(word.lower()) & verbs for word in _WORDS.findall(words))


def _base(word: str) -> frozenset[str]:
    """The word, and for *remarking* also *remark* and *remarke*."""
    stem = word.removesuffix("ing")
    return frozenset((word, stem, stem + "e")) if stem != word else frozenset((word,))
