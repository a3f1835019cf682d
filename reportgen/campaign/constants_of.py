"""A constant as later stages know it: its value, and the one uncertainty that its source gives."""

from __future__ import annotations

from decimal import Decimal

from reportgen.addresses import as_id
from reportgen.campaign.declared import Constant
from reportgen.campaign.look_up import error
from reportgen.campaign.written.shared import WrittenConstant
from reportgen.finding import Finding


def constant_of(name: str, written: WrittenConstant, origin: str, told: list[Finding]) -> Constant:
    """A width (`within`), a standard uncertainty (`u`) or an expanded one (`uncertainty` with `k`), JCGM 100, 4.3.

    What doesn't go together is told.
    """
    w = written
    stated = [given for given in (w.within, w.u, w.uncertainty) if given]
    if len(stated) > 1:
        says = "a constant has one uncertainty: `within` (a width), `u` (standard) or `uncertainty` (expanded)"
        error(told, "two-widths", stated[-1].at, says, do="Keep the one that the source gives.")
    if w.uncertainty and not w.k:
        says = f"the uncertainty of this constant ({w.uncertainty.value.text}) has no coverage factor"
        why = "The standard uncertainty is the stated one divided by k (JCGM 100, 4.3.3); k is never guessed."
        error(told, "uncertainty-without-k", w.uncertainty.at, says, why, "Add `k:`; the source says it.")
    if w.k and not w.uncertainty:
        says = "`k` is the factor of an expanded uncertainty, and none can be read here"
        error(told, "k-without-uncertainty", w.k.at, says, do="Write `uncertainty:` beside it; `u:` has no factor.")
    if w.k and w.k.value < 1:
        says = f"a coverage factor of {w.k.value} makes U smaller than the standard uncertainty it is made of"
        error(told, "k-below-one", w.k.at, says, do="Write the factor of the source, 2 in most of them.")
    if w.degrees and not stated:
        says = "`degrees` say how well an uncertainty is known, and none can be read here"
        error(told, "degrees-without-u", w.degrees.at, says, do="Add the uncertainty, or take `degrees:` out.")
    standard = w.uncertainty or w.u
    return Constant(
        id=as_id(name),
        value=w.value.value,
        within=w.within.value if w.within else None,
        u=standard.value if standard else None,
        source=w.source.value,
        origin=origin,
        k=w.k.value if w.uncertainty and w.k and w.k.value else Decimal(1),
        degrees=w.degrees.value if w.degrees else None,
    )
