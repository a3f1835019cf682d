"""An uncertainty as a source states it: standard, or expanded with its factor, and how well it is known."""

from __future__ import annotations

from decimal import Decimal
from typing import Protocol

from reportgen.campaign.declared import Amount
from reportgen.campaign.given import Given
from reportgen.campaign.look_up import error
from reportgen.finding import Finding


class Stated(Protocol):
    """What was written of it: `u`, or `uncertainty` with `k`; `degrees` of freedom."""

    @property
    def u(self) -> Given[Amount] | None:
        """The standard uncertainty."""
        ...

    @property
    def uncertainty(self) -> Given[Amount] | None:
        """The expanded one."""
        ...

    @property
    def k(self) -> Given[Decimal] | None:
        """Its coverage factor."""
        ...

    @property
    def degrees(self) -> Given[int] | None:
        """The degrees of freedom of either."""
        ...


def stated_uncertainty(
    written: Stated, of: str, by: str, told: list[Finding], *, more: str = "", otherwise: bool = False
) -> tuple[Amount | None, Decimal]:
    """The uncertainty stated and what it is a multiple of (JCGM 100, 4.3.3): U with its k, or u, which is its own.

    `of` and `by` name in messages what it is of and who states it; `more` is said where degrees stand alone;
    `otherwise`: another width stands there, which may have degrees. What doesn't go together is told.
    """
    w = written
    stated = w.uncertainty or w.u
    if w.uncertainty and not w.k:
        says = f"the uncertainty of this {of} ({w.uncertainty.value.text}) has no coverage factor"
        why = "The standard uncertainty is the stated one divided by k (JCGM 100, 4.3.3); k is never guessed."
        error(told, "uncertainty-without-k", w.uncertainty.at, says, why, f"Add `k:`; the {by} says it.")
    if w.k and not w.uncertainty:
        says = "`k` is the factor of an expanded uncertainty, and none stands here"
        error(told, "k-without-uncertainty", w.k.at, says, do="Write `uncertainty:` beside it; `u:` has no factor.")
    if w.k and w.k.value < 1:
        says = f"a coverage factor of {w.k.value} makes U smaller than the standard uncertainty it is made of"
        error(told, "k-below-one", w.k.at, says, do=f"Write the factor of the {by}, 2 in most of them.")
    if w.degrees and not stated and not otherwise:
        says = f"`degrees` say how well an uncertainty is known, and none stands here{more}"
        error(told, "degrees-without-u", w.degrees.at, says, do="Add the uncertainty, or take `degrees:` out.")
    k = w.k.value if w.uncertainty and w.k and w.k.value else Decimal(1)
    return (stated.value if stated else None), k
