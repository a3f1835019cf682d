"""Mistakes in telling what happened: each is one message at its place, with what to do."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.campaigns import refusal

HEAD = "title: T\ncontenders: {corvane: Corvane Sol, ostler: Ostler Mk II}\nreadings: gas.csv\n"
GAS = HEAD + "measure:\n  gas burned: weighed before and after, g, lower\n"
ROWS = (
    "contender,pass,gas burned before,gas burned after\ncorvane,1,231.4,21.7\nostler,1,240.2,223.9\n"
    "ostler,2,223.9,207.2\ncorvane,2,217.1,202.6\n"
)
LOG = (
    HEAD.replace("gas.csv", "log.csv")
    + "measure:\n  boil time: timed, s, lower\n  relights: count of relight, in boil time\n"
)
LOGGED = "contender,what,value,pass,about\ncorvane,boil time,212.4,1,\nostler,boil time,230.1,1,\n"
RUN = HEAD + "measure:\n  gas burned: {kind: run to a limit, unit: min, better: higher}\n"


def amend(**changes: str) -> str:
    """The campaign with one amendment in line 6; a change of "" takes its key out."""
    said = {
        "file": "gas.csv",
        "line": "2",
        "column": "gas burned after",
        "from": "21.7",
        "to": "217.1",
        "why": "a slip",
    }
    written = ", ".join(f"{k}: {v}" for k, v in {**said, **changes}.items() if v)
    return GAS + f"amend: {{{written}}}\n"


def records(
    where: str = "ostler, pass 2, gas burned after", said: str = "[207.2 g, 206.2 g]", used: str = "206.2 g"
) -> str:
    return GAS + f"two records: {{where: '{where}', said: {said}, used: {used}, because: z}}\n"


def assumed(inside: str, formula: str = "gas_burned_before - gas_burned_after + fill") -> str:
    columns = "columns: {gas_burned_before: 'gas burned before, g', gas_burned_after: 'gas burned after, g'}"
    return (
        HEAD + f"measure:\n  gas burned: {{formula: {formula}, unit: g, better: lower, {columns}}}\nassumed: {inside}\n"
    )


# mistake → YAML, (rule, place), pieces of what it says and of the remedy
MISTAKES: dict[str, tuple[str, tuple[str, str], str, str]] = {
    "an old value that isn't in the file": (
        amend(**{"from": "21.8"}), ("amendment-mismatch", "campaign.yaml:6:8"), "says “21.7” under “gas burned after”, not “21.8”", "Copy `from:`",
    ),
    "an old value that stands in another line": (
        amend(line="3"), ("amendment-mismatch", "campaign.yaml:6:8"), "line 3 of gas.csv says “223.9”", "line: 2",
    ),
    "an old value written otherwise": (
        amend(**{"from": "21.70"}), ("amendment-mismatch", "campaign.yaml:6:8"), "not “21.70”", "Copy `from:`",
    ),
    "a line that isn't there": (amend(line="12"), ("missing-line", "campaign.yaml:6:8"), "no row in line 12; they stand in lines 1 to 5", "line: 2"),
    "a column that isn't there": (amend(column="gas burnt after"), ("missing-column", "campaign.yaml:6:8"), "no column “gas burnt after”", "mean “gas burned after”"),
    "a file that nothing is read from": (amend(file="gaz.csv"), ("unknown-file", "campaign.yaml:6:8"), "no readings come from gaz.csv", "mean “gas.csv”"),
    "an amendment that says no cell": (amend(line=""), ("amendment-without-cell", "campaign.yaml:6:8"), "which cell", "cell: C5"),
    "an amendment that says its cell twice": (amend(cell="D2"), ("amendment-without-cell", "campaign.yaml:6:8"), "two ways", "cell: C5"),
    "a cell that is none": (amend(line="", column="", cell="5C"), ("wrong-value", "campaign.yaml:6:66"), "“5C” is no cell", "C5"),
    "a cell beyond the table": (amend(line="", column="", cell="F2"), ("missing-column", "campaign.yaml:6:8"), "F is none", "A to D"),
    "an amendment that changes nothing": (amend(to="21.7"), ("amends-nothing", "campaign.yaml:6:75"), "into itself", "from:"),
    "an amendment without its reason": (amend(why=""), ("missing-key", "campaign.yaml:6:8"), "why", "why:"),
    "one cell put right twice": (
        GAS + "amend:\n" + "  - {file: gas.csv, line: 2, column: gas burned after, from: 21.7, to: 217.1, why: z}\n" * 2,
        ("amended-twice", "campaign.yaml:8:5"), "gas.csv:2:4 is put right twice", "Take one",
    ),
    "something meant that is no reading": (amend(to="lots"), ("not-a-number", "gas.csv:2:4"), "“lots”", "number"),
    "records neither of which is in the file": (
        records(said="[207.3 g, 206.2 g]"), ("records-mismatch", "campaign.yaml:6:14"), "gas.csv:4:4 says “207.2”", "said:",
    ),
    "a record used that is none of the two": (records(used="205 g"), ("unknown-record", "campaign.yaml:6:90"), "neither record", "said:"),
    "one record and no other": (records(said="[207.2 g]", used="207.2 g"), ("one-record", "campaign.yaml:6:14"), "two different", "said: ["),
    "records of an unknown reading": (records("ostler, pass 2, gas burnt after"), ("unknown-reading", "campaign.yaml:6:14"), "gas burnt after", "mean “gas burned after”"),
    "records of an unknown contender": (records("ostlar, pass 2, gas burned after"), ("unknown-contender", "campaign.yaml:6:22"), "ostlar", "mean “ostler”"),
    "records of a pass that wasn't run": (records("ostler, pass 7, gas burned after"), ("no-such-reading", "campaign.yaml:6:14"), "of ostler, pass 7", "against the table"),
    "records that don't say of which pass": (records("ostler, gas burned after"), ("several-readings", "campaign.yaml:6:14"), "2 readings", "pass 1, pass 2"),
    "records of one reading, twice": (
        GAS + "two records:\n" + "".join("  - {where: 'ostler, pass 2, gas burned after', said: [207.2 g, 206.2 g], used: " + used + ", because: z}\n" for used in ("206.2 g", "207.2 g")),
        ("records-twice", "campaign.yaml:8:5"), "already at campaign.yaml:7:5", "in one entry",
    ),
    "an incident that says whom it befell and not what": (
        GAS + "incidents:\n  - 'ostler, pass 2:'\n", ("missing-key", "campaign.yaml:7:5"), "what happened", "ostler, pass 3: what happened",
    ),
    "an incident that is a name": (
        GAS + "incidents:\n  - ostler\n", ("missing-key", "campaign.yaml:7:5"), "what happened", "ostler, pass 3: what happened",
    ),
    "records of nobody's reading": (records("ostler"), ("wrong-value", "campaign.yaml:6:22"), "heading of a reading", "pass 2"),
    "a record that can't be read": (records(said="[207.2 g, lots]", used="207.2 g"), ("not-a-number", "campaign.yaml:6:14"), "lots", "number"),
    "an assumption of no width": (assumed("{fill: {within: 0 g, because: z}}"), ("wrong-value", "campaign.yaml:6:26"), "not above nothing", "how large"),
    "an assumption in another unit": (assumed("{fill: {within: 5 mL, because: z}}"), ("formula", "campaign.yaml:5:62"), "g is a mass, mL is a volume", "check the unit"),
    "an assumption whose value is of another sort": (assumed("{fill: {within: 5 g, value: 3 s, because: z}}"), ("unit", "campaign.yaml:6:11"), "fill", "check the unit"),
    "an assumption with a reading's name": (
        assumed("{gas burned after: {within: 5 g, because: z}}"), ("formula", "campaign.yaml:5:25"), "a reading of gas-burned and the assumption gas-burned-after", "Rename",
    ),
    "an assumption without its reason": (assumed("{fill: {within: 5 g}}"), ("missing-key", "campaign.yaml:6:17"), "because", "because:"),
    "an incident that says nothing": (GAS + "incidents: {contender: ostler}\n", ("missing-key", "campaign.yaml:6:12"), "what happened", "what:"),
    "an incident with a key misspelt": (GAS + "incidents: {contnder: ostler, what: z}\n", ("unknown-key", "campaign.yaml:6:13"), "contnder", "contender"),
    "an incident of nobody": (GAS + "incidents:\n  - ostlar, pass 3: blew out\n", ("unknown-contender", "campaign.yaml:7:5"), "ostlar", "mean “ostler”"),
    "an incident that happened no times": (GAS + "incidents: {what: z, times: 0}\n", ("wrong-value", "campaign.yaml:6:29"), "1 or more", ""),
    "an event much like one that is counted": (
        LOG + "incidents:\n  - ostler, boil time: blew out\n    event: relihgt\n", ("unknown-event", "campaign.yaml:8:5"), "relihgt", "mean “relight”",
    ),
    "a count with a kind that is none": (LOG.replace("count of relight, in boil time", "{count of: relight, kind: timed, in: boil time}"), ("count-of-another-kind", "campaign.yaml:6:24"), "kind timed", "kind: count"),
    "a count with a unit": (LOG.replace("count of relight, in boil time", "{count of: relight, unit: s, in: boil time}"), ("count-of-another-kind", "campaign.yaml:6:39"), "no formula, unit", "Take it out"),
    "a count in a test that isn't there": (LOG.replace("in boil time", "in boil tme"), ("unknown-test", "campaign.yaml:6:13"), "boil tme", "mean “boil-time”"),
    "tests to count in, and nothing to count": (LOG.replace("count of relight, in boil time", "{kind: count, in: boil time}"), ("count-of-nothing", "campaign.yaml:6:31"), "not what", "count of:"),
    "a run of nobody": (RUN + "running: {contender: ostlar, since: 2026-05-02}\n", ("unknown-contender", "campaign.yaml:6:22"), "ostlar", "mean “ostler”"),
    "a run since no day": (RUN + "running: {contender: ostler, since: 2026-05-32}\n", ("wrong-value", "campaign.yaml:6:37"), "2026-05-32", "2026-05-02"),
    "a run still going that isn't tested yet": (
        RUN + "running: {contender: ostler, since: 2026-05-02}\nnot yet tested: [ostler]\n", ("said-twice", "campaign.yaml:6:10"), "both at once", "not yet tested:",
    ),
}  # fmt: skip

IN_THE_LOG: dict[str, tuple[str, tuple[str, str], str]] = {
    "an incident that says nothing": ("ostler,incident,,1,\n", ("incident-of-nothing", "log.csv:4:3"), "value"),
    "an incident of nobody": ("ostlar,incident,relight,1,\n", ("unknown-contender", "log.csv:4:1"), "mean “ostler”"),
    "an event much like one that is counted": ("ostler,incident,relihgt,1,\n", ("unknown-event", "log.csv:4:3"), "mean “relight”"),
    "an incident in a test that isn't there": ("ostler,incident,relight,1,boil tme\n", ("unknown-test", "log.csv:4:5"), "mean “boil-time”"),
}  # fmt: skip


@pytest.mark.parametrize("mistake", MISTAKES)
def test_a_mistake_in_telling_an_accident_is_told_once_at_its_place(mistake: str, tmp_path: Path) -> None:
    text, (rule, place), says, remedy = MISTAKES[mistake]
    files = (
        {"log.csv": LOGGED}
        if "log.csv" in text
        else {"gas.csv": ROWS if "run to" not in text else "contender,gas burned\ncorvane,3\n"}
    )
    (finding,) = [f for f in refusal(tmp_path, text, **files) if f.severity == "error"]
    assert (finding.rule, str(finding.place)) == (rule, place)
    assert says in finding.says
    assert remedy in finding.do


@pytest.mark.parametrize("mistake", IN_THE_LOG)
def test_a_mistake_in_an_incident_of_the_log_is_told_at_its_cell(mistake: str, tmp_path: Path) -> None:
    row, (rule, place), remedy = IN_THE_LOG[mistake]
    (finding,) = [f for f in refusal(tmp_path, LOG, **{"log.csv": LOGGED + row}) if f.severity == "error"]
    assert (finding.rule, str(finding.place)) == (rule, place)
    assert remedy in finding.do
