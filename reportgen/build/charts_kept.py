"""Charts as they are kept: drawn once for what they show, told again from JSON."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict, replace
from typing import TYPE_CHECKING, Any

from reportgen.build.alike import alike
from reportgen.store.kept import Kept, get, key_of, put
from reportgen.wording.language import spoken

if TYPE_CHECKING:
    from reportgen.campaign.declared import Declared
    from reportgen.charts import Figure
    from reportgen.charts.across import Across
    from reportgen.evaluation.evaluated import Evaluation


def figures(declared: Declared, evaluation: Evaluation, program: str, kept: Kept) -> Mapping[str, Figure]:
    """Every chart of a campaign; drawn only where what it is drawn from, or the program, isn't as when it was kept.

    `program` is the digest of the code and its libraries. Prose and findings are in no chart.
    """
    shown = replace(declared.campaign, prose=()), replace(evaluation, findings=())
    key = key_of("charts", program, alike(shown))
    told = _told(get(kept, key))
    if told is not None:
        return told
    from reportgen.charts.draw import figures

    drawn = figures(declared, evaluation)
    put(kept, key, json.dumps({address: asdict(figure) for address, figure in drawn.items()}).encode())
    return drawn


def across(of: Across, program: str, kept: Kept) -> Figure:
    """A chart across campaigns, drawn only where what it shows, the program or the language isn't as it was."""
    key = key_of("chart across", program, spoken().tag, spoken().digest, alike((of,)))
    told = _told(get(kept, key))
    if told is not None and of.address in told:
        return told[of.address]
    from reportgen.charts.across import figure

    drawn = figure(of)
    put(kept, key, json.dumps({of.address: asdict(drawn)}).encode())
    return drawn


def _told(data: bytes | None) -> dict[str, Figure] | None:
    from reportgen.charts.figure import Figure

    try:
        rows = json.loads(data) if data else None
        if rows is None:
            return None
        return {address: Figure(**{k: _frozen(v) for k, v in row.items()}) for address, row in rows.items()}
    except (ValueError, TypeError, AttributeError):
        return None


def _frozen(value: Any) -> Any:
    return tuple(map(_frozen, value)) if isinstance(value, list) else value
