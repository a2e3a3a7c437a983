from __future__ import annotations

from dataclasses import replace

from proofkit.reports.keys import short_keys
from tests.reports.goat import goat


def test_a_key_is_shown_by_as_many_letters_as_tell_it_from_all_others() -> None:
    report = goat(let_stand={"grammar/its": ""})
    keys = ("bcdfghj", "bcdfgkm", "bcdfg2z", "k7f2bcd")
    open_issues = tuple(
        replace(issue, key=key) for issue, key in zip(report.issues, keys[:3], strict=False)
    )
    stands = (replace(report.let_stand[0], issue=replace(report.let_stand[0].issue, key=keys[3])),)
    assert short_keys(replace(report, issues=open_issues, let_stand=stands)) == {
        "bcdfghj": "bcdfgh",
        "bcdfgkm": "bcdfgk",
        "bcdfg2z": "bcdfg2",
        "k7f2bcd": "k7f2",
    }


def test_one_let_stand_takes_a_beginning_too() -> None:
    report = goat(let_stand={"grammar/its": ""})
    stands = replace(report.let_stand[0].issue, key=f"{report.issues[0].key[:5]}zz")
    both = replace(report, let_stand=(replace(report.let_stand[0], issue=stands),))
    assert len(short_keys(both)[report.issues[0].key]) == 6
