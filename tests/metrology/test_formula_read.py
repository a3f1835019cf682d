"""The grammar of formulas: what is read, how, and what is refused and where."""

import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reportgen.metrology.errors import FormulaError
from reportgen.metrology.formulas.evaluate import evaluate
from reportgen.metrology.formulas.grammar import FUNCTIONS
from reportgen.metrology.formulas.names import contenders_in, functions_in, names_in
from reportgen.metrology.formulas.parse import parse
from tests.metrology.formula_bench import Bench, value


def worked_out(text: str) -> float | None:
    return evaluate(parse(text), Bench()).value


@pytest.mark.parametrize(
    ("text", "answer"),
    [
        ("2 + 3 * 4", 14), ("(2 + 3) * 4", 20), ("2 ^ 3 ^ 2", 512), ("-2 ^ 2", -4), ("2 ** -1", 0.5), ("8 - 3 - 2", 3),
        ("24 / 4 / 2", 3), ("--3", 3), ("+3", 3), ("1.5e2", 150), (".5 * 4", 2), ("2e-1", 0.2), ("sqrt(9)", 3),
        ("log(exp(2))", 2), ("5 − 2", 3), ("5 × 2", 10), ("4 ÷ 2", 2),
        ("2 *\n 3", 6), ("27^(1/3)", 3),
    ],
)  # fmt: skip
def test_the_usual_rules_of_arithmetic_hold(text: str, answer: float) -> None:
    assert worked_out(text) == pytest.approx(answer, rel=1e-15)


def test_a_formula_tells_what_it_will_look_up() -> None:
    tree = parse("(before - after) * _2nd_gain / of(ostler, before) + mean_of_passes(room) + log(2)")
    assert names_in(tree) == {"before", "after", "_2nd_gain", "room"}
    assert contenders_in(tree) == {"ostler"}
    assert functions_in(tree) == {"of", "mean_of_passes", "log"}


REFUSED = [
    ("", 1, "empty"),
    ("a.b", 2, "nothing inside a name"),
    ("__import__('os')", 1, "two underscores"),
    ("a + 'x'", 5, "quoted"),
    ('"x"', 1, "quoted"),
    ("a[0]", 2, "square brackets"),
    ("{a}", 1, "braces"),
    ("a; b", 2, "one expression"),
    ("lambda: 1", 1, "lambda"),
    ("a if b", 3, "if"),
    ("a < b", 3, "compare"),
    ("a == b", 3, "compare"),
    ("a = 3", 3, "compare"),
    ("5 % 2", 3, "%"),
    ("a // b", 3, "//"),
    ("3²", 2, "raised digits"),
    ("gas burned", 5, "a sign is missing"),
    ("1,5 * a", 2, "comma"),
    ("2x", 1, "neither a number nor a name"),
    ("1e999", 1, "too large"),
    ("Before - after", 1, "capital"),
    ("größe * 2", 3, "ö"),
    ("аfter", 1, "а"),  # a Cyrillic a
    ("(a", 1, "never closed"),
    ("a)", 2, "never opened"),
    ("a +", 4, "stops"),
    ("* a", 1, "where a value is wanted"),
    ("a\0b", 2, "no place"),
    ("eval(a)", 1, "no function eval"),
    ("men_of_passes(a)", 1, "no function"),
    ("highest(temperature - 3)", 21, "named first"),
    ("highest(t, 1)", 1, "takes 1"),
    ("when(t, 5)", 1, "takes 3"),
    ("when(t, up, 5)", 9, "which way"),
    ("a + during(t, 1, 2)", 5, "no value"),
    ("of(ostler)", 1, "takes 2"),
    ("mean_level(during(t, 0 min, 10 min))", 24, "“min” stands behind one"),
    ("plateau(t, 10 min, 0.5)", 15, "has no unit beside it"),
    ("plateau(t, 600, 0.5 °C)", 21, "has no unit beside it"),
    ("sqrt(a b)", 8, "a sign is missing before b"),
    ("mean_level(plateau(t, 600, 0.5))", 12, "plateau(…) is the level already"),
    ("mean_of_passes(a - b)", 18, "name"),
    ("log()", 1, "takes 1"),
    ("log(a,)", 7, "where a value is wanted"),
]


@pytest.mark.parametrize(("text", "column", "says"), REFUSED)
def test_what_has_no_place_in_a_formula_is_refused_at_its_column(text: str, column: int, says: str) -> None:
    with pytest.raises(FormulaError) as refusal:
        parse(text)
    assert says in refusal.value.says
    assert refusal.value.column == column


def test_a_misspelt_function_is_answered_with_the_near_one() -> None:
    with pytest.raises(FormulaError) as refusal:
        parse("men_of_passes(a)")
    assert refusal.value.do == "did you mean mean_of_passes?"


def test_what_a_function_of_a_trace_takes_is_named() -> None:
    with pytest.raises(FormulaError) as refusal:
        parse("plateau(t)")
    assert refusal.value.says == "plateau takes 3 in its brackets, not 1"
    assert "how many seconds it lasts, and how far its samples may lie from their mean" in refusal.value.do
    assert "plateau(temperature, 60, 0.5)" in refusal.value.do


ATTACKS = [
    "(" * 200 + "1" + ")" * 200,
    "-" * 400 + "1",
    "sqrt(" * 80 + "2" + ")" * 80,
    "2^" * 200 + "2",
    "9**9**9",
    "9^9^9^9^9",
    "10^10^2 * 10^300",
    "1+" * 50_000 + "1",
    "a" * 100_000,
    "1" * 499,
    "exp(" + "9" * 20 + ")",
    "exp(exp(exp(9)))",
    "1/0",
    "0^-1",
    "(0-8)^0.5",
    "log(0)",
]


@pytest.mark.parametrize("text", ATTACKS, ids=lambda text: text[:12])
def test_a_formula_made_to_hurt_is_refused_quickly(text: str) -> None:
    begun = time.perf_counter()
    with pytest.raises(Exception) as refusal:  # noqa: PT011 (which of the two depends on the text)
        worked_out(text)
    assert type(refusal.value).__name__ in ("FormulaError", "NoValue")
    assert refusal.value.column > 0  # type: ignore[attr-defined]  # a slip fails the test
    assert time.perf_counter() - begun < 0.5


def test_the_longest_formula_allowed_is_worked_out() -> None:
    assert worked_out("1" + "+1" * 249) == 250
    assert worked_out("(" * 30 + "1" + ")" * 30) == 1


@settings(max_examples=300, derandomize=True)
@given(st.text(alphabet="ab12.,+-*/^() _e\n'[]=<µ²", max_size=40) | st.text(max_size=30))
def test_no_text_at_all_gets_anything_but_a_tree_or_a_formula_error(text: str) -> None:
    try:
        assert functions_in(parse(text)) <= set(FUNCTIONS)
    except FormulaError as wrong:
        refusal = wrong
    else:
        return
    assert 1 <= refusal.column <= len(text) + 1
    assert refusal.says


def test_an_unknown_name_is_told_at_its_column_with_what_the_lookup_says() -> None:
    with pytest.raises(FormulaError) as refusal:
        evaluate(parse("2 * gas"), Bench(gas_burned=value(1.0, "g")))
    assert refusal.value.column == 5
    assert "did you mean gas_burned?" in refusal.value.says
