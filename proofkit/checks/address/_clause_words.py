"""The words that end a clause well, and those that leave it open, gathered by hand."""

from __future__ import annotations

from proofkit.words.lists import word_set

PRONOUNS = word_set(
    """
    me us you it them him mine yours ours hers theirs myself yourself yourselves himself herself
    everything nothing something anything this that
    """
)
DEED = word_set("do doing did say said saying like liked know see hear heard")
ADVERBS = word_set(
    """
    here there please again today tonight tomorrow yesterday too now then away home together soon
    yet either instead everywhere anywhere somewhere anymore inside outside downstairs upstairs
    well fast hard long later once ever alone already quickly slowly quietly carefully much indeed
    sometimes forever nearby overhead abroad ahead anyway though first enough late early straight
    perhaps maybe course afterwards meanwhile somehow forward indoors outdoors lot right else bit
    """
)
PARTICLES = word_set("up down out off back in on over along round around through by away aside")
MOVES = word_set(
    """
    come comes coming came go goes going went gone get getting sit sitting stand standing climb hop
    jump lie lying hurry run running move fly flying walk walking grow growing look looking dive hold
    roll row pitch bustle cuddle calm slow speed lean line trot tuck duck sneak creep crawl join shove
    hang carry shut settle step swim crawl march turn bend cheer watch drop keep go
    """
)
# Verbs that need no object, in the forms that end a clause.
WITHOUT_OBJECT = word_set(
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
LINKS = word_set(
    """
    am are is was were be been being 'm 're 's ’m ’re ’s feel feels felt look looks looked get got
    getting become seem seems sound sounds smell smells so very too quite
    """
)
DETERMINERS = word_set(
    """
    a an the my your his her our their its this that these those some any no every each both
    another such what which one two three four five six seven eight nine ten many several
    """
)
# The name after these says which: your friend Ben, the river Limpet, the word Mum.
PERSONS = word_set(
    """
    friend brother sister cousin uncle aunt son daughter mother father husband wife king queen
    prince princess boy girl man woman child baby teacher doctor nurse captain farmer dog cat puppy
    kitten pony horse bear rabbit bird fish teddy doll dragon giant fairy witch wizard monster mouse
    lion tiger monkey elephant neighbour servant master lady lord lad lass twin hero hen goat sheep
    cow donkey pig saint sir mr mrs miss
    """
)
NAMING_NOUNS = word_set("word name")
NAMED_NOUNS = PERSONS | word_set(
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
THINGS = word_set(_THING_WORDS)
IN = word_set("in on by through along around round")
ENTERS = word_set("come coming go going get getting climb climbing hop jump join move moving")
SOME = word_set("a an some any no more much of")
OWN = word_set("my your our a an this that his her")
EPITHETS = word_set(
    "old little good great big young poor dear brave clever kind silly naughty wise sweet lucky mean bad"
)
DEGREES = word_set("so very too really quite")
SPEAKER = word_set("i you we my your our let it there me us 's i'm i’m don't let's don’t let’s")
