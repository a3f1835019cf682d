"""Work beside other work: begun at once, waited for, its mistakes told to who waits."""

from __future__ import annotations

import subprocess
import sys
from contextvars import ContextVar
from pathlib import Path
from threading import Event, get_ident

import pytest

from reportgen.build.meanwhile import meanwhile
from reportgen.build.memory import Memory
from reportgen.build.steps import Step, follow

SPEAKING: ContextVar[str] = ContextVar("SPEAKING", default="")


def test_it_runs_beside_and_is_waited_for() -> None:
    go = Event()

    def work() -> int:
        assert go.wait(60)  # would never come if it weren't beside
        return get_ident()

    waited = meanwhile(work)
    go.set()
    assert waited() != get_ident()
    assert waited() == waited()


def test_it_sees_what_was_set_where_it_was_begun() -> None:
    token = SPEAKING.set("de")
    waited = meanwhile(SPEAKING.get)
    SPEAKING.reset(token)
    assert waited() == "de"


def test_what_it_raised_is_raised_where_it_is_waited_for() -> None:
    waited = meanwhile(lambda: 1 // 0)
    with pytest.raises(ZeroDivisionError):
        waited()


def test_nobody_waits_for_it_where_the_process_ends() -> None:
    code = """if True:
        from threading import Event
        from reportgen.build.meanwhile import meanwhile
        meanwhile(Event().wait)  # for ever
        raise SystemExit("another step failed")
        """
    root = Path(__file__).parents[2]
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=root, capture_output=True, text=True, check=False, timeout=120
    )
    assert (done.returncode, done.stderr.strip()) == (1, "another step failed")


def test_an_early_step_is_begun_before_the_others_and_told_where_it_is_waited_for() -> None:
    begun, told = Event(), list[str]()

    def early(size: int) -> int:
        begun.set()
        return size * 2

    def between(size: int) -> bool:
        return begun.wait(60)

    steps = (
        Step("first", ("size",), between, "first"),
        Step("doubled", ("size",), early, "doubling", "data", early=True),
        Step("shown", ("first", "doubled"), lambda first, doubled: (first, doubled), "showing"),
    )
    made = follow(steps, {"size": 4, "in_reach": InReach()}, told.append, Memory())
    assert made["shown"] == (True, 8)
    assert told == ["first", "doubling", "showing"]


class InReach:
    data = "as it was"
