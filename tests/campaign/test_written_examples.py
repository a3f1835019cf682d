"""Every example an author is given works as it stands."""

from decimal import Decimal

import pytest

from reportgen.campaign.load import load_campaign, load_publication
from reportgen.sources import find_workspace
from tests.campaign.written_examples import SHARED, SHORT_FORMS, SMALLEST, SPLIT, write


@pytest.fixture(scope="module")
def declared(tmp_path_factory):
    ws = find_workspace(write(tmp_path_factory.mktemp("workspace"), SMALLEST, SHARED, SHORT_FORMS, SPLIT))
    publication, findings = load_publication(ws)
    assert not findings
    return {folder: load_campaign(ws, folder, publication) for folder in ws.campaigns}


def test_all_three_campaigns_load_without_a_word(declared):
    assert {folder: d.findings for folder, d in declared.items()} == {"short": (), "split": (), "stoves": ()}


def test_a_measure_is_a_test_with_one_quantity_of_its_name(declared):
    test = declared["stoves"].campaign.test("gas-burned")
    assert [q.id for q in test.quantities] == ["gas-burned"]
    assert test.headline == "gas-burned"
    assert [c.heading for c in test.columns] == ["gas burned before", "gas burned after"]
    assert {c.unit for c in test.columns} == {"g"}


def test_a_kind_writes_the_formula(declared):
    campaign = declared["stoves"].campaign
    assert campaign.quantity("gas-burned").formula == "gas_burned_before - gas_burned_after"
    assert campaign.quantity("boil-time").formula == "boil_time"


def test_the_short_form_says_the_same_as_the_long_one(declared):
    short = declared["short"].campaign.quantity("gas-burned")
    long = declared["stoves"].campaign.quantity("gas-burned")
    assert (short.kind, short.unit, short.better, short.formula, short.reads) == (
        long.kind, long.unit, long.better, long.formula, long.reads,
    )  # fmt: skip
    assert short.instrument == "bench-scale"
    assert declared["short"].campaign.quantity("lit-first-time").kind == "yes/no"
    assert declared["short"].campaign.quantity("packed-weight").better == "neither"


def test_the_settings_of_the_site_reach_every_campaign(declared):
    assert declared["stoves"].campaign.show == ("g", "oz")
    assert declared["stoves"].campaign.who_pays.startswith("Readers' donations")


def test_instruments_come_from_the_workspace_in_both_forms(declared):
    used = declared["short"].campaign.instruments
    assert used["sound-meter"].resolution.text == "0.1 dB"
    assert used["sound-meter"].high.value == Decimal("130")
    assert used["sound-meter"].accuracy.absolute.value == Decimal("1.5")
    assert used["bench-scale"].title == "Bench scale, 2 kg"
    assert used["bench-scale"].low.value == 0
    assert used["bench-scale"].shared == "offset"
    stopwatch = declared["split"].campaign.instruments["stopwatch"]
    assert stopwatch.by_hand
    assert not stopwatch.accuracy.known


def test_a_split_campaign_keeps_the_order_it_lists(declared):
    campaign = declared["split"].campaign
    assert [c.id for c in campaign.contenders] == ["corvane", "ostler", "tamsin"]
    assert [t.id for t in campaign.tests] == ["gas-burned", "boil-time"]
    assert campaign.held_the_same == ("fuel", "water", "room")
    assert [t.not_yet_tested for t in campaign.tests] == [("tamsin",), ("tamsin",)]
    assert campaign.tested.first == "2026-05-02"
    assert campaign.tested.last == "2026-05-09"


def test_a_test_file_says_where_its_columns_are(declared):
    test = declared["split"].campaign.test("gas-burned")
    before = next(c for c in test.columns if c.name == "before")
    assert (before.heading, before.unit, before.instrument) == ("canister before", "g", "bench-scale")
    assert test.sources[0].roles == {"contender": "stove", "pass": "pass"}
    assert test.own_sources
    assert declared["split"].campaign.quantity("gas-burned").reads == ("before", "after")
    assert declared["split"].campaign.quantity("heat-used").reads == ()


def test_the_method_gives_its_test_scatter_order_and_chaining(declared):
    campaign = declared["split"].campaign
    test, method = campaign.test("gas-burned"), campaign.methods["weigh-before-and-after.2"]
    assert (test.method_version, test.order, test.chained) == (2, "rounds", True)
    assert method.repeatability["gas-burned"].degrees == 24 - 4
    assert method.between_sessions.guess
    assert list(campaign.methods) == ["weigh-before-and-after.2"]


def test_only_constants_that_formulas_name_are_taken_along(declared):
    assert set(declared["split"].campaign.constants) == {"heating-value", "gas-price"}
    assert declared["split"].campaign.constants["heating-value"].value.text == "46.1 kJ/g"
    assert declared["stoves"].campaign.constants == {}


def test_remarks_name_what_they_are_about(declared):
    test = declared["split"].campaign.test("gas-burned")
    (exclusion,), (incident,), (caveat,) = test.exclusions, test.incidents, test.caveats
    assert (exclusion.about.contender, exclusion.about.pass_, exclusion.decided) == ("corvane", "2", "during the test")
    assert (incident.about.contender, incident.about.quantities) == ("ostler", ("gas-burned",))
    assert caveat.about.quantities == ("gas-burned",)
    assert declared["split"].at(f"exclusion/{exclusion.id}").line == 28


def test_contenders_bring_prices_and_claims(declared):
    corvane = declared["split"].campaign.contender("corvane")
    assert corvane.prices[0].low == Decimal("89.00")
    assert str(corvane.prices[0].low) == "89.00"
    assert corvane.claims[0].says == {"printed on the box": "Boils a litre in under four minutes"}
    assert corvane.claims[0].quantity == "boil-time"
    assert corvane.claims[0].at_most.unit == "min"
    ostler = declared["split"].campaign.contender("ostler")
    assert (ostler.prices[0].low, ostler.prices[0].high, ostler.prices[0].currency) == (90, 120, "USD")
    assert ostler.claims[0].says == {"box": "6 kW", "sticker": "7 kW"}
    assert not ostler.claims[0].testable
    assert ostler.claims[1].looked == "no, foam only"
    assert ostler.bought_on.text == "not noted"
    assert ostler.bought_on.first == ""


def test_the_verdict_is_read_with_its_weights_readers_and_use(declared):
    plan = declared["split"].campaign.verdict
    assert [(g.id, g.weight) for g in plan.groups] == [("thrift", 40), ("speed", 60)]
    assert plan.groups[0].criteria[0].worst.value == 25
    assert plan.must[0].at_most.text == "10 min"
    assert (plan.we_say.best, plan.we_say.best_for_the_money) == ("ostler", "corvane")
    assert plan.we_say.because == ("boil-time", "gas-burned")
    assert plan.readers == {"mostly speed": {"thrift": 20, "speed": 80}}
    assert (plan.use.cost, plan.use.low, plan.use.high) == ("gas_burned * gas_price", 0, 500)


def test_prose_lies_beside_the_declarations(declared):
    assert [(p.id, p.path) for p in declared["split"].campaign.prose] == [("conclusions", "split/conclusions.md")]
