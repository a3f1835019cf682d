"""Licences that are known by name: what machines call them and where their text stands.

Identifiers are those of the SPDX licence list; addresses those under which the licences' own publishers keep the text.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

CREATIVE = "https://creativecommons.org"
OPEN_DATA = "https://opendatacommons.org/licenses"


@dataclass(frozen=True)
class Licence:
    """`said` is what the author wrote; `id` (SPDX) and `address` are "" where the program doesn't know it."""

    said: str
    id: str = ""
    address: str = ""


_OTHERS = {
    "cc0": ("CC0-1.0", f"{CREATIVE}/publicdomain/zero/1.0/"),
    "odbl": ("ODbL-1.0", f"{OPEN_DATA}/odbl/1-0/"),
    "odc by": ("ODC-By-1.0", f"{OPEN_DATA}/by/1-0/"),
    "pddl": ("PDDL-1.0", f"{OPEN_DATA}/pddl/1-0/"),
}
_CREATIVE = re.compile(r"cc (by(?: (?:nc|nd|sa|nc sa|nc nd))?) (4\.0|3\.0|2\.5|2\.0)")
_ADDRESS = re.compile(r"https?://\S+")


def licence_of(said: str) -> Licence | None:
    """The licence an author names: by its usual short name in any spelling, or by an address; None for none."""
    if not said.strip():
        return None
    plain = " ".join(re.sub(r"[^a-z0-9.]+", " ", said.lower()).split())
    if creative := _CREATIVE.fullmatch(plain):
        terms, version = creative[1].replace(" ", "-"), creative[2]
        return Licence(said, f"CC-{terms.upper()}-{version}", f"{CREATIVE}/licenses/{terms}/{version}/")
    for name, (id, address) in _OTHERS.items():
        if re.fullmatch(rf"{name}( v?1\.0)?", plain):
            return Licence(said, id, address)
    found = _ADDRESS.search(said)
    return Licence(said, "", found[0].rstrip(".,;)")) if found else Licence(said)
