"""No comma beside the name of the one who is spoken to.

What it finds
    "Hello Crow!", "Where are you going Mum?", "I think Pip that we must go." Inside speech only: a
    name, or a word such as Mum, "my child" or "children", after a greeting or after a clause that
    wants nothing more; in the middle, where the sentence goes on after it; at the beginning, before
    "you", "I", "please", a question or a command. A kinship word that stands for a name gets its
    capital in the same stroke.

Why a reader minds
    The comma is the little turn of the head. "Let's eat, Grandma" and "Let's eat Grandma" are two
    stories.

Example
    "Good morning Goose!"

Better
    "Good morning, Goose!"

When to let it stand
    In verse that wants no pause, and where a publisher sets "Oh no" and "Yes sir" as one breath.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from proofkit.analysis import Analysis, Token
from proofkit.book import Book, Span
from proofkit.checks.address._calls import begins, is_greeting, is_opening, is_polite, thinks
from proofkit.checks.address._clauses import is_complete, may_precede_sir
from proofkit.checks.address._spoken_to import Kind, SpokenTo, spoken_to
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.quotations import quotations_of

NAME = "address/name-in-address"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_REFRAIN = 5
_CLAUSE_START = re.compile(r"(?:[.!?,;:—–…\n\"“”]|--)\s*")
_CONTRACTED = r"['’](?:m|ve|ll|d|re)"
_ASKS = (
    r"(?:is|are|am|was|were|can|can['’]t|may|will|won['’]t|shall|do|did|don['’]t|didn['’]t|could|couldn['’]t|would|should|have|has"
    r"|haven['’]t|must)"
)
# After a name at the beginning: whoever is called can't be the subject of what follows.
_GOES_ON = re.compile(
    rf"\s+(?:I|I{_CONTRACTED}|you|you{_CONTRACTED}|we|we{_CONTRACTED}|it['’]s|there['’]s|that['’]s|please|let['’]s|thank you"
    rf"|(?:what|why|how|where|who|when)(?: {_ASKS}|['’]s)|(?:what|how) (?:a|an|big|many|much)"
    rf"|(?:it|there|this|that) (?:is|was)|(?:if|when|as) (?:you|we|I)|not|it|{_ASKS} (?:I|we|you))\b(?!-\w)"
)
_COMMANDS = re.compile(
    r"\s+(?:come|look|wait|stop|listen|help|give|take|run|be|don['’]t|do|bring|hold|hurry|go|tell|show|wake|watch|open|try"
    r"|fetch|lie|sit|stand|get|find|keep|leave|make|say|see|catch|jump|climb|throw|eat|drink|thank|forgive|mind|quick)\b"
    r"(?![^.?!:;,]*\?)"
)
_MY_CHILD = re.compile(
    r"\s+my (?:\w+ )?(?:child|children|son|daughter|friend|love|darling|dear|brother|sister|boy|girl)[,.!?]"
)
# In the middle, where the clause before is complete, the sentence may also go on with a joining word.
_JOINED = re.compile(
    r"\s+(?:that (?!['’])|(?:but|because) (?!not\b|also\b)[a-zI]|(?:and|or|but|because|if|when|before|so|for|while|until|or else)"
    r" (?:I|you|we|it|he|she|they|let|the|then|there|don['’]t|tell|see|help|sit|look|come|go|have|get|my|your|never|what|how|where|fetch|bring|take|give|find|run|someone|something|everyone|this|a|an|his|her)\b)"
)
# A comma after the name ends the address, unless a list goes on: "I love you Nell, Pip and Tock".
_STOPPED = re.compile(
    r"\s*(?:[.!?…—–;:]|--|$|,(?! [A-Z][\w]+(?:,| and\b| or\b)| (?:and|or) (?!I\b)[A-Z]))"
)
_WORD_BEFORE = re.compile(r"[\w'’-]+\s+$")
_WORD_AFTER = re.compile(r"\s+[\w'’]+")
_LET_ME_IN = re.compile(r"\s+(?:me|us)\b|\s*[!,]")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each name spoken to without its comma; a refrain's are one."""
    alike: dict[str, list[tuple[Span, str]]] = defaultdict(list)
    for quotation in quotations_of(book).speech:
        for part in quotation.parts if quotation.whole else ():
            speech = _Speech(part=part, text=book.quote(part), analysis=analysis)
            for start, end, reading in speech.missing():
                span = Span(page=part.page, start=part.start + start, end=part.start + end)
                alike[book.quote(span)].append((span, reading))
    for places in alike.values():
        rows = [places] if len(places) >= _REFRAIN else [[place] for place in places]
        for (first, reading), *others in rows:
            yield _issue(book, first, reading, [span for span, _ in others])


def _issue(book: Book, span: Span, reading: str, others: list[Span]) -> Issue:
    both = reading.count(",") > 1
    # After a mere cry many houses print no comma: "Oh Mum!"
    cry = reading.lower().startswith(("oh,", "o,", "ah,"))
    return issue_at(
        book,
        span,
        check=NAME,
        tier=Tier.QUERY if cry else Tier.ERROR,
        message=f"{'commas on both sides of' if both else 'a comma beside'} the one spoken to",
        confidence=0.55 if cry else 0.85,
        suggestions=[reading],
        related=others,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Speech:
    """Some words between quotation marks, and what is known of them."""

    part: Span
    text: str
    analysis: Analysis

    def missing(self) -> Iterator[tuple[int, int, str]]:
        """Where a comma is missing beside a name, in this text, and how the words there should read."""
        for who in spoken_to(self.text, self.analysis):
            before, after = self.text[: who.start], self.text[who.end :]
            clause = _clause(before)
            if not clause:
                opens = _opens(who, before) and (
                    _goes_on(who, after) or self._is_called_again(who, after)
                )
                if who.known and (opens or _MY_CHILD.match(after)):
                    yield self._with_commas(who, before=False, after=True)
            elif _STOPPED.match(after):
                called = (
                    after.startswith("!") and who.kind is Kind.NAME and is_opening(clause)
                ) or (after.startswith((",", "!", "...", "…")) and begins(clause))
                if called or self._is_said_to(who, clause):
                    yield self._with_commas(who, before=True, after=False)
            elif who.known and self._goes_on_after(who, clause, after):
                yield self._with_commas(who, before=True, after=True)

    def _is_said_to(self, who: SpokenTo, clause: str) -> bool:
        tokens = self._tokens(who, clause)
        if not (who.known or self._is_likely(who, tokens)):
            return False
        if is_greeting(clause, who.kind) or is_complete(tokens, who.kind):
            return True
        return is_polite(who.words) and bool(tokens) and may_precede_sir(tokens)

    def _goes_on_after(self, who: SpokenTo, clause: str, after: str) -> bool:
        if thinks(clause):
            return re.match(r"\s+(?:that|we|I|you|it|they|what|how|why|where)\b", after) is not None
        if is_greeting(clause, who.kind) and not (" " in clause and _JOINED.match(after)):
            return (
                _goes_on(who, after)
                or re.match(
                    r"\s+(?:he|she|they|but|not|at|till|until|for me|a (?:moment|minute))\b", after
                )
                is not None
            )
        if is_opening(clause):
            return _goes_on(who, after)
        if _GOES_ON.match(after):
            return self._is_said_to(who, clause)
        joined = _JOINED.match(after)
        if joined is None or (
            who.kind is Kind.HEARERS and joined.group().strip().startswith("that")
        ):
            return False
        tokens = self._tokens(who, clause)
        # "The way Ben and I do it": a noun may take both as what follows it.
        shared = "and" in joined.group() and tokens and tokens[-1].pos == "NOUN"
        return not shared and self._is_said_to(who, clause)

    def _is_likely(self, who: SpokenTo, tokens: Sequence[Token]) -> bool:
        """Whether a capital that the book has nowhere else may be a name here: no adjective before it."""
        end = self.part.start + who.end
        own = self.analysis.page(self.part.page).tokens
        is_noun = any(t.end == end and t.tag in ("NNP", "NN") for t in own)
        return is_noun and not (tokens and tokens[-1].pos == "ADJ")

    def _is_called_again(self, who: SpokenTo, after: str) -> bool:
        """Nell Nell, where are you? Not Tik Tik, who is called so all through the book."""
        if not re.match(rf"\s+{re.escape(who.words)}[,!?]", after):
            return False
        use = self.analysis.vocabulary.use(who.words)
        spans = use.spans if use else ()
        ends = {(span.page, span.end + 1) for span in spans}
        starts = {(span.page, span.start - 1) for span in spans}
        return any(
            (span.page, span.start) not in ends and (span.page, span.end) not in starts
            for span in spans
        )

    def _tokens(self, who: SpokenTo, clause: str) -> tuple[Token, ...]:
        """The tokens of the clause, which ends before the one spoken to."""
        end = self.part.start + who.start
        start = self.part.start + self.text[: who.start].rfind(clause)
        page = self.analysis.page(self.part.page)
        return tuple(t for t in page.tokens if start <= t.start and t.end <= end)

    def _with_commas(self, who: SpokenTo, *, before: bool, after: bool) -> tuple[int, int, str]:
        start, end, reading = who.start, who.end, who.reading
        if before and (word := _WORD_BEFORE.search(self.text[:start])):
            start, reading = word.start(), f"{word.group().rstrip()}, {reading}"
        if after and (word := _WORD_AFTER.match(self.text[end:])):
            end, reading = end + word.end(), f"{reading}, {word.group().strip()}"
        if not self.text[:start].strip() and start < 1:
            reading = reading[0].upper() + reading[1:]  # *hello Crow* begins the speech
        return start, end, reading


def _clause(before: str) -> str:
    """The words since the last mark, or since the speech began."""
    return _CLAUSE_START.split(before)[-1].strip()


def _opens(who: SpokenTo, before: str) -> bool:
    """Whether a sentence of the speech begins with the name: only then can it be called out first."""
    if who.kind is Kind.HEARERS and who.words[0].islower():
        return False
    return not before.strip() or before.rstrip()[-1:] in tuple(".!?…:")


def _goes_on(who: SpokenTo, after: str) -> bool:
    if _GOES_ON.match(after) or _MY_CHILD.match(after):
        return True
    command = _COMMANDS.match(after)
    # "My friends help me" may tell as well as ask: only a call is sure.
    many = who.words.endswith(("s", "children", "people"))
    return command is not None and (not many or "!" in after.partition(".")[0])
