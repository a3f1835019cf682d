"""Every engine knows every function, and what draws do agrees with first order where a formula is straight."""

import numpy as np
import pytest

from reportgen.metrology.draws import Draws
from reportgen.metrology.errors import NoValue
from reportgen.metrology.formulas.bending import BENDING
from reportgen.metrology.formulas.drawn import engine
from reportgen.metrology.formulas.engine import FIRST_ORDER, Engine
from reportgen.metrology.formulas.evaluate import evaluate_by
from reportgen.metrology.formulas.grammar import Call
from reportgen.metrology.formulas.parse import parse
from reportgen.metrology.monte_carlo import tolerance, until_settled
from reportgen.metrology.uncertain import Source, Uncertain
from reportgen.metrology.unit import parse_unit


def known(name: str, value: float, unit: str = "", u: float = 0.0) -> Uncertain:
    return Uncertain(value, parse_unit(unit), {Source("accuracy", name): u} if u else {})


INPUTS = {
    "mass": known("mass", 250.0, "g", 0.1),
    "heavy": known("heavy", 1.5, "kg", 0.001),
    "time": known("time", 60.0, "s", 0.5),
    "warm": known("warm", 21.0, "°C", 0.2),
    "hot": known("hot", 95.0, "°C", 0.3),
    "loud": known("loud", 62.0, "dB(A)", 0.5),
    "louder": known("louder", 65.0, "dB(A)", 0.7),
    "hum": known("hum", 54.0, "dB(A)", 0.4),
    "share": known("share", 0.4, "", 0.02),
}
FORMULAS = [
    "mass + heavy", "heavy - mass", "-mass", "hot - warm", "mass * time", "mass / time", "(hot - warm) / time", "mass ^ 2",
    "1 / time", "time ^ -2", "mass ^ 0.5", "sqrt(share)", "log(share)", "exp(share)", "energy_mean(loud, louder)",
    "energy_sum(loud, louder, hum)", "less_background(loud, hum)", "mean_of_passes(mass)", "2 * mass", "share * share",
]  # fmt: skip


class Names:
    """The inputs as one engine has them."""

    def __init__(self, by: Engine) -> None:
        self.by = by

    def value(self, name: str):
        return self.by.leaf(INPUTS[name])

    def over_passes(self, name: str):
        return [self.value(name), self.value(name)]

    over_parts = over_passes

    def of(self, contender: str, name: str):
        return self.value(name)


def along(call: Call) -> Uncertain:
    raise AssertionError(call)


def by(engine: Engine, formula: str):
    return evaluate_by(engine, parse(formula), Names(engine), along)


@pytest.mark.parametrize("other", [BENDING, engine(Draws(10), 0)])
def test_every_engine_has_the_functions_of_first_order(other: Engine) -> None:
    assert other.functions.keys() == FIRST_ORDER.functions.keys()
    assert other.joins.keys() == FIRST_ORDER.joins.keys()
    assert other.signs.keys() == FIRST_ORDER.signs.keys()


@pytest.mark.parametrize("formula", FORMULAS)
def test_each_draw_is_the_formula_of_what_was_drawn(formula: str) -> None:
    """Worked out a draw at a time, of exact inputs moved by what was drawn: the same as all at once."""
    draws = Draws(10)
    together = by(engine(draws, 3), formula)

    class Moved(Names):
        def __init__(self, number: int) -> None:
            self.number = number

        def value(self, name: str) -> Uncertain:
            x = INPUTS[name]
            off = sum(u * draws.of(s, 3)[self.number] for s, u in x.contributions.items())
            return Uncertain(x.value + off, x.unit)

    for number in range(10):
        alone = evaluate_by(FIRST_ORDER, parse(formula), Moved(number), along)
        assert alone.unit == together.first.unit
        assert together.first.value + together.off[number] == pytest.approx(alone.value, rel=1e-11)


@pytest.mark.parametrize("formula", FORMULAS)
def test_bending_is_no_less_than_draws_show(formula: str) -> None:
    """What first order leaves out, over ten thousand draws of uniform inputs (1.73 standard uncertainties at most)."""
    drawn, bent = by(engine(Draws(), 0), formula), by(BENDING, formula)
    draws = Draws()
    straight = sum(u * draws.of(s, 0) for s, u in drawn.first.contributions.items())
    left_out = float(np.abs(drawn.off - straight).max())
    assert left_out <= 1.3 * 3.0 * bent.bend + 1e-12 * abs(drawn.first.value)


@pytest.mark.parametrize("formula", ["mass + heavy", "-mass", "hot - warm", "2 * mass", "mean_of_passes(mass)"])
def test_what_is_straight_has_no_bending(formula: str) -> None:
    assert by(BENDING, formula).bend == 0.0


def test_a_bound_is_never_drawn() -> None:
    with pytest.raises(NoValue, match="bound"):
        engine(Draws(10), 0).leaf(Uncertain(5.0, parse_unit("g"), {}, "above"))


def test_an_error_that_two_values_share_is_drawn_once() -> None:
    same = by(engine(Draws(), 0), "mass - mass")
    assert float(np.abs(same.off).max()) == 0.0


def test_a_draw_without_an_answer_is_no_number() -> None:
    near = {"x": known("x", 0.1, "", 0.5)}
    draws = engine(Draws(), 0)
    x = draws.leaf(near["x"])
    lost = [float(np.isnan(f(x).off).mean()) for f in (draws.functions["log"], draws.functions["sqrt"])]
    assert lost == pytest.approx([0.442, 0.442], abs=0.02)  # uniform over ±0.866 about 0.1: so much lies below nothing


def test_the_tolerance_is_half_of_the_last_of_two_digits() -> None:
    """JCGM 101, 7.9.2, with its examples 0.035 g → 35 × 10⁻³ g: 0.000 5 g; 3 digits of 0.000 35 (from memory)."""
    assert [tolerance(u) for u in (0.035, 0.0996, 99.4, 1.0)] == pytest.approx([0.0005, 0.005, 0.5, 0.05])


def test_blocks_go_on_until_their_average_stands() -> None:
    stream = np.random.Generator(np.random.PCG64(4))
    found = until_settled(lambda _: [float(stream.normal(5.0, 1.0))], lambda _: [0.4])
    assert found.stands
    assert found.within[0] <= 0.4
    assert found.blocks == pytest.approx(25, abs=12)  # 2/√n ≤ 0.4
    assert found.averages[0] == pytest.approx(5.0, abs=0.8)


def test_blocks_stop_at_their_ceiling_and_say_so() -> None:
    stream = np.random.Generator(np.random.PCG64(4))
    found = until_settled(lambda _: [float(stream.normal(5.0, 1.0))], lambda _: [1e-6], most=20)
    assert (found.blocks, found.stands) == (20, False)


def test_streams_are_told_apart_by_all_of_their_name() -> None:
    draws = Draws()
    sources = [
        Source("offset", "scale", "day 1"), Source("offset", "scale", "day 2"), Source("gain", "scale", "day 1"),
        Source("offset", "meter", "day 1"),
    ]  # fmt: skip
    together = np.corrcoef([draws.of(s, 0) for s in sources] + [draws.of(sources[0], 1)])
    assert np.abs(together - np.eye(5)).max() < 0.05
