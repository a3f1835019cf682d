"""A value with its uncertainty taken apart by named source: the one currency of this library.

Contributions are signed and carry one standard uncertainty of their source times the sensitivity to it
(JCGM 100, 5.1.3: cᵢ·u(xᵢ)). A source that two values share therefore cancels, or leaves its share, by plain
addition of what bears the same name; a combined uncertainty is worked out last and can't be taken apart again.

Why an engine of our own: GTC and `uncertainties` propagate as exactly and serve the tests as witnesses, but both keep
a graph of live objects in which an input is a number, not a named cause. What is decided later needs causes: their
sign and shape (each type B part is convolved with its own distribution), the steps of a scale apart from its accuracy,
bounds that stay bounds, units that tell a temperature from a difference, and frozen plain data that can be kept and
compared between compiles.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Literal

from reportgen.metrology.unit import Unit

Sort = Literal[
    "step",
    "shared",
    "rough",
    "repeatability",
    "offset",
    "gain",
    "accuracy",
    "calibration",
    "drift",
    "clock",
    "laboratory",
    "reaction",
    "constant",
    "assumption",
    "fit",
    "bend",
    "scatter",
]
OF_ONE_READING: frozenset[Sort] = frozenset({"repeatability", "reaction", "fit"})  # scatter between passes shows them
Shape = Literal["uniform", "normal", "triangular", "arcsine"]
Limit = Literal["above", "below"]


@dataclass(frozen=True, order=True)
class Source:
    """One independent cause of error. Two contributions are of one variable exactly when their sources are equal.

    `of` names what it comes from (an instrument, a constant, an assumption); `where` is what makes it the same
    variable: the session for a shared offset or gain, the reading for its own step or reaction, "" for a constant.
    `shared` is the step of a reading that several values stand on, `rough` the stated
    width of one (`about 250`), or of several that err alike.

    `degrees` are those of the standard uncertainty itself (JCGM 100, G.3 and G.4.2), infinite where it is taken as
    known. A normal source of finite degrees is Student's t times its size (JCGM 101, 6.4.9); several of one `of` with
    equal degrees rest on one estimate of a variance (the parameters of one fit) and are one t together.
    """

    sort: Sort
    of: str
    where: str = ""
    shape: Shape = "uniform"
    degrees: float = math.inf


def estimate_of(source: Source) -> Source:
    """What the variance of a source was estimated from, as a source: equal for those of one fit, or of one instrument.

    The scatter of one contender's passes is an estimate by itself, and so is that about the line of one trace: of what
    says where a fit was made, all but the last part after a `/` names the estimate.
    """
    if source.sort == "scatter":
        return source
    return replace(source, where=source.where.rpartition("/")[0] if source.sort == "fit" else "")


@dataclass(frozen=True)
class Uncertain:
    """`value` in `unit`; `contributions` (same unit) by source; `limit` where it is only a bound.

    `value` is None only with a limit that is itself unknown (``over unknown``).
    """

    value: float | None
    unit: Unit
    contributions: Mapping[Source, float] = field(default_factory=dict)
    limit: Limit | None = None


def combined_standard_uncertainty(x: Uncertain) -> float:
    """u_c in x's unit (JCGM 100, 5.1.2, equation 10): sources are independent by definition.

    >>> from reportgen.metrology.unit import parse_unit
    >>> x = Uncertain(14.3, parse_unit("g"), {Source("step", "scale", "1"): 0.03, Source("offset", "scale"): -0.04})
    >>> combined_standard_uncertainty(x)
    0.05
    """
    return math.sqrt(math.fsum(size * size for size in x.contributions.values()))


def covariance(x: Uncertain, y: Uncertain) -> float:
    """u(x, y) in x's unit times y's: what the sources they share bring (JCGM 100, 5.2.2; F.1.2.3, equation F.1).

    >>> from reportgen.metrology.unit import parse_unit
    >>> gram, offset = parse_unit("g"), Source("offset", "scale")
    >>> round(covariance(Uncertain(5.0, gram, {offset: 0.2}), Uncertain(7.0, gram, {offset: 0.3})), 9)
    0.06
    """
    return math.fsum(size * y.contributions.get(source, 0.0) for source, size in x.contributions.items())


def correlation_coefficient(x: Uncertain, y: Uncertain) -> float:
    """r(x, y) = u(x, y)/(u(x)·u(y)), −1 to 1; 0 where either is exact (JCGM 100, 5.2.2, equation 14).

    Two resistors compared with one standard, known to 0.1 Ω, each with an error of 0.1 Ω of its own:

    >>> from reportgen.metrology.unit import parse_unit
    >>> standard = Source("calibration", "standard")
    >>> def resistor(n):
    ...     return Uncertain(1000.0, parse_unit("Ω"), {standard: 0.1, Source("repeatability", "bridge", n): 0.1})
    >>> round(correlation_coefficient(resistor("first"), resistor("second")), 12)
    0.5
    """
    apart = combined_standard_uncertainty(x) * combined_standard_uncertainty(y)
    return max(-1.0, min(1.0, covariance(x, y) / apart)) if apart else 0.0
