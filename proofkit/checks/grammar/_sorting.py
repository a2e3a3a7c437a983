"""The grammar engine's rules, sorted: which check of ours speaks for each, how surely, and what is left out.

The engine has some 2,500 rules for letters, essays and web pages. Only what suits a story is let in,
by the engine's own names (``*`` stands for any letters). How often each is wrong was counted on 1.1
million words of published children's stories, which have next to no slips of grammar of their own.

A rule of an admitted category that no row names raises a query outside speech: such rules are many,
each is rare, and all of them together were wrong less than twice in 10,000 words of clean text.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fnmatch import fnmatchcase
from functools import lru_cache

from proofkit.analysis import Match
from proofkit.issue import Tier


@dataclass(frozen=True, slots=True, kw_only=True)
class Sort:
    """What becomes of some rules' matches.

    ``spoken``  the tier inside quotation marks; None where a child, a dialect or a hurry may well
                break the rule on purpose, so that nothing is said
    """

    check: str
    tier: Tier
    confidence: float
    spoken: Tier | None
    rules: str = ""


def _row(check: str, tier: Tier, confidence: float, rules: str, spoken: Tier | None = None) -> Sort:
    return Sort(
        check=f"grammar/{check}", tier=tier, confidence=confidence, spoken=spoken, rules=rules
    )


SORTED: tuple[Sort, ...] = (
    _row("article", Tier.ERROR, 0.93, "EN_A_VS_AN", Tier.QUERY),
    _row(
        "agreement",
        Tier.ERROR,
        0.75,
        "HE_VERB_AGR PERS_PRONOUN_AGREEMENT NON3PRS_VERB IT_VBZ THERE_WAS_MANY THERE_S_MANY DOES_YOU"
        " AGREEMENT_SENT_START AGREEMENT_SENT_START_2 SUBJECT_VERB_AGREEMENT* PEOPLE_VBZ SHE_LIVE"
        " HE_LIKE HE_NEED BASE_FORM WH_AUX_PRONOUN_AGR AGREEMENT_QUESTION",
    ),
    _row(
        "agreement",
        Tier.QUERY,
        0.5,
        "*_AGREEMENT *_AGREEMENT_* *_AGR NNS_THAT_VBZ CC_NNP_VBP CC_IS_VBZ SOME_NN_VBP WHAT_VBZ THE_ARE"
        " AN_ARE DO_HE_VERB THERE_RE_MANY THERE_IS_A_LOT_OF WAS_THERE_MANY HELP_NP_VBZ THIS_NNS_VB",
    ),
    _row(
        "verb-form",
        Tier.ERROR,
        0.78,
        "HAVE_PART_AGREEMENT BEEN_PART_AGREEMENT BE_PART_AGREEMENT_2 TO_NON_BASE HAS_TO_APPROVED_BY"
        " MD_BASEFORM DID_FOUND_AMBIGUOUS_2 DID_BASEFORM DID_PAST DIDN_T_SAW DIDN_T_SPOKE"
        " AUXILIARY_DO_WITH_INCORRECT_VERB_FORM DOES_NP_VBZ SUPPOSE_TO TO_AFTER_MODAL_VERBS"
        " LET_IT_INFINITIVE PRP_PAST_PART PRP_HAVE_VB DO_VBZ HASNT_IRREGULAR_VERB GOING_TO_VBD"
        " COULDVE_IRREGULAR_VERB WOULD_NEVER_VBN TO_RB_TO_VB BENDED BIDDED CASTED CHOOSED GETTED"
        " SPLITTED SPOKED STRIKED PAYED WROTE WENT",
    ),
    _row(
        "verb-form",
        Tier.ERROR,
        0.85,
        "MODAL_OF COULD_OF HAD_OF USE_TO_VERB BE_USE_TO_DO",
        Tier.QUERY,
    ),
    _row(
        "confused-words",
        Tier.ERROR,
        0.8,
        "TO_TOO TO_TWO TOO_TWO HAD_TWO HAD_TOO THEIR_IS THERE_THEIR THEYRE_THEIR THERE_OWN"
        " YOUR_YOU_RE YOURE IT_IS ITS_TO_IT_S COMPARISONS_THEN COMPARISONS_NNS_THEN"
        " LESS_MORE_THEN RATHER_THEN LOOSE_LOSE LOSE_LOOSE PASSED_PAST HERE_HEAR HEAR_HERE HER_HERE"
        " NO_KNOW PRP_NEW WHO_S_NN_VB WHOS WERE_WHERE THEY_WHERE BREATHE_BREATH FROM_FORM TYPO_FORM_FROM"
        " EVERY_EVER DOSE_DOES PEACE_PIECE EXITING_EXCITING EXITED_EXCITED SAID_SAD VARY_VERY ROAD_RODE"
        " FOR_FRO QUIET_QUITE THROUGH_AWAY TROUGH_THROUGH WOOD_WOULD RITE_RIGHT RITE_WRITE WON_OWN"
        " DESERT_DESSERT HEART_HEARD TAIL_TALE WEAK_WEEK PLEAS_PLEASE OFT_HE TOT_HE T_HE THE_THEM",
        Tier.ERROR,
    ),
    _row("confused-words", Tier.ERROR, 0.8, "IT_ITS"),  # spoken, many Englishes say "it sweet"
    _row(
        "missing-word",
        Tier.ERROR,
        0.75,
        "LOT_OF ON_OF_THE ALL_OF_SUDDEN COUPLE_OF_TIMES NO_DET_NOUN_OF ONE_OF_THE_MISSING_SUPERLATIVE",
    ),
    _row(
        "missing-word",
        Tier.QUERY,
        0.55,
        "MISSING_TO_BEFORE_A_VERB MISSING_TO_BETWEEN_BE_AND_VB MISSING_ARTICLE MISSING_NOUN AM_I"
        " MISSING_PREPOSITION MISSING_PREP_KNOCK_ON_DOOR THE_CC THE_SENT_END BUNCH_OF IT_TIME_TO"
        " THERE_MISSING_VERB WANT_TO_NN TO_ABLE PRP_ABLE_TO I_BORN FOR_WHILE IN_PAST",
    ),
    _row(
        "extra-word",
        Tier.ERROR,
        0.7,
        "DT_DT TWO_CONNECTED_MODAL_VERBS DOUBLE_AUX HAVE_HAVE IT_IT DT_PRP TOO_ADJECTIVE_TO BE_RB_BE"
        " AN_ANOTHER DESPITE_OF EVEN_ALTHOUGH MENTION_ABOUT DISCUSS_ABOUT",
    ),
    _row(
        "preposition",
        Tier.ERROR,
        0.65,
        "AFRAID_FROM_OF GOOD_IN_AT GOOD_IN_AT_GERUND MARRY_WITH DEPEND_ON IN_WEEKDAY IN_ON_WEEKDAY"
        " INTERESTED_BY BE_INTEREST_IN",
    ),
    _row(
        "pronoun",
        Tier.ERROR,
        0.7,
        "CONFUSION_OF_ME_I BETWEEN_YOU_AND_I OBJECTIVE_CASE SENT_START_THEM BECAUSE_OF_I BETWEEN_PRP",
    ),
    _row("pronoun", Tier.QUERY, 0.5, "I_ME WRONG_PRP_AT_SENT_START PRP_REPITION"),
    _row(
        "number",
        Tier.ERROR,
        0.7,
        "MANY_NN CD_OF_MY_FRIEND EVERY_EACH_SINGULAR EACH_EVERY_NNS THIS_NNS THIS_TOOLS MUCH_COUNTABLE"
        " CONFUSION_OF_MANS_MEN MAN_MEN WOMAN_WOMEN FOOT_FEET WOLFS THOUSANDS_OF_NN LOTS_OF_NN"
        " A_LOT_OF_NN INFORMATIONS AIRCRAFTS EITHER_OF_THE_NN",
    ),
    _row("number", Tier.QUERY, 0.5, "A_NNS A_CD_NNS CD_NN ONE_OF ONE_PLURAL MANY_FEW_UNCOUNTABLE"),
    _row("comparison", Tier.ERROR, 0.8, "MOST_COMPARATIVE MOST_SUPERLATIVE LEAST_COMPARATIVE"),
    _row("comparison", Tier.QUERY, 0.5, "COMP_THAN"),
    _row("double-negative", Tier.QUERY, 0.55, "DOUBLE_NEGATIVE NOT_NEVER HARDLY_NEVER"),
    _row(
        "apostrophe",
        Tier.ERROR,
        0.75,
        "CANT LETS_LET SPURIOUS_APOSTROPHE YOURS_APOSTROPHE THEIR_S HER_S",
        Tier.ERROR,
    ),
    _row("comma-after-opening", Tier.QUERY, 0.5, "MISSING_COMMA_AFTER_INTRODUCTORY_PHRASE"),
    _row("comma-after-opening", Tier.QUERY, 0.5, "SENT_START_CONJUNCTIVE_LINKING_ADVERB_COMMA"),
    _row("comma-between-clauses", Tier.QUERY, 0.5, "COMMA_COMPOUND_SENTENCE*"),
)

# What an admitted category's other rules come to.
ADMITTED: dict[str, Sort] = {
    "GRAMMAR": _row("phrase", Tier.QUERY, 0.45, ""),
    "COLLOCATIONS": _row("preposition", Tier.QUERY, 0.45, ""),
    "CONFUSED_WORDS": _row("confused-words", Tier.QUERY, 0.5, ""),
    "TYPOS": _row("confused-words", Tier.QUERY, 0.45, ""),
    "NONSTANDARD_PHRASES": _row("phrase", Tier.QUERY, 0.5, ""),
}

# Rules left out of the admitted categories, each with its reason.
LEFT_OUT: dict[str, str] = {
    "words run together or pulled apart, compounds and hyphens are ours": (
        "EVERY_BODY MAY_BE SOME_TIMES SOME_WHERE ANY_WHERE EVERY_WHERE NO_WHERE SOME_HOW IT_SELF "
        "THEM_SELVES OUT_SIDE ALONG_SIDE MEAN_WHILE WITH_OUT BE_CAUSE THROUGH_OUT ALLOT_OF "
        "AFTER_NOON BEFORE_HAND FOR_ALONG_TIME IN_ALONG_TIME ALONG_TIME ANY_BODY ALL_WAYS "
        "ALL_MOST "
        "*_COMPOUND *_COMPOUNDS *_HYPHEN NEAR_BY WORTH_WHILE OVER_SEAS OVERNIGHT IN_TO_INTO ONTO_ON_TO"
        " FOR_AWHILE VB_A_WHILE TAKE_AWHILE SHORT_CUT LAUGHING_STOCK NONE_THE_LESS HOW_EVER OUT_COME"
        " IN_TACT PAST_TIME DO_IT_SOMETIME ANINFOR_EVERY_DAY EVERYDAY_EVERY_DAY ALREADY_ALL_READY"
        " ON_THE_LOOK_OUT STARS_AND_STEPS SOMETIME_* SOME_TIME_* CA_BRAND_NEW UNDER_WEAR WORLD_WIDE"
        " EVER_DAY STAND_ALONE_NN *_VERB_COMPOUND TO_BACKOUT CAN_BACKUP"
    ),
    "spelling, accents and apostrophes left off are ours": (
        "EN_DIACRITICS_* LIGATURES EN_CONTRACTION_SPELLING NON_STANDARD_WORD EN_SPLIT_WORDS_HYPHEN"
        " DOSNT DOESENT DIDENT DIDINT HAVNT WASENT WASEN_T ISEN_T COULDVE MUSN_T INCORRECT_CONTRACTIONS"
        " PERS_PRON_CONTRACTION I_LOWERCASE DELETE_SPACE CONTRACTION_CASE LOWERCASE_MONTHS"
    ),
    "dialect, sounds and children's talk are written so on purpose": (
        "MAH DE_THE GIT_GET EM_ME MA_MY ER AIT TIS HEP BU OM MI NE FR TR AU UR GOON ID_WOULD CAUSE_BECAUSE"
        " ANI_T U_RE U_R YA_LL YAL_YALL PRP_MUS SOU_YOU IS_OWN KIN_REGARDS HELLOS YO_TO AL_ALL I_MA HELL"
        " EKE_EEK AH_HA LING HALO_HALLO"
    ),
    "a story may leave out, turn round or repeat": (
        "KIND_OF_A THIS_MISSING_VERB PRP_VBG PRP_THE PRP_JJ PRP_RB_JJ IF_VB IF_VB_PCT QUESTION_WITHOUT_VERB"
        " PHRASE_REPETITION ADVERB_VERB_ADVERB_REPETITION AND_BUT AND_END NN_NOT_JJ I_AM_VB WERE_VBB TOO_EITHER"
        " NO_NOT NOT_LONGER HOW_YOU_DOING BE_NO_VB DO_NO_VB HAVE_NO_VB IN_WHO AS_IS_VBG ALL_NN I_DONT_DT"
        " CONDITIONAL_CLAUSE NEITHER_NOR AFRAID_OF_HEIGHT I_NOT_JJ SUPERLATIVE_THAN THE_SUPERLATIVE"
        " MORE_A_JJ A_BIT HAVE_A_VBN WHAT_HOW CAN_WHAT OTHER_OTHERS LAY_AROUND HAVE_A_BREAKFAST"
        " PLEASE_TO_INFORM PLEASE_TO_MEET_YOU IF_WOULD_HAVE_VBN LET_OBJECT PRP_PORTRAIT DOUBLE_HYPHEN"
    ),
    "wrong too often in stories": (
        "TOO_TO SHORT_SUPERLATIVES SHORT_COMPARATIVES ADMIT_ENJOY_VB ADVISE_VBG MOTOR_COMPOUNDS I_AFRAID A_TRIP_TO ON_IN_THE_MIDDLE AS_ADJ_AS BY_BUY"
        " KNEW_NEW HOE_HOW BARLEY_BARELY RED_READ KNOW_NOW AN_AND BESIDES_BESIDE YOUR_NN YOUR YOUR_YOU"
        " YOUR_YOU_2 IT_IS_2 IT_IS_NO APOSTROPHE_PLURAL_ POSSESSIVE_APOSTROPHE POSSESSIVE_APOSTROPHE_2"
        " CONFUSION_KNOT_NOT CONFUSION_WORSE_WORST I_THIN HE_THE TOO_DETERMINER OUR_OUT SAVE_SAFE"
        " TRUE_TRUTH COMMA_THAN ARRIVE_AT_IN FULL_WITH_OF MANY_NN_U OF_ALL_PLURAL HOW_DO_I_VB STAID"
        " COLLECTIVE_NOUN_* THE_PUNCT A_RB_NN A_INFINITIVE WHAT_DID_VBD PRP_MD_NN DT_RB_IN CAN_I_VBD"
        " THOUGH_THOUGHT WOLD_WOULD OFF_OF I_A A_UNCOUNTABLE MASS_AGREEMENT ADJECTIVE_ADVERB*"
        " ADVERB_OR_HYPHENATED_ADJECTIVE FILL_OF_WITH IT_IS_SURE RETURN_IN_THE LISTEN_TO_MOVIES"
        " DOUBT_FOR_IN GLAD_WITH_ABOUT BE_I_BE_GERUND ORDER_OF_WORDS_WITH_NOT A_MUCH_NN1 SAY_TELL"
        " ALL_MOST_SOME_OF_NOUN PRP_NO_VB PLURAL_THAT_AGREEMENT BE_VBP_IN YOU_THING HART_HEART"
        " ASK_NO_PREPOSITION THE_BEST_WAY NON_ACTION_CONTINUOUS MONTH_OF_XXXX MD_JJ SENTENCE_END_CONTRACT"
        " WHERE_MD_VB THIS_TWO_MEN THAT_S_YOU_RE EVER_NN IN_X_ORDER I_NEVER_HAVE_BEEN"
    ),
}

# Categories that no row above draws from, each with its reason. Kept for the reader of this table.
CATEGORIES_LEFT_OUT: dict[str, str] = {
    "TYPOGRAPHY": "spacing and marks are ours",
    "PUNCTUATION": "quotation marks, stops and address are ours; the rest is house style",
    "CASING": "capitals are ours, and it minds names and the lines of verse",
    "COMPOUNDING": "compounds and hyphens are ours",
    "MISC": "repeated words are ours, and refrains repeat",
    "MULTITOKEN_SPELLING": "names are the author's",
    "PROPER_NOUNS": "names are the author's",
    "REDUNDANCY": "a matter of taste: a story may gather up and drop down",
    "REPETITIONS_STYLE": "repetition is how picture books are made",
    "STYLE": "a matter of taste",
    "AMERICAN_ENGLISH": "the two Englishes are ours",
    "BRE_STYLE_OXFORD_SPELLING": "-ise and -ize are ours",
    "SEMANTICS": "dates and figures of speech that picture books don't have",
}


def sort_of(match: Match) -> Sort | None:
    """The row that speaks for a match, or None if it is left out."""
    return _sort(match.rule.partition("[")[0], match.category)


@lru_cache(maxsize=4096)
def _sort(rule: str, category: str) -> Sort | None:
    exact = next((row for row in SORTED if rule in row.rules.split()), None)
    if exact:
        return exact
    if any(_named(rule, rules) for rules in LEFT_OUT.values()):
        return None
    pattern = next((row for row in SORTED if _named(rule, row.rules)), None)
    return pattern or ADMITTED.get(category)


def _named(rule: str, rules: str) -> bool:
    return any(fnmatchcase(rule, pattern) for pattern in rules.split())


def named_rules() -> Iterator[str]:
    """Every rule, or pattern of rules, that the table names."""
    for row in SORTED:
        yield from row.rules.split()
    for rules in LEFT_OUT.values():
        yield from rules.split()
