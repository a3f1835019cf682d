"""One table written by four libraries, each in its own way, is one comparison; crossings along a trace as SciPy has them."""

from __future__ import annotations

import io
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np
import pandas as pd
import pytest
from scipy.integrate import quad
from scipy.interpolate import make_interp_spline
from scipy.optimize import brentq

from tests.campaigns import result_of, results_of

FRAME = pd.DataFrame(
    {
        "contender": ["Zoë, the first", "b", "b", "Zoë, the first"],
        "pass": [1, 1, 2, 2],
        "gas burned": [14.3, 16.3, 16.7, 14.5],
    }
)
YAML = """\
title: T
contenders: {a: {title: The first, also called: ["Zoë, the first"]}, b: The second}
measure: {gas burned: "one reading, g, lower, scale"}
instruments: {scale: "0.1 g, accuracy ±0.3 g"}
readings: NAME
"""


def by_pandas(place: Path) -> tuple[str, bytes]:
    text = FRAME.to_csv(index=False, sep=";", decimal=",", lineterminator="\r\n")
    return "day.csv", text.encode("utf-16")


def by_arrow(place: Path) -> tuple[str, bytes]:
    import pyarrow
    from pyarrow import csv

    out = io.BytesIO()
    csv.write_csv(pyarrow.Table.from_pandas(FRAME, preserve_index=False), out)  # quotes every text
    return "day.csv", out.getvalue()


def by_duckdb(place: Path) -> tuple[str, bytes]:
    import duckdb

    path = place / "day.tsv"
    frame = FRAME  # noqa: F841  DuckDB finds it by its name
    duckdb.sql(f"COPY (SELECT * FROM frame) TO '{path}' (HEADER, DELIMITER '\t', FORCE_QUOTE *)")
    return "day.tsv", path.read_bytes()


def by_openpyxl(place: Path) -> tuple[str, bytes]:
    out = io.BytesIO()
    FRAME.to_excel(out, index=False, engine="openpyxl")
    return "day.xlsx", out.getvalue()


@pytest.mark.parametrize("write", [by_pandas, by_arrow, by_duckdb, by_openpyxl])
def test_a_table_means_the_same_whoever_wrote_it(write: Callable[[Path], tuple[str, bytes]], tmp_path: Path) -> None:
    name, data = write(tmp_path)
    told = results_of(tmp_path, YAML.replace("NAME", name), **{name: data})
    means = FRAME.groupby("contender")["gas burned"].mean()
    for id, wrote in (("a", "Zoë, the first"), ("b", "b")):
        assert result_of(told, "gas-burned", id)["value"] == pytest.approx(means[wrote])
    assert result_of(told, "gas-burned", "a")["trace"][0]["lines"] == [2, 5]


def _run(place: Path, formula: str, unit: str, t: Any, v: Any) -> float:
    yaml = (
        "title: T\ncontenders: {a: The first, b: The second}\ntests: [run]\n"
        "instruments: {meter: '0.001 lx, accuracy ±3 %'}\n"
    )
    test = (
        "title: Run\nreadings:\n  logger: run-{contender}.csv\n  time: Elapsed, s\n  columns: {light: 'Ch1, lx, meter'}\n"
        f"quantities: {{run: {{kind: logged, formula: '{formula}', unit: {unit}, better: higher}}}}\n"
    )
    log = "Elapsed,Ch1\n" + "".join(f"{a:.3f},{b:.3f}\n" for a, b in zip(t, v, strict=True))
    told = results_of(place, yaml, **{"tests/run.yaml": test, "run-a.csv": log, "run-b.csv": log})
    value = result_of(told, "run", "a")["value"]
    assert isinstance(value, float)
    return value


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_crossings_and_areas_of_uneven_samples_are_those_of_scipy(seed: int, tmp_path: Path) -> None:
    """scipy.interpolate.make_interp_spline of degree 1, its root by brentq and its area by quad."""
    random = np.random.default_rng(seed)
    t = np.round(np.cumsum(random.uniform(1.0, 9.0, 200)), 3)
    v = np.round(900 * np.exp(-t / 400), 3)
    line = make_interp_spline(t, v, k=1)
    crossing = brentq(lambda x: float(line(x)) - 200.0, float(t[0]), float(t[-1]), xtol=1e-12)
    # a trace begins with its first sample: from there `when` counts
    assert _run(tmp_path / "when", "when(light, under, 200)", "s", t, v) == pytest.approx(crossing - t[0], rel=1e-6)
    area, _ = quad(lambda x: float(line(x)), float(t[0]), float(t[-1]), points=list(t[1:-1]), limit=500)
    assert _run(tmp_path / "area", "area(light)", "lx·s", t, v) == pytest.approx(area, rel=1e-6)
