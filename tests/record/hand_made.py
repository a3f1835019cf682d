"""An evaluation made by hand, with one result of each kind: nothing here is computed."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from reportgen.campaign.declared import Campaign, Claim, Column, Contender, Declared, Kind, Quantity, Source, Test
from reportgen.evaluation.evaluated import (
    Caveat,
    ClaimOutcome,
    Comparison,
    Contribution,
    CriterionUse,
    Estimate,
    Evaluation,
    FirstPlace,
    MustOutcome,
    PassValue,
    Result,
    ValueForMoney,
    Verdict,
)
from reportgen.finding import Place
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.judgement.measured import Reason, Settle
from reportgen.metrology.uncertain import Source as Cause

RAW = "stoves/raw/gas.csv"
CLAIM = Claim("c1", {"box": "burns 14 g", "leaflet": "burns 13 g"}, "gas-burned")
CONTENDERS = (Contender("corvane", "Corvane Sol", claims=(CLAIM,)), Contender("ostler", "Ostler Mk II"))


def a_test(id: str, kind: Kind, unit: str = "") -> Test:
    name = id.replace("-", "_")
    quantity = Quantity(id, id, id, kind, name, unit, "lower", (name,), grades=("poor", "fair", "good"))
    return Test(id, id, (quantity,), id, (Column(name, id, unit),), (Source(file="raw/gas.csv"),), False)


TESTS = (
    a_test("gas-burned", "weighed before and after", "g"),
    a_test("lit", "yes/no"),
    a_test("sparks", "count"),
    a_test("flame", "grade"),
)
CAMPAIGN = Campaign("stoves", "stoves", "Stoves", "", CONTENDERS, TESTS, {}, {}, {})
DECLARED = Declared(CAMPAIGN, {})


def key(contender: str, pass_: str = "1", name: str = "gas_burned_before", test: str = "gas-burned") -> ReadingKey:
    return ReadingKey(test, contender, "1", pass_, "", name)


def reading(of: ReadingKey, line: int, column: int, file: str = RAW) -> Reading:
    return Reading(of, "1.0", Decimal("1.0"), "g", "", Place(file, line, column), decimals=1)


KEYS = tuple(key("corvane", p, n) for p in ("1", "2") for n in ("gas_burned_before", "gas_burned_after"))
READINGS = {
    k: reading(k, line, column) for k, (line, column) in zip(KEYS, [(5, 3), (5, 4), (2, 3), (2, 4)], strict=True)
}

MEASURED = Result(
    test="gas-burned", quantity="gas-burned", contender="corvane", part="", kind="measured",
    estimate=Estimate(14.2, "g", 0.4, 2.0, (Contribution(Cause("step", "bench-scale"), 0.041, 0.02, False),), (0.1, 0.1)),
    u=0.31, low=13.58, high=14.82, covers="instrument and scatter", at_least=False, why_no_u="",
    by_pass=(PassValue("1", "1", "", 14.3, None, KEYS[:2]), PassValue("1", "2", "", 14.1, None, KEYS[2:], "e1")),
    passes=3, excluded=1, without=14.25, rank=(1, 2), blocked="", yes=None, of=None, grade="", grades={}, missing="",
    rests_on=frozenset(KEYS),
)  # fmt: skip
OFF_SCALE = replace(
    MEASURED, contender="ostler", estimate=Estimate(999.0, "ppm", None, None, (), (), "above"), u=None, low=None,
    high=None, why_no_u="limit", by_pass=(), passes=1, excluded=0, without=None, rank=None, blocked="off-scale",
    rests_on=frozenset(),
)  # fmt: skip
MISSING = replace(OFF_SCALE, estimate=None, why_no_u="no-result", passes=0, blocked="", missing="not yet tested")
YES_NO = replace(
    OFF_SCALE, test="lit", quantity="lit", kind="yes/no", estimate=None, why_no_u="yes/no", passes=4, blocked="",
    yes=3, of=4,
)  # fmt: skip
COUNT = replace(
    OFF_SCALE, test="sparks", quantity="sparks", kind="count", estimate=Estimate(7.0, "", None, None, (), ()),
    why_no_u="count", blocked="",
)  # fmt: skip
GRADE = replace(
    OFF_SCALE, test="flame", quantity="flame", kind="grade", estimate=None, why_no_u="grade", passes=2, blocked="",
    grade="fair", grades={"fair": 2},
)  # fmt: skip
PAIR = Comparison(
    test="gas-burned", quantity="gas-burned", part="", first="corvane", second="ostler", difference=-1.1, u=0.2, low=-1.5,
    high=-0.7, unit="g", decision="better", resolved=True, differed=True, differed_low=-1.3, differed_high=-0.9,
    favours="corvane", beyond=None, reason=Reason("lead-exceeds", {"lead": 1.1, "half_width": 0.4}),
    settle=Settle(1.1, 4), rests_on=frozenset(KEYS),
)  # fmt: skip
CAVEAT = Caveat(
    "caveat-1", 1, "caveat", "Canisters were warm.", "down", False, frozenset(KEYS[:1]), (), "",
    Place("stoves/tests/gas-burned.yaml", 30, 5),
)  # fmt: skip
EVALUATION = Evaluation(
    campaign="stoves",
    results=(MEASURED, OFF_SCALE, YES_NO, COUNT, GRADE),
    comparisons=(PAIR,),
    firsts=(
        FirstPlace(
            "gas-burned", "gas-burned", "", None, ("corvane",), ("ostler",), Reason("lead-within"), frozenset(KEYS)
        ),
    ),
    claims=(
        ClaimOutcome("corvane", "c1", "gas-burned", "undecided", 0.4, "repeat", Reason("inside"), frozenset(KEYS)),
        ClaimOutcome("corvane", "c1", "", "not tested", None, "", Reason("no-result"), frozenset()),
    ),
    verdict=Verdict(
        (MustOutcome("corvane", "gas-burned", "supported", 1.0, frozenset()),),
        (CriterionUse("gas-burned", "thrift", 0.4, True), CriterionUse("lit", "", None, False)),
        (ValueForMoney("corvane", "89.00 EUR", 89.0, 89.0, "EUR", ()),),
        ("gas-burned",),
        None,
        frozenset(),
    ),
    caveats=(CAVEAT,),
    scatters=(),
)
