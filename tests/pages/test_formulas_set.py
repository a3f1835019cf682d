"""Formulas as mathematics: fractions, powers and roots stand as such, and brackets only where reading needs them."""

from __future__ import annotations

import pytest

from reportgen.evaluation.evaluated import Step
from reportgen.metrology.formula import parse
from reportgen.pages.formula_shown import Math, with_names, with_values


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
    assert valued("2 * sum_of_parts(a)", *steps) == "2×sum over parts of(31.4 g,32.8 g)"


@pytest.mark.parametrize(
    ("formula", "steps"),
    [
        ("a + b", (Step("a", 1.0, "g"),)),  # not told
        ("a + b", (Step("a", 1.0, "g"), Step("b", 999.0, "g", "above"))),  # a bound is no value
        ("a + sum_of_parts(a)", (Step("a", 1.0, "g"), Step("a", 2.0, "g"))),  # which of them stands first isn't known
    ],
)
def test_a_formula_whose_values_are_in_doubt_is_not_set_with_them(formula: str, steps: tuple[Step, ...]) -> None:
    assert valued(formula, *steps) is None
