"""What every page for the browser needs: it fetches nothing, tells nobody, and shows what it is given as text.

The templates escape all they are given. The page's own security policy allows no style and no script but
the ones that proofkit wrote, known by their digests.
"""

from __future__ import annotations

import hashlib
import re
from base64 import b64encode
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined

# HTML has no place for them; a browser would show nothing, or something else.
_UNSHOWABLE = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\ud800-\udfff\ufdd0-\ufdef\ufffe\uffff]")


def templates(folder: Path) -> Environment:
    """The templates of a folder, which escape whatever they are given."""
    return Environment(
        loader=FileSystemLoader(folder),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )


def policy(style: str, script: str) -> str:
    """The content security policy of a page that has this style and this script, and nothing else."""
    own_style, own_script = (
        f"'sha256-{b64encode(hashlib.sha256(text.encode()).digest()).decode()}'"
        for text in (style, script)
    )
    return (
        f"default-src 'none'; style-src {own_style}; script-src {own_script}; "
        "base-uri 'none'; form-action 'none'"
    )


def showable(text: str) -> str:
    """The text without characters that a page can't hold."""
    return _UNSHOWABLE.sub("\N{REPLACEMENT CHARACTER}", text)
