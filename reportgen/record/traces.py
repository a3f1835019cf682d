"""Traces of loggers as the record keeps them: their ends, gaps, and where they passed a limit; never their samples."""

from __future__ import annotations

from typing import Any

from reportgen.evaluation.evaluated import TraceShown
from reportgen.record.plain import number


def trace_row(t: TraceShown) -> dict[str, Any]:
    """One trace. Times are seconds from its first sample; `over` and `under` say that highest and lowest are bounds.
    `apart` are the first few samples that stand apart from those around them, `off` how far from their neighbours."""
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
                "times": 0 if c.past else c.times,
            }
            for c in t.crossings
        ],
        "apart": [{"seconds": number(at), "value": number(x), "off": number(off)} for at, x, off in t.apart],
        "apart_in_all": t.apart_in_all,
    }
