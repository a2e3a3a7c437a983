"""The drafts where no terminal shows them: tab-separated, without decoration, nothing cut short."""

from __future__ import annotations

from collections.abc import Sequence

from proofkit.drafts.summary import Summary
from proofkit.reports.drafts.setting import HEADS, about, remarks, rows, title


def as_plain(drafts: Sequence[Summary], hiding: Sequence[str] = ()) -> str:
    """A row a draft, a tab between its cells; ``hiding`` says where slips hide."""
    lines = [f"{title(drafts)}: {about(drafts)}", "\t".join(HEADS)]
    lines += ["\t".join(row) for row in rows(drafts)]
    return "\n".join([*lines, *hiding, *remarks(drafts)]) + "\n"
