"""What an author does to a manuscript between two drafts, besides making slips and mending them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from tests.bench._author import Leaf, Sentence, Word
from tests.bench._slips_made import Fallible

NEUTRAL = "quietly slowly again little old soft very dear proud small then still almost".split()
NAMES = "Barnaby Clementine Obadiah Philippa Thaddeus Winifred Zebedee Marigold".split()


@dataclass
class Author(Fallible):
    """Rewords, renames, moves, cuts and puts in text; ``spare`` is text of other stories to put in."""

    moved: set[Sentence] = field(default_factory=set)
    cut: list[tuple[Leaf, int, int, Sentence]] = field(default_factory=list)
    names: list[str] = field(default_factory=lambda: list(NAMES))

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
