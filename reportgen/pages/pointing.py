"""What the script of the picture of weights is told: every sentence it may say, ready made, and where corners lie."""

from __future__ import annotations

import json
from dataclasses import dataclass

from reportgen.campaign.declared import Campaign
from reportgen.charts.weight_space import corners, counts
from reportgen.judgement.verdict.overall import Overall, WeightMap
from reportgen.prose.leads import lead_at
from reportgen.prose.weights import group_titles
from reportgen.wording.interval import percent
from reportgen.wording.sentence import capital


@dataclass(frozen=True)
class Slider:
    """One group: how much it counts where the reader begins, in steps, and that as printed."""

    title: str
    at: int
    printed: str


@dataclass(frozen=True)
class Pointing:
    """`data` is JSON: `corners` (px of the drawing), `steps`, `percents` by step, `weights` and `leads` by cell.

    Cells are ordered by the steps of the first group, then of the second. A cell's sentence is its entry of `weights`
    and then the entry of `says` that its entry of `leads` points to.
    """

    sliders: tuple[Slider, ...]
    steps: int
    data: str


def pointing_of(campaign: Campaign, overall: Overall) -> Pointing | None:
    """None where there is no map to point into."""
    of = overall.map
    if of is None:
        return None
    titles = group_titles(campaign, of.groups)
    cells = {counts(cell.weights, of.steps): cell for cell in of.cells}
    said = [lead_at(campaign, titles, cells[at].weights, cells[at].lead) for at in sorted(cells)]
    says = list(dict.fromkeys(lead for _, lead in said))
    percents = [percent(n / of.steps) for n in range(of.steps + 1)]
    told = {
        "corners": [[int(x + 0.5), int(y + 0.5)] for x, y in corners(len(of.groups))],
        "steps": of.steps,
        "percents": percents,
        "weights": [weights for weights, _ in said],
        "leads": [says.index(lead) for _, lead in said],
        "says": says,
    }
    begin = _begin(overall, of)
    sliders = tuple(Slider(capital(t), n, percents[n]) for t, n in zip(titles, begin, strict=True))
    data = json.dumps(told, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c")
    return Pointing(sliders, of.steps, data)


def _begin(overall: Overall, of: WeightMap) -> tuple[int, ...]:
    """The cell nearest to the author's weights, or to equal ones."""
    wanted = overall.given or tuple(1 / len(of.groups) for _ in of.groups)
    cells = (counts(cell.weights, of.steps) for cell in of.cells)
    return min(cells, key=lambda at: sum((n / of.steps - w) ** 2 for n, w in zip(at, wanted, strict=True)))
