"""Formulas as mathematics: fractions, powers and roots stand as such, and brackets only where reading needs them."""

from __future__ import annotations

import pytest

from reportgen.evaluation.evaluated import Step
from reportgen.metrology.formulas.parse import parse
from reportgen.pages.formula_shown import with_names, with_values
from reportgen.pages.math_pieces import Math


def flat(of: Math) -> str:
    """As one would read it aloud to somebody with a pencil."""
    inner = [flat(piece) for piece in of.inside]
    match of.sort:
        case "fraction":
            return f"[{inner[0]} over {inner[1]}]"
        case "power":
            return f"{inner[0]}^{{{inner[1]}}}"
        case "root":
            return f"root[{inner[0]}]"
        case "row":
            return "".join(inner)
        case _:
            return of.text


def named(formula: str) -> str:
    return flat(with_names(parse(formula), lambda name: name))


@pytest.mark.parametrize(
    ("formula", "set_"),
    [
        ("a - b", "a−b"),
        ("a - (b - c)", "a−(b−c)"),
        ("(a + b) * c", "(a+b)×c"),
        ("a * b + c", "a×b+c"),
        ("(a + b) / (c - d)", "[a+b over c−d]"),
        ("a / b / c", "[[a over b] over c]"),
        ("a * (b / c)", "a×[b over c]"),
        ("a * (b * c)", "a×(b×c)"),
        ("(a + b)^2", "(a+b)^{2}"),
        ("a^2^3", "a^{2^{3}}"),
        ("(a / b)^2", "([a over b])^{2}"),
        ("-a^2", "−a^{2}"),
        ("a * -b", "a×(−b)"),
        ("sqrt(a + b)", "root[a+b]"),
        ("exp(-a / b)", "e^{[−a over b]}"),
        ("log(a / b)", "ln([a over b])"),
        ("energy_sum(a, b)", "10\u2009lg(10^{0.1×a}+10^{0.1×b})"),
        ("energy_mean(a, b)", "10\u2009lg([10^{0.1×a}+10^{0.1×b} over 2])"),
        ("energy_mean(a)", "10\u2009lg(mean over parts of\u00a010^{0.1×a})"),
        ("energy_sum(a)", "10\u2009lg(sum over parts of\u00a010^{0.1×a})"),
        ("less_background(a, b)", "10\u2009lg(10^{0.1×a}−10^{0.1×b})"),
        ("less_background(a - c, b)", "10\u2009lg(10^{0.1×(a−c)}−10^{0.1×b})"),
    ],
)
def test_brackets_stand_only_where_reading_needs_them(formula: str, set_: str) -> None:
    assert named(formula) == set_


def plain(of: Step) -> int | None:
    return None


def valued(formula: str, *steps: Step) -> str | None:
    made = with_values(parse(formula), steps, plain)
    return flat(made).replace("\u00a0", " ") if made else None


def test_values_with_their_units_stand_in_the_place_of_names() -> None:
    steps = (Step("a", 1000.0, "g"), Step("b", 4.19, "J/(g*K)"), Step("c", 652.5, "kJ"))
    assert valued("a * b / c", *steps) == "[1000 g×4.19 J/(g·K) over 652.5 kJ]"


def test_a_value_below_zero_or_with_a_unit_under_a_power_is_in_brackets() -> None:
    assert valued("a - b", Step("a", 5.0, "°C"), Step("b", -2.5, "°C")) == "5 °C−(−2.5 °C)"
    assert valued("a^2", Step("a", 3.0, "m")) == "(3 m)^{2}"


def test_what_was_read_in_every_part_stands_in_a_row() -> None:
    steps = (Step("a", 31.4, "g"), Step("a", 32.8, "g"))
    assert valued("2 * sum_of_parts(a)", *steps) == "2×sum over parts of (31.4 g,32.8 g)"


def test_levels_in_an_exponent_are_bare_numbers() -> None:
    a, b = Step("a", 69.5, "dB"), Step("b", -3.0, "dB")
    assert valued("energy_sum(a, b)", a, b) == "10\u2009lg(10^{0.1×69.5}+10^{0.1×(−3)})"
    assert valued("energy_mean(a)", a, Step("a", 71.0, "dB")) == "10\u2009lg([10^{0.1×69.5}+10^{0.1×71} over 2])"


def test_a_background_over_15_db_down_takes_nothing_off() -> None:
    """ISO 3744:2010, 8.2.3 (clause from memory): at 15 dB the correction is still made, over it none."""
    at, over = Step("b", 55.1, "dB"), Step("b", 55.0, "dB")
    assert valued("less_background(a, b)", Step("a", 70.1, "dB"), at) == "10\u2009lg(10^{0.1×70.1}−10^{0.1×55.1})"
    assert valued("less_background(a, b)", Step("a", 70.1, "dB"), over) == "70.1 dB−0 dB"


@pytest.mark.parametrize(
    ("formula", "steps"),
    [
        ("a + b", (Step("a", 1.0, "g"),)),  # not told
        ("a + b", (Step("a", 1.0, "g"), Step("b", 999.0, "g", "above"))),  # a bound is no value
        ("a + sum_of_parts(a)", (Step("a", 1.0, "g"), Step("a", 2.0, "g"))),  # which of them stands first isn't known
        ("less_background(a + b, c)", (Step("a", 1.0, "dB"), Step("b", 2.0, "dB"), Step("c", 0.0, "dB"))),
    ],
)
def test_a_formula_whose_values_are_in_doubt_is_not_set_with_them(formula: str, steps: tuple[Step, ...]) -> None:
    assert valued(formula, *steps) is None
