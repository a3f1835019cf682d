"""Traces of loggers as the record keeps them: their ends, gaps, and where they passed a limit; never their samples."""

from __future__ import annotations

from typing import Any

from reportgen.evaluation.evaluated import TraceShown
from reportgen.record.plain import number


def trace_row(t: TraceShown) -> dict[str, Any]:
    """One trace. Times are seconds from its first sample; `over` and `under` say that highest and lowest are bounds."""
    return {
        "test": t.key.test,
        "channel": t.key.name,
        "contender": t.key.contender,
        "specimen": t.key.specimen,
        "pass": t.key.pass_,
        "part": t.key.part or None,
        "unit": t.unit,
        "samples": t.samples,
        "seconds": number(t.ends),
        "lowest": number(t.lowest),
        "highest": number(t.highest),
        "under": t.under,
        "over": t.over,
        "gaps": [[number(begins), number(ends)] for begins, ends in t.gaps],
        "passed": [
            {
                "quantity": c.quantity,
                "side": c.side,
                "level": number(c.level),
                "seconds": None if c.past else number(c.at),
            }
            for c in t.crossings
        ],
    }
