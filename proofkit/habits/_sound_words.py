"""Words that imitate a sound: which they are, and what makes two of them one sound."""

from __future__ import annotations

import re
from functools import lru_cache

from proofkit.words.lists import word_set

# Sounds as stories spell them, in one spelling each; others that come to the same key are the same sound.
SOUNDS = word_set(
    """
    achoo ahem aargh argh arf atishoo atchoo baa bam bang bash beep bing bleep blip bloop boing boink bonk
    boom bop brr brrr bump burp buzz caw cheep chirp chirrup chomp choo chuff clack clang clank clap
    clatter click clickety clink clip clippety clomp clop cluck clunk cockadoodledoo coo crack crackle crash
    creak crick croak crunch cuckoo ding dong drip drop eek eep eww fizz flap flip flop flump fwoosh
    glop glub glug gnash grr grrr gulp guffaw haha hee heehee hiss hic hmm honk hoo hoot howl huff hush
    kaboom kerplunk kersplash kerplop kerchunk kapow kerbang kerthump klonk knock mmm moo munch neigh nom oink oof ouch oops
    ow patter peep phew phut ping pitter plink plip plod plonk plop plunk poof pop pow psst puff purr
    quack rap rat tat rattle ribbit ring rip roar rumble rustle scrunch shh shoo sizzle slam slap slop
    slosh slurp smack snap snip snore snort splash splat splish splodge splosh splot squeak squeal
    squelch squish squawk swish swoosh tap tchoo thud thump thwack thwump tick tinkle toot tock tring
    trip trap tweet twang twit twoo ugh vroom wah whack wham whee wheee whirr whizz whoa whoop whoosh whump
    wheeze woof woosh wow yap yawn yikes yip yippee yow yowl yum zap zing zip zoom zzz tu whit wah waah gloop bloop boohoo sh ssh tra la tralala
    fiddle dee diddle rumpapum pum rum dum dub drum parp pssst pfft pff phooey hurrumph harrumph hoho
    """
)
# Ordinary exclamations: "Oh" and "Ooh", "Ah" and "Aah" are two different ones, and grow as they are felt.
_FELT = word_set("oh ooh ah aah ha eh uh er um no yes so hey hi ho hello yay yeah")
# Sounds of several words, however these are joined.
LONG_SOUNDS = re.compile(
    r"(?<![\w'’-])(?:cock[- ]?a[- ]?doodle[- ]?d(?:oo+|o)|rat[- ]?a[- ]?tat(?:[- ]?tat)?|tra[- ]?la[- ]?la|"
    r"fiddle[- ]?(?:de|dee|di)[- ]?dee|rub[- ]?a[- ]?dub(?:[- ]?dub)?|twit[- ]?twoo+)(?![\w-])",
    re.IGNORECASE,
)


@lru_cache(maxsize=8192)
def sound_key(word: str) -> str:
    """What one sound comes to however it is spelt: letters once each, wh as w, no marks.

    "Whoosh", "woosh" and "whooosh" give "wosh"; "Aaargh" and "argh" give "argh". After ker- or ka- each
    writer has their own vowel (kerplunk, kerplonk; kaboom, kerboom), so that it doesn't count.
    """
    letters = re.sub(r"[^a-z]", "", word.lower())
    letters = letters.replace("wh", "w").replace("ck", "k").replace("tch", "ch")
    letters = re.sub(r"(.)\1+", r"\1", letters)
    crash = re.fullmatch(r"(?:ker|ka)([^aeiou]+)[aeiou]+([^aeiou]+)", letters)
    return f"ker-{crash[1]}-{crash[2]}" if crash else letters


@lru_cache(maxsize=1)
def sound_keys() -> frozenset[str]:
    """The keys of all known sounds."""
    return frozenset(sound_key(sound) for sound in SOUNDS)


def is_felt(word: str) -> bool:
    """Whether it is an exclamation that a voice may draw out at will."""
    return sound_key(word) in _felt_keys()


def is_echo(parts: tuple[str, ...]) -> bool:
    """Choo-choo, tick-tock, hee-hee: a rhythm or a rhyme, not a compound of two words."""
    if len(parts) < 2 or any(not part for part in parts):
        return False
    first, second = parts[0], parts[1]
    consonants = [re.sub(r"[aeiouy]", "", word) for word in (first, second)]
    rhythm = bool(consonants[0]) and consonants[0] == consonants[1] and len(first) > 2
    return first == second or rhythm or (first[1:] == second[1:] and len(first) > 2)


def rhymes(parts: tuple[str, ...]) -> bool:
    """Whether two words differ in their first sound only: night light, cook book, hocus pocus."""
    return len(parts) == 2 and parts[0] != parts[1] and parts[0][1:] == parts[1][1:]


@lru_cache(maxsize=1)
def _felt_keys() -> frozenset[str]:
    return frozenset(sound_key(each) for each in _FELT)
