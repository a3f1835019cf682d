"""Brackets over those that can't be told apart."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from reportgen.campaign.declared import Quantity
from reportgen.charts import plate as ink
from reportgen.charts.plate import Layer, Plate, Row
from reportgen.charts.side import Named
from reportgen.charts.ties import tied
from reportgen.evaluation.evaluated import Comparison, Result

MOST = 3  # columns of brackets that are still read; beyond that the rank ranges in the table say it
COLUMN = 11.0  # px

Groups = tuple[tuple[str, ...], ...]


def tie_groups(quantity: Quantity, ordered: Sequence[Result], comparisons: Sequence[Comparison]) -> Groups:
    """Groups of ranked contenders no two of which are told apart; empty where none are ranked or there are too many."""
    ranked = [r.contender for r in ordered if not r.blocked and r.rank is not None]
    if quantity.better == "neither" or len(ranked) < 2:
        return ()
    groups = tied(ranked, [(c.first, c.second) for c in comparisons if c.resolved])
    return groups if groups is not None and len(groups) <= MOST else ()


def room_for_brackets(groups: Groups) -> float:
    """How much room, in px, the brackets take to the right of what else stands there."""
    return COLUMN * len(groups) + 5.0 if groups else 0.0


def places(lines: Sequence[Named], results: Sequence[Result]) -> Mapping[str, float]:
    """Where each contender's line stands; `results` are those of `lines`."""
    return {r.contender: line.y for line, r in zip(lines, results, strict=True)}


def brackets(sheet: Plate, at: Mapping[str, float], groups: Groups, left: float) -> list[Layer]:
    """One bracket a group, `left` px from the field's left edge: a spine, and a short arm at each member."""
    layers: list[Layer] = []
    for column, group in enumerate(groups):
        x = left + COLUMN * column
        spine: list[Row] = [{"y": at[group[0]], "y2": at[group[-1]]}]
        arms: list[Row] = [{"y": at[name]} for name in group]
        layers += [
            ink.rules(sheet, f"tie-{column + 1}", spine, x=x, y2="y2", ink=ink.INK, width=1.3, cap="square"),
            ink.rules(sheet, f"tie-{column + 1}-arms", arms, x=x - 5, x2=x, ink=ink.INK, width=1.3),
        ]
    return layers
