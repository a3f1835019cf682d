"""What stands side by side in one unit lies on one axis, unless that would press it together."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import pytest

from reportgen.charts.draw import figures
from reportgen.charts.figure import Figure
from tests.charts.bench_of_results import campaign, contenders, measured, quantity
from tests.charts.pictures import layer, ticks

TWO = contenders("Corvane Sol", "Ostler Mk II")


def charts_of(*told: tuple[str, str, Sequence[float]]) -> dict[str, Figure]:
    """The charts of one test; each of (quantity, unit, a value a contender)."""
    quantities = [(quantity(id, unit), values) for id, unit, values in told]
    results = [
        (q, [measured(q, c.id, [v, v], 0.2, rank=(1, 2)) for c, v in zip(TWO, values, strict=True)])
        for q, values in quantities
    ]
    declared, evaluation = campaign(TWO, results)
    whole = replace(declared.campaign.tests[0], quantities=tuple(q for q, _ in quantities))
    return dict(figures(replace(declared, campaign=replace(declared.campaign, tests=(whole,))), evaluation))


def on_axis(shown: Figure) -> tuple[list[tuple[float, float]], list[float]]:
    return ticks(shown.svg), [v.x for v in layer(shown.svg, "values")]


def test_two_quantities_of_one_unit_lie_on_one_axis_and_say_so() -> None:
    shown = charts_of(("before", "g", (10.0, 14.0)), ("after", "g", (12.0, 17.0)))
    (axis, values), (other_axis, other_values) = on_axis(shown["before"]), on_axis(shown["after"])
    assert axis == other_axis
    px = (axis[-1][1] - axis[0][1]) / (axis[-1][0] - axis[0][0])
    assert other_values[0] - values[0] == pytest.approx(2.0 * px, abs=0.1), "2 g are as long from chart to chart"
    assert "the axis is that of “After” too" in shown["before"].key
    assert "the axis is that of “Before” too" in shown["after"].key


def test_other_units_and_values_that_would_be_pressed_together_keep_their_own_axis() -> None:
    shown = charts_of(("weight", "g", (10.0, 14.0)), ("time", "s", (11.0, 13.0)), ("fuel", "g", (900.0, 1400.0)))
    assert on_axis(shown["weight"])[0] != on_axis(shown["time"])[0]
    assert on_axis(shown["weight"])[0] != on_axis(shown["fuel"])[0]
    assert not any("the axis is that of" in one.key for one in shown.values())


def test_the_parts_of_a_quantity_share_an_axis_where_another_quantity_lies_far_off() -> None:
    noise, far = quantity("noise", "dB"), quantity("threshold", "dB")
    parts = {"low flame": (60.0, 66.0), "high flame": (64.0, 71.0)}
    results = [
        replace(measured(noise, c.id, [v, v], 0.5, rank=(1, 2)), part=part)
        for part, values in parts.items()
        for c, v in zip(TWO, values, strict=True)
    ]
    away = [measured(far, c.id, [v, v], 0.1, rank=(1, 2)) for c, v in zip(TWO, (9.0, 9.5), strict=True)]
    declared, evaluation = campaign(TWO, [(noise, results), (far, away)])
    whole = replace(declared.campaign.tests[0], quantities=(noise, far))
    shown = figures(replace(declared, campaign=replace(declared.campaign, tests=(whole,))), evaluation)
    low, high = shown["noise-low-flame"], shown["noise-high-flame"]
    assert on_axis(low)[0] == on_axis(high)[0] != on_axis(shown["threshold"])[0]
    assert "“Noise, high flame”" in low.key
