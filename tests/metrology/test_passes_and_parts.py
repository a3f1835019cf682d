"""Functions of a formula that look beyond the pass at hand."""

import pytest

from reportgen.metrology.errors import FormulaError, NoValue
from reportgen.metrology.formulas.evaluate import evaluate
from reportgen.metrology.formulas.parse import parse
from reportgen.metrology.uncertain import combined_standard_uncertainty
from tests.metrology.formula_bench import Bench, value


def test_a_mean_over_passes_keeps_what_they_share() -> None:
    passes = [value(20.0, "°C", probe=0.5, one=0.1), value(22.0, "°C", probe=0.5, two=0.1)]
    found = evaluate(parse("mean_of_passes(room)"), Bench(passes={"room": passes}))
    assert (found.value, found.unit.kind) == (21.0, "absolute")
    assert combined_standard_uncertainty(found) == pytest.approx((0.5**2 + 0.1**2 / 2) ** 0.5)


def test_a_sum_over_parts_adds_them_up() -> None:
    bench = Bench(parts={"burned": [value(40.0, "g"), value(41.5, "g")]}, price=value(0.026, "EUR/g"))
    found = evaluate(parse("sum_of_parts(burned) * price"), bench)
    assert found.value == pytest.approx(81.5 * 0.026)
    assert found.unit.symbol == "EUR"


def test_another_contenders_reading_shares_its_errors() -> None:
    own = value(300.0, "Δ°C", probe=2.0)
    other = value(228.0, "Δ°C", probe=2.0)
    found = evaluate(parse("here - of(ostler, here)"), Bench(here=own, others={("ostler", "here"): other}))
    assert found.value == 72.0
    assert combined_standard_uncertainty(found) == 0.0


def test_a_name_nobody_knows_is_told_at_its_own_column() -> None:
    for formula, column in (("1 + mean_of_passes(room)", 20), ("of(nobody, x) + 1", 4), ("sqrt(x)", 6)):
        with pytest.raises(FormulaError) as refusal:
            evaluate(parse(formula), Bench())
        assert refusal.value.column == column


def test_passes_that_were_never_read_give_no_value() -> None:
    with pytest.raises(NoValue, match="never read"):
        evaluate(parse("mean_of_passes(room)"), Bench(passes={"room": []}))
