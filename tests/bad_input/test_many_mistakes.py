"""Two dozen mistakes in one large campaign come out of one run, each at its place, and the old site stays."""

from __future__ import annotations

import json
from pathlib import Path

from click.testing import CliRunner

from reportgen.build.run import compile_site
from reportgen.cli.commands import commands
from reportgen.finding import Refused
from tests.campaigns import refusal, write_campaign

CAMPAIGN = """\
title: Four stoves
who pays: Readers.
contenders: [corvane, ostler]
tests: [gas, time, noise, pull, grade, heat]
"""
GOOD = {
    "contenders/corvane.yaml": "title: Corvane Sol\npaid: 89 EUR\n",
    "contenders/ostler.yaml": "title: Ostler Mk II\n",
    "tests/gas.yaml": "title: Gas\nquantities:\n  gas: one reading, g, lower, scale\nreadings: raw/gas.csv\n",
    "tests/time.yaml": "title: Time\nquantities:\n  time to boil: timed, s, lower\nreadings: raw/time.csv\n",
    "tests/noise.yaml": "title: Noise\nquantities:\n  noise: level, dB, lower\nreadings: raw/noise.csv\n",
    "tests/pull.yaml": "title: Pull\nquantities:\n  pull: peak, kgf, higher\nreadings: raw/pull.csv\n",
    "tests/grade.yaml": "title: Finish\nquantities:\n  finish: {kind: grade, grades: [poor, good]}\nreadings: raw/grade.csv\n",
    "tests/heat.yaml": (
        "title: Heat\nquantities:\n  heat: {formula: burned * warmth, unit: kJ, better: lower}\n"
        "readings: {file: raw/heat.csv, columns: {burned: {unit: g}}}\n"
    ),
    "constants.yaml": "warmth:\n  value: 46.1 kJ/g\n  source: a handbook\n",
    "instruments.yaml": "scale: 0.1 g, up to 500 g, accuracy ±0.3 g\n",
    "verdict.yaml": "must:\n  - {quantity: gas, at most: 20 g}\n",
    "raw/gas.csv": "contender,gas\ncorvane,10.1\nostler,12.3\n",
    "raw/time.csv": "contender,time to boil\ncorvane,212.4\nostler,230.1\n",
    "raw/noise.csv": "contender,noise\ncorvane,71.2\nostler,70.1\n",
    "raw/pull.csv": "contender,pull\ncorvane,16.5\nostler,17.5\n",
    "raw/grade.csv": "contender,finish\ncorvane,good\nostler,poor\n",
    "raw/heat.csv": "contender,burned\ncorvane,10.1\nostler,12.3\n",
}
BAD = {
    "contenders/corvane.yaml": "titel: Corvane Sol\npaid: 89\nbought: {date: 2026-02-30}\n",
    "contenders/ostler.yaml": "title: Ostler Mk II\nclaims:\n  - {says: Quiet, quantity: loudness}\n",
    "tests/gas.yaml": (
        "title: Gas\nquantities:\n  gas: {kind: one reading, unit: g, beter: lower, matters: -1 g}\n"
        "exclude:\n  - {contender: tamsin, pass: 1, because: spilled}\nreadings: raw/gas.csv\n"
    ),
    "tests/noise.yaml": "title: Noise\nquantities:\n  noise: loud, dB, lower\nreadings: raw/noise.tsv\n",
    "tests/heat.yaml": (
        "title: Heat\nquantities:\n  heat: {formula: burned ** warmth., unit: kJ, better: lower}\n"
        "readings: {file: raw/heat.csv, columns: {burned: {unit: flurbs}}}\n"
    ),
    "tests/grade.yaml": "title: Finish\nquantities:\n  finish: {kind: grade, grades: [good]}\nreadings: ../../x.csv\n",
    "constants.yaml": "warmth:\n  value: much\n",
    "instruments.yaml": "scale: 0 g, up to 500 g, accuracy good\nwatch: [0.01 s]\n",
    "verdict.yaml": (
        "must:\n  - {quantity: gass, at most: 20 g}\ngroups:\n  g: {weight: -1, criteria: {gas: {worst: 1 g, best: 1 g}}}\n"
        "we say: {best: tamsin}\n"
    ),
    "raw/gas.csv": "contender,gas\ncorvane,10.1\nostler\n",
    "raw/time.csv": "contender,time to boil\ncorvane,fast\nostler,1e999\n",
    "raw/pull.csv": "contender,pull,pull\ncorvane,16.5,\nostler,17.5,\n",
    "raw/heat.csv": "",
}
EXPECTED = {
    ("unknown-key", "contenders/corvane.yaml:1:1"),
    ("wrong-value", "contenders/corvane.yaml:2:7"),
    ("wrong-value", "contenders/corvane.yaml:3:16"),
    ("unknown-quantity", "contenders/ostler.yaml:3:29"),
    ("unknown-key", "tests/gas.yaml:3:37"),
    ("wrong-value", "tests/gas.yaml:3:60"),
    ("unknown-contender", "tests/gas.yaml:5:17"),
    ("wrong-value", "tests/noise.yaml:3:10"),
    ("missing-file", "tests/noise.yaml:4:11"),
    ("formula", "tests/heat.yaml:3:35"),
    ("unit", "tests/heat.yaml:4:42"),
    ("grade-without-grades", "tests/grade.yaml:3:3"),
    ("leaves-workspace", "tests/grade.yaml:4:11"),
    ("wrong-value", "constants.yaml:2:10"),
    ("missing-key", "constants.yaml:2:3"),
    ("wrong-value", "instruments.yaml:1:8"),
    ("unknown-quantity", "verdict.yaml:2:16"),
    ("wrong-value", "verdict.yaml:4:15"),
    ("anchors-alike", "verdict.yaml:4:54"),
    ("unknown-contender", "verdict.yaml:5:16"),
    ("ragged-row", "raw/gas.csv:3"),
    ("not-a-number", "raw/time.csv:2:2"),
    ("not-a-number", "raw/time.csv:3:2"),
    ("heading-twice", "raw/pull.csv:1:3"),
    ("empty-table", "raw/heat.csv"),
}


def test_two_dozen_mistakes_in_a_large_campaign_are_found_in_one_run(tmp_path: Path) -> None:
    folder = write_campaign(tmp_path, CAMPAIGN, **GOOD)
    site = compile_site(folder).out
    before = {p: p.read_bytes() for p in sorted(site.rglob("*")) if p.is_file()}
    write_campaign(tmp_path, CAMPAIGN, **{**GOOD, **BAD})
    sources = {p: p.read_bytes() for p in sorted(folder.rglob("*")) if p.is_file() and site not in p.parents}
    try:
        compile_site(folder)
    except Refused as refused:
        errors = [f for f in refused.findings if f.severity == "error"]
    else:
        raise AssertionError("the campaign compiled")
    found = {(f.rule, str(f.place)) for f in errors}
    assert found >= EXPECTED, sorted(EXPECTED - found)
    assert len({(f.place, f.says) for f in errors}) == len(errors), "a mistake is told twice"
    assert all(f.says and f.do for f in errors)
    assert {p: p.read_bytes() for p in sorted(site.rglob("*")) if p.is_file()} == before
    assert all(p.read_bytes() == data for p, data in sources.items())


def test_the_command_ends_with_one_and_its_json_can_be_read(tmp_path: Path) -> None:
    folder = write_campaign(tmp_path, CAMPAIGN, **{**GOOD, **BAD})
    ran = CliRunner().invoke(commands, ["compile", str(folder), "--json"])
    told = json.loads(ran.stdout)
    assert (ran.exit_code, told["ok"]) == (1, False)
    places = {(row["rule"], row["file"], row["line"]) for row in told["findings"]}
    assert {("ragged-row", "raw/gas.csv", 3), ("unknown-key", "contenders/corvane.yaml", 1)} <= places
    assert "Traceback" not in ran.output


def test_what_is_told_beside_a_first_mistake_stays_when_that_is_mended(tmp_path: Path) -> None:
    first = write_campaign(tmp_path / "a", CAMPAIGN, **{**GOOD, **BAD})
    mended = {**BAD, **{k: GOOD[k] for k in BAD if k.startswith(("contenders", "instruments", "constants", "verdict"))}}
    second = write_campaign(tmp_path / "b", CAMPAIGN, **{**GOOD, **mended})
    told = []
    for folder in (first, second):
        try:
            compile_site(folder)
        except Refused as refused:
            told.append({(f.rule, str(f.place)) for f in refused.findings if f.severity == "error"})
    both = {(rule, place) for rule, place in told[0] if place.startswith(("tests/", "raw/"))}
    assert both <= told[1]


def test_a_file_that_can_t_be_read_is_told_without_what_it_leaves_unknown(tmp_path: Path) -> None:
    yaml = "title: T\ncontenders:\n  one: {title: One, claims: [{says: Lasts, source: box, quantity: life, at least: 9 s}]}\n"
    yaml += "  other: Other\ntests: [life]\n"
    life = "title: Life\nreadings: readings.csv\nquantities: [\n  life: {kind: timed, unit: s, better: higher}\n"
    told = refusal(tmp_path, yaml, readings="contender,life\none,9\nother,8\n", **{"tests/life.yaml": life})
    assert {f.place.file for f in told if f.severity == "error"} == {"tests/life.yaml"}
