"""Below each budget stands where the range comes from, in words that let it be worked out again."""

from __future__ import annotations

import re
from math import exp, sqrt
from pathlib import Path
from typing import Any

import pytest

from tests.campaigns import compile_campaign, result_of
from tests.lab_reports import report
from tests.pages.reading import Element, read

T_2 = 4.303  # Student's t, 95 %, two degrees of freedom (JCGM 100:2008, table G.2: 4.30)
CAMPAIGN = """\
title: T
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II}
instruments: {g: scale}
measure: {weight: {kind: weighed before and after, unit: g, better: lower, scatter: %s}}
readings: readings.csv
"""


def compiled(place: Path, scatter: str, scale: str, *, corvane: tuple[str, str], ostler: tuple[str, str]) -> Any:
    rows = [f"{who},{n},{w},0" for who, of in (("corvane", corvane), ("ostler", ostler)) for n, w in enumerate(of, 1)]
    return compile_campaign(
        place, CAMPAIGN % scatter, readings="\n".join(["contender,pass,weight before,weight after", *rows]) + "\n",
        **{"instruments.yaml": f"scale: {scale}\n"},
    )  # fmt: skip


def working(place: Path, of: str) -> Element:
    (page,) = (place / "stoves" / ".site").glob(f"*/tests/{of.split('-')[0]}.html")
    return read(page.read_text(encoding="utf-8")).one("div", id=f"result-{of}")


def line(place: Path) -> str:
    text = working(place, "weight-corvane").text.replace("\u00a0", " ")
    (found,) = re.findall(r"The (?:at least )?95 % range .*?(?= Effective)", text)
    return str(found)


def test_passes_alone_are_t_times_their_scatter(tmp_path: Path) -> None:
    """Two products of two passes each share one scatter, with two degrees of freedom (JCGM 100, 4.2.3 and G.3); what the
    scale is off by drops out of the difference."""
    told = compiled(tmp_path, "common", "0.01 g, accuracy ±0.1 g", corvane=("86", "90"), ostler=("112", "116"))
    found = result_of(told, "weight", "corvane")
    assert found["high"] - found["value"] == pytest.approx(T_2 * sqrt(8) / sqrt(2), rel=2e-4)
    assert line(tmp_path).endswith(
        "either way: 2.000 g times t = 4.303, for 2 degrees of freedom (JCGM 100, table G.2). t is more than a bell "
        "curve’s 1.96 because the scatter itself is only known from these runs."
    )


def test_a_step_that_passes_dont_show_stands_beside_their_scatter(tmp_path: Path) -> None:
    """Passes that all but stand on one step scatter by less than half of it: its δ/√12 is then counted beside."""
    told = compile_campaign(
        tmp_path,
        "title: T\ncontenders: {corvane: Corvane Sol, ostler: Ostler Mk II}\nreadings: readings.csv\n"
        "measure: {weight: 'one reading, g, lower, scale'}\n",
        readings="contender,pass,weight\n"
        "corvane,1,86\ncorvane,2,86\ncorvane,3,86\nostler,1,112\nostler,2,112\nostler,3,113\n",
        **{"instruments.yaml": "scale: 1 g, accuracy ±2 g\n"},
    )
    said = line(tmp_path)
    (root,) = re.findall(r"The scatter and the step, together ([\d.]+) g, spread as Student’s t with 4 degrees", said)
    assert float(root) == pytest.approx(sqrt(2 / 3 / 4 / 3 + 1 / 12), abs=6e-4)  # s²/n, s² = (0 + 2/3)/4, and δ²/12
    found = result_of(told, "weight", "corvane")
    assert found["u"] == pytest.approx(sqrt(2 / 3 / 4 / 3 + 1 / 12 + 2**2 / 3))
    assert said.endswith("That isn’t 2 × u.")


def test_scatter_in_proportion_makes_the_range_a_ratio(tmp_path: Path) -> None:
    """ln 90/86 and ln 117.2/112 are 0.0455 and 0.0454: the range of each is its value by one factor to both sides."""
    told = compiled(tmp_path, "relative", "0.01 g, accuracy ±0.1 g", corvane=("86", "90"), ostler=("112", "117.2"))
    found = result_of(told, "weight", "corvane")
    (down, up) = re.findall(r"the value [÷×] ([\d.]+)", line(tmp_path))
    assert down == up
    assert found["low"] == pytest.approx(found["value"] / float(down), rel=1e-4)
    assert found["high"] == pytest.approx(found["value"] * float(up), rel=1e-4)
    assert float(up) == pytest.approx(exp(T_2 * 0.04545 / 2), rel=1e-3)


def test_what_a_laboratory_states_leads_to_its_report(tmp_path: Path) -> None:
    campaign = (
        "title: T\ncontenders: {corvane: Corvane Sol, ostler: Ostler Mk II}\nmeasure:\n  lead:\n    kind: laboratory\n"
        "    unit: mg/kg\n    better: lower\n    laboratory: {name: Lachter, report: attachments/lab-report.pdf, "
        "uncertainty: 10 %, k: 2}\nreadings: readings.csv\n"
    )
    files: dict[str, str | bytes] = {"attachments/lab-report.pdf": report("Lead")}
    compile_campaign(tmp_path, campaign, readings="contender,lead,page\ncorvane,20.4,1\nostler,31,1\n", **files)
    table = working(tmp_path, "lead-corvane").one("table", class_="budget")
    links = {a.text: a.attrs["href"] for a in table.all("a")}
    assert links["Lachter"] == "../files/attachments/lab-report.pdf"
