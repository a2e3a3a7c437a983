"""A page for the browser: one file that fetches nothing and tells nobody.

The template escapes whatever it is given, and the page's own security policy allows no style and no
script but those that proofkit wrote, known by their digests.
"""

from __future__ import annotations

import hashlib
import re
from base64 import b64encode
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined

_LOOK = Path(__file__).with_name("look.css")
# HTML has no place for them; a browser would show nothing, or something else.
_UNSHOWABLE = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\ud800-\udfff\ufdd0-\ufdef\ufffe\uffff]")


def sealed_page(folder: Path, rules: str = "", **values: object) -> str:
    """The page made of ``page.html.jinja``, ``page.css`` and, if there is one, ``page.js`` in a folder.

    The template is given the ``values``, and ``style``, ``script`` and ``policy``. ``rules`` are style
    rules of this page alone; none of the author's text may be in them.
    """
    style = "\n".join(filter(None, (_text(_LOOK), _text(folder / "page.css"), rules)))
    script = _text(folder / "page.js") if (folder / "page.js").exists() else ""
    page = _environment(folder).get_template("page.html.jinja")
    return _UNSHOWABLE.sub(
        "\N{REPLACEMENT CHARACTER}",
        page.render(style=style, script=script, policy=_policy(style, script), **values),
    )


def _environment(folder: Path) -> Environment:
    return Environment(
        loader=FileSystemLoader(folder),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )


def _text(file: Path) -> str:
    return file.read_text(encoding="utf-8")


def _policy(style: str, script: str) -> str:
    return (
        f"default-src 'none'; style-src {_digest(style)}; script-src {_digest(script)}; "
        "base-uri 'none'; form-action 'none'"
    )


def _digest(text: str) -> str:
    if not text:
        return "'none'"
    return f"'sha256-{b64encode(hashlib.sha256(text.encode()).digest()).decode()}'"
