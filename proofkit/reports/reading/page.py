"""How a book reads as a page for the browser: one file that fetches nothing and tells nobody.

The template escapes whatever it is given, and the page's own security policy allows no style and no
script but the two that proofkit wrote, known by their digests. Without its script the page shows the
same, one spread below the other.
"""

from __future__ import annotations

import hashlib
import re
from base64 import b64encode
from collections.abc import Iterator
from pathlib import Path, PurePath

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from proofkit.reading.bands import AgeBand, band_named
from proofkit.reading_report import ReadingReport
from proofkit.reports.phrases import counted
from proofkit.reports.reading import setting
from proofkit.reports.reading.charts import VIEW_BOX
from proofkit.reports.reading.language import rhythm_sentences
from proofkit.reports.reading.leaves import leaf_of_page, leaves_of
from proofkit.reports.reading.score import Score, grade_of, score_of
from proofkit.reports.reading.verse_setting import about_verse, stanzas

_BESIDE_THIS = Path(__file__).parent
# HTML has no place for them; a browser would show nothing, or something else.
_UNSHOWABLE = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\ud800-\udfff\ufdd0-\ufdef\ufffe\uffff]")


def as_html(report: ReadingReport) -> str:
    """The whole page."""
    band, score = band_named(report.age_band), score_of(report)
    pressing, verse = setting.to_work_on(report), stanzas(report)
    style = _css(score)
    page = _environment().get_template("page.html.jinja")
    return _showable(
        page.render(
            report=report,
            setting=setting,
            band=band,
            score=score,
            view_box=VIEW_BOX,
            leaves=leaves_of(report),
            leaf_at=leaf_of_page(report),
            pressing=[(report.steps.index(step) + 1, step) for step in pressing],
            first=report.steps.index(pressing[0]) if pressing else 0,
            verdict=_verdict(report, len(pressing)),
            hard=[word for word in report.words_beyond if not word.gift],
            gifts=[word for word in report.words_beyond if word.gift],
            spoken=list(rhythm_sentences(report)),
            about_verse=about_verse,
            stanzas=verse,
            remarked=sum(stanza.remarks for stanza in verse),
            grade_of=grade_of,
            counted=counted,
            file_name=PurePath(report.path).name,
            sources=tuple(_sources(band)),
            style=style,
            script=_own("page.js"),
            policy=_policy(style, _own("page.js")),
        )
    )


def _environment() -> Environment:
    return Environment(
        loader=FileSystemLoader(_BESIDE_THIS),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )


def _own(name: str) -> str:
    return (_BESIDE_THIS / name).read_text(encoding="utf-8")


def _css(score: Score | None) -> str:
    """The style sheet, and how high each figure stands over its column."""
    rules = [_own("page.css")]
    for at, column in enumerate(score.columns if score else (), 1):
        rules.append(
            f".words-{at}{{bottom:{column.words_at}%}}"
            f".sentence-{at}{{bottom:{column.sentence_at}%}}"
            f".grade-{at}{{bottom:{column.grade_at}%}}"
        )
    return "\n".join(rules)


def _policy(*own: str) -> str:
    style, script = (
        f"'sha256-{b64encode(hashlib.sha256(text.encode()).digest()).decode()}'" for text in own
    )
    return (
        f"default-src 'none'; style-src {style}; script-src {script}; "
        "base-uri 'none'; form-action 'none'"
    )


def _showable(text: str) -> str:
    return _UNSHOWABLE.sub("\N{REPLACEMENT CHARACTER}", text)


def _verdict(report: ReadingReport, pressing: int) -> str:
    """The heading over what to work on."""
    unit, steps = setting.unit(report), len(report.steps)
    if not steps:
        return "No pages are marked"
    if not pressing:
        return f"No {unit} asks for work"
    alike = len(report.spreads) in (0, steps)
    # Where some pages lie on no spread, the two are not counted together.
    return f"{pressing} of {counted(steps, unit)} to work on" if alike else "What to work on"


def _sources(band: AgeBand) -> Iterator[tuple[str, str]]:
    """Where the figures of the band come from, by what they are of."""
    yield "ages", band.ages_source
    yield "words in the book", band.words.source
    yield "words on a spread", band.spread_words.source
    yield "words in a sentence", band.mean_sentence.source
    yield "the longest sentence", band.longest_sentence.source
    yield "syllables", band.syllables.source
    yield f"words off {band.word_list.whose}’s list", band.off_list.source
    if band.grade:
        yield "grade", band.grade.source
