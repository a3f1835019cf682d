"""What the measuring library refuses when it is used by itself: nothing goes in that would come out as no number."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from reportgen.metrology import (
    Instrument,
    MetrologyError,
    Size,
    combined_standard_uncertainty,
    correlated,
    exact,
    exp,
    fit,
    from_observations,
    input_quantity,
    multiply,
    observed,
    parse_unit,
    power,
    propagate_distributions,
    type_b,
    welch_satterthwaite,
)
from reportgen.metrology.specification import Calibration, Points, Relative

G = parse_unit("g")
NAN, INF = math.nan, math.inf

REFUSED: dict[str, tuple[Callable[[], object], str]] = {
    "a reading that is no number": (lambda: observed(NAN, G, None, "", "1"), "reading of nan"),
    "a reading without end": (lambda: observed(INF, G, None, "", "1"), "reading of inf"),
    "a size that is no number": (lambda: Size(NAN, G), "size of nan"),
    "a resolution below nothing": (lambda: Instrument("scale", resolution=Size(-0.1, G)), "resolution of scale"),
    "limits below nothing": (lambda: Instrument("scale", absolute=Size(-0.1, G)), "accuracy of scale"),
    "a percentage that is no number": (lambda: Instrument("scale", percent=NAN), "accuracy of scale"),
    "a repeatability of half a degree": (lambda: Instrument("scale", repeatability_degrees=0.5), "0.5 degrees"),
    "a calibration of no degree": (lambda: Calibration(u=Size(1.0, G), degrees=0), "0 degrees"),
    "a calibration known to less than nothing": (lambda: Calibration(u=Relative(-1.0)), "an uncertainty of -1"),
    "a drift below nothing": (lambda: Calibration(drift=Size(-1.0, G)), "a drift of -1"),
    "corrections at no point": (lambda: Points(G, (), ()), "0 readings"),
    "corrections fewer than readings": (lambda: Points(G, (1.0, 2.0), (0.0,)), "1 corrections"),
    "corrections out of order": (lambda: Points(G, (2.0, 1.0), (0.0, 1.0)), "don't rise"),
    "a correction that is no number": (lambda: Points(G, (1.0, 2.0), (0.0, NAN)), "no number"),
    "an endless coverage factor": (lambda: type_b.from_expanded(1.0, INF), "coverage factor"),
    "a probability of all but nothing": (lambda: type_b.from_interval(1.0, 1e-300), "probability"),
    "a covariance of half a degree": (lambda: correlated([1.0], [[1.0]], ["g"], "x", degrees=0.5), "0.5 degrees"),
    "a covariance without a name": (lambda: correlated([1.0], [[1.0]], ["g"], ""), "name"),
    "a fit without a name": (lambda: fit.line([1, 2, 3], [1, 2, 4], name=""), "name"),
    "a part of no degree": (lambda: welch_satterthwaite([(1.0, 0.0)]), "degrees of freedom"),
    "a part that is no number": (lambda: welch_satterthwaite([(NAN, 5.0)]), "part of nan"),
    "an observation that is no number": (lambda: from_observations([1.0, NAN], "g", "x"), "observation of nan"),
    "observations too large": (lambda: from_observations([1e200, -1e200], "g", "x"), "observation of 1e"),
    "a power that is no number": (lambda: power(exact(2.0), NAN), "power of nan"),
    "a power that vanishes": (lambda: power(exact(1e-10), 100), "too small"),
    "an exponential that vanishes": (lambda: exp(exact(-1000.0)), "too small"),
    "a product that vanishes": (lambda: multiply(exact(1e-200), exact(1e-200)), "too small"),
    "no digits of draws": (lambda: propagate_distributions("x", {"x": exact(1.0)}, digits=0), "0 digits"),
    # Student's t with one degree reaches 173 in more than one draw in a thousand, and e¹⁷³ is beyond 1e75
    "draws without end": (
        lambda: propagate_distributions("exp(x)", {"x": input_quantity(3.0, u=1.0, degrees=1, name="x")}),
        "too large to hold",
    ),
}


@pytest.mark.parametrize("what", sorted(REFUSED))
def test_what_no_measurement_can_be_is_refused_in_words(what: str) -> None:
    work, says = REFUSED[what]
    with pytest.raises(MetrologyError, match=says):
        work()


def test_the_scatter_of_tiny_values_is_not_nothing() -> None:
    # JCGM 100, 4.2.2: s of 1 and 3 is √2, and that of their 1e-70th parts as many of these; u of the mean is s/√2
    found = from_observations([1e-70, 3e-70], "g", "x")
    assert combined_standard_uncertainty(found) == pytest.approx(1e-70)
