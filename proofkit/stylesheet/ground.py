"""What the rows of a style sheet are read from, and how a habit becomes a row."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.habits.names import Named, names_of
from proofkit.habits.usage import Usage
from proofkit.issue import Issue
from proofkit.settings import Settings
from proofkit.style import Style
from proofkit.stylesheet.sheet import Basis, Other, Row

# Below two to one, a habit is none: the checks ask the author, and so does the sheet.
_CLEAR = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Ground:
    """A book, what is known of it, what its author decided, and what the checks found in it.

    A place that an issue calls wrong is no habit, and no word of the book's own. ``named`` are the
    book's names; ``let_stand`` are words that the author let stand, each with the reason, or ""; and
    ``settled`` are places that are to stay as they are though the book has it otherwise elsewhere.
    """

    book: Book
    analysis: Analysis
    settings: Settings
    issues: Sequence[Issue] = ()
    named: tuple[Named, ...] = ()
    let_stand: Mapping[str, str] = field(default_factory=dict)
    settled: tuple[Span, ...] = ()

    @property
    def style(self) -> Style:
        """The author's decisions."""
        return self.settings.style

    @property
    def words(self) -> tuple[str, ...]:
        """The words that the author decided, as they are to stand."""
        return tuple(dict.fromkeys((*self.style.words, *self.let_stand)))

    def note(self, word: str) -> str:
        """The reason that the author gave for letting a word stand; "" for any other."""
        because = self.let_stand.get(word)
        return "" if because is None else f"let stand: {because}" if because else "let stand"

    def issue_at(self, span: Span, families: Sequence[str] = ()) -> Issue | None:
        """The first issue (of these families of checks, if any are named) that touches a place."""
        return next(
            (
                issue
                for issue in self.issues
                if (not families or issue.check.partition("/")[0] in families)
                and any(touch(span, place) for place in (issue.span, *issue.related))
            ),
            None,
        )


def ground_of(
    book: Book,
    analysis: Analysis,
    settings: Settings,
    *,
    issues: Iterable[Issue] = (),
    let_stand: Mapping[str, str] | None = None,
    settled: Iterable[Span] = (),
) -> Ground:
    """The ground of a book's style sheet, its names found."""
    return Ground(
        book=book,
        analysis=analysis,
        settings=settings,
        issues=tuple(issues),
        named=names_of(book, analysis),
        let_stand=let_stand or {},
        settled=tuple(settled),
    )


def as_ruled(ground: Ground, row: Row) -> Row:
    """The row; an open one is decided where the author let both its forms stand."""
    places = sorted(span for other in row.others for span in other.places)
    if row.basis is not Basis.OPEN or not any(
        touch(span, settled) for span in places for settled in ground.settled
    ):
        return row
    both = " and ".join(other.form for other in row.others)
    return replace(
        row,
        form=both,
        basis=Basis.DECIDED,
        places=tuple(places),
        others=(),
        note="; ".join(filter(None, (row.note, "let stand"))),
    )


def row_of(usage: Usage, decided: str | None, *, term: str = "", note: str = "") -> Row | None:
    """The row of one matter; None where the book doesn't do it and nobody decided.

    Where the book has two forms nearly as often as each other, the row is open. ``term`` stands for
    the usage's matter; a word's row has no other term than the word itself.
    """
    ordered = sorted(usage.places, key=lambda form: (-usage.count(form), usage.places[form][:1]))
    ordered = [form for form in ordered if usage.count(form)]
    form = decided or (ordered[0] if ordered else None)
    if form is None:
        return None
    basis = Basis.DECIDED if decided else _basis([usage.count(one) for one in ordered])
    known = "" if basis is Basis.OPEN else form
    return Row(
        term=term or known or usage.matter,
        form=known,
        basis=basis,
        places=() if basis is Basis.OPEN else tuple(usage.places.get(form, ())),
        others=tuple(
            Other(form=one, places=tuple(usage.places[one])) for one in ordered if one != known
        ),
        note=note,
    )


def _basis(counts: Sequence[int]) -> Basis:
    if len(counts) == 1:
        return Basis.ALWAYS
    return Basis.MOSTLY if counts[0] >= _CLEAR * counts[1] else Basis.OPEN


def touch(one: Span, other: Span) -> bool:
    """Whether two places share a character."""
    return one.page == other.page and one.start < other.end and other.start < one.end
