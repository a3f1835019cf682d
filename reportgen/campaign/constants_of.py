"""A constant as later stages know it: its value, and the one uncertainty that its source gives."""

from __future__ import annotations

from reportgen.addresses import as_id
from reportgen.campaign.declared import Constant
from reportgen.campaign.look_up import error
from reportgen.campaign.stated_uncertainty import stated_uncertainty
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
    standard, k = stated_uncertainty(w, "constant", "source", told, otherwise=w.within is not None)
    return Constant(
        id=as_id(name),
        value=w.value.value,
        within=w.within.value if w.within else None,
        u=standard,
        source=w.source.value,
        origin=origin,
        k=k,
        degrees=w.degrees.value if w.degrees else None,
    )
