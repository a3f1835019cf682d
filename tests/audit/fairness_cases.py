"""For each rule on fairness a campaign that it fires on, and its neighbour on which it stays silent."""

from __future__ import annotations

SCALE = {"instruments.yaml": "scale: 0.1 g, up to 500 g, accuracy ±0.3 g\nold-scale: 0.1 g, up to 500 g\n"}
CLEAN = "contender,pass,gas\ncorvane,1,10.1\nostler,1,12.3\nostler,2,12.2\ncorvane,2,10.4\n"
HEAD = "title: T\nwho pays: Readers.\n"
TWO = "contenders: {corvane: Corvane Sol, ostler: Ostler Mk II}\n"
GAS = "measure:\n  gas: one reading, g, lower, scale\nreadings: readings.csv\n"
PLAIN = HEAD + TWO + GAS


def rows(*passes: str, heading: str = "contender,pass,gas") -> str:
    return "\n".join((heading, *passes)) + "\n"


def contenders(corvane: str, ostler: str) -> str:
    return (
        HEAD
        + f"contenders:\n  corvane: {{title: Corvane Sol, {corvane}}}\n  ostler: {{title: Ostler Mk II, {ostler}}}\n"
        + GAS
    )


def about_gas(said: str) -> str:
    gas = "{kind: one reading, unit: g, better: lower, instrument: scale, " + said + "}"
    return PLAIN.replace("one reading, g, lower, scale", gas)


GRADED = "measure:\n  grip: {kind: grade, grades: [poor, good], better: higher%s}\nreadings: readings.csv\n"
GRADES = rows("corvane,1,good", "ostler,1,poor", "ostler,2,poor", "corvane,2,good", heading="contender,pass,grip")
WIND = "contender,pass,gas,wind"
BLOWN = rows("corvane,1,10.1,1", "ostler,1,12.3,5", "ostler,2,12.2,6", "corvane,2,10.4,2", heading=WIND)
BLOWN_ALIKE = rows("corvane,1,10.1,1", "ostler,1,12.3,2", "ostler,2,12.2,1", "corvane,2,10.4,2", heading=WIND)
WITH_WIND = "conditions: [wind]\n"
WITH_FIRMWARE = "conditions: [firmware]\n"
UPDATED = rows(
    "corvane,1,10.1,1.0",
    "ostler,1,12.3,7",
    "ostler,2,12.2,7",
    "corvane,2,10.4,1.1",
    heading="contender,pass,gas,firmware",
)
OWN_SCALE = "contender,pass,gas,instrument"
TWO_SCALES = rows(
    "corvane,1,10.1,scale",
    "ostler,1,12.3,old-scale",
    "ostler,2,12.2,old-scale",
    "corvane,2,10.4,scale",
    heading=OWN_SCALE,
)
ONE_SCALE = rows(
    "corvane,1,10.1,scale", "ostler,1,12.3,scale", "ostler,2,12.2,scale", "corvane,2,10.4,scale", heading=OWN_SCALE
)
TIMED = "time,contender,pass,gas"
TWO_DAYS = rows(
    "2026-05-02 10:00,corvane,1,10.1",
    "2026-05-02 11:00,corvane,2,10.4",
    "2026-05-03 10:00,ostler,1,12.3",
    "2026-05-03 11:00,ostler,2,12.2",
    heading=TIMED,
)
BOTH_DAYS = rows(
    "2026-05-02 10:00,corvane,1,10.1",
    "2026-05-02 11:00,ostler,1,12.3",
    "2026-05-03 10:00,ostler,2,12.2",
    "2026-05-03 11:00,corvane,2,10.4",
    heading=TIMED,
)
IN_TURN = rows("corvane,1,10.1", "ostler,1,12.3", "corvane,2,10.4", "ostler,2,12.2")
LEAD = (
    HEAD + TWO + "measure:\n  lead:\n    kind: laboratory\n    unit: mg/kg\n    better: lower\n    laboratory:\n"
    "      name: Nether Lab\n      report: attachments/report.txt\n      uncertainty: 10 %%\n      k: 2\n%s"
    "    readings: |\n      contender,lead,page\n      corvane,10.0,1\n      ostler,30.0,1\n"
)  # fmt: skip
REPORT = {"attachments/report.txt": "a report\n"}
VERDICT = (
    "verdict:\n  decided: before the test\n  groups:\n    thrift: {criteria: {gas: {worst: 20 g, best: 5 g}}}\n"
    "    speed: {criteria: {%s}}\n"
)  # fmt: skip
AND_TIME = PLAIN.replace(
    "readings:", "  boil: one reading, s, lower\n  heat: {formula: gas * 2, unit: g, better: lower}\nreadings:"
)
TIMES = rows(
    "corvane,1,10.1,50", "ostler,1,12.3,60", "ostler,2,12.2,61", "corvane,2,10.4,52", heading="contender,pass,gas,boil"
)
TESTED = "tested: 2026-05-02\n"
PUBLISHED = "title: Tests\n"
CLAIM = "claims: [{says: %s, quantity: gas, at most: 5 g%s}]"

# rule: (YAML that it fires on, its files), (YAML that it doesn't, its files)
CASES: dict[str, tuple[tuple[str, dict[str, str]], tuple[str, dict[str, str]]]] = {
    "order-lopsided": ((PLAIN, {"readings": IN_TURN}), (PLAIN, {})),
    "conditions-differ": ((PLAIN + WITH_WIND, {"readings": BLOWN}), (PLAIN + WITH_WIND, {"readings": BLOWN_ALIKE})),
    "conditions-missing": (
        (PLAIN + WITH_WIND, {"readings": BLOWN.replace("12.3,5", "12.3,").replace("12.2,6", "12.2,")}),
        (PLAIN + WITH_WIND, {"readings": BLOWN_ALIKE}),
    ),
    "instruments-differ": ((PLAIN, {"readings": TWO_SCALES}), (PLAIN, {"readings": ONE_SCALE})),
    "days-apart": ((PLAIN, {"readings": TWO_DAYS}), (PLAIN, {"readings": BOTH_DAYS})),
    "firmware-changed": (
        (PLAIN + WITH_FIRMWARE, {"readings": UPDATED}),
        (PLAIN + WITH_FIRMWARE, {"readings": UPDATED.replace("1.1", "1.0")}),
    ),
    "settings-unalike": (
        (contenders("settings: as shipped", "settings: jet turned up by half a turn"), {}),
        (contenders("settings: as shipped", "settings: as shipped"), {}),
    ),
    "said-of-some": (
        (contenders("firmware: 2.1", "model: Mk II"), {}),
        (contenders("firmware: 2.1", "firmware: not noted"), {}),
    ),
    "samples-unalike": (
        (LEAD % "      taken: {corvane: 2026-05-01, ostler: 2026-05-21}\n", REPORT),
        (LEAD % "      taken: {corvane: 2026-05-01, ostler: 2026-05-01}\n      diluted: 1 to 10\n", REPORT),
    ),
    "chosen-after-seeing": (
        (about_gas("decided: after seeing results"), {}),
        (about_gas('decided: "before the test, 2026-04-30"') + TESTED, {}),
    ),
    "weighed-after-seeing": (
        (PLAIN + TESTED + "verdict: {decided: 2026-05-20, groups: {thrift: {criteria: {gas: {worst: 20 g, best: 5 g}}}}}\n", {}),
        (PLAIN + TESTED + "verdict: {decided: 2026-05-01, groups: {thrift: {criteria: {gas: {worst: 20 g, best: 5 g}}}}}\n", {}),
    ),
    "counted-twice": (
        (AND_TIME + VERDICT % "heat: {worst: 40 g, best: 10 g}", {"readings": TIMES}),
        (AND_TIME + VERDICT % "boil: {worst: 90 s, best: 30 s}", {"readings": TIMES}),
    ),
    "judged-sighted": (
        (HEAD + TWO + GRADED % "", {"readings": GRADES}),
        (HEAD + TWO + GRADED % ", judged: blind", {"readings": GRADES}),
    ),
    "damaged-on-arrival": (
        (contenders("as received: [One support was bent.]", "as received: [No damage.]"), {}),
        (contenders("as received: [One support was bent.], put right: bent back by hand", "as received: [Undamaged.]"), {}),
    ),
    "bought-apart": (
        (contenders("bought: {date: 2025-02-01}", "bought: {date: 2026-02-01}"), {}),
        (contenders("bought: {date: 2026-01-01}", "bought: {date: 2026-02-01}"), {}),
    ),
    "bought-unsaid": (
        (contenders("bought: {where: a shop}", "model: Mk II"), {}),
        (contenders("bought: {where: a shop}", "bought: {where: not noted}"), {}),
    ),
    "claimed-otherwise": (
        (contenders(CLAIM % ("As little as 5 g in ideal conditions", ""), "model: Mk II"), {}),
        (contenders(CLAIM % ("As little as 5 g", ""), "model: Mk II"), {}),
    ),
    "links-earn": (
        (PLAIN, {"conclusions.md": "# So\n\nTo be had [here](https://shop.example/x?tag=us-21).\n"}),
        (PLAIN + "affiliate links: yes, some pay us\n", {"conclusions.md": "# So\n\nTo be had [here](https://shop.example/x?tag=us-21).\n"}),
    ),
    "incident-unweighed": (
        (PLAIN + 'incidents: ["corvane, pass 2: blew out and was relit"]\n', {}),
        (PLAIN + "incidents: [{contender: corvane, pass: 2, what: blew out and was relit, pushes: up}]\n", {}),
    ),
    "care-unequal": (
        (PLAIN + 'incidents: ["corvane, pass 2: the jet was cleaned"]\n', {}),
        (PLAIN + 'incidents: ["corvane, pass 2: the jet was cleaned", "ostler, pass 2: the jet was cleaned"]\n', {}),
    ),
    "hangs-on-one-pass": (
        (PLAIN, {"readings": rows(*(f"corvane,{n},{x}" for n, x in enumerate((10.1, 9.8, 10.1), 1)), *(f"ostler,{n},{x}" for n, x in enumerate((10.8, 10.7, 10.4), 1)))}),
        (PLAIN, {}),
    ),
    "beyond-the-readings": (
        (PLAIN, {"conclusions.md": "# So\n\nThe Ostler Mk II is the best of the two.\n"}),
        (PLAIN, {"conclusions.md": "# So\n\nThe Corvane Sol is the best of the two.\n"}),
    ),
}  # fmt: skip
ELSEWHERE = {"hangs-on-another", "interests-unsaid"}
