"""Results, pairs, claims, exclusions and yes/no in words."""

from __future__ import annotations

from dataclasses import replace

import pytest

from reportgen.campaign.declared import Claim, Must, VerdictPlan
from reportgen.evaluation.evaluated import (
    Caveat,
    ClaimOutcome,
    Contribution,
    MustOutcome,
    PassValue,
    ValueForMoney,
    Verdict,
)
from reportgen.finding import Place
from reportgen.intake.reading import ReadingKey
from reportgen.judgement.measured import Reason
from reportgen.metrology.uncertain import Source
from reportgen.prose import sentences
from reportgen.prose.counting import most_unseen
from reportgen.prose.money import beaten_on
from reportgen.record.printed import printed
from tests.prose.builder import Asked, Told, amount, told

NB = "\u00a0"


def plain(text: str) -> str:
    return text.replace(NB, " ")


def cell(t: Told, first: str, second: str, quantity: str = "gas-burned") -> sentences.PairCell:
    found = sentences.pair_cell(*t.both, quantity, first, second)
    return replace(found, means=plain(found.means))


# ---- pairs


def test_a_cell_is_seen_from_the_first_contenders_side() -> None:
    t = told(corvane=14.0, ostler=17.0).pair("corvane", "ostler", "better", 1.2).first("corvane")
    assert cell(t, "corvane", "ostler").word == "better"
    assert cell(t, "ostler", "corvane").word == "worse"
    assert cell(t, "corvane", "ostler").means == "Corvane Sol is 3.0 g lower than Ostler Mk II; a repeat should agree."
    assert cell(t, "ostler", "corvane").means == "Ostler Mk II is 3.0 g higher than Corvane Sol; a repeat should agree."


@pytest.mark.parametrize("decision", ["too close to call", "not enough to say", "no difference that matters"])
def test_nothing_but_a_resolved_pair_is_called_better(decision: str) -> None:
    asked = Asked(matters="5 g")
    t = told("gas burned", asked, corvane=14.0, ostler=14.3).pair("corvane", "ostler", decision, 1.2)
    for first, second in (("corvane", "ostler"), ("ostler", "corvane")):
        found = cell(t, first, second)
        assert found.word in ("not told apart", "not enough to say", "not told apart; nothing that matters")
        assert "better" not in found.means
        assert "repeat should agree" not in found.means


def test_a_pair_that_was_not_compared_says_so() -> None:
    assert cell(told(corvane=14.0, ostler=17.0), "corvane", "ostler").code == "none"


def test_a_pair_decided_by_steps_names_the_least_gap_that_counts() -> None:
    t = told(corvane=14.0, ostler=14.1)
    t = t.pair("corvane", "ostler", "too close to call", 0.1, reason=Reason("step-decides", {"least_lead": 0.2}))
    assert cell(t, "corvane", "ostler").means == (
        "The gap is 0.10 g; on the instrument's steps one counts from 0.20 g on."
    )


def test_a_gap_smaller_than_the_shown_digits_never_reads_as_nothing() -> None:
    t = told(corvane=14.40, ostler=14.45).pair("corvane", "ostler", "too close to call", 1.3)
    assert "gap of 0.05 g" in cell(t, "corvane", "ostler").means


def test_binary_noise_is_no_gap() -> None:
    t = told(corvane=231.4 - 217.1, ostler=14.3).pair("corvane", "ostler", "too close to call", 1.3)
    assert cell(t, "corvane", "ostler").means.startswith("They came out alike")


def test_a_bound_that_decides_gives_no_size() -> None:
    t = told("co", Asked("ppm"), corvane=40.0, brindle="over 999").pair("corvane", "brindle", "better", None)
    assert cell(t, "corvane", "brindle", "co").means == (
        "Brindle read more than 999 ppm; by how much they differ is unknown."
    )


def test_a_line_of_the_workings_gives_difference_interval_and_meaning() -> None:
    t = told(corvane=14.0, ostler=17.0).pair("corvane", "ostler", "better", 1.2)
    line = sentences.comparison_line(*t.both, t.evaluation.comparisons[0])
    assert plain(line) == (
        "Corvane Sol against Ostler Mk II: −3.00 g (−4.20 to −1.80). Corvane Sol is ahead. "
        "Corvane Sol is 3.0 g lower than Ostler Mk II; a repeat should agree."
    )


# ---- results


def test_a_result_says_its_passes_and_what_was_left_out() -> None:
    t = told(corvane=14.0, ostler=17.0).with_results(corvane={"excluded": 1})
    line = sentences.result_line(t.campaign, t.evaluation.results[0])
    assert plain(line) == "Corvane Sol: 14.00 g (13.40 to 14.60), mean of four passes (one more left out)."


def test_a_result_of_a_single_run_warns_that_a_repeat_may_differ() -> None:
    t = told(corvane=14.0, ostler=17.0).once("corvane")
    assert "a repeat may differ" in sentences.result_line(t.campaign, t.evaluation.results[0])


def test_a_result_without_uncertainty_says_why() -> None:
    t = told("noise", Asked("dB", half=None), corvane=71.2)
    t = t.with_results(corvane={"why_no_u": "accuracy-unknown", "passes": 1})
    result = t.evaluation.results[0]
    assert plain(sentences.full(result)).startswith("71.2 dB (uncertainty not known: ")
    assert "because the accuracy of the instrument isn't known" in sentences.why_no_u_line(t.campaign, result)


def test_pages_and_record_print_a_result_alike() -> None:
    for value in (14.2, "over 999", "over unknown", "under 1", "not yet tested", "spilled"):
        (result,) = told(corvane=value).evaluation.results
        assert plain(sentences.full(result)) == printed(result)
        yes = replace(result, kind="yes/no", yes=2, of=3, missing="")
        assert sentences.full(yes) == printed(yes) == "2 of 3"
        grade = replace(result, kind="grade", grade="good", estimate=None, missing="")
        assert sentences.full(grade) == printed(grade) == "good"


def test_a_budget_names_its_largest_source() -> None:
    t = told(corvane=14.0)
    (result,) = t.evaluation.results
    assert result.estimate is not None
    lines = (
        Contribution(Source("step", "bench-scale"), 0.03, 0.6, False),
        Contribution(Source("scatter", "passes"), 0.0245, 0.4, False),
    )
    result = replace(result, u=0.0387, estimate=replace(result.estimate, contributions=lines))
    assert plain(sentences.budget_line(t.campaign, t.evaluation, result)) == (
        "More than half of the uncertainty (60 %) is the step the bench scale reads in; without it 0.024 g would be left."
    )


# ---- claims and conditions


def claimed(outcome: ClaimOutcome, claim: Claim, t: Told) -> str:
    contender = replace(t.campaign.contenders[0], claims=(claim,))
    campaign = replace(t.campaign, contenders=(contender, *t.campaign.contenders[1:]))
    return plain(sentences.claim_line(campaign, t.evaluation, outcome))


def outcome_of(
    outcome: str, probability: float | None, scope: str = "repeat", quantity: str = "gas-burned"
) -> ClaimOutcome:
    return ClaimOutcome(
        "corvane",
        "c1",
        quantity,
        outcome,
        probability,
        scope,
        Reason("conforms"),
        frozenset(),  # type: ignore[arg-type]
    )


def test_a_claim_is_judged_for_the_one_we_bought_with_its_evidence() -> None:
    claim = Claim("c1", {"printed on the box": "Burns under 10 g"}, "gas-burned", at_most=amount("10 g"))
    line = claimed(outcome_of("contradicted", 0.0004), claim, told(corvane=14.0))
    assert line == (
        "“Burns under 10 g” (printed on the box): contradicted by the one we bought, under our conditions. "
        "We measured 14.00 g (13.40 to 14.60) where the claim has at most 10 g; the chance that it holds is under 1 %."
    )


def test_a_claim_judged_from_one_run_is_worded_for_that_run() -> None:
    claim = Claim("c1", {"the box": "Burns under 20 g"}, "gas-burned", at_most=amount("20 g"))
    line = claimed(outcome_of("supported", 0.999, "this run"), claim, told(corvane=14.0))
    assert "supported for the one we bought, in this run. We measured" in line
    assert "whether a repeat would agree isn't known" in line


def test_a_claim_settled_by_looking_or_beyond_testing_says_so() -> None:
    looked = Claim("c1", {"the box": "All steel"}, looked="no, foam only")
    assert "We looked: no, foam only." in claimed(outcome_of("contradicted", None, "", ""), looked, told(corvane=14.0))
    taste = Claim("c1", {"the box": "Feels great"}, testable=False, why="it is a matter of taste")
    line = claimed(outcome_of("not tested", None, "", ""), taste, told(corvane=14.0))
    assert line.endswith("not tested. No number could test it. It is a matter of taste.")


def test_a_condition_that_fails_puts_a_contender_out_with_the_reason() -> None:
    t = told("boil time", Asked("s"), corvane=700.0)
    campaign = replace(t.campaign, verdict=VerdictPlan(must=(Must("boil-time", at_most=amount("10 min")),)))
    failed = MustOutcome("corvane", "boil-time", "contradicted", 0.0, frozenset())
    assert plain(sentences.must_line(campaign, t.evaluation, failed)) == (
        "Corvane Sol is out: boil time has to be at most 10 min (600 s), and it read 700.00 s (699.40 to 700.60)."
    )


def test_who_was_read_once_is_not_called_unbeaten_by_one_that_costs_no_more() -> None:
    of = ValueForMoney("ostler", "89 EUR", 89, 89, "EUR", ())
    cheap = ValueForMoney("corvane", "60 EUR", 60, 60, "EUR", ())
    verdict = Verdict((), (), (cheap, of), ("gas-burned",), None, frozenset())

    def met(decision: str, value: ValueForMoney) -> str:
        t = told(corvane=14.0, ostler=17.0).pair("corvane", "ostler", decision, 5.0)
        return beaten_on(t.campaign, value, "gas-burned", replace(t.evaluation, verdict=verdict))

    assert met("not enough to say", of) == "not enough to say"
    assert met("too close to call", of) == "not beaten"
    assert met("not enough to say", cheap) == "not beaten", "nothing that costs no more stands against it"
    t = told(corvane=14.0, ostler=17.0).with_results(ostler={"blocked": "It leaked.", "rank": None})
    kept_out = replace(t.evaluation, verdict=verdict)
    assert beaten_on(t.campaign, of, "gas-burned", kept_out) == "not compared"
    assert sentences.money_line(t.campaign, ("gas-burned",), of, kept_out) == (
        "Ostler Mk II isn’t ranked on gas burned, the one thing compared, so nothing here says what its price buys."
    )
    assert met("not enough to say", replace(of, on={"gas-burned": ("corvane",)})) == "beaten by Corvane Sol"


def test_money_speaks_only_of_what_is_shown() -> None:
    t = told(corvane=14.0, ostler=17.0)
    beaten = ValueForMoney("ostler", "89 EUR", 89, 89, "EUR", ("corvane",))
    assert "as much as Corvane Sol or more" in sentences.money_line(t.campaign, ("gas-burned",), beaten)
    alone = replace(beaten, dominated_by=())
    assert sentences.money_line(t.campaign, ("gas-burned",), alone) == (
        "Nothing that costs no more is shown to be better than Ostler Mk II on gas burned, the one thing compared."
    )


# ---- exclusions


def test_an_exclusion_shows_the_value_with_and_without_and_what_it_does_to_the_order() -> None:
    key = ReadingKey("boil-time", "tamsin", "1", "3", "", "boil_time")
    left_out = PassValue("1", "3", "", 250.1, None, (key,), excluded="x1")
    t = told("boil time", Asked("s"), tamsin=214.0, corvane=213.0)
    t = t.with_results(tamsin={"by_pass": (left_out,), "passes": 3, "excluded": 1, "without": 226.0})
    t = t.pair("tamsin", "corvane", "too close to call", 8.0).first("tamsin", "corvane", order_changes_without=False)
    caveat = Caveat(
        "x1", 1, "exclusion", "windscreen blown over", "", False, frozenset({key}), ("boil-time",), "tamsin",
        Place("campaign.yaml", 9), decided="during the test", because="windscreen blown over",
    )  # fmt: skip
    assert plain(sentences.exclusion_line(*t.both, caveat, "boil-time")) == (
        "One pass of Tamsin is left out (windscreen blown over; decided during the test) and wasn't repeated: "
        "214.00 s without it, 226.00 s with it. The order doesn't change."
    )
    other = replace(caveat, touches=frozenset({replace(key, contender="corvane")}))
    assert sentences.exclusion_line(*t.both, other, "boil-time") == ""
    moved = t.first("tamsin", "corvane", order_changes_without=True, ranks_without={"tamsin": (1, 2)})
    moved = moved.with_results(tamsin={"rank": (1, 1)})
    line = plain(sentences.exclusion_line(*moved.both, caveat, "boil-time"))
    assert line.endswith("With it, Tamsin would be in place 1–2 instead of 1.")


# ---- yes/no and grades


def yes_no(of: int, **yes: int) -> Told:
    t = told("lit first time", Asked(better="neither", kind="yes/no"), **dict.fromkeys(yes, 1.0))
    return t.with_results(**{c: {"kind": "yes/no", "yes": n, "of": of, "estimate": None} for c, n in yes.items()})


def test_one_yes_each_leaves_almost_any_chance_open() -> None:
    t = yes_no(1, corvane=1, ostler=1)
    assert plain(sentences.yes_no_line(*t.both, "lit-first-time")) == (
        "Lit first time: yes for all at the first try. Each can; how often is unknown "
        "(one try leaves the chance of a no anywhere up to 97.5 %)."
    )


def test_mixed_answers_are_listed_without_an_order() -> None:
    line = sentences.yes_no_line(*yes_no(3, corvane=3, ostler=1).both, "lit-first-time")
    assert line.startswith("Corvane Sol: 3 of 3, Ostler Mk II: 1 of 3.")
    assert "no order is shown" in line


# Newcombe 1998, Statistics in Medicine 17:857, exact limits: 0/20 reaches 0.1684.
@pytest.mark.parametrize(("tries", "limit", "places"), [(20, 0.1684, 4), (1, 0.975, 3)])
def test_the_limit_of_what_was_never_seen_is_clopper_and_pearsons(tries: int, limit: float, places: int) -> None:
    from scipy.stats import binomtest

    assert round(most_unseen(tries), places) == limit
    assert most_unseen(tries) == pytest.approx(binomtest(0, tries).proportion_ci(0.95, "exact").high, rel=1e-9)
