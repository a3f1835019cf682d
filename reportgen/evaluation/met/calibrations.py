"""What a calibration did to readings: they are corrected, or it no longer counted when they were taken."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace

from reportgen.campaign.declared import Calibration, Declared, Instrument
from reportgen.evaluation.evaluated import Caveat
from reportgen.evaluation.reading_days import days_past
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.wording.count import whole
from reportgen.wording.day import day, days_long
from reportgen.wording.language import say
from reportgen.wording.met import Met, change
from reportgen.wording.quoting import in_sentence

Tell = Callable[[Instrument, Sequence[Reading]], Met | None]


def corrected_readings(declared: Declared, readings: Mapping[ReadingKey, Reading]) -> Iterable[Caveat]:
    """A caveat for each instrument whose readings are corrected, over all the tests that read it."""

    def tell(instrument: Instrument, _: Sequence[Reading]) -> Met | None:
        calibration = instrument.calibration
        if calibration is None or not calibration.corrects:
            return None
        on = instrument.calibrated
        when = say("corrected.when", day=day(on.first, on.last, on.text)) if on and on.first else ""
        return Met("corrected", {"instrument": in_sentence(instrument.title), "by": _by(calibration), "when": when})

    return _told(declared, readings, tell)


def readings_past_calibration(declared: Declared, readings: Mapping[ReadingKey, Reading]) -> Iterable[Caveat]:
    """A caveat for each instrument read after its calibration counted, over the tests read so late."""

    def tell(instrument: Instrument, several: Sequence[Reading]) -> Met | None:
        past = max((days_past(instrument, r, declared.campaign.tested) or 0 for r in several), default=0)
        if past <= 0 or instrument.calibration is None or instrument.calibration.expires is None:
            return None
        until = instrument.calibration.expires
        gaps = {"day": day(until.first, until.last, until.text), "long": days_long(past)}
        code = "past-calibration.drift" if instrument.drift else "past-calibration"
        return Met(code, {"instrument": in_sentence(instrument.title), **gaps})

    return _told(declared, readings, tell)


def _by(calibration: Calibration) -> str:
    if calibration.points:
        code = "corrected.by.line" if calibration.line else "corrected.by.points"
        return say(code, n=whole(len(calibration.points)))
    assert calibration.correction is not None
    return change(calibration.correction.value, calibration.correction.unit)


def _told(declared: Declared, readings: Mapping[ReadingKey, Reading], tell: Tell) -> Iterable[Caveat]:
    calibrated = {id for id, i in declared.campaign.instruments.items() if i.calibration is not None}
    found: dict[tuple[str, str], list[Reading]] = {}
    for reading in readings.values():
        if reading.instrument in calibrated and not reading.absent_because:
            found.setdefault((reading.key.test, reading.instrument), []).append(reading)
    alike: dict[str, Caveat] = {}  # what would read the same in two tests is said once
    for (test, id), several in found.items():
        met = tell(declared.campaign.instruments[id], several)
        if met is None:
            continue
        keys, same = frozenset(r.key for r in several), f"{id}: {met}"
        alike[same] = replace(alike[same], touches=alike[same].touches | keys) if same in alike else Caveat(
            id=f"{met.code}/{test}/{id}", number=0, sort="instrument", says="", pushes="", blocks=False,
            touches=keys, quantities=(), contender="", at=several[0].at, met=met,
        )  # fmt: skip
    yield from alike.values()
