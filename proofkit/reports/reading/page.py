"""How a book reads as a page for the browser.

Without its script the page shows the same, one spread below the other.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path, PurePath

from proofkit.reading.bands import AgeBand, band_named
from proofkit.reading_report import ReadingReport
from proofkit.reports.html.charts import VIEW_BOX
from proofkit.reports.html.sealed import sealed_page
from proofkit.reports.phrases import counted
from proofkit.reports.reading import setting
from proofkit.reports.reading.language import rhythm_sentences
from proofkit.reports.reading.leaves import leaf_of_page, leaves_of
from proofkit.reports.reading.score import Score, grade_of, score_of
from proofkit.reports.reading.verse_setting import about_verse, stanzas

_BESIDE_THIS = Path(__file__).parent


def as_html(report: ReadingReport) -> str:
    """The whole page."""
    band, score = band_named(report.age_band), score_of(report)
    pressing, verse = setting.to_work_on(report), stanzas(report)
    return sealed_page(
        _BESIDE_THIS,
        _rules(score),
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
    )


def _rules(score: Score | None) -> str:
    """How high each figure stands over its column."""
    rules = []
    for at, column in enumerate(score.columns if score else (), 1):
        rules.append(
            f".words-{at}{{bottom:{column.words_at}%}}"
            f".sentence-{at}{{bottom:{column.sentence_at}%}}"
            f".grade-{at}{{bottom:{column.grade_at}%}}"
        )
    return "\n".join(rules)


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
