"""An author's files as the handbook gives them: the smallest campaign, the short forms, a split campaign."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from tests import campaigns

SMALLEST = {"stoves/campaign.yaml": campaigns.SMALLEST, "stoves/readings.csv": campaigns.SMALLEST_READINGS}

SHARED = {
    "content/publication.yaml": """\
title: Boil and Tell
address: https://example.org/tests/
language: en
show: [g, oz]
who pays: Readers' donations; all products bought at retail.
""",
    "shared/instruments.yaml": """\
# the short form, one line each
sound-meter: 0.1 dB, up to 130 dB, accuracy ±1.5 dB
stopwatch: 0.01 s, by hand, accuracy unknown
camera: 60000/1001 frames a second
phone:
  title: A phone, filming
  frames: 29.97 frames a second
""",
    "shared/instruments/bench-scale.yaml": """\
# the long form
title: Bench scale, 2 kg
resolution: 0.1 g
range: 0 g to 2000 g
accuracy: ±0.3 g
shared: offset              # what all readings of one session have in common: offset, gain, both, nothing
""",
    "shared/methods/weigh-before-and-after.2.yaml": """\
# earlier versions stay beside it
title: Weigh before and after
scatter: common             # common, own, relative; common where nothing is said
order: rounds               # rounds, random, as it came
repeatability:
  gas burned: 0.9 g
  passes: 24
  products: 4
chained: yes                # the after of one weighing is the before of the next
between sessions: 0.5 g, a guess                  # day to day; without it nothing ranks across sessions
steps:
  - Weigh the canister with its valve closed, dry.
cautions:
  - Let the stove cool before you unscrew it.
""",
    "shared/methods/weigh-before-and-after.1.yaml": """\
title: Weigh before and after
steps:
  - Weigh it, use it, weigh it again.
""",
    "shared/constants.yaml": """\
heating value:
  value: 46.1 kJ/g
  source: a handbook, table and page
gas price:
  value: 0.026 EUR/g
  source: shop receipt, 2026-05-02
""",
}

SHORT_FORMS = {
    "short/campaign.yaml": """\
title: Four things in one line each
contenders:
  corvane: Corvane Sol
  ostler: Ostler Mk II
measure:
  gas burned: weighed before and after, g, lower, bench-scale     # kind, unit, direction, instrument; any order
  noise: level, dB, lower, sound-meter
  lit first time: yes/no
  packed weight: one reading, g, neither, bench-scale
readings: sheet.csv
""",
    "short/sheet.csv": """\
what,pass,corvane,ostler
boil time,1,212.4,230.1
boil time,2,214.9,226.4
noise,,71.2,over 90
lit first time,,yes,yes
""",
}

SPLIT = {
    "split/campaign.yaml": """\
title: Which stove boils a litre on the least gas?
question: Which of two stoves needs the least gas for a litre of water?
tested: 2026-05-02 to 2026-05-09
published: 2026-06-01
place: a cellar, 18 °C to 20 °C
who pays: Readers' donations; all products bought at retail.
held the same: [fuel, water, room]
not yet tested: [tamsin]
contenders: [corvane, ostler, tamsin]
tests: [gas-burned]
measure:
  boil time: timed, s, lower, stopwatch
readings: raw/times.csv
films:
  main: https://example.org/film
""",
    "split/contenders/corvane.yaml": """\
title: Corvane Sol
maker: Corvane
bought:
  where: a shop in town, from the shelf
  date: 2026-05-02
prices:
  - paid: 89.00 EUR
    date: 2026-05-02
as received:
  - Small dent in the pot support.
claims:
  - says: Boils a litre in under four minutes
    source: printed on the box
    quantity: boil time
    at most: 4 min
""",
    "split/contenders/ostler.yaml": """\
title: Ostler Mk II
also called: [Ostler 2, mk2]
bought: {where: not noted, date: not noted}
prices:
  - listed: 90 to 120 USD
    date: 2026-04
claims:
  - says: {box: 6 kW, sticker: 7 kW}
    testable: no
    why: nobody can measure the power of a flame on a kitchen table
  - says: Comes with a windscreen
    looked: no, foam only
""",
    "split/contenders/tamsin.yaml": "title: Tamsin\n",
    "split/tests/gas-burned.yaml": """\
# tests/gas-burned.yaml
title: Gas burned to boil one litre
method: weigh-before-and-after, version 2
readings:
  file: raw/gas-burned.csv
  contender: stove            # the column that names the contender
  pass: pass
  columns:
    before:
      column: canister before
      unit: g
      instrument: bench-scale
    after:
      column: canister after
      unit: g
      instrument: bench-scale
quantities:
  gas_burned:
    formula: before - after
    unit: g
    better: lower
    matters: 1 g
  heat_used:
    formula: gas_burned * heating_value
    unit: kJ
headline: gas_burned
exclude:
  - contender: corvane
    pass: 2
    because: canister valve left open between weighings
    decided: during the test
incidents:
  - contender: ostler
    pass: 3
    what: blew out twice and was relit
    affects: [gas_burned]
caveats:
  - about: gas_burned
    says: Canisters were at room temperature; cold canisters behave differently.
cautions:
  - Burning gas makes carbon monoxide. Outdoors or under extraction only.
""",
    "split/raw/gas-burned.csv": "stove,pass,canister before,canister after\ncorvane,1,231.4,217.1\n",
    "split/raw/times.csv": "contender,pass,boil time\ncorvane,1,212.4\n",
    "split/verdict.yaml": """\
must:
  - quantity: boil time
    at most: 10 min
groups:
  thrift:
    weight: 40
    criteria:
      gas burned:
        worst: 25 g
        best: 10 g
  speed:
    weight: 60
    criteria:
      boil time:
        worst: 400 s
        best: 120 s
we say:                         # the author's own verdict, with or without weights; the program objects where
  best: ostler                  # the results don't bear it
  best for the money: corvane
  because: [boil time, gas burned]
readers:
  mostly speed:
    thrift: 20
    speed: 80
use:
  per: litre boiled
  cost: gas_burned * gas_price
  times: 0 to 500
""",
    "split/conclusions.md": "Take the Ostler.\n",
}


def write(root: Path, *sets: Mapping[str, str]) -> Path:
    """Write files below `root`; later sets win."""
    for files in sets:
        for rel, text in files.items():
            path = root / rel
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8")
    return root
