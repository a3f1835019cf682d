"""A run that did not finish: `did not finish (its chain broke)`. It is an outcome, not a lost reading."""

from __future__ import annotations

import re

from reportgen.intake.notations.cell import Expected, UnreadableError, Written

DID_NOT_FINISH = "did not finish"
OF_KINDS = ("run to a limit", "timed", "")  # what takes as long as it takes; "" for the author's own formula
_CELL = re.compile(rf"{DID_NOT_FINISH}(?:\s*\((?P<reason>.*)\))?", re.IGNORECASE | re.DOTALL)


def read_unfinished(text: str, expected: Expected) -> Written | None:
    """The absence it stands for, with its reason; None for anything else. Raises `UnreadableError` for other kinds."""
    found = _CELL.fullmatch(" ".join(text.split()))
    if found is None:
        return None
    if expected.kind not in OF_KINDS:
        raise UnreadableError(
            "not-a-run",
            f"“{text}” stands in a column of kind {expected.kind}.",
            "Only a run that takes its time can fail to finish.",
            "Write `none (reason)` where nothing was read.",
        )
    reason = (found["reason"] or "").strip()
    return Written(absent_because=f"{DID_NOT_FINISH} ({reason})" if reason else DID_NOT_FINISH, unfinished=True)
