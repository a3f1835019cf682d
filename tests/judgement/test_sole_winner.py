"""Who alone is first, asked cheaply, is who judging everything names."""

from __future__ import annotations

import random

import pytest

from reportgen.judgement.judging import judge, sole_winner
from reportgen.judgement.measured import Measured, Rules


def some(name: str, luck: random.Random, level: float) -> Measured:
    values = tuple(round(level + luck.gauss(0, 0.2), 1) for _ in range(luck.choice((1, 2, 3, 4))))
    limit = luck.choice(("above", "below")) if luck.random() < 0.1 else None
    return Measured(
        name, sum(values) / len(values), () if limit else values, steps=(0.1,), limit=limit,
        blocked="why not" if luck.random() < 0.1 else "",
    )  # fmt: skip


@pytest.mark.parametrize("scatter", ["common", "own", "relative"])
@pytest.mark.parametrize("better", ["lower", "higher"])
def test_asked_alone_or_with_everything_the_same_one_is_first(scatter: str, better: str) -> None:
    luck, named = random.Random(f"{scatter} {better}"), 0
    for _ in range(60):
        names = "abcde"[: luck.choice((1, 2, 3, 5))]
        measured = [some(n, luck, 10 + luck.choice((0, 2, 6)) * i) for i, n in enumerate(names)]
        rules = Rules(better=better, scatter=scatter)  # type: ignore[arg-type]
        winner = judge(measured, rules).first.winner
        assert sole_winner(measured, rules) == winner
        named += winner is not None
    assert named  # else nothing was tried
