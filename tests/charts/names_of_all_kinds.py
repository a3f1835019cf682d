"""Charts of contenders whose names are hard to set: one, very long ones, other scripts and emoji, forty."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from reportgen.campaign.declared import Contender
from reportgen.charts.draw import figures
from reportgen.charts.figure import Figure
from tests.charts.bench_of_results import amount, campaign, measured, quantity
from tests.charts.test_other_charts import looked

NAMES: Mapping[str, list[str]] = {
    "one": ["Solo"],
    "long": [
        "The Wieselburger Donaudampfschifffahrtsgesellschaftskocher Mark XIV, limited edition",
        "An exceedingly long-winded name with many, many words in it",
        "X",
    ],
    "mixed": [
        "🔥🔥 Flamme 🏕️",
        "موقد كورفان سول الكبير",
        "焚き火ストーブ 丸型",
        "Ωmega Ångström’s №5",
        "👩‍👩‍👧‍👦 Family",
        "W" * 16,
    ],
    "forty": [f"Stove number {n} of forty" for n in range(40)],
}
WHY = "the temperature never stayed within ±0.5 °C for 600 s because the probe fell off"


def charts(names: list[str]) -> Mapping[str, Figure]:
    """A chart of each kind that has names in it."""
    tried = [Contender(f"c{n}", title) for n, title in enumerate(names)]
    last = len(tried)
    gas = quantity("gas", title="Gas burned to boil one litre of very cold water", matters=amount("1 g"))
    weight, limits = quantity("weight", "mg/min"), quantity("co", "ppm")
    lit = quantity("lit", "", "higher", kind="yes/no")
    grip = quantity(
        "grip", "", "higher", kind="grade", grades=("unacceptably poor", "fair", "good", "outstandingly good")
    )

    def limited(n: int, of: str) -> Any:
        if n % 2:
            return measured(
                limits, of, [], limit=("above", "below")[n % 4 // 2], value=(199.0, None, 9.0)[n % 3], rank=(1, last)
            )
        return (
            measured(limits, of, [50.0 + n, 55.0], 5, rank=(1, last))
            if n % 3
            else measured(limits, of, [], missing=WHY, rank=None)
        )

    results = [
        (gas, [measured(gas, c.id, [14 + 0.7 * n, 14.3 + 0.7 * n, 14.1 + 0.7 * n], 0.6, rank=(max(1, n), min(last, n + 2))) for n, c in enumerate(tried)]),
        (weight, [measured(weight, c.id, [12345.678 + 1000 * n], None, rank=(1, last)) for n, c in enumerate(tried)]),
        (limits, [limited(n, c.id) for n, c in enumerate(tried)]),
        (lit, [looked(lit, c.id, ["yes", "no"] * (n % 6 + 1)) for n, c in enumerate(tried)]),
        (grip, [looked(grip, c.id, ["fair", "good", "good"], grade="good") for n, c in enumerate(tried)]),
    ]  # fmt: skip
    return figures(*campaign(tried, results))
