"""Three comparisons of an archive in a few lines, and their site; names and figures are invented."""

from __future__ import annotations

from pathlib import Path

from reportgen.build.run import compile_site
from tests.site.cards_for_tests import written

STOVES = """\
title: Which stove boils a litre on the least gas?
kind of product: Camping stoves
published: 2026-05-24
contenders:
  corvane: {title: Corvane Sol, maker: Corvane, paid: 89 EUR}
  ostler: {title: Ostler Mk II, maker: Ostler & Daughters, listed: 62 to 79 EUR}
measure:
  gas burned: one reading, g, lower
  boil time: timed, s, lower
readings: readings.csv
"""
BURNERS = """\
title: Which burner boils a cup?
kind of product: camping  stoves
published: 2025-09-14
contenders:
  kessary: {title: Kessary Ring, maker: corvane, paid: 12.50 EUR}
  dolven: Dolven
measure:
  boil time: timed, s, lower
readings: readings.csv
"""
LAMPS = """\
title: Which lamp is bright at midnight?
kind of product: lamps
tested: 2024-12-30 to 2025-01-02
contenders:
  hestrik: {title: Hestrik Beam, maker: Hestrik, paid: 54.90 CHF}
  morrow: Morrow
measure:
  run time: timed, min, higher
readings: readings.csv
"""
READINGS = {
    "stoves": "contender,pass,gas burned,boil time\ncorvane,1,14.2,212\ncorvane,2,14.4,214\nostler,1,16.1,230\n"
    "ostler,2,16.0,228\n",
    "burners": "contender,pass,boil time\nkessary,1,401\ndolven,1,352\n",
    "lamps": "contender,pass,run time\nhestrik,1,540\nmorrow,1,480\n",
}
PUBLICATION = "title: Boil and Tell\naddress: https://example.org/tests/\nauthor: The people at Boil and Tell\n"


def archive(place: Path, publication: str = PUBLICATION, **campaigns: str) -> Path:
    """A workspace of these three, each as it stands here unless given otherwise, and more of the last's kind."""
    told = {"stoves": STOVES, "burners": BURNERS, "lamps": LAMPS, **campaigns}
    files = {"content/publication.yaml": publication}
    for id, text in told.items():
        files[f"content/archive/{id}/campaign.yaml"] = text
        files[f"content/archive/{id}/readings.csv"] = READINGS.get(id, READINGS["lamps"])
    return written(place, files)


def site_of(place: Path, publication: str = PUBLICATION, **campaigns: str) -> Path:
    """Its site."""
    return compile_site(archive(place, publication, **campaigns)).out
