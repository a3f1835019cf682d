"""Incidents typed once: counted, shown, and carried as caveats of the readings they touched."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.accidents.accident_bench import HEAD, caveats, compiled, page, told_of
from tests.campaigns import result_of

THREE = HEAD.replace("}\n", ", tamsin: Tamsin}\n")
LOG = (
    THREE
    + "measure:\n  boil time: timed, s, lower, stopwatch\n  noise: level, dB, lower\n  relights: count of relight, in boil time\nreadings: log.csv\n"
)
ROWS = (
    "time,contender,what,value,unit,pass,note\n"
    "9:00,corvane,boil time,212.4,s,1,\n"
    "9:05,corvane,noise,71.2,dB,1,\n"
    "9:10,ostler,boil time,230.1,s,1,\n"
    "9:12,ostler,incident,relight,,1,a gust from the door\n"
    "9:20,ostler,boil time,226.4,s,2,\n"
    '9:24,ostler,incident,"relight, 2 times",,2,\n'
    "9:30,corvane,boil time,214.9,s,2,\n"
)


def test_incidents_of_the_log_are_counted_from_nought_on(tmp_path: Path) -> None:
    """Counted by hand: Ostler 1 + 2, Corvane none in two passes; Tamsin hasn't been on the bench."""
    told = told_of(tmp_path, LOG, log=ROWS)
    assert result_of(told, "relights", "ostler")["value"] == 3
    assert result_of(told, "relights", "corvane")["value"] == 0
    assert result_of(told, "relights", "corvane")["missing"] is None
    assert result_of(told, "relights", "tamsin")["missing"] == "not yet tested"
    assert {r["kind"] for r in told["results"] if r["quantity"] == "relights"} == {"count"}


def test_a_count_leads_to_the_lines_that_tell_its_incidents(tmp_path: Path) -> None:
    told = compiled(tmp_path, LOG, log=ROWS)
    (trace,) = result_of(told, "relights", "ostler")["trace"]
    assert (trace["file"], trace["lines"]) == ("log.csv", [5, 7])
    text = page(tmp_path, "tests/relights").text
    assert "relight: a gust from the door" in text
    assert "count of relight" in text
    assert "log.csv, line 5" in text
    assert "Ostler Mk II3 Tamsin" in text  # among the values drawn: counted over all passes, not in one


def test_the_same_incident_is_the_caveat_of_the_readings_it_touched(tmp_path: Path) -> None:
    told = compiled(tmp_path, LOG, log=ROWS)
    first, second = caveats(told, "incident")
    assert (first["says"], first["event"], first["times"], first["when"]) == (
        "relight: a gust from the door",
        "relight",
        1,
        "9:12",
    )
    assert (second["times"], second["line"]) == (2, 7)
    assert {first["id"], second["id"]} <= set(result_of(told, "boil-time", "ostler")["caveats"])
    assert result_of(told, "boil-time", "corvane")["caveats"] == []
    assert {first["id"], second["id"]} <= set(result_of(told, "relights", "ostler")["caveats"])
    text = page(tmp_path, "tests/boil-time").text
    assert "Relight: a gust from the door. At 9:12." in text


def test_incidents_of_the_log_are_no_unread_rows_and_no_passes(tmp_path: Path) -> None:
    told = told_of(tmp_path, LOG, log=ROWS)
    about = [f for f in told["findings"] if f["rule"] in ("unread-column", "unequal-passes") and "relight" in str(f)]
    assert about == []


def test_an_incident_in_one_line_names_its_place_before_the_colon(tmp_path: Path) -> None:
    yaml = THREE + "measure:\n  boil time: timed, s, lower\n  relights: count of relight\nreadings: r.csv\n"
    yaml += (
        "incidents:\n  - ostler, pass 2, boil time: blew out twice and was relit\n    event: relight\n    times: 2\n"
    )
    rows = "contender,pass,boil time\ncorvane,1,212.4\nostler,1,230.1\nostler,2,226.4\n"
    told = told_of(tmp_path, yaml, r=rows)
    assert result_of(told, "relights", "ostler")["value"] == 2
    assert result_of(told, "relights", "corvane")["value"] == 0, "tested where the incident is about: boil time"
    assert result_of(told, "relights", "tamsin")["missing"] == "not yet tested"
    assert result_of(told, "relights", "ostler")["trace"][0]["file"] == "campaign.yaml"
    (caveat,) = caveats(told, "incident")
    assert (caveat["says"], caveat["contender"]) == ("blew out twice and was relit", "ostler")
    assert set(caveat["quantities"]) == {"boil-time", "relights"}


@pytest.mark.parametrize(
    "line", ['"ostler, pass 2: blew out"', "ostler, pass 2: blew out", "{contender: ostler, pass: 2, what: blew out}"]
)
def test_all_ways_of_writing_an_incident_say_the_same(line: str, tmp_path: Path) -> None:
    yaml = THREE + f"measure:\n  boil time: timed, s, lower\nreadings: r.csv\nincidents:\n  - {line}\n"
    told = told_of(tmp_path, yaml, r="contender,pass,boil time\ncorvane,1,212.4\nostler,1,230.1\nostler,2,226.4\n")
    (caveat,) = caveats(told, "incident")
    assert (caveat["says"], caveat["contender"]) == ("blew out", "ostler")
    assert caveat["id"] in result_of(told, "boil-time", "ostler")["caveats"]
    assert result_of(told, "boil-time", "corvane")["caveats"] == []


def test_a_sentence_with_a_colon_is_no_place(tmp_path: Path) -> None:
    yaml = THREE + 'measure:\n  boil time: timed, s, lower\nreadings: r.csv\nincidents: ["Second day: rain"]\n'
    told = told_of(tmp_path, yaml, r="contender,pass,boil time\ncorvane,1,212.4\nostler,1,230.1\n")
    assert caveats(told, "incident")[0]["says"] == "Second day: rain"


def test_a_column_of_the_log_says_which_test_an_incident_was_in(tmp_path: Path) -> None:
    rows = ROWS.replace("note\n", "note,about\n").replace(
        "relight,,1,a gust from the door", "a fly on the microphone,,1,,noise"
    )
    rows = "".join(r if "about" in r or "fly" in r else r.replace("\n", ",\n") for r in rows.splitlines(keepends=True))
    rows += "9:40,ostler,noise,72.9,dB,1,,\n"
    told = told_of(tmp_path, LOG, log=rows)
    first = next(c for c in caveats(told, "incident") if "fly" in c["says"])
    assert first["id"] in result_of(told, "noise", "ostler")["caveats"]
    assert first["id"] not in result_of(told, "boil-time", "ostler")["caveats"]
    assert not [f for f in told["findings"] if f["rule"] == "unread-column"]


def test_what_may_be_of_several_tests_shows_on_all_and_is_told(tmp_path: Path) -> None:
    rows = ROWS + "9:40,ostler,noise,72.9,dB,1,\n9:50,ostler,incident,the lamp failed,,1,\n"
    told = told_of(tmp_path, LOG, log=rows)
    (finding,) = [f for f in told["findings"] if f["rule"] == "incident-of-several"]
    assert (finding["severity"], finding["line"]) == ("note", 10)
    caveat = next(c for c in caveats(told, "incident") if "lamp" in c["says"])
    assert all(caveat["id"] in result_of(told, q, "ostler")["caveats"] for q in ("boil-time", "noise"))


def test_an_incident_for_all_is_on_everyone(tmp_path: Path) -> None:
    told = told_of(tmp_path, LOG, log=ROWS + '9:50,all,incident,"relight",,,a draught put all of them out\n')
    assert result_of(told, "relights", "ostler")["value"] == 4
    assert result_of(told, "relights", "corvane")["value"] == 1
    assert result_of(told, "relights", "tamsin")["missing"] == "not yet tested"


def test_a_count_can_be_used_in_a_formula(tmp_path: Path) -> None:
    yaml = LOG.replace("readings: log", "  minutes lost: {formula: relights * 3, better: lower}\nreadings: log")
    told = told_of(tmp_path, yaml, log=ROWS)
    assert result_of(told, "minutes-lost", "ostler")["value"] == 9
    assert result_of(told, "minutes-lost", "corvane")["value"] == 0


def test_an_incident_of_the_log_that_touches_nothing_is_a_finding(tmp_path: Path) -> None:
    told = told_of(tmp_path, LOG, log=ROWS + "9:50,ostler,incident,the lamp failed,,7,\n")
    assert [f["line"] for f in told["findings"] if f["rule"] == "touches-nothing"] == [9]


def test_a_count_of_what_is_counted_nowhere_is_a_finding(tmp_path: Path) -> None:
    told = told_of(tmp_path, LOG.replace("relight, in boil time", "stall"), log=ROWS)
    assert "counted-nowhere" in [f["rule"] for f in told["findings"]]
