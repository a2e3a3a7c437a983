"""How far a speech reaches where one of its marks is missing: told from the sense of the words."""

from __future__ import annotations

import re

from proofkit.words.persons import sentence_spans, sounds_spoken
from proofkit.words.reporting import has_reporting_verb, reports

_CLAUSE_BREAK = re.compile(r"[,.!?…][!?.…]*['’”\"]?(?=\s)|[–—](?=\s)")
_BARE = re.compile(
    r"\b(?!(?:[Hh]e|[Ss]he|[Tt]hey|[Ww]e|I|you|who|[A-Z]\w+) )[^\W\d_]+(?P<clause> (?:said|asked|replied|answered|cried|"
    r"shouted|whispered|exclaimed) (?:(?:the|his|her|a|an)\b|[A-Z]))"
)
# The story goes on in the third person after a comma: ..., the bear however sat down.
_TOLD = re.compile(
    r",(?= (?:he|she|they|the \w+)(?: however| then)?,? (?:\w+ed|was|were|had|did|went|ran|came|took|sat)\b)"
)
_NEW_SUBJECT = re.compile(r"\s*(?:He|She|It|They|We|The|A|An|His|Her|Their|My|Our|Then|Everyone)\b")
_BROUGHT_IN = re.compile(r"[,:]\s+(?=[A-Z])")
_INTERRUPTION = re.compile(r"[^.!?,;]*[,;:—–-]\s+(?=[^\W_])")


def reported_length(inner: str) -> int | None:
    """How many characters stand before a clause that says who spoke; None if there is none."""
    for stop in _CLAUSE_BREAK.finditer(inner):
        if reports(inner[stop.end() :]) and not _new_sentence(stop.group(), inner[stop.end() :]):
            return stop.end()
    bare = _BARE.search(inner)
    return bare.start("clause") if bare else None


def spoken_length(inner: str, *, past: bool, to_paragraph_end: bool) -> tuple[int, bool]:
    """How many characters from the opening mark on are speech, and whether that is plain.

    ``past``              whether the story is told in the past
    ``to_paragraph_end``  whether no other mark follows in the paragraph
    """
    reported = reported_length(inner)
    if reported is not None:
        return reported, True
    spans = sentence_spans(inner)
    end = spans[0][1] if spans else len(inner)
    told = _TOLD.search(inner, 0, end)
    if told and not sounds_spoken(inner[told.end() : end], past=past):
        return told.end(), False
    for begins, ends in spans[1:]:
        sentence = inner[begins:ends]
        if not sounds_spoken(sentence, past=past) or _brings_in_speech(sentence):
            return end, False
        end = ends
    return end, to_paragraph_end or len(spans) == 1


def spoken_start(inner: str, *, past: bool) -> tuple[int, bool]:
    """Where in the words before a closing mark the speech begins, and whether that is plain."""
    for brought in _BROUGHT_IN.finditer(inner):
        clause = re.split(r"[.!?]\s", inner[: brought.start()])[-1]
        if has_reporting_verb(clause):
            return brought.end(), True
    if reports(inner) and (interruption := _INTERRUPTION.match(inner)):
        return interruption.end(), True
    spans = sentence_spans(inner)
    if len(spans) < 2:
        return 0, True
    at = spans[-1][0]
    for start, end in reversed(spans[:-1]):
        told = not sounds_spoken(inner[start:end], past=past)
        if told or (start == 0 and reports(inner)):
            return at, False
        at = start
    return at, at == 0


def _new_sentence(stop: str, after: str) -> bool:
    """Whether *He said* after a stop begins a sentence of the story rather than ends one of speech."""
    if stop.startswith("."):
        return after.lstrip()[:1].isupper()
    return stop[0] in "!?…" and _NEW_SUBJECT.match(after) is not None


def _brings_in_speech(sentence: str) -> bool:
    return sentence.rstrip().endswith((",", ":")) and has_reporting_verb(sentence)
