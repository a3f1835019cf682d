"""The runs of a test in the order of their file, for rules on order and on numbers of passes."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from reportgen.audit.case import Case
from reportgen.campaign.declared import Test


def runs_of(case: Case, test: Test) -> list[str]:
    """The contender of each pass in the order the file has them; a pass read in several columns counts once."""
    passes = dict.fromkeys(
        (r.key.contender, r.key.specimen, r.key.pass_)
        for r in case.readings.of_test(test.id)
        if (not r.absent_because or r.unfinished) and not r.incident
    )
    return [contender for contender, _, _ in passes]


def one_after_another(runs: Sequence[str]) -> bool:
    """AAA BBB CCC: more than one contender, several passes each, none ever returned to."""
    changes = sum(a != b for a, b in itertools.pairwise(runs))
    return len(set(runs)) > 1 and len(runs) > len(set(runs)) and changes == len(set(runs)) - 1


def rounds_of(runs: Sequence[str]) -> list[Sequence[str]]:
    """The runs as rounds in which each contender ran once; empty where they don't fall into two such rounds or more."""
    k = len(set(runs))
    rounds = [runs[i : i + k] for i in range(0, len(runs), k or 1)]
    return rounds if k > 1 and len(rounds) > 1 and all(len(set(r)) == len(r) == k for r in rounds) else []


def mean_positions(runs: Sequence[str]) -> dict[str, float]:
    """How far on in the test each contender ran, in runs from its beginning, on the mean over its passes."""
    at: dict[str, list[int]] = {}
    for position, contender in enumerate(runs):
        at.setdefault(contender, []).append(position)
    return {contender: sum(positions) / len(positions) for contender, positions in at.items()}
