from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from proofkit.reports.html.charts import HEIGHT, VIEW_BOX, WIDTH, bars, level, line, share

LEFT, TOP, _, _ = map(int, VIEW_BOX.split())
GROUND = TOP + HEIGHT


@given(st.lists(st.integers(0, 900), min_size=1, max_size=40), st.integers(1, 500))
def test_bars_stand_on_the_ground_in_their_columns_as_high_as_their_values(
    values: list[int], usual: int
) -> None:
    top = 1.2 * max(*values, usual, 1)
    heights = [0.0] * len(values)
    for bar in bars(values, usual, top):
        column = (bar.x + bar.width / 2 - LEFT) / WIDTH * len(values)
        assert column % 1 == pytest.approx(0.5, abs=0.01)
        assert bar.width < WIDTH / len(values)
        heights[int(column)] += bar.height
        if bar.beyond:
            assert bar.y + bar.height == pytest.approx(level(usual, top), abs=0.02)
        else:
            assert bar.y + bar.height == pytest.approx(GROUND, abs=0.02)
    assert heights == pytest.approx([HEIGHT * value / top for value in values], abs=0.02)


def test_only_the_part_above_the_usual_is_beyond() -> None:
    assert [bar.beyond for bar in bars([60, 80, 67], 67, 100)] == [False, False, False, True]


def test_a_line_goes_through_the_middle_of_each_column_and_keeps_its_gaps() -> None:
    drawn = line([2.0, 3.0, None, 4.0, 10.0], 0, 10)
    middles = [LEFT + WIDTH * (at + 0.5) / 5 for at in (0, 1, 3, 4)]
    assert [x for x, _ in drawn.dots] == pytest.approx(middles)
    assert [y for _, y in drawn.dots] == pytest.approx([GROUND - 20 * g for g in (2, 3, 4, 10)])
    assert len(drawn.paths) == 2


def test_one_value_alone_is_a_dot() -> None:
    drawn = line([2.0], 0, 4)
    assert len(drawn.dots) == 1


def test_a_share_is_measured_from_the_foot_of_the_scale() -> None:
    assert share(5, 0, 10) == 50
    assert share(3, 2, 6) == 25
