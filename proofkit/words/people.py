"""Nouns for people and animals, by the pronoun that they ask for. Gathered by hand from everyday English."""

from __future__ import annotations

from proofkit.words.lists import word_set
from proofkit.words.titles import pronoun_of_title

_HE = word_set(
    """
    man boy gentleman fellow lad chap guy son husband widower bridegroom groom nephew grandson
    stepfather godfather stepson king prince duke baron emperor lord knight wizard sorcerer monk
    bull cock cockerel rooster ram stallion stag drake gander tomcat actor waiter postman
    policeman fireman milkman fisherman huntsman woodsman snowman salesman workman nobleman
    herdsman sportsman grandad stepbrother
    """
)
_SHE = word_set(
    """
    woman girl lady lass wife widow bride niece daughter granddaughter stepmother godmother
    stepdaughter stepsister queen princess duchess baroness empress witch sorceress nun mermaid
    maid milkmaid hen cow ewe mare vixen actress waitress lioness tigress goddess
    heroine hostess governess housewife nanny midwife
    """
)
# A child, a friend, a fox: "he" or "she", as the story has it.
_EITHER = word_set(
    """
    child kid baby toddler person friend stranger neighbour neighbor teacher pupil student class
    doctor nurse farmer baker miller butcher tailor cook chef driver hunter shepherd servant
    guard thief robber burglar pirate sailor soldier captain officer clown giant dwarf elf fairy
    goblin troll ogre monster dragon ghost robot puppet doll teddy owner master boss chief leader
    judge mayor artist singer dancer player twin cousin parent grandparent sibling somebody
    someone visitor guest passenger
    customer shopkeeper keeper ranger gardener cleaner librarian builder painter writer author
    conductor inspector ruler enemy hero villain fool creature animal beast bird fish insect
    fox wolf bear lion tiger leopard cheetah elephant giraffe zebra hippo hippopotamus rhino
    monkey ape gorilla baboon hare rabbit bunny mouse rat squirrel hedgehog badger mole otter
    beaver deer moose goat sheep lamb kid pig piglet hog boar calf horse pony foal donkey
    mule camel ox buffalo dog puppy pup hound cat kitten kitty chicken chick duck duckling goose
    gosling turkey swan crow raven robin sparrow owl eagle hawk parrot penguin pigeon dove
    stork heron peacock frog toad newt lizard snake tortoise turtle crocodile alligator shark ship boat
    whale dolphin seal octopus crab snail slug worm spider ant bee wasp beetle butterfly
    caterpillar ladybird ladybug moth cricket grasshopper fly mosquito bat dinosaur unicorn
    hyena jackal panda koala kangaroo walrus pet
    """
)
# What can only be its owner's own: he shook his head, she lost her way.
OWN = word_set(
    """
    head eyes eye ears ear nose mouth lips tongue teeth face cheeks hair fur beard chin neck
    shoulders arms hands hand fingers finger thumb legs leg knees feet foot toes heels tail
    wings wing beak paws paw claws whiskers trunk mane horns shell breath mind way temper
    balance best turn own voice heart tummy stomach fist fists fingertips tiptoes back
    """
)


def pronoun_of(noun: str) -> str | None:
    """The pronoun, "he" or "she", that a noun asks for; "" if it may take either; None for things."""
    if noun in _HE:
        return "he"
    if noun in _SHE:
        return "she"
    return pronoun_of_title(noun) or ("" if noun in _EITHER else None)
