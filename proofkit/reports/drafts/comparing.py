"""Two drafts side by side: which pages changed and in which words, and which issues came with it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from proofkit.drafts.changes import Change, PageChange, WordChange
from proofkit.drafts.draft import Draft
from proofkit.drafts.status import Comparison, Standing, Status
from proofkit.reports.drafts.setting import day
from proofkit.reports.fault import one_line
from proofkit.reports.phrases import counted
from proofkit.reports.places import page_name

_INDENT = "  "
_GONE = (
    (Status.FIXED, "fixed"),
    (Status.GONE_WITH_TEXT, "gone with the text"),
    (Status.NO_LONGER_RAISED, "no longer raised"),
)
_CAME = ((Status.NEW, "new"), (Status.BACK_AGAIN, "back again"))


def as_plain(was: Draft, now: Draft, changes: Sequence[PageChange], found: Comparison) -> str:
    """All that is different, in lines; ``found`` is the later draft against the earlier one."""
    lines = [*_heading(was, now, changes), ""]
    for change in changes:
        lines += _page(change, was, now)
    came = [each for each in found.issues if each.status in dict(_CAME)]
    if came:
        lines += ["", f"New in draft {now.number}"]
        lines += [f"{_INDENT}{_issue(each, now)}" for each in came]
    ended = [each for each in found.ended if not each.issue.let_stand]
    if ended:
        lines += ["", f"No longer in draft {now.number}"]
        names = dict(_GONE)
        for each in ended:
            where = page_name(was.pages[each.issue.page - 1])
            quote = one_line(each.issue.quote)
            lines.append(f"{_INDENT}{names[each.status]}: {where}, ›{quote}‹, {each.issue.message}")
    return "\n".join(lines).rstrip() + "\n"


def _heading(was: Draft, now: Draft, changes: Sequence[PageChange]) -> Iterator[str]:
    title = one_line(now.title)
    yield f"{title}{': ' if title else ''}draft {was.number} ({day(was.date)}) and draft {now.number} ({day(now.date)})"
    sums, before = now.measures, was.measures
    yield (
        f"Words {before.words:,} → {sums.words:,}, errors {before.errors} → {sums.errors}, "
        f"queries {before.queries} → {sums.queries}"
    )
    pages = [page for each in changes if (page := each.now or each.was)]
    unit = "spread" if all(page.spread is not None for page in pages) else "page"
    yield f"{counted(len(pages), unit)} changed" if pages else "The text is the same in both."


def _page(change: PageChange, was: Draft, now: Draft) -> Iterator[str]:
    page = change.now or change.was
    if page is None:
        return
    yield f"{page_name(page)}{_how(change, was, now)}"
    for words in change.words:
        yield f"{_INDENT}{_words(words, was, now)}"


def _how(change: PageChange, was: Draft, now: Draft) -> str:
    """What became of the page as a whole, behind its name."""
    if change.was is None:
        others = _named(was, change.others)
        return f": put in, made of {others}" if others else ": put in"
    if change.now is None:
        others = _named(now, change.others)
        return f": taken out, its words went to {others}" if others else ": taken out"
    said = []
    if change.moved:
        said.append(f"moved; it was {page_name(change.was)}")
    if change.relabelled:
        said.append(f"its heading was “{one_line(change.was.label)}”")
    if change.spacing:
        said.append("only spaces or line ends changed")
    return f": {'; '.join(said)}" if said else ""


def _named(draft: Draft, places: Sequence[int]) -> str:
    return ", ".join(page_name(draft.pages[place - 1]) for place in places)


def _words(words: WordChange, was: Draft, now: Draft) -> str:
    old, new = one_line(words.was), one_line(words.now)
    what = {
        Change.REPLACED: f"for ›{old}‹ now ›{new}‹",
        Change.ADDED: f"added ›{new}‹",
        Change.CUT: f"cut ›{old}‹",
        Change.MOVED_HERE: f"moved here ›{new}‹{_from(was, words.page, 'from')}",
        Change.MOVED_AWAY: f"moved away ›{old}‹{_from(now, words.page, 'to')}",
    }[words.change]
    before, after = one_line(words.before), one_line(words.after)
    around = f" (… {before} | {after} …)" if before or after else ""
    return f"{what}{around}"


def _from(draft: Draft, place: int | None, word: str) -> str:
    return f" {word} {page_name(draft.pages[place - 1])}" if place else ""


def _issue(standing: Standing, now: Draft) -> str:
    issue = standing.issue
    where = page_name(now.pages[issue.page - 1])
    cause = "from what changed" if standing.from_change else "though its words did not change"
    again = "back again, " if standing.status is Status.BACK_AGAIN else ""
    return f"{issue.tier}: {where}, ›{one_line(issue.quote)}‹, {issue.message} ({again}{cause})"
