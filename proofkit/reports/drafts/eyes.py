"""What to tell an author who comes back to a book, or who never left it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from proofkit.drafts.draft import DraftPage
from proofkit.drafts.fresh_eyes import FOUND_RESTED, FOUND_SOON, FreshEyes
from proofkit.report import Report
from proofkit.reports.places import in_one_phrase, page_name, pages_named


def sentences_on_eyes(eyes: FreshEyes, report: Report) -> Iterator[str]:
    """For a rested author, in which order to read; for one at the second draft, what waiting is worth."""
    if eyes.rested:
        yield f"You last looked {eyes.days} days ago, so your eyes are fresh. {_order(eyes, report)}"
    elif eyes.waiting:
        yield (
            "When the book is as you want it, leave it for two weeks and read it again: in an experiment "
            f"writers found {FOUND_SOON} % of the wrong words in their own text after twenty minutes, and "
            f"{FOUND_RESTED} % after two weeks (Daneman and Stainton, 1993)."
        )


def where_slips_hide(eyes: FreshEyes, pages: Sequence[DraftPage]) -> Iterator[str]:
    """The pages of the newest draft that are known by heart, and those changed after they were clean."""
    never, changed = (
        in_one_phrase(list(dict.fromkeys(page_name(pages[place - 1]) for place in places)))
        for places in (eyes.never_changed, eyes.changed_clean)
    )
    if never:
        yield f"Unchanged since the first draft, and known by heart: {never}."
    if changed:
        yield f"Changed in the newest draft after nothing was left to mend there: {changed}."


def _order(eyes: FreshEyes, report: Report) -> str:
    """A reading order: first where slips hide from those who know the text by heart."""
    never = pages_named(report, eyes.never_changed)
    changed = pages_named(report, eyes.changed_clean)
    steps = [
        f"{never}, unchanged since the first draft" if never else "",
        f"{changed}, changed after nothing was left to mend there" if changed else "",
    ]
    named = "; then ".join(filter(None, steps))
    if not named:
        return "Read it aloud once before you look at the rows."
    return f"Read it aloud before you look at the rows, beginning where slips hide: {named}; then the rest."
