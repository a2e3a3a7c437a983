"""Every check, one line each. To delete a check, delete its file and its line."""

from __future__ import annotations

from importlib import import_module

from proofkit.checks.check import Check

_MODULES: tuple[str, ...] = (
    "address.name_in_address",
    "capitals.capital_inside_sentence",
    "capitals.lower_case_i",
    "capitals.name_without_capital",
    "commas.after_yes_or_no",
    "commas.around_however",
    "commas.before_participle",
    "commas.missing_before_name",
    "commas.missing_before_who",
    "commas.missing_in_list",
    "consistency.age_without_hyphens",
    "consistency.broken_off_two_ways",
    "consistency.capital_after_article",
    "consistency.capital_after_colon_two_ways",
    "consistency.character_pronouns",
    "consistency.compound_two_ways",
    "consistency.dash_two_ways",
    "consistency.date_two_ways",
    "consistency.ellipsis_spaced_two_ways",
    "consistency.ellipsis_two_ways",
    "consistency.empty_page",
    "consistency.figure_at_start",
    "consistency.heading_two_ways",
    "consistency.hyphen_after_adverb",
    "consistency.kinship_as_name",
    "consistency.kinship_with_owner",
    "consistency.label_two_ways",
    "consistency.made_up_name_capital",
    "consistency.marks_curly_and_straight",
    "consistency.name_spelt_two_ways",
    "consistency.name_with_article",
    "consistency.name_with_other_title",
    "consistency.nesting_two_ways",
    "consistency.number_two_ways",
    "consistency.number_word_without_hyphen",
    "consistency.okay_two_ways",
    "consistency.ordinal_two_ways",
    "consistency.place_name_capital",
    "consistency.possessive_two_ways",
    "consistency.quotation_marks_two_ways",
    "consistency.role_as_name",
    "consistency.season_capital",
    "consistency.serial_comma_two_ways",
    "consistency.sound_spelt_two_ways",
    "consistency.speaker_two_ways",
    "consistency.stop_and_mark_two_ways",
    "consistency.thousand_two_ways",
    "consistency.time_two_ways",
    "consistency.title_point_two_ways",
    "consistency.title_without_capital",
    "consistency.typeface_two_ways",
    "consistency.word_beside_name",
    "consistency.word_spelt_two_ways",
    "english.mixed_ise_ize",
    "english.other_spelling",
    "english.other_vocabulary",
    "english.past_forms",
    "english.two_accepted_spellings",
    "grammar.agreement",
    "grammar.apostrophe",
    "grammar.article",
    "grammar.child_form",
    "grammar.comma_after_opening",
    "grammar.comma_between_clauses",
    "grammar.comparison",
    "grammar.confused_words",
    "grammar.counted_noun",
    "grammar.double_negative",
    "grammar.extra_word",
    "grammar.lost_word",
    "grammar.missing_article",
    "grammar.missing_the",
    "grammar.missing_word",
    "grammar.number",
    "grammar.participle_for_past",
    "grammar.phrase",
    "grammar.preposition",
    "grammar.pronoun",
    "grammar.small_word",
    "grammar.sound_alike",
    "grammar.tense",
    "grammar.two_verbs",
    "grammar.verb_and_subject",
    "grammar.verb_ending",
    "grammar.verb_form",
    "marks.accent_for_apostrophe",
    "marks.doubled_mark",
    "marks.missing_apostrophe",
    "marks.owner_without_apostrophe",
    "marks.stray_mark",
    "marks.turned_apostrophe",
    "marks.two_apostrophes_for_mark",
    "pages.numbers_out_of_order",
    "reading.book_length",
    "reading.heavy_in_a_row",
    "reading.heavy_spread",
    "reading.long_sentence",
    "repetition.doubled_long_word",
    "repetition.doubled_word",
    "sentences.capital_after_comma",
    "sentences.comma_splice",
    "sentences.missing_stop",
    "sentences.no_capital_at_start",
    "sentences.no_stop_at_end",
    "sentences.question_without_mark",
    "spacing.dash_to_one_side",
    "spacing.missing_space",
    "spacing.space_before_stop",
    "spacing.space_inside_marks",
    "spacing.tab_in_line",
    "spacing.two_spaces",
    "speech.capital_on_reporting_clause",
    "speech.comma_before_new_sentence",
    "speech.missing_opening_mark",
    "speech.no_capital_at_start_of_speech",
    "speech.no_comma_after_speech",
    "speech.no_comma_before_speech",
    "speech.no_stop_before_speech",
    "speech.question_without_mark",
    "speech.speech_without_marks",
    "speech.stop_before_reporting_clause",
    "speech.stop_outside_mark",
    "speech.two_kinds_of_mark",
    "speech.two_speeches_meet",
    "speech.unclosed_quotation",
    "spelling.joined_words",
    "spelling.missing_hyphen",
    "spelling.misspelling",
    "spelling.name_in_lower_case",
    "spelling.split_compound",
    "verse.line_stumbles",
    "verse.refrain_differs",
    "verse.rhyme_fails",
    "words.wrong_word",
)


def all_checks() -> tuple[Check, ...]:
    """All checks, in the order of the list."""
    return tuple(_load(module) for module in _MODULES)


def check_named(name: str) -> Check | None:
    """The check of that name, or None."""
    module = name.replace("/", ".").replace("-", "_")
    return _load(module) if module in _MODULES else None


def check_names() -> tuple[str, ...]:
    """The names of all checks, without loading them."""
    return tuple(_name(module) for module in _MODULES)


def _load(module: str) -> Check:
    code = import_module(f"proofkit.checks.{module}")
    return Check(name=code.NAME, needs=code.NEEDS, find=code.find, handbook=code.__doc__ or "")


def _name(module: str) -> str:
    return module.replace(".", "/").replace("_", "-")
