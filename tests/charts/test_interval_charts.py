"""A chart of a measured quantity shows every pass, the interval where it is, and who can't be told apart."""

from __future__ import annotations

import pytest

from reportgen.charts.draw import figures
from reportgen.charts.figure import Figure
from tests.charts.bench_of_results import amount, campaign, contenders, measured, quantity
from tests.charts.pictures import layer, parsed, ticks

THREE = contenders("Corvane Sol", "Ostler Mk II", "Tamsin")
TWO_TIED = [("corvane-sol", "tamsin"), ("ostler-mk-ii", "tamsin")]


def gas(**more: object) -> Figure:
    q = quantity(title="Gas burned to boil one litre", matters=amount("1 g"), **more)
    results = [
        measured(q, "corvane-sol", [14.3, 14.5, 13.8], 0.6, rank=(1, 2)),
        measured(q, "ostler-mk-ii", [14.6, 14.9, 21.0], 0.7, left_out=[2], rank=(1, 2)),
        measured(q, "tamsin", [17.0, 17.1, 17.3], 0.5, rank=(3, 3)),
    ]
    return figures(*campaign(THREE, [(q, results)], {q.id: TWO_TIED}))[q.id]


@pytest.fixture(scope="module")
def shown() -> Figure:
    return gas()


def on_axis(svg: str, value: float) -> float:
    """Where a value must stand, worked out from two numbers printed on the axis."""
    (a, x_a), (b, x_b) = ticks(svg)[0], ticks(svg)[-1]
    return x_a + (value - a) / (b - a) * (x_b - x_a)


def test_every_pass_is_a_mark_and_one_left_out_is_crossed(shown: Figure) -> None:
    assert len(layer(shown.svg, "passes")) == 8
    (crossed,) = layer(shown.svg, "passes-left-out")
    assert crossed.x == pytest.approx(on_axis(shown.svg, 21.0), abs=0.1)


def test_an_interval_ends_where_its_limits_are_on_the_axis(shown: Figure) -> None:
    bars = layer(shown.svg, "intervals")
    ends = [(14.2 - 0.6, 14.2 + 0.6), (14.75 - 0.7, 14.75 + 0.7), (17.133333 - 0.5, 17.133333 + 0.5)]
    assert len(bars) == len(ends)
    for bar, (low, high) in zip(bars, ends, strict=True):
        assert bar.left == pytest.approx(on_axis(shown.svg, low), abs=0.1)
        assert bar.right == pytest.approx(on_axis(shown.svg, high), abs=0.1)


def test_a_value_is_a_line_at_its_place(shown: Figure) -> None:
    places = [v.x for v in layer(shown.svg, "values")]
    assert places == pytest.approx([on_axis(shown.svg, v) for v in (14.2, 14.75, 17.1333)], abs=0.1)


def test_the_band_is_as_wide_as_what_matters_and_begins_at_the_leader(shown: Figure) -> None:
    (band,) = layer(shown.svg, "matters")
    assert band.left == pytest.approx(on_axis(shown.svg, 14.2), abs=0.1)
    assert band.right == pytest.approx(on_axis(shown.svg, 15.2), abs=0.1)
    assert "1 g would matter" in [t.text for t in layer(shown.svg, "matters-said")]


def test_where_more_is_better_the_band_lies_below_the_leader() -> None:
    svg = gas(better="higher").svg
    (band,) = layer(svg, "matters")
    assert band.right == pytest.approx(on_axis(svg, 17.1333), abs=0.1)
    assert [t.text for t in layer(svg, "good")] == ["more is better →"]


def test_a_bracket_spans_those_that_cannot_be_told_apart_and_no_other(shown: Figure) -> None:
    rows = {t.text: t.y for t in layer(shown.svg, "names")}
    (spine,) = layer(shown.svg, "tie-1")
    reach = sorted((spine.y, spine.y + float(spine.said["y2"])))
    assert reach == pytest.approx([rows["Corvane Sol"] - 4, rows["Ostler Mk II"] - 4], abs=1)
    assert len(layer(shown.svg, "tie-1-arms")) == 2
    assert not layer(shown.svg, "tie-2")


def test_names_stand_at_the_side_with_letter_and_mark_best_first(shown: Figure) -> None:
    assert [t.text for t in layer(shown.svg, "names")] == ["Corvane Sol", "Ostler Mk II", "Tamsin"]
    assert [t.text for t in layer(shown.svg, "letters")] == ["A", "B", "C"]
    assert [m.said["fill"][:9] for m in layer(shown.svg, "marks")] == ["var(--c1,", "var(--c2,", "var(--c3,"]


def test_the_good_direction_is_written_in_words(shown: Figure) -> None:
    assert [t.text for t in layer(shown.svg, "good")] == ["← less is better"]


def test_the_text_alternative_says_the_finding_and_the_values_with_their_units(shown: Figure) -> None:
    said = parsed(shown.svg).get("aria-label", "").replace("\u00a0", " ")
    assert said == shown.alt.replace("\u00a0", " ")
    assert said.startswith("Gas burned to boil one litre. ")
    assert shown.found
    assert shown.found in shown.alt
    assert "Corvane Sol: 14.20 g (13.60 to 14.80)" in said
    assert shown.rows[0][:2] == ("Corvane Sol", "14.20\u00a0g (13.60 to 14.80)")


def test_an_interval_of_the_instrument_alone_is_a_thin_line_and_no_interval_is_none() -> None:
    q = quantity()
    one = measured(q, "corvane-sol", [14.0], 0.3, covers="instrument", rank=(1, 2))
    other = measured(q, "ostler-mk-ii", [16.0], None, rank=(1, 2))
    shown = figures(*campaign(THREE[:2], [(q, [one, other])]))[q.id]
    assert not layer(shown.svg, "intervals")
    assert len(layer(shown.svg, "intervals-instrument")) == 1
    assert len(layer(shown.svg, "values")) == 2
    assert not layer(shown.svg, "passes"), "one reading is its own line"
    assert "instrument alone" in shown.key


def test_off_the_scale_is_an_open_end_from_the_limit_and_never_a_value() -> None:
    q = quantity("co", "ppm", title="Carbon monoxide")
    rest = measured(q, "corvane-sol", [120.0, 130.0], 20, rank=(1, 1))
    over = measured(q, "ostler-mk-ii", [], limit="above", value=199.0, rank=(2, 2))
    unknown = measured(q, "tamsin", [], limit="above", value=None, rank=(2, 3))
    shown = figures(*campaign(THREE, [(q, [rest, over, unknown])]))[q.id]
    assert len(layer(shown.svg, "values")) == 1
    arrow, short = layer(shown.svg, "limits")
    assert arrow.x == pytest.approx(on_axis(shown.svg, 199), abs=0.1)
    assert arrow.right == pytest.approx(short.right)
    assert short.x > arrow.x, "an unknown limit stands nowhere on the axis"
    told = [t.text.replace("\u00a0", " ") for t in layer(shown.svg, "limits-above-said")]
    told += [t.text for t in layer(shown.svg, "limits-above-under")]
    assert told == ["more than 199 ppm", "more than the meter can show"]
    assert "more than 199\u00a0ppm" in shown.alt


def test_one_that_is_not_ranked_stands_last_and_pale_outside_every_bracket() -> None:
    q = quantity()
    results = [
        measured(q, "corvane-sol", [9.0, 9.1], 0.5, rank=None, blocked="topped up"),
        measured(q, "ostler-mk-ii", [14.0, 14.1], 0.5, rank=(1, 2)),
        measured(q, "tamsin", [14.2, 14.1], 0.5, rank=(1, 2)),
    ]
    svg = figures(*campaign(THREE, [(q, results)]))[q.id].svg
    assert [t.text for t in layer(svg, "names-unranked")] == ["Corvane Sol"]
    assert [t.text for t in layer(svg, "notes")] == ["not ranked"]
    assert len(layer(svg, "values-unranked")) == 1
    assert len(layer(svg, "tie-1-arms")) == 2
    assert [t.text for t in layer(svg, "letters")] == ["B", "C", "A"]


def test_a_long_reason_for_no_value_stands_on_two_lines_right_of_the_name() -> None:
    q = quantity()
    results = [
        measured(q, "corvane-sol", [9.0, 9.1], 0.5),
        measured(q, "ostler-mk-ii", [], missing="temp never stayed within ±0.5 °C for 600 s"),
        measured(q, "tamsin", [], missing="not read"),
    ]
    svg = figures(*campaign(THREE, [(q, results)]))[q.id].svg
    told = layer(svg, "not-read-because")
    assert " ".join(t.text for t in told) == "temp never stayed within ±0.5 °C for 600 s"
    assert len(told) == 2
    assert all(t.x > layer(svg, "names")[0].x + 12 * 7.2 for t in told)  # a name has twelve letters a line
    assert all(len(t.text) * 6.6 <= 360 - 116 for t in told)
    assert [t.text for t in layer(svg, "not-read")] == ["not read"]


def test_a_limit_far_off_does_not_press_the_values_together_but_stands_behind_a_break() -> None:
    q = quantity("co", "ppm")
    near = [measured(q, c.id, [v, v + 4], 6, rank=(1, 2)) for c, v in zip(THREE[:2], (40.0, 60.0), strict=True)]
    over = measured(q, "tamsin", [], limit="above", value=999.0, rank=(3, 3))
    shown = figures(*campaign(THREE, [(q, [*near, over])]))[q.id]
    first, second = layer(shown.svg, "values")
    assert second.x - first.x > 60
    assert max(number for number, _ in ticks(shown.svg)) < 999
    assert len(layer(shown.svg, "limit-breaks")) == 1
    assert not layer(shown.svg, "limit-stops"), "nothing on the axis says where 999 is"
    assert "more than 999\u00a0ppm" in shown.alt
    assert "double stroke" in shown.key


def still_going(*values: float, bounds: tuple[float, ...], limit: str = "above") -> Figure:
    """Readings of one pass each, then bounds, all of one quantity."""
    q = quantity("life", "min", title="Life", better="higher")
    tried = contenders(*(f"Kettle {n}" for n in range(len(values) + len(bounds))))
    read = [measured(q, c.id, [v], 0.5, covers="instrument") for c, v in zip(tried, values, strict=False)]
    off = [measured(q, c.id, [], limit=limit, value=b) for c, b in zip(tried[len(values) :], bounds, strict=True)]
    return figures(*campaign(tried, [(q, [*read, *off])]))[q.id]


def test_one_reading_beside_bounds_leaves_room_for_where_each_of_them_begins() -> None:
    svg = still_going(212.0, bounds=(300.0, 118.0)).svg
    more, less = layer(svg, "limits")
    (read,) = layer(svg, "values")
    assert less.x < read.x < more.x, "118 must not look like more than 212"
    assert [a.x for a in (more, less)] == pytest.approx([on_axis(svg, 300), on_axis(svg, 118)], abs=0.1)
    assert not layer(svg, "limit-breaks")
    below = still_going(212.0, bounds=(300.0, 118.0), limit="below").svg
    starts = sorted(max(a.x, a.right) for a in layer(below, "limits"))
    assert starts == pytest.approx([on_axis(below, 118), on_axis(below, 300)], abs=0.1)


@pytest.mark.parametrize(("limit", "at"), [("above", "left"), ("below", "right")])
def test_a_bound_that_points_over_the_values_from_far_off_is_an_arrow_across_the_field(limit: str, at: str) -> None:
    """More than 10 lies anywhere along 200 to 202: an arrow at one end would look like more, or less, than it is."""
    svg = still_going(200.0, 201.0, 202.0, bounds=(10.0,) if limit == "above" else (900.0,), limit=limit).svg
    (arrow,) = layer(svg, "limits")
    (stroke,) = layer(svg, "limit-breaks")
    ends = sorted((arrow.x, arrow.right))
    assert ends[0] < min(v.x for v in layer(svg, "values"))
    assert ends[1] > max(v.x for v in layer(svg, "values"))
    assert stroke.x == pytest.approx(ends[0] if at == "left" else ends[1], abs=0.1)
