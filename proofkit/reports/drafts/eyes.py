"""What to tell an author who comes back to a book, or who never left it."""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.drafts.fresh_eyes import FOUND_RESTED, FOUND_SOON, FreshEyes
from proofkit.report import Report
from proofkit.reports.places import pages_named


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
