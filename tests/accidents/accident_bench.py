"""Campaigns of two or three stoves to which something happened, and a page of theirs as a reader reads it."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from tests.campaigns import compile_campaign, results_of
from tests.pages.reading import Element, read

HEAD = "title: T\nwho pays: us\ncontenders: {corvane: Corvane Sol, ostler: Ostler Mk II}\n"
GAS = HEAD + "measure:\n  gas burned: weighed before and after, g, lower, kitchen\nreadings: gas.csv\n"
GAS += "instruments: {kitchen: '0.1 g, accuracy unknown'}\n"
GAS_ROWS = (
    "contender,pass,gas burned before,gas burned after\n"
    "corvane,1,231.4,217.1\n"
    "ostler,1,240.2,223.9\n"
    "ostler,2,223.9,207.2\n"
    "corvane,2,217.1,202.6\n"
)
RUN = HEAD.replace("}\n", ", tamsin: Tamsin}\n")
RUN += "measure:\n  burn time: {kind: run to a limit, unit: min, better: higher}\nreadings: run.csv\n"
RUN_ROWS = "contender,pass,burn time\ncorvane,1,60\ncorvane,2,61\nostler,1,50\nostler,2,49\ntamsin,1,118\n"


def told_of(place: Path, yaml: str, **files: str) -> dict[str, Any]:
    """results.json; files are named without their ending (all are CSV)."""
    return results_of(place, yaml, **{f"{name}.csv": text for name, text in files.items()})


def compiled(place: Path, yaml: str, **files: str) -> dict[str, Any]:
    """The same of a site, for `page`."""
    return compile_campaign(place, yaml, **{f"{name}.csv": text for name, text in files.items()})


def page(place: Path, address: str) -> Element:
    """A page of the campaign: `index`, `tests/gas-burned` …"""
    return read((place / "stoves" / ".site" / "stoves" / f"{address}.html").read_text(encoding="utf-8"))


def caveats(told: dict[str, Any], sort: str) -> list[dict[str, Any]]:
    """The caveats of one sort, in their order."""
    return [c for c in told["caveat_list"] if c["sort"] == sort]
