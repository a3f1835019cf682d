"""Work done beside other work: for what spends its time outside Python, as resizing photographs does."""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import Future
from contextvars import copy_context
from threading import Thread
from typing import TypeVar

Given = TypeVar("Given")


def meanwhile(work: Callable[[], Given]) -> Callable[[], Given]:
    """Begin `work` now, in a thread of its own that sees what this one sees; what comes back waits for what it gives,
    or raises what it raised.

    Nobody has to wait: a process that ends, because another step failed or its user has had enough, leaves it undone.
    """
    found: Future[Given] = Future()

    def run() -> None:
        try:
            found.set_result(work())
        except BaseException as problem:  # told to who waits, whatever it is
            found.set_exception(problem)

    Thread(target=copy_context().run, args=(run,), daemon=True).start()
    return found.result
