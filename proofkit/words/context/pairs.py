"""Words that are written for one another: by sound, by a letter left out, moved or mistaken.

One group a line; every two words of a group make a pair. Left out on purpose: pairs of which both fit
nearly everywhere (she and he, this and his, him and his, in and is, a word and its other tense or
number, then and when, bought and brought), pairs that only the story can tell (tail and tale), and pairs
of which the novels have one word too seldom to learn from (stairs and stares).
"""

from __future__ import annotations

from itertools import permutations

# The slips that writers make most: they may cost more false alarms than others.
_OFTEN = """
to too two
then than
its it's
of off
were where we're
quite quiet
lose loose
your you're
their there they're
past passed
bear bare
lead led
form from
kind king
know now no
know knew new
hear here
want went
threw through
by buy bye
who's whose
"""
_GROUPS = """
for four
where wear
one won
with wish
see sea
would wood
an and
if of
not knot
her here
through though thought
right write
break brake
flour flower
week weak
dear deer
meet meat
piece peace
whole hole
son sun
hair hare
night knight
read red
rode road
sail sale
blue blew
eight ate
wait weight
way weigh
which witch
whether weather
made maid
main mane
pair pear
plain plane
rain reign
so sew
some sum
some same
steal steel
wore war
waist waste
fell feel
form farm
on one
or of
the they
then them
the then
there three
three tree
ever every
very every
our out
our are
hour our
my me
be bee
could cloud
could cold
calm clam
angel angle
breath breathe
close clothes
cloth clothes
chose choose
course coarse
die dye
fair fare
feet feat
find fine
fur fir
great grate
groan grown
heel heal
heard herd
hand had
had hat
has his
that than
that what
live life
leave live
left lift
last least
lost last
mother other
month mouth
nose knows
pain pane
pale pail
paw poor
paws pause
pray prey
peek peak
scene seen
shore sure
soul sole
tide tied
toe tow
throne thrown
vain vein
wail whale
wonder wander
warn worn
well will
won't want
word world
worm warm
walk work
let's lets
board bored
beach beech
berry bury
bow bough
cell sell
sent scent
creek creak
dew due
flew flow
guest guessed
hall haul
horse hoarse
rap wrap
ring wring
roll role
sight site
steak stake
stare stair
use us
wash wish
wide wild
sad said
start stare
stop step
take talk
tried tired
trail trial
no on
own on
upon open
good god
good food
head heard
heart heat
place palace
accept except
advice advise
bread bred
he the
in it
it is
as is
at it
as has
be he
he her
many may
how who
while white
were we
till tell
think thing
things thinks
thank think
with which
what want
slept slipped
sat set
desert dessert
pour poor
hole hold
told hold
old hold
cry dry
but put
been bean
hoped hopped
hoping hopping
later latter
bitter better
bellow below
quit quite quiet
you your
and end
thorough through
tough touch
tough though
flee flea
fairy ferry
hay hey
hi high
sauce source
sleigh slay
wandered wondered
wandering wondering
sweat sweet
ship sheep
shoot shout
bit beat
full fill
pull pool
seat sit
heat hit
eat it
bag bug
boat but
full fell
heard had
his he's
theirs there's
have of
their they
he his
us our
once ones
wait want
which wish
say stay
star start
beer bear
loud load
sow saw
saw was
tall tell
tale tall
found fond
fond find
pile pale
bad bed
back black
bird bride
boar bore
board broad
"""
# Kinds of slip that agreement, tense and number are the better judges of, and what dialect writes on
# purpose: me hearties, me old mum.
_NOT_HERE = frozenset(
    {("was", "were"), ("were", "was"), ("said", "say"), ("say", "said"), ("me", "my")}
)


def confusion_pairs() -> tuple[tuple[str, str], ...]:
    """Every pair once, in alphabetical order."""
    return tuple(sorted({(min(way), max(way)) for way in confusions()}))


def confusions() -> frozenset[tuple[str, str]]:
    """Every slip that is looked for: the word written, and the word that was meant."""
    return _ways(_OFTEN + _GROUPS)


def frequent_confusions() -> frozenset[tuple[str, str]]:
    """Those slips that writers make most."""
    return _ways(_OFTEN)


def _ways(groups: str) -> frozenset[tuple[str, str]]:
    words = [line.split() for line in groups.split("\n") if line]
    return frozenset(way for group in words for way in permutations(set(group), 2)) - _NOT_HERE
