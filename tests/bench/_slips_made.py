"""How an author makes slips, mends them, and makes them again."""

from __future__ import annotations

import random
from collections import Counter
from dataclasses import dataclass
from itertools import pairwise

from tests.bench._author import Leaf, Manuscript, Sentence, Slip, Word

MADE = ("misspelt", "doubled", "no stop", "gap", "comma", "dropped", "heavy", "two ways")


@dataclass
class Fallible:
    """Makes and mends slips in a text; ``spare`` is text of other stories, to take words from."""

    text: Manuscript
    chance: random.Random
    spare: list[Leaf]

    def make(self, kind: str) -> None:
        """Make a slip of a kind somewhere, if there is a place for one."""
        candidates = [s for s in self.text.sentences() if len(s.words) > 1]
        self.chance.shuffle(candidates)
        for sentence in candidates:
            slip = getattr(self, f"_{kind.replace(' ', '_')}")(sentence)
            if slip:
                self.text.slips.append(slip)
                self.apply(slip)
                return

    def apply(self, slip: Slip) -> None:
        """Write a slip into the text."""
        slip.here = True
        words, at = slip.sentence.words, slip.sentence.words.index(slip.words[0])
        if slip.kind in {"misspelt", "no stop", "comma", "two ways"}:
            slip.words[0].text = slip.wrong
            for _sentence, word in slip.others:
                word.text = slip.wrong
        elif slip.kind == "gap":
            slip.words[0].gap = "  "
        elif slip.kind == "doubled":
            words.insert(at + 1, slip.words[1])
        elif slip.kind == "dropped":
            words.remove(slip.words[1])
        else:
            words[at + 1 : at + 1] = slip.words[1:]

    def mend(self, slip: Slip) -> None:
        """Take a slip out of the text; of one in several places only one place, until it is the last."""
        words, at = slip.sentence.words, slip.sentence.words.index(slip.words[0])
        if slip.others:
            _sentence, word = slip.others.pop()
            word.text = slip.right
            return
        slip.here = False
        if slip.kind in {"misspelt", "no stop", "comma", "two ways"}:
            slip.words[0].text = slip.right
        elif slip.kind == "gap":
            slip.words[0].gap = " "
        elif slip.kind == "dropped":
            words.insert(at + 1, slip.words[1])
        else:
            for word in slip.words[1:]:
                words.remove(word)

    def _busy(self) -> set[Word]:
        own = [word for slip in self.text.slips for word in slip.words]
        return {*own, *(word for slip in self.text.slips for _s, word in slip.others)}

    def _free(self, sentence: Sentence, *, least: int = 1, inner: bool = False) -> list[Word]:
        busy = self._busy()
        words = sentence.words[:-1] if inner else sentence.words
        return [word for word in words if word not in busy and len(word.core) >= least]

    def _misspelt(self, sentence: Sentence) -> Slip | None:
        free = [w for w in self._free(sentence, least=4) if w.core.isalpha() and w.core.islower()]
        if not free:
            return None
        word = self.chance.choice(free)
        wrong = word.core[0] + word.core[2] + word.core[1] + word.core[3:]
        if wrong == word.core:
            wrong = word.core + word.core[-1]
        return Slip("misspelt", sentence, [word], word.text, word.text.replace(word.core, wrong))

    def _doubled(self, sentence: Sentence) -> Slip | None:
        free = [w for w in self._free(sentence, inner=True) if w.text == w.core]
        if not free:
            return None
        word = self.chance.choice(free)
        return Slip("doubled", sentence, [word, Word(word.text)])

    def _no_stop(self, sentence: Sentence) -> Slip | None:
        word = sentence.words[-1]
        if word in self._busy() or not word.core or not word.text.endswith("."):
            return None
        return Slip("no stop", sentence, [word], word.text, word.text.rstrip("."))

    def _gap(self, sentence: Sentence) -> Slip | None:
        free = [w for w in self._free(sentence, inner=True) if w.gap == " "]
        return Slip("gap", sentence, [self.chance.choice(free)]) if free else None

    def _comma(self, sentence: Sentence) -> Slip | None:
        free = [w for w in self._free(sentence, inner=True) if w.text == f"{w.core},"]
        if not free:
            return None
        word = self.chance.choice(free)
        return Slip("comma", sentence, [word], word.text, word.core)

    def _dropped(self, sentence: Sentence) -> Slip | None:
        busy, words = self._busy(), sentence.words
        pairs = [
            (one, two)
            for one, two in pairwise(words[:-1])
            if not {one, two} & busy and two.text == two.core and one.gap == " " == two.gap
        ]
        return Slip("dropped", sentence, list(self.chance.choice(pairs))) if pairs else None

    def _heavy(self, sentence: Sentence) -> Slip | None:
        """A sentence too long for its page: one slip a sentence, mended by cutting its second half."""
        heavy = any(s.kind == "heavy" and s.sentence is sentence for s in self.text.slips)
        if heavy or len(sentence.words) < 9 or not (free := self._free(sentence, inner=True)[-1:]):
            return None
        return Slip("heavy", sentence, [free[0], *self._clause()])

    def _clause(self) -> list[Word]:
        words = [w.core for leaf in self.spare for p in leaf.paragraphs for s in p for w in s.words]
        return [Word(word) for word in self.chance.sample([w for w in words if w], 10)]

    def _two_ways(self, sentence: Sentence) -> Slip | None:
        count = Counter(w.text for s in self.text.sentences() for w in self._free(s, least=4))
        done = {slip.right for slip in self.text.slips}
        own = [
            w for w in self._free(sentence, least=4)
            if count[w.text] > 1 and w.text == w.core and w.text not in done
        ]  # fmt: skip
        if not own or not own[0].text.islower():
            return None
        word = own[0]
        same = [
            (s, w) for s in self.text.sentences() for w in self._free(s)
            if w.text == word.text and w is not word
        ]  # fmt: skip
        wrong = f"{word.text[0]}-{word.text[1:]}"
        others = self.chance.sample(same, min(len(same), 2))
        return Slip("two ways", sentence, [word], word.text, wrong, others=others)
