"""A drawing is small, carries nothing a page may not carry, and comes out the same in every process."""

from __future__ import annotations

import hashlib
import subprocess
import sys
from functools import cache
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

from reportgen.charts.draw import drawn, figures
from reportgen.charts.scale import axis
from reportgen.charts.tidy import Untidy, tidy
from tests.charts.bench_of_results import amount, campaign, contenders, measured, quantity
from tests.charts.pictures import layer, parsed

ROOT = Path(__file__).parents[2]


@cache
def shown() -> str:
    return some_svg()


def some_svg() -> str:
    q = quantity(matters=amount("1 g"))
    results = [measured(q, f"stove-{n}", [14.0 + n, 14.3 + n, 13.9 + n], 0.6, rank=(1, 4)) for n in range(4)]
    return figures(*campaign(contenders(*[f"Stove {n}" for n in range(4)]), [(q, results)]))[q.id].svg


def test_the_same_results_give_the_same_bytes_again_and_in_another_process() -> None:
    here = some_svg()
    assert shown() == here
    code = (
        "import hashlib; from tests.charts.test_drawings_as_files import some_svg; "
        "print(hashlib.sha256(some_svg().encode()).hexdigest())"
    )
    there = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True)
    assert there.stdout.strip() == hashlib.sha256(here.encode()).hexdigest()


def test_a_drawing_has_no_style_no_size_no_font_and_asks_for_nothing_from_outside() -> None:
    root = parsed(shown())
    assert {"width", "height"}.isdisjoint(root.attrib)
    assert root.get("role") == "img"
    for element in root.iter():
        assert element.tag.rpartition("}")[2] in {"svg", "g", "path", "text", "line"}
        assert not {a for a in element.attrib if a in {"style", "id", "font-family", "filter"} or "href" in a}
        assert not any("url(" in v or "://" in v for v in element.attrib.values())


def test_a_drawing_takes_its_colours_from_the_page() -> None:
    inks = {e.get(a) for e in parsed(shown()).iter() for a in ("fill", "stroke")} - {None, "none"}
    assert "currentColor" in inks
    assert all(ink == "currentColor" or str(ink).startswith("var(--c") for ink in inks)


def test_four_contenders_and_three_passes_fit_into_seven_kilobytes() -> None:
    assert len(shown().encode()) < 7000


@pytest.mark.parametrize(
    "smuggled", ['<image href="x.png"/>', '<g style="fill:red"/>', "<script>1</script>", '<a href="x"/>']
)
def test_what_a_page_may_not_carry_is_refused(smuggled: str) -> None:
    with pytest.raises(Untidy):
        tidy(f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1"><g>{smuggled}</g></svg>', "x", "y")


@pytest.mark.parametrize(
    "name", ["<script>alert(1)</script>", "http://example.org/a.png", "a & b \" c ' d", "datum.x", "{{x}}"]
)
def test_names_are_text_and_nothing_else(name: str) -> None:
    q = quantity()
    (one,) = contenders("x")
    from dataclasses import replace

    shown = figures(*campaign([replace(one, title=name)], [(q, [measured(q, "x", [1.0, 2.0])])]))[q.id]
    told = "".join(t.text for t in layer(shown.svg, "names"))
    assert told.rstrip("…").replace(" ", "")[:8] == name.replace(" ", "")[:8]
    assert name in shown.alt


def test_what_is_handed_to_the_converter_is_a_valid_specification(monkeypatch: pytest.MonkeyPatch) -> None:
    """By the schema of Vega-Lite, as the library that carries it checks; numbers are put in after the first check."""
    import altair
    import vl_convert

    handed: list[dict[str, Any]] = []
    really = vl_convert.vegalite_to_svg
    monkeypatch.setattr(vl_convert, "vegalite_to_svg", lambda spec, **kw: handed.append(spec) or really(spec, **kw))
    some_svg()
    (spec,) = handed
    assert len(altair.Chart.from_dict(spec, validate=True).layer) > 10
    assert "url" not in str(spec)


def test_one_contender_equal_values_and_forty_contenders_are_drawn() -> None:
    q = quantity()
    for count in (1, 2, 40):
        tried = contenders(*[f"An exceedingly long-winded name {n}" for n in range(count)])
        results = [measured(q, c.id, [5.0, 5.0, 5.0], 0.0, rank=(1, count)) for c in tried]
        svg = figures(*campaign(tried, [(q, results)]))[q.id].svg
        assert len(layer(svg, "values")) == count
        assert len(layer(svg, "passes")) == 3 * count
        assert len(layer(svg, "letters")) == count


def test_where_nothing_was_read_there_is_a_reason_instead_of_a_chart() -> None:
    q = quantity()
    told = drawn(*campaign(contenders("Solo"), [(q, [measured(q, "solo", [], missing="not yet tested", rank=None)])]))
    assert not told.figures
    assert told.absent == {
        "overview": "nothing here is ranked",
        "money": "prices are not given for two contenders or more",
        q.id: "nothing has been read yet",
    }


def test_only_limits_are_drawn_without_a_made_up_value() -> None:
    q = quantity()
    tried = contenders("One", "Two")
    results = [
        measured(q, c.id, [], limit="below", value=v, rank=(1, 2)) for c, v in zip(tried, (1.0, None), strict=True)
    ]
    svg = figures(*campaign(tried, [(q, results)]))[q.id].svg
    assert not layer(svg, "values")
    assert len(layer(svg, "limits-below")) == 2


def test_a_quantity_called_overview_keeps_its_name() -> None:
    q = quantity("overview", title="Overview from the hill")
    told = figures(*campaign(contenders("Solo"), [(q, [measured(q, "solo", [1.0, 2.0])])]))
    assert told["overview"].title == "Overview from the hill"


@pytest.mark.parametrize("values", [[0.0, 0.0], [5.0], [-3.0, 4.0], [1e-9, 3e-9], [1e9, 1.000001e9], [99.5, 100.5], []])
def test_an_axis_holds_its_values_and_names_round_numbers_at_even_steps(values: list[float]) -> None:
    made = axis(values)
    assert all(made.low <= v <= made.high for v in values)
    assert made.low < made.high
    steps = [b - a for a, b in pairwise(made.ticks)]
    assert 1 <= len(made.ticks) <= 6
    assert steps == pytest.approx([steps[0]] * len(steps), rel=1e-3) if steps else True
    assert all(round(t, made.decimals) == pytest.approx(t, rel=1e-9, abs=1e-15) for t in made.ticks)


def test_bars_begin_at_zero() -> None:
    assert axis([7.0, 9.0], from_zero=True).low == 0
