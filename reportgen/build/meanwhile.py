"""Work done beside other work: for what spends its time outside Python, as resizing photographs does."""

from __future__ import annotations

from collections.abc import Callable
from contextvars import copy_context
from threading import Thread
from typing import TypeVar

Given = TypeVar("Given")


def meanwhile(work: Callable[[], Given]) -> Callable[[], Given]:
    """Begin `work` now, in a thread of its own that sees what this one sees; what comes back waits for what it gives,
    or raises what it raised.

    Nobody has to wait: a process that ends, because another step failed or its user has had enough, leaves it undone.
    """
    gave: list[Given] = []
    raised: list[BaseException] = []

    def run() -> None:
        try:
            gave.append(work())
        except BaseException as problem:  # told to who waits, whatever it is
            raised.append(problem)

    thread = Thread(target=copy_context().run, args=(run,), daemon=True)
    thread.start()

    def waited() -> Given:
        thread.join()
        if raised:
            raise raised[0]
        return gave[0]

    return waited
