"""What the address of a claim ends with: what it is about, and not its place in the list.

Of several about the same thing the order counts: the second ends with -2.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from reportgen.addresses import apart, as_id, part_id
from reportgen.campaign.declared import Claim

FIRST_WORDS = 5  # of the maker's: enough to tell claims apart, few enough for an address


def with_names(claims: Sequence[Claim]) -> tuple[Claim, ...]:
    """Each with the id it was given, else its quantity, what the box should hold, or the maker's first words."""
    names = apart(_name(claim) for claim in claims)
    return tuple(replace(claim, name=name) for claim, name in zip(claims, names, strict=True))


def _name(claim: Claim) -> str:
    words = as_id(next(iter(claim.says.values()), "")).split("-")
    quantity = "-".join(filter(None, (claim.quantity, part_id(claim.part) if claim.quantity else "")))
    return claim.name or quantity or as_id(claim.included) or "-".join(words[:FIRST_WORDS]) or "words"
