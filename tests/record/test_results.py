"""results.json: its promised keys, its schema, its bytes."""

from __future__ import annotations

import json
from dataclasses import replace
from typing import Any

import jsonschema
import pytest

from reportgen.evaluation.evaluated import Evaluation, Result
from reportgen.finding import Finding, Place
from reportgen.intake.reading import Readings
from reportgen.prose import amounts
from reportgen.record.plain import number
from reportgen.record.printed import printed
from reportgen.record.results import as_json
from reportgen.record.schema import results_schema
from tests.record import hand_made as hand

FINDINGS = (
    Finding("note", "n", Place("a.csv", 1), "a note"),
    Finding("error", "e", Place("b.yaml"), "an error", "why", "do this"),
)


def written(evaluation: Evaluation = hand.EVALUATION) -> dict[str, Any]:
    text = as_json(hand.DECLARED, evaluation, FINDINGS, 1, Readings(hand.READINGS))
    return json.loads(text, parse_constant=pytest.fail)  # type: ignore[no-any-return]


def result(of: Result) -> dict[str, Any]:
    (row,) = written(replace(hand.EVALUATION, results=(of,)))["results"]
    return row  # type: ignore[no-any-return]


# The keys that version 1 promises; what reads the file relies on each.
PROMISED = {
    "results": "test quantity contender kind value unit u low high coverage why_no_u printed covers part yes of grade "
    "passes excluded limit rank blocked caveats trace",
    "comparisons": "test quantity first second difference u low high unit decision resolved differed differed_low "
    "differed_high favours part",
    "first": "test quantity winner may_be_first unranked part",
    "claims": "contender claim outcome probability scope",
    "findings": "severity rule file line says do",
}


@pytest.mark.parametrize("of", PROMISED)
def test_every_row_has_the_keys_that_are_promised(of: str) -> None:
    rows = written()[of]
    assert rows
    for row in rows:
        assert row.keys() >= set(PROMISED[of].split())


def test_the_record_has_its_promised_parts() -> None:
    record = written()
    assert (record["version"], record["campaign"], record["issue"]) == (1, "stoves", 1)
    assert record["verdict"].keys() >= {"winner", "criteria", "pairwise", "rank_shares", "value"}
    assert record["verdict"]["criteria"][0].keys() >= {"quantity", "group", "weight", "known_scatter"}
    assert record["verdict"]["value"][0].keys() >= {"contender", "price", "dominated_by"}


def test_the_schema_is_a_schema_and_the_record_keeps_it() -> None:
    jsonschema.Draft202012Validator.check_schema(results_schema())
    jsonschema.validate(written(), results_schema())
    empty = Evaluation("stoves", (), (), (), (), None, (), ())
    jsonschema.validate(written(empty), results_schema())
    jsonschema.validate(written(replace(hand.EVALUATION, results=(hand.MISSING,))), results_schema())


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (("results", 0, "u"), "0.31"),
        (("comparisons", 0, "decision"), "probably better"),
        (("results", 0, "trace"), None),
    ],
)
def test_the_schema_refuses_what_no_reader_expects(path: tuple[Any, ...], value: object) -> None:
    record = written()
    at = record
    for step in path[:-1]:
        at = at[step]
    at[path[-1]] = value
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(record, results_schema())


def test_a_measured_result_says_value_uncertainty_interval_and_rank() -> None:
    row = result(hand.MEASURED)
    shown = {
        k: row[k] for k in ("value", "unit", "u", "low", "high", "coverage", "why_no_u", "printed", "rank", "passes")
    }
    assert shown == {
        "value": 14.2, "unit": "g", "u": 0.31, "low": 13.58, "high": 14.82, "coverage": 0.95, "why_no_u": None,
        "printed": "14.20 g (13.58 to 14.82)", "rank": [1, 2], "passes": 3,
    }  # fmt: skip
    assert (row["excluded"], row["without_exclusions"], row["part"], row["limit"], row["blocked"]) == (
        1,
        14.25,
        None,
        None,
        None,
    )


def test_an_off_scale_result_is_its_limit_without_uncertainty_or_rank() -> None:
    row = result(hand.OFF_SCALE)
    assert (row["value"], row["limit"], row["u"], row["rank"], row["coverage"]) == (999, "above", None, None, None)
    assert row["printed"] == "more than 999 ppm"
    assert row["blocked"]
    assert row["why_no_u"]


def test_an_unknown_limit_has_no_value() -> None:
    unknown = replace(hand.OFF_SCALE, estimate=replace(hand.OFF_SCALE.estimate, value=None))  # type: ignore[type-var]
    row = result(unknown)
    assert (row["value"], row["limit"]) == (None, "above")


def test_a_yes_no_result_is_a_share_of_its_tries() -> None:
    row = result(hand.YES_NO)
    assert (row["value"], row["yes"], row["of"], row["printed"], row["unit"]) == (0.75, 3, 4, "3 of 4", "")


def test_a_count_is_printed_alone() -> None:
    row = result(hand.COUNT)
    assert (row["value"], row["printed"], row["u"]) == (7, "7", None)
    assert row["why_no_u"] == "it was looked at, not measured"


def test_a_grade_has_no_value() -> None:
    row = result(hand.GRADE)
    assert (row["value"], row["grade"], row["grades"], row["printed"]) == (None, "fair", {"fair": 2}, "fair")


def test_a_blocked_result_has_no_rank_whatever_was_judged() -> None:
    row = result(replace(hand.MEASURED, blocked="The sample was topped up."))
    assert (row["rank"], row["blocked"]) == (None, "The sample was topped up.")


def test_a_missing_result_says_why() -> None:
    row = result(hand.MISSING)
    assert (row["value"], row["unit"], row["printed"], row["why_no_u"]) == (
        None,
        "g",
        "not yet tested",
        "not yet tested",
    )


def test_a_trace_names_the_file_from_the_campaign_and_merges_its_lines_in_order() -> None:
    assert result(hand.MEASURED)["trace"] == [
        {"file": "raw/gas.csv", "lines": [2, 5], "cells": [[2, 3], [2, 4], [5, 3], [5, 4]]}
    ]
    assert result(hand.OFF_SCALE)["trace"] == []


def test_a_trace_over_two_files_has_an_entry_each() -> None:
    other = hand.key("corvane", "3")
    readings = {**hand.READINGS, other: hand.reading(other, 9, 1, "shared/zero.csv")}
    of = replace(hand.MEASURED, rests_on=frozenset({*hand.KEYS, other}))
    text = as_json(hand.DECLARED, replace(hand.EVALUATION, results=(of,)), (), 1, Readings(readings))
    assert [t["file"] for t in json.loads(text)["results"][0]["trace"]] == ["../shared/zero.csv", "raw/gas.csv"]


def test_a_caveat_is_named_where_it_bears_and_told_once() -> None:
    record = written()
    assert [r["caveats"] for r in record["results"]] == [["caveat-1"], [], [], [], []]
    assert record["comparisons"][0]["caveats"] == ["caveat-1"]
    (told,) = record["caveat_list"]
    assert (told["id"], told["says"], told["pushes"], told["line"]) == ("caveat-1", "Canisters were warm.", "down", 30)


def test_nobody_is_favoured_where_a_repeat_may_disagree() -> None:
    pair = replace(hand.PAIR, resolved=False, decision="too close to call")
    (row,) = written(replace(hand.EVALUATION, comparisons=(pair,)))["comparisons"]
    assert row["favours"] is None
    assert written()["comparisons"][0]["favours"] == "corvane"


def test_a_claim_is_told_in_its_words_from_every_source() -> None:
    first, second = written()["claims"]
    assert (first["claim"], first["id"], first["scope"], first["probability"]) == (
        "burns 14 g / burns 13 g",
        "c1",
        "repeat",
        0.4,
    )
    assert (second["outcome"], second["scope"], second["probability"]) == ("not tested", None, None)


def test_findings_come_errors_first_and_a_whole_file_has_no_line() -> None:
    rows = written()["findings"]
    assert [(f["severity"], f["line"]) for f in rows] == [("error", None), ("note", 1)]
    assert (rows[0]["do"], rows[0]["file"]) == ("do this", "b.yaml")


def test_no_verdict_leaves_its_parts_empty() -> None:
    verdict = written(replace(hand.EVALUATION, verdict=None))["verdict"]
    assert (verdict["winner"], verdict["criteria"], verdict["value"]) == (None, [], [])


def test_the_same_evaluation_gives_the_same_bytes_in_whatever_order_its_sets_were_filled() -> None:
    def text(keys: tuple[Any, ...]) -> str:
        of = replace(hand.MEASURED, rests_on=frozenset(keys))
        readings = Readings({k: hand.READINGS[k] for k in keys})
        return as_json(hand.DECLARED, replace(hand.EVALUATION, results=(of,)), FINDINGS, 1, readings)

    assert text(hand.KEYS) == text(hand.KEYS[::-1])
    assert text(hand.KEYS).endswith("}\n")


def test_every_row_stands_on_a_line_of_its_own() -> None:
    lines = as_json(hand.DECLARED, hand.EVALUATION, (), 1, Readings({})).splitlines()
    assert sum(line.startswith('  {"test": ') for line in lines) == 5 + 1 + 1


@pytest.mark.parametrize(
    ("x", "kept"),
    [
        (0.1 + 0.2, 0.3),
        (1 / 3, 0.333333333333),
        (2e15 / 3, 666666666667000.0),
        (float("nan"), None),
        (float("inf"), None),
    ],
)
def test_a_number_keeps_twelve_digits_and_is_never_what_json_lacks(x: float, kept: float | None) -> None:
    """RFC 8259, section 6: "Numeric values that cannot be represented … (such as Infinity and NaN) are not permitted"."""
    assert number(x) == kept


def test_there_is_no_negative_zero() -> None:
    assert json.dumps(number(-0.0)) == "0.0"


def test_a_result_that_is_not_finite_is_written_as_null() -> None:
    row = result(replace(hand.MEASURED, low=float("-inf")))
    assert row["low"] is None


def test_value_and_uncertainty_are_printed_as_the_gum_rounds_them() -> None:
    """JCGM 100:2008, 7.2.6: y = 10.057 62 Ω with u = 27 mΩ "should be rounded to 10.058 Ω"."""
    estimate = replace(hand.MEASURED.estimate, value=10.05762, unit="ohm")  # type: ignore[type-var]
    of = replace(hand.MEASURED, estimate=estimate, u=0.027, low=None, high=None)
    assert printed(of) == "10.058 Ω"


@pytest.mark.parametrize(
    "of", [hand.MEASURED, hand.OFF_SCALE, hand.MISSING, hand.YES_NO, hand.GRADE], ids=lambda r: r.kind
)
def test_the_record_prints_what_the_prose_prints(of: Result) -> None:
    assert printed(of) == amounts.full(of).replace("\u00a0", " ").replace("\u202f", " ")
