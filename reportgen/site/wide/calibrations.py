"""What a calibration of an instrument found, and how far the instrument drifts and repeats itself, for its page."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from reportgen.campaign.declared import Amount, Calibration, Instrument
from reportgen.evaluation.instruments_known import instrument_for_metrology
from reportgen.metrology.calibration import fitted
from reportgen.metrology.specification import Points
from reportgen.site.words import words
from reportgen.wording.count import degrees, whole
from reportgen.wording.day import day
from reportgen.wording.met import amount, change
from reportgen.wording.number import plain, with_u
from reportgen.wording.unit import joined


@dataclass(frozen=True)
class Known:
    """One line of what is known of an instrument."""

    label: str
    says: str


@dataclass(frozen=True)
class PointShown:
    """One point of a calibration: what was read, and what is added there."""

    read: str
    add: str


def known_of(instrument: Instrument) -> tuple[Known, ...]:
    """Its repeatability, its calibration and its drift, as far as they are stated."""
    return tuple(Known(words(f"known.{key}"), says) for key, says in _lines(instrument))


def points_of(instrument: Instrument) -> tuple[PointShown, ...]:
    """The points of its calibration, in their order."""
    points = instrument.calibration.points if instrument.calibration else ()
    return tuple(PointShown(amount(at.value, at.unit), change(add.value, add.unit)) for at, add in points)


def _lines(i: Instrument) -> Iterable[tuple[str, str]]:
    if i.repeatability:
        found, sd = i.repeatability.degrees, amount(i.repeatability.sd.value, i.repeatability.sd.unit)
        yield "repeats", words("repeats", sd=sd) if found is None else words("repeats.from", sd=sd, n=degrees(found))
    calibration = i.calibration
    if calibration:
        if calibration.reference:
            yield "reference", calibration.reference
        yield from _correction(i, calibration)
        if calibration.uncertainty:
            yield "known-to", _uncertainty(calibration, calibration.uncertainty)
        if calibration.expires:
            until = calibration.expires
            yield "expires", words("expires", day=day(until.first, until.last, until.text))
    if i.drift:
        yield "drift", words("drift", amount=amount(i.drift.value, i.drift.unit))
    if i.clock:
        yield "clock", words("clock", text=i.clock.text)


def _correction(i: Instrument, calibration: Calibration) -> Iterable[tuple[str, str]]:
    n = whole(len(calibration.points))
    if calibration.points and calibration.line:
        yield "correction", words("correction.line", n=n, **_line(i))
    elif calibration.points:
        yield "correction", words("correction.points", n=n)
    elif calibration.correction and calibration.corrects:
        yield "correction", words("correction", by=change(calibration.correction.value, calibration.correction.unit))


def _line(i: Instrument) -> dict[str, str]:
    """The fitted line in figures that a reader can put a reading into, with the standard uncertainties of both."""
    translated = instrument_for_metrology(i).calibration
    assert translated is not None
    points = translated.correction
    assert isinstance(points, Points)
    line = fitted(points)
    unit = points.unit.symbol
    height, u_height = _with_u(line.height, line.u_height)
    slope, u_slope = _with_u(line.slope, line.u_slope)
    return {"height": joined(height, unit), "u_height": joined(u_height, unit), "slope": slope, "u_slope": u_slope,
            "middle": joined(plain(line.middle), unit), "n_degrees": degrees(line.degrees)}  # fmt: skip


def _with_u(value: float, u: float) -> tuple[str, str]:
    return with_u(value, u) if u else (plain(value), plain(0))  # all points lie on one line


def _uncertainty(calibration: Calibration, stated: Amount) -> str:
    more = words("known-to.degrees", n=degrees(calibration.degrees)) if calibration.degrees else ""
    if calibration.k == 1:
        return words("known-to.standard", u=amount(stated.value, stated.unit), more=more)
    u = joined(plain(stated.value / calibration.k), stated.unit)
    return words(
        "known-to.expanded", expanded=amount(stated.value, stated.unit), k=plain(calibration.k), u=u, more=more
    )
