"""A made-up campaign of stoves, told to the pages: a tie, an exclusion, an incident, a block, an off-scale meter."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from reportgen.build.campaign_steps import (
    copied,
    declare,
    evaluate,
    open_data,
    open_samples,
    pass_on,
    read,
    record,
    view_raw_files,
)
from reportgen.campaign.publication import load_publication
from reportgen.evaluation.history import NO_HISTORY
from reportgen.pages import Page, Told
from reportgen.sources import find_workspace
from reportgen.store.kept import Kept
from reportgen.theme import load_theme
from tests.campaigns import write_campaign

STOVES = """\
title: Which stove boils a litre on the least gas?
question: And what does that cost in time?
place: A yard
who pays: Readers’ donations
invented: Stoves, makers and readings are invented.
contenders:
  corvane:
    title: Corvane Sol
    prices: [{paid: 89.00 EUR}]
    as received: [Small dent in the pot support.]
    claims:
      - says: {box: Under 12 g a litre, leaflet: Under 11 g a litre}
        quantity: gas burned
        at most: 12 g
  ostler:
    title: Ostler Mk II
    prices: [{paid: 124.50 EUR}]
  brindle: {title: Brindle}
  tamsin: {title: "Tamsin <T> & Co"}
instruments: {g: bench-scale, ppm: gas-meter}
measure:
  gas burned:
    kind: weighed before and after
    unit: g
    better: lower
    matters: 1 g
  carbon monoxide: peak, ppm, lower
  lit first time: yes/no
  packed weight: one reading, g, neither
readings: readings.csv
verdict:
  must:
    - quantity: gas burned
      at most: 15 g
  we say:
    best: corvane
    because: [gas burned]
    words: If gas is what you carry, take the Corvane.
caveats:
  - about: gas burned
    says: Canisters were at room temperature.
  - about: carbon monoxide
    contender: tamsin
    says: Its sample was drawn with the lid off.
    pushes: down
    so: do not rank
incidents:
  - contender: ostler
    about: gas burned
    what: Blew out twice and was relit.
exclude:
  - contender: corvane
    about: gas burned
    pass: 2
    because: canister valve left open
    decided: during the test
"""
READINGS = """\
contender,pass,gas burned before,gas burned after,carbon monoxide,lit first time,packed weight
corvane,1,231.4,217.1,38,yes,412.3
ostler,1,240.2,225.9,61,yes,388
brindle,1,260.0,242.6,over 999,no,455.1
tamsin,1,251.0,234.9,44,yes,391.6
corvane,2,217.1,199.0,,,
ostler,2,225.9,211.4,,,
brindle,2,242.6,225.4,,,
tamsin,2,234.9,218.5,,,
corvane,3,199.0,184.9,,,
ostler,3,211.4,197.0,,,
brindle,3,225.4,207.9,,,
tamsin,3,218.5,202.3,,,
"""
INSTRUMENTS = {
    "instruments/bench-scale.yaml": "title: Bench scale\nresolution: 0.1 g\naccuracy: ±0.2 g\n",
    "instruments/gas-meter.yaml": "title: Gas meter\nresolution: 1 ppm\nrange: 0 ppm to 999 ppm\naccuracy: unknown\n",
}


def told_of(
    place: Path, yaml_text: str = STOVES, readings: str = READINGS, files: Mapping[str, str | bytes] = INSTRUMENTS
) -> Told:
    """Everything the pages of such a campaign are told, charts left out: they are drawn elsewhere."""
    folder = write_campaign(place, yaml_text, **{"readings": readings, **files})
    ws = find_workspace(folder)
    publication, _ = load_publication(ws)
    declared = declare(ws, "", publication)
    samples = open_samples(ws)
    read_in = read(ws, declared, samples)
    evaluation = evaluate(declared, read_in, samples, NO_HISTORY, publication.speaks, "", Kept(None))
    files = copied(ws, declared, frozenset(), read_in, ())
    offered = open_data(
        declared,
        publication,
        read_in,
        record(declared, evaluation, (), read_in, publication),
        pass_on(ws, declared, files, read_in),
        "",
        Kept(None),
    )
    raw = view_raw_files(ws, read_in, evaluation)
    return Told(publication, declared, read_in, evaluation, {}, (), load_theme(ws), offered, raw)


def by_address(pages: tuple[Page, ...]) -> dict[str, str]:
    """Pages by what follows the campaign's name in their address."""
    return {p.address.partition("/")[2]: p.html for p in pages}
