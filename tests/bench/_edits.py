"""What an author does to a manuscript between two drafts: slips made and mended, text changed and moved."""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from tests.bench._author import Leaf, Manuscript, Sentence, Slip, Word

NEUTRAL = "quietly slowly again little old soft very dear proud small then still almost".split()
NAMES = "Barnaby Clementine Obadiah Philippa Thaddeus Winifred Zebedee Marigold".split()
MADE = ("misspelt", "doubled", "no stop", "gap", "comma", "dropped", "heavy", "two ways")


@dataclass
class Author:
    """Makes and mends slips, and edits; ``spare`` is text of other stories to put in."""

    text: Manuscript
    chance: random.Random
    spare: list[Leaf]
    moved: set[Sentence] = field(default_factory=set)
    cut: list[tuple[Leaf, int, int, Sentence]] = field(default_factory=list)
    names: list[str] = field(default_factory=lambda: list(NAMES))

    # Slips

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

    # Edits of the text

    def reword(self) -> None:
        """Change, put in or take out one word that no slip is about."""
        sentence = self.chance.choice(self.text.sentences())
        free = self._free(sentence, inner=True)
        if len(free) < 4 or len(sentence.words) < 7:
            return
        word = self.chance.choice(free)
        at = sentence.words.index(word)
        how = self.chance.choice(("change", "put in", "take out"))
        if how == "change":
            word.text = word.text.replace(word.core, self.chance.choice(NEUTRAL))
        elif how == "put in":
            sentence.words.insert(at, Word(self.chance.choice(NEUTRAL)))
        elif all(s.words[0] is not w for s in self.text.slips for w in sentence.words[at - 1 : at]):
            sentence.words.remove(word)

    def rename(self) -> None:
        """Give somebody another name, all through."""
        words = self.text.words()
        inner = [w for s in self.text.sentences() for w in s.words[1:]]
        count = Counter(w.core for w in inner if w.core[:1].isupper() and len(w.core) > 3)
        often = [name for name, times in count.items() if times > 2]
        if not often or not self.names:
            return
        old, new = self.chance.choice(often), self.names.pop()
        kept = [word for slip in self.text.slips for word in slip.words]
        cut = [word for _leaf, _p, _s, sentence in self.cut for word in sentence.words]
        for word in {*words, *kept, *cut}:
            word.text = word.text.replace(old, new)
        for slip in self.text.slips:
            slip.right, slip.wrong = slip.right.replace(old, new), slip.wrong.replace(old, new)

    def renumber(self) -> None:
        """Label the pages anew."""
        first = self.chance.randrange(1, 9)
        for number, leaf in enumerate(self.text.leaves, first):
            leaf.label = f"Page {number}"

    def delete_sentence(self) -> None:
        """Cut a sentence."""
        every = [
            (leaf, at, where, sentence)
            for leaf in self.text.leaves
            for at, paragraph in enumerate(leaf.paragraphs)
            for where, sentence in enumerate(paragraph)
        ]
        at_fault = {slip.sentence for slip in self.text.slips if slip.here}
        wanted = [each for each in every if each[3] in at_fault]
        if len(every) < 12:
            return
        chosen = self.chance.choice(wanted if wanted and self.chance.random() < 0.5 else every)
        leaf, at, where, _sentence = chosen
        paragraph = leaf.paragraphs[at]
        del paragraph[where]
        self.cut.append(chosen)
        if not paragraph:
            leaf.paragraphs.remove(paragraph)
        self._forget_places()

    def restore_sentence(self) -> None:
        """Put a sentence back that was cut, at its page, with the slips it had."""
        if not self.cut:
            return
        leaf, at, where, sentence = self.cut.pop()
        if leaf not in self.text.leaves:
            return
        if at < len(leaf.paragraphs):
            leaf.paragraphs[at].insert(where, sentence)
        else:
            leaf.paragraphs.append([sentence])

    def _forget_places(self) -> None:
        """A slip in several places goes on in those that were not cut."""
        here = set(self.text.sentences())
        for slip in self.text.slips:
            slip.others = [(s, w) for s, w in slip.others if s in here]
            if slip.sentence not in here and slip.others:
                slip.sentence, word = slip.others.pop(0)
                slip.words = [word]

    def move_sentence(self) -> None:
        """Carry a sentence to another place on another page."""
        source, target = self.chance.sample(self.text.leaves, 2)
        if source.paragraphs and target.paragraphs:
            paragraph = self.chance.choice(source.paragraphs)
            sentence = paragraph.pop(self.chance.randrange(len(paragraph)))
            goal = self.chance.choice(target.paragraphs)
            goal.insert(self.chance.randrange(len(goal) + 1), sentence)
            self.moved.add(sentence)
            source.paragraphs = [p for p in source.paragraphs if p]

    def move_paragraph(self) -> None:
        """Carry a paragraph to another page."""
        source, target = self.chance.sample(self.text.leaves, 2)
        if source.paragraphs:
            paragraph = source.paragraphs.pop(self.chance.randrange(len(source.paragraphs)))
            target.paragraphs.insert(self.chance.randrange(len(target.paragraphs) + 1), paragraph)
            self.moved.update(paragraph)

    def move_page(self) -> None:
        """Carry a page to another place in the book."""
        leaf = self.text.leaves.pop(self.chance.randrange(len(self.text.leaves)))
        self.text.leaves.insert(self.chance.randrange(len(self.text.leaves) + 1), leaf)
        self.moved.update(s for paragraph in leaf.paragraphs for s in paragraph)

    def insert_page(self) -> None:
        """Put in a page of new text."""
        if len(self.spare) < 2:
            return
        spare = self.spare.pop(self.chance.randrange(len(self.spare)))
        paragraphs = [
            [Sentence([Word(word.text, word.gap) for word in s.words]) for s in paragraph]
            for paragraph in spare.paragraphs
        ]
        leaf = Leaf(label="New page", paragraphs=paragraphs)
        self.text.leaves.insert(self.chance.randrange(len(self.text.leaves) + 1), leaf)

    def insert_sentence(self) -> None:
        """Put in a new sentence."""
        spare = self.chance.choice(self.spare).paragraphs
        leaf = self.chance.choice(self.text.leaves)
        if spare and leaf.paragraphs:
            new = spare[-1].pop()
            spare[:] = [paragraph for paragraph in spare if paragraph]
            paragraph = self.chance.choice(leaf.paragraphs)
            paragraph.insert(self.chance.randrange(len(paragraph) + 1), new)

    def move_page_break(self) -> None:
        """Carry the last paragraph of a page over to the next, or join the two pages."""
        at = self.chance.randrange(len(self.text.leaves) - 1)
        one, two = self.text.leaves[at : at + 2]
        if len(one.paragraphs) > 1:
            two.paragraphs.insert(0, one.paragraphs.pop())
        elif len(self.text.leaves) > 5:
            one.paragraphs += two.paragraphs
            self.text.leaves.remove(two)

    def join_paragraphs(self) -> None:
        """Run two paragraphs of a page on."""
        leaf = self.chance.choice(self.text.leaves)
        if len(leaf.paragraphs) > 1:
            second = leaf.paragraphs.pop(1)
            leaf.paragraphs[0] += second

    def edits(self) -> Sequence[Callable[[], None]]:
        """All that is done to the text besides making and mending slips."""
        return (
            self.reword, self.reword, self.reword, self.reword, self.rename, self.renumber,
            self.delete_sentence, self.delete_sentence, self.restore_sentence, self.move_sentence,
            self.move_paragraph, self.move_page, self.insert_page, self.insert_sentence,
            self.move_page_break, self.join_paragraphs,
        )  # fmt: skip
