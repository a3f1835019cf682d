"""Numbers remembered: worked out once for their arguments, looked up in what was kept, told afterwards."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from reportgen.judgement.reach import remembered as memory
from reportgen.judgement.reach.remembered import remembered, remembering


def counted() -> tuple[list[float], Callable[[float], float]]:
    done: list[float] = []

    def half(x: float) -> float:
        done.append(x)
        return x / 2.0

    return done, remembered(half)


def test_nothing_is_worked_out_twice() -> None:
    done, half = counted()
    assert [half(3.0), half(3.0), half(5.0)] == [1.5, 1.5, 2.5]
    assert done == [3.0, 5.0]


def test_what_was_asked_for_is_told_and_found_again_by_another_process() -> None:
    _, half = counted()
    half(7.0)  # before: nobody keeps it
    with remembering({}) as asked:
        half(3.0)
        half(7.0)
    assert sorted(asked.values()) == [1.5, 3.5]
    done, again = counted()  # knows nothing yet
    with remembering(asked) as later:
        assert again(3.0) == 1.5
    assert not done
    assert sorted(later.values()) == [1.5]


@pytest.mark.parametrize("wrong", [math.nan, math.inf, "1.5", None, 1])
def test_what_was_kept_and_is_no_number_is_worked_out(wrong: float) -> None:
    _, half = counted()
    with remembering({}) as asked:
        half(3.0)
    done, again = counted()
    with remembering(dict.fromkeys(asked, wrong)) as later:
        assert again(3.0) == 1.5
    assert done == [3.0]
    assert later == asked


def test_once_closed_nothing_is_looked_up_any_more() -> None:
    _, half = counted()
    with remembering({}) as asked:
        half(3.0)
    done, again = counted()
    with remembering(dict.fromkeys(asked, 9.0)):
        pass
    assert again(3.0) == 1.5
    assert done == [3.0]


def test_however_many_are_asked_for_no_more_than_so_many_stay(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(memory, "MOST", 3)
    done, half = counted()
    for x in (1.0, 2.0, 3.0, 4.0, 1.0):
        assert half(x) == x / 2.0
    assert done == [1.0, 2.0, 3.0, 4.0, 1.0]
