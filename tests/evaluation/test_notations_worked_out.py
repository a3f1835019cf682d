"""Rough, unweighed, shared and relative readings, worked out: against `uncertainties` and hand sums."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st
from uncertainties import correlation_matrix

from reportgen.evaluation.observing import Observer
from reportgen.evaluation.says import says_of
from reportgen.finding import Refused
from reportgen.intake.reading import ReadingKey
from reportgen.metrology.arithmetic import add, subtract
from reportgen.metrology.errors import NoValue
from reportgen.metrology.uncertain import Limit, combined_standard_uncertainty, correlation_coefficient
from tests.evaluation.bench import THREE, all_stages, evaluated, observer, pair, result, uniform, value

SCALE = "instruments: {scale: '1 g, up to 5000 g, accuracy ±(2 g + 1 %)'}\n"
FUEL = f"title: Fuel\n{THREE}{SCALE}measure:\n  fuel: one reading, g, lower, scale\nreadings: readings.csv\n"
NET = f"""title: Net
{THREE}{SCALE}readings: readings.csv
tests:
  net:
    title: Net
    readings: {{file: readings.csv, columns: {{jar: {{unit: g, instrument: scale}}, full: {{unit: g, instrument: scale}}}}}}
    quantities:
      net weight: {{formula: full - jar, unit: g, better: lower}}
"""
HEAT = f"""title: Heat
{THREE}instruments: {{probe: '0.1 °C, accuracy ±1 °C'}}
measure:
  heat: one reading, °C, lower, probe
readings: readings.csv
"""


@pytest.mark.parametrize(
    ("text", "middle", "half"), [("about 250", 250, 10), ("250 ±25", 250, 25), ("200 to 300", 250, 50)]
)
def test_a_stated_width_is_uniform_its_own_and_beside_the_instrument(
    text: str, middle: float, half: float, tmp_path: Path
) -> None:
    _, found = observer(tmp_path, FUEL, f"contender,fuel\ncorvane,{text}\nostler,300\n")
    seen = found["corvane", "fuel"]
    witness = middle + uniform(half) + uniform(2) + middle / 100 * uniform(1) + uniform(0.5)
    assert seen.value == middle
    assert combined_standard_uncertainty(seen) == pytest.approx(witness.std_dev, rel=1e-12)


def test_digits_of_a_rough_reading_are_no_step(tmp_path: Path) -> None:
    plain = FUEL.replace(", scale\n", "\n").replace(SCALE, "")
    _, found = observer(tmp_path, plain, "contender,fuel\ncorvane,about 250\nostler,300.25\n")
    assert combined_standard_uncertainty(found["corvane", "fuel"]) == pytest.approx(10 / math.sqrt(3))
    assert combined_standard_uncertainty(found["ostler", "fuel"]) == pytest.approx(0.01 / math.sqrt(12))


def test_a_reading_for_all_is_one_variable(tmp_path: Path) -> None:
    """An empty jar weighed once: `uncertainties` on the same inputs gives the same correlation and difference."""
    _, found = observer(tmp_path, NET, "contender,jar,full\nall,120,\ncorvane,,351\nostler,,380\n")
    ours = [subtract(found[c, "full"], found[c, "jar"]) for c in ("corvane", "ostler")]
    offset, gain, rounding = uniform(2), uniform(1) / 100, [uniform(0.5) for _ in range(3)]
    jar = 120 + offset + 120 * gain + rounding[0]
    theirs = [full + offset + full * gain + step - jar for full, step in zip((351, 380), rounding[1:], strict=True)]
    assert correlation_coefficient(*ours) == pytest.approx(correlation_matrix(theirs)[0][1], rel=1e-9)
    assert combined_standard_uncertainty(subtract(*ours)) == pytest.approx((theirs[0] - theirs[1]).std_dev, rel=1e-9)
    assert combined_standard_uncertainty(ours[0]) == pytest.approx(theirs[0].std_dev, rel=1e-9)


def test_its_step_leaves_a_comparison_and_stays_in_a_result(tmp_path: Path) -> None:
    shared = evaluated(tmp_path / "a", NET, readings="contender,jar,full\nall,120,\ncorvane,,351\nostler,,351\n")
    apart = evaluated(tmp_path / "b", NET, readings="contender,jar,full\ncorvane,120,351\nostler,120,351\n")
    widths = [pair(e, "net-weight", "corvane", "ostler").differed_high for e in (shared, apart)]
    assert widths[0] is not None
    assert widths[1] is not None
    assert widths[0] < widths[1]
    one, other = (result(e, "net-weight", "corvane").u for e in (shared, apart))
    assert one == pytest.approx(other)


def test_a_reading_against_another_stands_on_it_as_one_variable(tmp_path: Path) -> None:
    """The offset cancels in the difference, the gain keeps its share of it, the step is the difference's own."""
    _, found = observer(tmp_path, FUEL, "contender,fuel\nostler,300\ncorvane,the red one + 72\n")
    ostler, corvane = found["ostler", "fuel"], found["corvane", "fuel"]
    assert corvane.value == 372
    offset, gain, steps = uniform(2), uniform(1) / 100, [uniform(0.5), uniform(0.5)]
    theirs = 300 + offset + 300 * gain + steps[0]
    there = theirs + 72 + 72 * gain + steps[1]
    assert combined_standard_uncertainty(corvane) == pytest.approx(there.std_dev, rel=1e-9)
    assert combined_standard_uncertainty(subtract(corvane, ostler)) == pytest.approx((there - theirs).std_dev, rel=1e-9)
    assert correlation_coefficient(corvane, ostler) == pytest.approx(
        correlation_matrix([there, theirs])[0][1], rel=1e-9
    )


def test_errors_that_nothing_shares_come_once_an_end(tmp_path: Path) -> None:
    text = FUEL.replace(
        "{scale: '1 g, up to 5000 g, accuracy ±(2 g + 1 %)'}", "{scale: '1 g, accuracy ±2 g, shared nothing'}"
    )
    _, found = observer(tmp_path, text, "contender,fuel\nostler,300\ncorvane,ostler + 72\n")
    there = 372 + uniform(2) + uniform(0.5) + uniform(2) + uniform(2) + uniform(0.5)
    assert combined_standard_uncertainty(found["corvane", "fuel"]) == pytest.approx(there.std_dev, rel=1e-9)


def test_ninety_degrees_fahrenheit_of_difference_are_fifty_kelvin(tmp_path: Path) -> None:
    # NIST SP 811 (2008), B.8 and IEEE/ASTM SI 10: an interval of 1 °F is 5/9 K
    told = evaluated(
        tmp_path, HEAT, readings="contender,heat\nostler,55.2\ncorvane,ostler + 90 °F\nbrindle,ostler - 18 K\n"
    )
    assert value(told, "heat", "corvane") == pytest.approx(105.2)
    assert value(told, "heat", "brindle") == pytest.approx(37.2)


def test_a_level_takes_a_difference_in_plain_decibels(tmp_path: Path) -> None:
    text = HEAT.replace("°C, lower, probe", "dB(A), lower").replace("one reading", "level").replace(
        "instruments: {probe: '0.1 °C, accuracy ±1 °C'}\n", "")  # fmt: skip
    told = evaluated(
        tmp_path, text, readings="contender,heat\nostler,71.2\ncorvane,ostler - 3.5 dB\nbrindle,ostler + 2\n"
    )
    assert value(told, "heat", "corvane") == pytest.approx(67.7)
    assert value(told, "heat", "brindle") == pytest.approx(73.2)


def test_where_the_other_has_several_passes_the_caveat_says_which(tmp_path: Path) -> None:
    told = evaluated(
        tmp_path, FUEL, readings="contender,pass,fuel\nostler,1,300\nostler,2,310\ncorvane,2,ostler + 72\nbrindle,1,9\n"
    )
    assert value(told, "fuel", "corvane") == 382
    (caveat,) = [c for c in told.caveats if c.met and c.met.code == "against"]
    assert "“ostler + 72” (Corvane Sol, against pass 2)" in says_of(caveat)


def test_a_chain_of_readings_ends_in_one(tmp_path: Path) -> None:
    told = evaluated(tmp_path, FUEL, readings="contender,fuel\nbrindle,corvane - 2\ncorvane,ostler + 72\nostler,300\n")
    assert value(told, "fuel", "brindle") == 370
    assert {k.contender for k in result(told, "fuel", "brindle").rests_on} == {"corvane", "ostler", "brindle"}


def test_the_others_reading_may_be_off_its_scale_or_missing(tmp_path: Path) -> None:
    off = evaluated(tmp_path / "a", FUEL, readings="contender,fuel\nostler,over 300\ncorvane,ostler + 72\nbrindle,5\n")
    estimate = result(off, "fuel", "corvane").estimate
    assert estimate is not None
    assert (estimate.value, estimate.limit) == (372, "above")
    lost = evaluated(
        tmp_path / "b", FUEL, readings="contender,fuel\nostler,none (spilled)\ncorvane,ostler + 72\nbrindle,5\n"
    )
    assert "spilled" in result(lost, "fuel", "corvane").missing


def test_what_bears_on_the_others_reading_travels(tmp_path: Path) -> None:
    text = FUEL.replace("  fuel: one reading, g, lower, scale\n", "").replace("measure:\n", "") + (
        "tests:\n  fuel:\n    title: Fuel\n    quantities:\n"
        "      fuel: {kind: one reading, unit: g, better: lower, instrument: scale}\n"
        "    exclude:\n      - {contender: ostler, pass: 2, because: the lid was on, decided: during the test}\n"
        "    caveats:\n      - {contender: ostler, pass: 1, says: The hob was warm.}\n"
    )
    rows = "contender,pass,fuel\nostler,1,300\nostler,2,400\ncorvane,1,ostler + 2\ncorvane,2,ostler + 4\nbrindle,1,9\n"
    told = evaluated(tmp_path, text, readings=rows)
    found = result(told, "fuel", "corvane")
    assert (found.estimate.value if found.estimate else None, found.passes, found.excluded) == (302, 1, 1)
    warm = next(c for c in told.caveats if says_of(c) == "The hob was warm.")
    assert warm.touches & found.rests_on


def test_each_sort_of_reading_is_told_once_a_column_and_names_its_texts(tmp_path: Path) -> None:
    rows = "contender,fuel\nostler,about 250\ncorvane,the red one + 2 to 3\nbrindle,some\n"
    said = [says_of(c) for c in evaluated(tmp_path, FUEL, readings=rows).caveats if c.sort == "reading"]
    assert len(said) == 3
    assert "“about 250” counts as 250\u00a0g ±\u00a010\u00a0g" in said[0]
    assert "“the red one + 2 to 3” counts as 2.5\u00a0g ±\u00a00.5\u00a0g" in said[0]
    assert "our convention" in said[0]
    assert "“some” (Brindle)" in said[1]
    assert "“the red one + 2 to 3” (Corvane Sol)" in said[2]


BALANCE = f"""title: Balance
{THREE}tests:
  fuel:
    title: Fuel
    readings: {{file: readings.csv, columns: {{start: {{unit: g}}, end: {{unit: g}}, added: {{unit: g}}}}}}
    headline: used
    quantities:
      used: {{formula: start - end + added, unit: g}}
      left: {{formula: start - added, unit: g}}
      share: {{formula: 100 * added / start, unit: g/g}}
      both: {{formula: used + added, unit: g}}
      per: {{formula: start / added, unit: g/g}}
"""


def test_some_makes_more_than_of_sums_and_less_than_of_what_it_is_taken_from(tmp_path: Path) -> None:
    told = evaluated(
        tmp_path,
        BALANCE,
        readings="contender,start,end,added\ncorvane,500,100,some\nostler,500,some,0\nbrindle,500,100,20\n",
    )

    def bound(quantity: str, contender: str) -> tuple[float | None, Limit | None]:
        estimate = result(told, quantity, contender).estimate
        assert estimate is not None
        return estimate.value, estimate.limit

    assert bound("used", "corvane") == (400, "above")
    assert bound("left", "corvane") == (500, "below")
    assert bound("share", "corvane") == (0, "above")
    assert bound("both", "corvane") == (400, "above")
    assert bound("used", "ostler") == (500, "below")
    assert bound("used", "brindle") == (420, None)
    assert "division" in result(told, "per", "corvane").missing


def test_nothing_added_adds_no_error_of_a_scale_where_nought_read_on_it_does(tmp_path: Path) -> None:
    """Two steps of 1 g and none of the scale's offset, which before less after leaves out: √2/√12 g (JCGM 100, 4.3.7).
    A 0 on the display is a third reading, and its offset of ±3 g stays: 3/√3 g."""
    told = evaluated(
        tmp_path,
        "title: T\ncontenders: {corvane: Corvane Sol, ostler: Ostler Mk II}\ntests: [fuel]\n",
        **{
            "tests/fuel.yaml": "title: F\nreadings:\n  file: fuel.csv\n  columns:\n"
            + "".join(f"    {c}: {{unit: g, instrument: scale}}\n" for c in ("start", "end", "added"))
            + "quantities:\n  fuel: {formula: start - end + added, unit: g, better: lower}\nheadline: fuel\n",
            "instruments.yaml": "scale: {resolution: 1 g, accuracy: ±3 g, shared: offset}\n",
            "fuel.csv": "contender,start,end,added\ncorvane,503,121,nothing\nostler,507,98,0\n",
        },
    )
    assert result(told, "fuel", "corvane").u == pytest.approx(math.sqrt(2 / 12))
    assert result(told, "fuel", "ostler").u == pytest.approx(math.sqrt(3 / 12 + 3))


def test_some_alone_is_more_than_nothing(tmp_path: Path) -> None:
    told = evaluated(tmp_path, FUEL, readings="contender,fuel\ncorvane,some\nostler,10\nbrindle,12\n")
    estimate = result(told, "fuel", "corvane").estimate
    assert estimate is not None
    assert (estimate.value, estimate.limit, estimate.contributions) == (0, "above", ())


@pytest.mark.parametrize(
    ("text", "unit"),
    [(HEAT, "°C"), (HEAT.replace("°C, lower, probe", "dB, lower").replace("one reading", "level"), "dB")],
)
def test_some_of_what_has_no_nothing_is_refused(text: str, unit: str, tmp_path: Path) -> None:
    with pytest.raises(Refused) as refused:
        evaluated(tmp_path, text, readings="contender,heat\ncorvane,some\nostler,10\nbrindle,12\n")
    (found,) = [f for f in refused.value.findings if f.rule == "some-of-nothing"]
    assert (found.place.line, found.place.column) == (2, 2)
    assert unit in found.says


def test_more_than_another_contender_has_a_meaning_even_for_temperatures(tmp_path: Path) -> None:
    told = evaluated(
        tmp_path, HEAT, readings="contender,heat\nostler,55.2\ncorvane,ostler + some\nbrindle,ostler - some\n"
    )
    for who, limit in (("corvane", "above"), ("brindle", "below")):
        estimate = result(told, "heat", who).estimate
        assert estimate is not None
        assert (estimate.value, estimate.limit) == (55.2, limit)


def test_kilograms_of_a_pull_scale_are_named_kgf(tmp_path: Path) -> None:
    text = FUEL.replace("one reading, g, lower, scale", "one reading, N, lower").replace(SCALE, "")
    with pytest.raises(Refused) as refused:
        evaluated(tmp_path, text, readings="contender,fuel\ncorvane,12 N\nostler,1.2 kg\nbrindle,12\n")
    assert any("kgf" in f.do for f in refused.value.findings)


CELLS = st.sampled_from(
    ["250", "about 250", "250 ±10", "2 to 3", "some", "over 300", "under 5", "over unknown", "none (spilled)", "",
     "ostler + 72", "corvane - about 7", "brindle + some", "ostler - over 5", "the red one + 1 kg", "frames 3 to 9"]
)  # fmt: skip


@example(cells=["brindle + some", "250", "corvane - about 7", "250", "under 5", "250"], everyone="250")
@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(cells=st.lists(CELLS, min_size=6, max_size=6), everyone=CELLS)
def test_no_mixture_of_cells_breaks_a_campaign(cells: list[str], everyone: str, tmp_path: Path) -> None:
    """Each is worked out or refused with a place; what stands on a rough reading is never more certain than it."""
    rows = "".join(f"{c},{p},{cell}\n" for (c, p), cell in zip([(c, p) for c in ("corvane", "ostler", "brindle") for p in (1, 2)], cells, strict=True))  # fmt: skip
    rows += f"all,2,{everyone}\n" if everyone else ""
    try:
        declared, read, told = all_stages(tmp_path, FUEL, readings=f"contender,pass,fuel\n{rows}")
    except Refused as refused:
        nowhere = [f for f in refused.findings if not (f.place.file and f.says)]
        if nowhere:
            raise AssertionError(nowhere) from refused
        return
    bench = Observer(declared.campaign, read.readings)
    for key, reading in read.readings.items():
        if reading.width is not None and reading.limit is None and _is_read(read.readings, key):
            try:
                seen = bench.observed(reading)
            except NoValue:  # a bound from above on one from below: the result is missing, with its reason
                continue
            bound = seen.value is None and seen.limit is not None  # it stands on one that has no size
            assert bound or combined_standard_uncertainty(seen) >= float(reading.width) / math.sqrt(3) * (1 - 1e-12)
    for r in told.results:
        assert r.missing or (r.estimate is not None and (r.estimate.value is not None or r.estimate.limit))


def _is_read(readings: object, key: ReadingKey) -> bool:
    from reportgen.intake.notations.against import chain_of

    assert isinstance(readings, dict)
    return not any(r.absent_because for r in chain_of(readings[key], readings))


def test_a_difference_added_back_is_the_reading_itself(tmp_path: Path) -> None:
    _, found = observer(tmp_path, FUEL, "contender,fuel\nostler,300\ncorvane,ostler + 0\nbrindle,7\n")
    again = subtract(add(found["ostler", "fuel"], found["corvane", "fuel"]), found["ostler", "fuel"])
    assert combined_standard_uncertainty(again) == pytest.approx(
        combined_standard_uncertainty(found["corvane", "fuel"])
    )


def test_a_reading_for_all_makes_no_session_of_its_own(tmp_path: Path) -> None:
    """Contenders run on two days stay apart, though one jar, weighed on a third, serves both."""
    rows = (
        "contender,pass,session,jar,full\nall,,prep,120,\n"
        "corvane,1,day 1,,351\ncorvane,2,day 1,,355\nostler,1,day 2,,380\nostler,2,day 2,,386\n"
    )
    seen = pair(evaluated(tmp_path, NET, readings=rows), "net-weight", "corvane", "ostler")
    assert seen.reason.code == "sessions-apart"


@pytest.mark.parametrize(
    ("cells", "found", "limit"),
    [
        (("5", "some"), 2.5, "above"),
        (("5", "over 12"), 8.5, "above"),
        (("5", "over unknown"), None, "above"),
        (("5", "ostler + 3"), 7, None),  # ostler counted 6 in the second pass
    ],
)
def test_counts_with_limits_keep_them(
    cells: tuple[str, str], found: float | None, limit: str | None, tmp_path: Path
) -> None:
    text = FUEL.replace("one reading, g, lower, scale", "count")
    rows = f"contender,pass,fuel\ncorvane,1,{cells[0]}\ncorvane,2,{cells[1]}\nostler,1,2\nostler,2,6\nbrindle,1,0\n"
    estimate = result(evaluated(tmp_path, text, readings=rows), "fuel", "corvane").estimate
    assert estimate is not None
    assert (estimate.value, estimate.limit) == (found, limit)


def test_counts_that_pull_apart_have_no_mean(tmp_path: Path) -> None:
    text = FUEL.replace("one reading, g, lower, scale", "count")
    rows = "contender,pass,fuel\ncorvane,1,over 12\ncorvane,2,under 3\nostler,1,2\nbrindle,1,0\n"
    assert "anything" in result(evaluated(tmp_path, text, readings=rows), "fuel", "corvane").missing
