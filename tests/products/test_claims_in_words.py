"""What a claim's evidence says: no more than the readings, and the author's reason where nothing was measured."""

from __future__ import annotations

import html
import re
from pathlib import Path

from tests.campaigns import compile_campaign, results_of

YAML = """\
title: Which kettle?
contenders:
  aven:
    title: Aven
    claims:
      - {says: 1000 W, source: sticker, quantity: power, is: 1000 W}
      - {says: 0.8 l, source: box, why: We never filled it.}
      - {says: no nickel, source: box, quantity: nickel, at most: 0 µg/L}
  brook: Brook
laboratory: {name: Kessel, report: attachments/K.txt}
measure:
  power: one reading, W, neither
  nickel: {kind: laboratory, unit: µg/L, better: lower, readings: lab.csv}
readings: readings.csv
"""


def test_a_claim_is_told_with_all_that_the_outcome_leaves_open(tmp_path: Path) -> None:
    rows = {"readings": "contender,power\naven,1134\nbrook,900\n", "lab.csv": "contender,nickel\naven,0.9\nbrook,3.1\n"}
    compile_campaign(tmp_path, YAML, **rows, **{"attachments/K.txt": "Report K: nickel 0.9 and 3.1\n"})
    site = tmp_path / "stoves/.site/stoves"

    def text(page: str) -> str:
        found = re.sub(r"<[^>]+>", " ", (site / page).read_text(encoding="utf-8"))
        return " ".join(html.unescape(found).replace("\u00a0", " ").replace("’", "'").split())

    aven, nickel = text("contenders/aven.html"), text("tests/nickel.html")
    assert "It says 1000 W and not how near to that is near enough; we measured 1134 W (1133.5 to 1134.5)." in aven
    assert "We measured 0.9 µg/L (0.85 to 0.95) where the claim has at most 0 µg/L" in aven
    assert "It names nothing that we measured. We never filled it." in aven
    assert "The laboratory doesn't state how uncertain its value is, and that isn't in that chance." in aven
    assert "Intervals of 95 %, of the rounding of the report alone: the laboratory states no uncertainty" in nickel
    assert "the thin line is the rounding of the laboratory's report alone" in nickel


def test_two_claims_about_a_rise_are_held_against_each_other_as_steps(tmp_path: Path) -> None:
    """A rise of 45 °C is one of 81 °F (1 °F step = 5/9 K: NIST SP 811, B.8), and as a point it would be 113 °F."""
    yaml = """\
title: Which kettle?
contenders:
  aven:
    title: Aven
    claims:
      - {says: warms by at most 45 °C, source: box, quantity: rise, at most: 45 °C}
      - {says: warms by at least 80 °F, source: shop, quantity: rise, at least: 80 °F}
  brook:
    title: Brook
    claims:
      - {says: warms by at most 45 °C, source: box, quantity: rise, at most: 45 °C}
      - {says: warms by at least 82 °F, source: shop, quantity: rise, at least: 82 °F}
      - {says: {box: by 40 °C, shop: by 72 °F}, quantity: rise, at least: 40 °C}
measure: {rise: "rise, °C, lower"}
readings: readings.csv
"""
    told = results_of(tmp_path, yaml, readings="contender,rise start,rise end\naven,20,60\nbrook,20,61\n")
    odds = {(c["contender"], c["id"]): c["at_odds"] for c in told["claims"]}
    assert list(odds.values()) == [[], [], ["c2"], ["c1"], []]
