"""A pass of which it is told quickly that it decides nothing decides nothing, when first place is judged without it."""

from __future__ import annotations

import random
from dataclasses import replace

import pytest

from reportgen.judgement.judging import sole_winner
from reportgen.judgement.measured import DeclaredScatter, Measured, Rules, from_passes
from reportgen.judgement.passes.left_out import unmoved_without
from reportgen.metrology.uncertain import Source


def without(one: Measured, at: int) -> Measured:
    values = (*one.values[:at], *one.values[at + 1 :])
    return replace(one, values=values, value=sum(values) / len(values))


def some(name: str, luck: random.Random, level: float, step: float, accuracy: float) -> Measured:
    n = luck.choice((2, 3, 4, 6))
    values = [
        round((level + luck.gauss(0, 0.3)) / step) * step if step else level + luck.gauss(0, 0.3) for _ in range(n)
    ]
    made = from_passes(name, *values, step=step)
    return replace(made, contributions={Source("accuracy", "meter", name): accuracy} if accuracy else {})


@pytest.mark.parametrize("better", ["lower", "higher"])
@pytest.mark.parametrize(("step", "accuracy"), [(0.0, 0.0), (0.1, 0.0), (0.5, 0.0), (0.0, 0.2), (0.0, 1.0)])
def test_what_is_told_quickly_is_what_judging_without_it_finds(better: str, step: float, accuracy: float) -> None:
    luck, told, asked, moved = random.Random(f"{better} {step} {accuracy}"), 0, 0, 0
    for _ in range(60):
        names = "abcd"[: luck.choice((2, 3, 4))]
        apart = luck.choice((0.0, 0.5, 1.0, 2.0, 2.5, 3.0, 4.0))
        measured = [some(n, luck, 10 + apart * i, step, accuracy) for i, n in enumerate(names)]
        rules = Rules(better=better)  # type: ignore[arg-type]  # one of two words
        now = sole_winner(measured, rules)
        unmoved = unmoved_without(measured, rules, now)
        if unmoved is None:
            continue
        for i, one in enumerate(measured):
            for at in range(len(one.values)):
                then = sole_winner([*measured[:i], without(one, at), *measured[i + 1 :]], rules)
                asked, moved = asked + 1, moved + (then != now)
                if unmoved(one.name, at):
                    told += 1
                    assert then == now, (measured, one.name, at)
    assert moved  # passes that decide were among them
    assert told > asked / 3  # and most of the others needn't have been judged


@pytest.mark.parametrize(
    "rules",
    [
        Rules("lower", scatter="own"),
        Rules("lower", scatter="relative"),
        Rules("lower", rounds=True),
        Rules("lower", declared=DeclaredScatter(0.3, 20)),
        Rules("lower", between_sessions=0.1),
    ],
)
def test_where_other_rules_hold_every_pass_is_judged(rules: Rules) -> None:
    assert unmoved_without([from_passes("a", 1.0, 1.2, 1.1), from_passes("b", 9.0, 9.1, 9.2)], rules, "a") is None


def test_bounds_single_readings_and_one_alone_are_judged() -> None:
    plain, rules = from_passes("a", 1.0, 1.2, 1.1), Rules("lower")
    assert unmoved_without([plain, replace(from_passes("b", 9.0, 9.1), limit="above")], rules, "a") is None
    assert unmoved_without([plain, from_passes("b", 9.0)], rules, "a") is None
    assert unmoved_without([plain], rules, None) is None
