"""How long still: the stated arithmetic over what steps took last time."""

from __future__ import annotations

from pathlib import Path

import pytest

from reportgen.build.pace import Timing, keep, times
from reportgen.build.progress import Progress
from reportgen.build.run import compile_site
from reportgen.cli.waiting import still, told
from reportgen.store.kept import Kept
from tests.campaigns import write_campaign


class Clock:
    """A clock that goes when it is told to."""

    def __init__(self) -> None:
        self.now = 100.0

    def __call__(self) -> float:
        return self.now


PLAN = ("read", "work", "draw")


def timing(last: dict[str, float]) -> tuple[Timing, Clock]:
    clock = Clock()
    return Timing(PLAN, last, clock), clock


def test_what_is_left_is_what_the_steps_to_come_took_last_time() -> None:
    watch, clock = timing({"read": 1.0, "work": 5.0, "draw": 4.0})
    watch.begins("read")
    assert watch.left() == (10.0, False)
    clock.now += 1.0
    watch.begins("work")
    clock.now += 2.0
    assert watch.left() == (7.0, False)


def test_a_compile_that_is_slower_so_far_is_taken_to_stay_slower() -> None:
    watch, clock = timing({"read": 1.0, "work": 5.0, "draw": 4.0})
    watch.begins("read")
    clock.now += 2.0
    watch.begins("work")
    assert watch.left() == (18.0, False)  # twice as slow: 2 × (5 + 4)


def test_a_step_that_overruns_leaves_nothing_negative() -> None:
    watch, clock = timing({"read": 1.0, "work": 5.0, "draw": 4.0})
    watch.begins("work")
    clock.now += 60.0
    left = watch.left()
    assert left is not None
    assert left[0] == 5.0  # reading and drawing are still to come
    watch.begins("draw")
    clock.now += 1000.0
    assert (watch.left() or (-1,))[0] >= 0


def test_a_step_never_timed_makes_it_the_least_and_none_timed_says_nothing() -> None:
    watch, _ = timing({"read": 1.0, "draw": 4.0})
    watch.begins("read")
    assert watch.left() == (5.0, True)
    watch, _ = timing({})
    watch.begins("read")
    assert watch.left() is None


@pytest.mark.parametrize(
    ("seconds", "said"),
    [
        (0.2, "about 1 s left"),
        (7.4, "about 8 s left"),
        (11.0, "about 15 s left"),
        (59.0, "about 60 s left"),
        (61.0, "about 2 min left"),
        (0.0, "longer than last time"),
        (-5.0, "longer than last time"),
    ],
)
def test_the_time_is_said_no_finer_than_it_is_known(seconds: float, said: str) -> None:
    assert still(seconds) == said


def test_the_line_counts_down_between_steps() -> None:
    progress = Progress("drawing charts", "stoves", 1, 3, left=8.0)
    assert told(progress) == "stoves (2 of 3): drawing charts … about 8 s left"
    assert told(progress, 3.0) == "stoves (2 of 3): drawing charts … about 5 s left"
    assert told(Progress("drawing charts")) == "drawing charts …"


def test_times_are_kept_from_one_compile_to_the_next(tmp_path: Path) -> None:
    folder = write_campaign(tmp_path)
    first: list[Progress] = []
    compile_site(folder, tell=first.append)
    assert {p.left for p in first} == {None}
    (folder / "readings.csv").write_text((folder / "readings.csv").read_text() + "corvane,3,202.6,188.2,213.0\n")
    second: list[Progress] = []
    compile_site(folder, tell=second.append)
    left = [p.left for p in second]
    assert all(one is not None and one >= 0 for one in left)
    assert not any(p.at_least for p in second)


def test_what_is_kept_and_makes_no_sense_is_as_if_it_had_never_been_kept(tmp_path: Path) -> None:
    kept = Kept(tmp_path)
    keep(kept, "site", {"read": 1.5, "work": float("inf"), "draw": -1.0})
    assert times(kept, "site") == {"read": 1.5}
    assert times(Kept(None), "site") == {}
