"""Past campaigns tell how far passes scatter: only those tested before, by the same version, in the same procedure."""

from __future__ import annotations

import json
from math import log, sqrt
from pathlib import Path
from typing import Any

import pytest
from scipy import stats

from reportgen.build.run import audit_path, compile_site
from tests.campaigns import comparison_of

METHOD = """\
title: Noise at one metre
{scatter}repeatability: past campaigns
steps: [Set the meter one metre away., Read the highest steady level.]
"""
OLD = """\
title: Last year's {id}
tested: {tested}
contenders: {{harl: Harl, tolk: Tolk}}
measure:
  noise: {{kind: one reading, unit: {unit}, better: lower, instrument: meter, method: noise-at-a-metre}}
readings: readings.csv
"""
NEW = """\
title: This year's
{tested}contenders: {{corvane: Corvane, ostler: Ostler, brindle: Brindle}}
measure:
  noise: {{kind: one reading, unit: N, better: lower, instrument: meter, method: noise-at-a-metre}}
readings: readings.csv
"""
METER = "meter: {resolution: 0.001 N, accuracy: unknown}\n"
SEEN = {"harl": (71.0, 72.0, 73.0), "tolk": (64.0, 64.5, 65.0, 66.5)}  # squares 2 and 3.5, 2 and 3 degrees of freedom
SD = sqrt((2.0 + 3.5) / 5)


def table(passes: dict[str, tuple[float, ...]], times: float = 1.0) -> str:
    rows = [f"{name},{n},{x * times:.6f}" for name, values in passes.items() for n, x in enumerate(values, 1)]
    return "\n".join(["contender,pass,noise", *rows]) + "\n"


def workspace(place: Path, campaigns: dict[str, dict[str, str]]) -> Path:
    """A workspace of campaigns, each `folder` → file → text; shared instruments are beside them."""
    files = {"content/publication.yaml": "title: T\n", "shared/instruments.yaml": METER}
    files |= {f"{folder}/{name}": text for folder, of in campaigns.items() for name, text in of.items()}
    for name, text in files.items():
        path = place / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return place


def old(
    id: str, tested: str, passes: dict[str, tuple[float, ...]] = SEEN, *, unit: str = "N", times: float = 1.0,
    scatter: str = "", method: str = METHOD,
) -> dict[str, str]:  # fmt: skip
    yaml = OLD.format(id=id, tested=tested, unit=unit)
    return {
        "campaign.yaml": yaml if tested else yaml.replace("tested: \n", ""),
        "readings.csv": table(passes, times),
        "methods/noise-at-a-metre.1.yaml": method.format(scatter=scatter),
    }


def new(once: dict[str, tuple[float, ...]], tested: str = "tested: 2026-05-02\n", scatter: str = "") -> dict[str, str]:
    return {
        "campaign.yaml": NEW.format(tested=tested),
        "readings.csv": table(once),
        "methods/noise-at-a-metre.1.yaml": METHOD.format(scatter=scatter),
    }


ONCE = {"corvane": (70.0,), "ostler": (75.0,), "brindle": (73.0,)}


def told(place: Path, campaign: str = "this-years") -> dict[str, Any]:
    built = compile_site(place)
    found = {p.parent.name: json.loads(p.read_text(encoding="utf-8")) for p in built.out.glob("*/results.json")}
    (record,) = [r for name, r in found.items() if name == campaign or r["campaign"] == campaign]
    return dict(record)


def test_one_pass_each_is_judged_by_the_scatter_of_a_campaign_tested_before(tmp_path: Path) -> None:
    """JUDGING 6: u = σ√2, Student's t with the degrees of freedom of the past passes (JCGM 100, 4.2.4 and G.3)."""
    record = told(workspace(tmp_path, {"older": old("one", "2025-09-06"), "this-years": new(ONCE)}))
    pair = comparison_of(record, "noise", "corvane", "ostler")
    (scatter,) = [s for s in record["scatters"] if s["quantity"] == "noise"]
    assert (scatter["origin"], scatter["declared_by"], scatter["degrees"]) == ("declared", "past campaigns", 5)
    assert scatter["sd"] == pytest.approx(SD)
    assert [p["campaign"] for p in scatter["past"]] == ["older"]
    assert pair["u"] == pytest.approx(SD * sqrt(2), rel=1e-6)
    q = stats.studentized_range.ppf(0.95, 3, 5) / sqrt(2)
    assert pair["high"] - pair["difference"] == pytest.approx(q * SD * sqrt(2), rel=1e-4)
    assert record["first"][0]["winner"] is None  # 3 N ahead of the next, and t(5)·σ√2 is 3.8
    assert stats.t.ppf(0.975, 5) * SD * sqrt(2) == pytest.approx(3.8, abs=0.05)


def test_a_lead_beyond_what_past_passes_allow_is_a_first_place(tmp_path: Path) -> None:
    apart = {"corvane": (66.0,), "ostler": (75.0,), "brindle": (73.0,)}
    record = told(workspace(tmp_path, {"older": old("one", "2025-09-06"), "this-years": new(apart)}))
    assert record["first"][0]["winner"] == "corvane"
    page = (tmp_path / ".site/this-years/tests/noise.html").read_text(encoding="utf-8")
    assert 'href="../../older/index.html"' in page
    assert "past campaigns" in page


def test_campaigns_are_pooled_by_their_degrees_of_freedom_and_units_converted(tmp_path: Path) -> None:
    """1 kN = 1000 N. Pooled: (5·σ² + 2·1²)/7, by hand."""
    more = {"harl": (50.0, 51.0, 52.0), "tolk": (40.0,)}
    places = {
        "older": old("one", "2024-09-06"),
        "newer": old("two", "2025-09-06", more, unit="kN", times=0.001),
        "this-years": new(ONCE),
    }
    (scatter,) = told(workspace(tmp_path, places))["scatters"]
    assert scatter["degrees"] == 7
    assert scatter["sd"] == pytest.approx(sqrt((5.5 + 2.0) / 7), rel=1e-6)
    assert [p["campaign"] for p in scatter["past"]] == ["newer", "older"]


@pytest.mark.parametrize("rule", ["", "scatter: relative\n"])
def test_passes_count_once_however_many_tests_went_by_the_method(tmp_path: Path, rule: str) -> None:
    """By hand: three passes and four leave 2 and 3 degrees of freedom, whatever else was measured in the same way."""
    older = old("one", "2025-09-06", scatter=rule)
    hum = "  hum: {kind: one reading, unit: N, better: lower, instrument: meter, method: noise-at-a-metre}\n"
    heading, *rows = older["readings.csv"].splitlines()
    older["campaign.yaml"] = older["campaign.yaml"].replace("readings:", f"{hum}readings:")
    older["readings.csv"] = "\n".join([f"{heading},hum", *(f"{row},{n}.0" for n, row in enumerate(rows, 20)), ""])
    place = workspace(tmp_path, {"older": older, "this-years": new(ONCE, scatter=rule)})
    (scatter,) = told(place)["scatters"]
    assert (scatter["degrees"], [p["campaign"] for p in scatter["past"]]) == (5, ["older"])
    assert "is left out" not in (tmp_path / ".site/this-years/tests/noise.html").read_text(encoding="utf-8")


def test_relative_scatter_is_pooled_in_logarithms(tmp_path: Path) -> None:
    """By hand: of three passes 9, 10, 11 the logarithms' standard deviation, here of values a hundred times as large."""
    logs = [log(x) for x in (9.0, 10.0, 11.0)]
    mean = sum(logs) / 3
    sd = sqrt(sum((x - mean) ** 2 for x in logs) / 2)
    past = {"harl": (900.0, 1000.0, 1100.0), "tolk": (5.0,)}
    rule = "scatter: relative\n"
    places = {"older": old("one", "2025-09-06", past, scatter=rule), "this-years": new(ONCE, scatter=rule)}
    (scatter,) = told(workspace(tmp_path, places))["scatters"]
    assert (scatter["degrees"], scatter["rule"]) == (2, "relative")
    assert scatter["sd"] == pytest.approx(sd, rel=1e-6)


@pytest.mark.parametrize(
    ("tested", "why"), [("", "undated"), ("2026-05-02", ""), ("2026-06-01", ""), ("2026-04-30 to 2026-05-05", "")]
)
def test_only_what_was_tested_before_counts_and_undated_campaigns_are_said(
    tmp_path: Path, tested: str, why: str
) -> None:
    place = workspace(tmp_path, {"older": old("one", tested), "this-years": new(ONCE)})
    record = told(place)
    (scatter,) = record["scatters"]
    assert (scatter["origin"], scatter["past"]) == ("none", [])
    assert comparison_of(record, "noise", "corvane", "ostler")["decision"] == "not enough to say"
    said = [f for f in audit_path(place) if f.rule == "past-campaigns" and f.place.file.startswith("this")]
    assert said
    assert ("isn't dated" in said[0].says) == bool(why)


def test_a_campaign_that_is_not_dated_itself_looks_at_none(tmp_path: Path) -> None:
    place = workspace(tmp_path, {"older": old("one", "2025-09-06"), "this-years": new(ONCE, tested="")})
    (scatter,) = told(place)["scatters"]
    assert scatter["origin"] == "none"
    (said,) = [f for f in audit_path(place) if f.rule == "past-campaigns" and f.place.file.startswith("this")]
    assert "tested:" in said.do


def test_a_version_whose_words_were_changed_is_another_procedure(tmp_path: Path) -> None:
    other = METHOD.replace("one metre away", "two metres away")
    place = workspace(tmp_path, {"older": old("one", "2025-09-06", method=other), "this-years": new(ONCE)})
    (scatter,) = told(place)["scatters"]
    assert scatter["origin"] == "none"
    assert any("other steps" in f.says for f in audit_path(place) if f.rule == "past-campaigns")


def test_what_rests_on_the_past_is_no_past_of_its_own(tmp_path: Path) -> None:
    """Two campaigns that each look back: the later counts the passes of both, and the first one's only once."""
    places = {
        "older": old("one", "2024-09-06"),
        "newer": old("two", "2025-09-06", {"harl": (50.0, 51.0, 52.0), "tolk": (40.0,)}),
        "this-years": new(ONCE),
    }
    place = workspace(tmp_path, places)
    assert told(place, "this-years")["scatters"][0]["degrees"] == 7
    assert told(place, "newer")["scatters"][0]["past"] == []  # its own passes, 2 degrees; 5 of the past don't join
    assert told(place, "newer")["scatters"][0]["origin"] == "passes"


def test_twenty_degrees_from_the_past_join_the_passes(tmp_path: Path) -> None:
    many = {"harl": tuple(70.0 + (n % 3) for n in range(15)), "tolk": tuple(60.0 + (n % 3) for n in range(15))}
    twice = {"corvane": (70.0, 71.0), "ostler": (75.0, 74.0), "brindle": (73.0, 73.5)}
    record = told(workspace(tmp_path, {"older": old("one", "2025-09-06", many), "this-years": new(twice)}))
    (scatter,) = record["scatters"]
    past = 28 * (2 * 10 * (2 / 3) * 15 / 10 / 28)  # Σ squares: 15 values 0, 1, 2 five times each have 10, twice
    assert (scatter["origin"], scatter["degrees"]) == ("both", 31)
    assert scatter["sd"] == pytest.approx(sqrt((past + 0.5 + 0.5 + 0.125) / 31), rel=1e-6)


def test_steps_that_hid_the_scatter_then_are_added(tmp_path: Path) -> None:
    """All passes alike on a scale of 1 N show that it steps, not that all repeats: δ²/12 (JCGM 100, F.2.2.1)."""
    same = {"harl": (71.0, 71.0, 71.0), "tolk": (64.0, 64.0, 64.0)}
    coarse = METER.replace("0.001 N", "1 N")
    places = {"older": {**old("one", "2025-09-06", same), "instruments.yaml": coarse}, "this-years": new(ONCE)}
    (scatter,) = told(workspace(tmp_path, places))["scatters"]
    assert scatter["sd"] == pytest.approx(1 / sqrt(12), rel=1e-6)


def test_a_change_in_the_past_campaign_reaches_the_later_one_at_the_next_compile(tmp_path: Path) -> None:
    place = workspace(tmp_path, {"older": old("one", "2025-09-06"), "this-years": new(ONCE)})
    before = comparison_of(told(place), "noise", "corvane", "ostler")["u"]
    (place / "older/readings.csv").write_text(table({**SEEN, "harl": (69.0, 72.0, 75.0)}), encoding="utf-8")
    after = comparison_of(told(place), "noise", "corvane", "ostler")["u"]
    assert before == pytest.approx(sqrt(2 * 5.5 / 5), rel=1e-6)
    assert after == pytest.approx(sqrt(2 * (18 + 3.5) / 5), rel=1e-6)


def test_one_quantity_alone_may_look_back_and_a_stated_figure_stays(tmp_path: Path) -> None:
    method = "title: Noise at one metre\nrepeatability:\n  noise: past campaigns\n  hum: 0.4 N\n  passes: 12\n  products: 3\n"
    places = {"older": old("one", "2025-09-06", method=method), "this-years": new(ONCE)}
    places["this-years"]["methods/noise-at-a-metre.1.yaml"] = method
    (scatter,) = told(workspace(tmp_path, places))["scatters"]
    assert scatter["declared_by"] == "past campaigns"


def test_a_repeatability_of_other_words_is_refused_with_its_line(tmp_path: Path) -> None:
    places = {"this-years": new(ONCE)}
    places["this-years"]["methods/noise-at-a-metre.1.yaml"] = "title: Noise\nrepeatability: earlier campaigns\n"
    (found,) = [f for f in audit_path(workspace(tmp_path, places)) if f.severity == "error"]
    assert found.place.line == 2
    assert "past campaigns" in found.do


def test_specimens_that_scatter_are_no_passes_of_one(tmp_path: Path) -> None:
    rows = "contender,specimen,pass,noise\nharl,A,1,71.0\nharl,B,1,75.0\ntolk,A,1,64.0\ntolk,B,1,69.0\n"
    places = {"older": {**old("one", "2025-09-06"), "readings.csv": rows}, "this-years": new(ONCE)}
    places["older"]["campaign.yaml"] = places["older"]["campaign.yaml"].replace(
        "{harl: Harl, tolk: Tolk}", "{harl: {title: Harl, specimens: [A, B]}, tolk: {title: Tolk, specimens: [A, B]}}"
    )
    (scatter,) = told(workspace(tmp_path, places))["scatters"]
    assert scatter["origin"] == "none"


def test_the_example_of_the_handbook_comes_out_as_it_says(tmp_path: Path) -> None:
    """Instruments and methods, *Past campaigns tell it*: 0.3 and 0.5 together 0.41, and 1.6 apart; by hand t(4) = 2.78."""
    autumn = {"harl": (60.0, 60.3, 59.7), "tolk": (65.0, 65.5, 64.5)}
    assert 2.78 * 0.412 * sqrt(2) == pytest.approx(1.62, abs=0.005)
    for gap, winner in ((1.55, None), (1.7, "corvane")):
        once = {"corvane": (60.0,), "ostler": (60.0 + gap,)}
        place = tmp_path / str(gap)
        of = new(once)
        of["campaign.yaml"] = of["campaign.yaml"].replace(", brindle: Brindle", "")
        record = told(workspace(place, {"older": old("one", "2025-10-11", autumn), "this-years": of}))
        assert record["scatters"][0]["sd"] == pytest.approx(0.41, abs=0.005)
        assert record["scatters"][0]["degrees"] == 4
        assert record["first"][0]["winner"] == winner
