"""A pass worked out once more from what its formula was told comes to the same, to first order, cause by cause."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pytest

from reportgen.build.run import audit_path
from reportgen.campaign.declared import Quantity
from reportgen.evaluation import told
from reportgen.evaluation.exact import COUNTED
from reportgen.evaluation.gathered import Gathered
from reportgen.evaluation.replayed import Replayed
from reportgen.evaluation.workings import Workings
from reportgen.metrology.formulas.engine import FIRST_ORDER
from reportgen.metrology.uncertain import Uncertain
from tests.campaigns import results_of

Seen = list[tuple[str, Uncertain, Uncertain]]


@pytest.fixture
def seen(monkeypatch: pytest.MonkeyPatch) -> Seen:
    """Every measured result of what is worked out meanwhile, as it was first found and as it is when replayed."""
    found: Seen = []

    def compared(
        workings: Workings, quantity: Quantity, gathered: Mapping[str, Gathered], by_specimen: bool
    ) -> dict[str, Gathered]:
        replayed = Replayed(FIRST_ORDER, workings.expressions, workings.units, workings.quantities)
        joined = replayed.over_specimens if by_specimen else replayed.over_passes
        for contender, g in gathered.items():
            used = [w for w in g.passes if w.used]
            if g.mean is not None and g.mean.value is not None and not g.mean.limit:
                found.append((f"{quantity.id} of {contender}", g.mean, joined(quantity.id, used)))
        return dict(gathered)

    monkeypatch.setattr(told, "with_draws", compared)
    return found


def check(found: Seen) -> None:
    for name, first, again in found:
        assert again.unit == first.unit, name
        assert again.value == pytest.approx(first.value, rel=1e-12), name
        causes = {s: c for s, c in first.contributions.items() if s != COUNTED}
        assert dict(again.contributions) == pytest.approx(causes, rel=1e-9), name


def test_all_of_the_demonstration(seen: Seen) -> None:
    audit_path(Path(__file__).parents[2] / "demo_campaign")
    assert len(seen) > 40
    check(seen)


TWO = """\
title: T
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II}
tests: [fill, burn]
"""
FILES = {
    "instruments.yaml": "scale: {resolution: 0.1 g, accuracy: ±0.2 g, repeatability: 0.3 g}\n",
    "constants.yaml": "heating value: {value: 46.0 kJ/g, within: 0.6 kJ/g, source: a handbook}\n",
    "tests/fill.yaml": """\
        title: Fill
        readings: {file: fill.csv, columns: {full: {column: full, unit: g, instrument: scale}}}
        quantities:
          canister: {formula: full, unit: g}
          square: {formula: canister ^ 2, unit: g^2}
        headline: canister
        """,
    "tests/burn.yaml": """\
        title: Burn
        readings: {file: burn.csv, columns: {gas: {column: gas, unit: g, instrument: scale}}}
        quantities:
          share: {formula: gas / canister, unit: "1", better: lower}
          beside: {formula: "gas / of(ostler, gas)", unit: "1"}
          heat: {formula: mean_of_passes(gas) * heating_value / square, unit: kJ/g^2}
        headline: share
        """,
    "burn.csv": "contender,pass,gas\n"
    + "".join(f"{c},{n},{14 + n}.3\n" for c in ("corvane", "ostler") for n in (1, 2, 3)),
}


@pytest.mark.parametrize("passes", [(1,), (1, 2)])
def test_quantities_over_all_their_passes(seen: Seen, tmp_path: Path, passes: tuple[int, ...]) -> None:
    """One reading stood on by all passes of another test, and several with a scatter of their own."""
    fill = "contender,pass,full\n" + "".join(f"{c},{n},36{n}.4\n" for c in ("corvane", "ostler") for n in passes)
    results_of(tmp_path, TWO, **FILES, **{"fill.csv": fill})
    assert {name.split()[0] for name, _, _ in seen} == {"canister", "square", "share", "beside", "heat"}
    check(seen)
