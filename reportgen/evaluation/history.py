"""How far passes scattered in campaigns tested before by the same version of a method: plain, frozen, from outside.

Evaluation is told it and knows nothing of other campaigns beside; `build/history.py` makes it, in the order in which
campaigns were tested, so that none can rest on itself.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

Why = Literal["undated", "another procedure", "another unit", "another rule"]


@dataclass(frozen=True)
class PastScatter:
    """One quantity in one campaign: the standard deviation of a pass and its degrees of freedom, from passes alone.

    `sd`, `degrees`: with what shared rounds do taken out; `within_sd`, `within_degrees`: with it. In `unit`, or of
    logarithms where `relative`. Where passes scatter by less than half a step, what the step hides is added.
    """

    campaign: str
    title: str
    sd: float
    degrees: float
    within_sd: float
    within_degrees: float
    unit: str
    relative: bool = False


@dataclass(frozen=True)
class PastLeftOut:
    """A campaign with the same method and quantity whose passes are not used, and why."""

    campaign: str
    title: str
    why: Why


Asked = tuple[str, int, str]  # method, version, quantity


@dataclass(frozen=True)
class History:
    """By method, version and quantity: campaigns tested before, the latest first. `undated`: this campaign doesn't say
    when it was tested, so nothing is known to have come before."""

    known: Mapping[Asked, tuple[PastScatter, ...]] = field(default_factory=dict)
    left_out: Mapping[Asked, tuple[PastLeftOut, ...]] = field(default_factory=dict)
    undated: bool = False


@dataclass(frozen=True)
class LookedBack:
    """What came of looking back for one quantity: the pooled scatter in the quantity's unit (as a part of the value
    where relative) with its degrees of freedom, 0 where there is none; whose it is, and who was left out."""

    test: str
    quantity: str
    sd: float
    degrees: int
    campaigns: tuple[PastScatter, ...] = ()
    left_out: tuple[PastLeftOut, ...] = ()
    undated: bool = False


NO_HISTORY = History()
