"""An instrument as its author wrote it → as later stages know it, with what doesn't go together told at its place."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from itertools import pairwise

from reportgen.addresses import as_id
from reportgen.campaign.declared import Accuracy, Amount, Calibration, Day, Instrument
from reportgen.campaign.former_names import former
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.instrument_terms import CorrectionOf
from reportgen.campaign.look_up import error
from reportgen.campaign.photos_of import photo_of
from reportgen.campaign.scalar import amount
from reportgen.campaign.shape import NotThat
from reportgen.campaign.stated_uncertainty import stated_uncertainty
from reportgen.campaign.written.calibration import WrittenCalibration
from reportgen.campaign.written.shared import WrittenInstrument
from reportgen.finding import Finding, Place


def instrument_of(name: str, written: WrittenInstrument, origin: str, told: list[Finding]) -> Instrument:
    """An instrument as later stages know it. Without an accuracy, one whose calibration says how well it is known is
    known by that."""
    w = written
    calibrated = _calibrated(w, told)
    calibration = _calibration(w.calibration, calibrated, told) if w.calibration else None
    if w.drift and not (calibrated and calibrated.first):
        says = "this instrument drifts, and nothing says since when"
        why = "Its drift grows from the day of its calibration on."
        error(told, "drift-without-a-day", w.drift.at, says, why, "Add `calibrated: 2026-04-30`, or take `drift:` out.")
    if w.reaction and not (w.by_hand and w.by_hand.value):
        says = "a reaction is that of a hand, and nothing says that this instrument is started and stopped by hand"
        error(told, "reaction-without-a-hand", w.reaction.at, says, do="Add `by hand: yes`, or take `reaction:` out.")
    by_calibration = calibration is not None and (calibration.uncertainty is not None or calibration.line)
    known_by = Accuracy(known=True, text="") if by_calibration else Accuracy(known=False)
    return Instrument(
        id=as_id(name),
        title=w.title.value if w.title else name,
        resolution=w.resolution.value if w.resolution else None,
        low=w.range.value.low if w.range else None,
        high=w.range.value.high if w.range else None,
        accuracy=w.accuracy.value if w.accuracy else known_by,
        by_hand=w.by_hand.value if w.by_hand else False,
        shared=w.shared.value if w.shared else "both",
        model=w.model.value if w.model else "",
        serial=w.serial.value if w.serial else "",
        calibrated=calibrated,
        calibrated_by=_calibrated_by(w),
        source=w.source.value if w.source else "",
        notes=w.notes.value if w.notes else "",
        frame_rate=w.frames.value if w.frames else None,
        photo=photo_of(as_id(name), w.photo, w.photo.at, told) if w.photo else None,
        origin=origin,
        calibration=calibration,
        drift=w.drift.value if w.drift else None,
        repeatability=w.repeatability.value if w.repeatability else None,
        reaction=w.reaction.value if w.reaction else None,
        clock=w.clock.value if w.clock else None,
        formerly=former(w.formerly),
    )


def _calibrated(w: WrittenInstrument, told: list[Finding]) -> Day | None:
    """The day of its calibration, said in one place."""
    inside = w.calibration.date if w.calibration else None
    if w.calibrated and inside:
        says = f"the day of the calibration stands here twice (`calibrated:` in line {w.calibrated.at.line})"
        error(told, "described-twice", inside.at, says, "Nobody could say which of them counts.", "Take one out.")
    given = w.calibrated or inside
    return given.value if given else None


def _calibrated_by(w: WrittenInstrument) -> str:
    given = w.calibrated_by or (w.calibration.by if w.calibration else None)
    return given.value if given else ""


def _calibration(w: WrittenCalibration, day: Day | None, told: list[Finding]) -> Calibration:
    single = w.correction.value if isinstance(w.correction, Given) else None
    line = w.between is not None and w.between.value == "one line"
    points = _points(w.correction, line, told) if isinstance(w.correction, tuple) else ()
    if w.between and not isinstance(w.correction, tuple):
        says = "there are no points between which anything could be said"
        do = "Write the points under `correction:`, or take `between:` out."
        error(told, "between-without-points", w.between.at, says, do=do)
    expires = w.expires.value if w.expires else None
    if w.expires and expires and day and expires.last and day.first and expires.last < day.first:
        says = f"this calibration counts no longer than {expires.text}, and was done on {day.text}"
        error(told, "expires-before", w.expires.at, says, do="Correct one of the two.")
    uncertainty, k = _uncertainty(w, line, told)
    if w.between and line and not uncertainty and len(points) > 2 and _on_one_line(points):
        says = "the points lie on one line exactly, and show no scatter that would say how well the correction is known"
        why = "Corrections rounded more coarsely than they scatter look like this; nobody knows anything exactly."
        do = "Add the uncertainty of the certificate (`u:`, or `uncertainty:` with `k:`)."
        error(told, "line-without-scatter", w.between.at, says, why, do)
    return Calibration(
        reference=w.reference.value if w.reference else "",
        correction=single,
        points=points,
        line=line,
        uncertainty=uncertainty,
        k=k,
        degrees=w.degrees.value if w.degrees else None,
        expires=expires,
    )


def _uncertainty(w: WrittenCalibration, line: bool, told: list[Finding]) -> tuple[Amount | None, Decimal]:
    if w.u and w.uncertainty:
        says = "the correction has a standard uncertainty (`u`) or an expanded one (`uncertainty` with `k`), not both"
        error(told, "two-widths", w.u.at, says, do="Keep the one that the certificate gives.")
    more = " (those of a fitted line are its points less two)" if line else ""
    return stated_uncertainty(w, "correction", "certificate", told, more=more)


def _points(
    entries: tuple[Entry[CorrectionOf], ...], line: bool, told: list[Finding]
) -> tuple[tuple[Amount, Amount], ...]:
    """The points in their order, which must be that of the readings; empty where they can't be used, which is told."""
    found: list[tuple[Amount, Amount]] = []
    before = len(told)
    for entry in entries:
        try:
            found.append((amount(entry.name.value), entry.value.value))
        except NotThat as wrong:
            do = wrong.do or "Write the reading with its unit, then what is added there: `100 g: +0.2 g`."
            error(told, "wrong-value", entry.name.at, wrong.says, do=do)
    needed = 3 if line else 2
    if entries and len(entries) < needed:
        why = "Two points always lie on a line, and nothing shows how far the others would be off it." if line else ""
        do = "Give more of them, or write one amount that is added everywhere."
        says = f"{'one point says' if len(entries) == 1 else 'two points say'} too little of the rest of the scale"
        error(told, "too-few-points", entries[0].name.at, says, why, do)
    for (low, _), (high, _) in pairwise(found):
        at = next(e.name.at for e in entries if e.name.value.strip() == high.text)
        _in_order(low, high, at, told)
    of_reading = [e for e in entries if "%" in e.value.value.unit and "%" not in e.name.value]
    if of_reading:
        says = f"“{of_reading[0].value.value.text}”: what is added at a point is an amount in the instrument's unit"
        error(told, "wrong-value", of_reading[0].at, says, do="Work it out: 0.4 % at 200 g is 0.8 g.")
    return tuple(found) if len(told) == before else ()


def _on_one_line(points: tuple[tuple[Amount, Amount], ...]) -> bool:
    """Whether all corrections, as they are written, lie on the line through the first and the last."""
    if len({add.unit for _, add in points if add.value}) > 1:
        return False  # written in two units, and rounded in either
    (start, low), (end, high) = ((Fraction(at.value), Fraction(add.value)) for at, add in (points[0], points[-1]))
    return all((Fraction(add.value) - low) * (end - start) == (high - low) * (Fraction(at.value) - start)
               for at, add in points)  # fmt: skip


def _in_order(low: Amount, high: Amount, at: Place, told: list[Finding]) -> None:
    if low.unit != high.unit:
        says = f"“{high.text}” is in another unit than the point before it, “{low.text}”"
        error(told, "points-not-rising", at, says, do="Write all points in one unit.")
    elif low.value == high.value:
        says = f"there are two corrections at one reading: “{low.text}” and “{high.text}”"
        error(told, "points-not-rising", at, says, do="Keep their mean, or one of them.")
    elif low.value > high.value:
        says = f"the points don't rise: “{high.text}” comes after “{low.text}”"
        error(told, "points-not-rising", at, says, do="Write them from the smallest reading to the largest.")
