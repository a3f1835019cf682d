"""What a laboratory's values rest on: nothing found below its limit, found without a number, an uncertainty unsaid."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence

from reportgen.campaign.declared import Amount, Declared, Laboratory
from reportgen.evaluation.evaluated import Caveat
from reportgen.evaluation.met.by_column import told_by_column
from reportgen.intake.notations.laboratory import FOUND
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.wording.met import Met
from reportgen.wording.number import as_written
from reportgen.wording.unit import joined


def laboratory_values(declared: Declared, readings: Mapping[ReadingKey, Reading]) -> Iterable[Caveat]:
    """A caveat for each column with values under a limit, between the limits, or without an uncertainty."""

    def of(reading: Reading) -> Laboratory | None:
        return declared.campaign.test(reading.key.test).laboratory if reading.attachment else None

    def told(code: str, bears: Callable[[Reading, Laboratory], bool]) -> Iterable[Caveat]:
        def tell(heading: str, several: Sequence[Reading]) -> Met:
            laboratory = of(several[0])
            assert laboratory is not None
            return Met(code, _gaps(heading, laboratory))

        return told_by_column(declared, readings, lambda r: (lab := of(r)) is not None and bears(r, lab), tell)

    yield from told("not-found", lambda r, _: r.limit == "below")
    yield from told("found", lambda r, _: is_found(r))
    yield from told("no-uncertainty", lambda r, lab: _is_number(r) and lab.uncertainty is None)


def is_found(reading: Reading) -> bool:
    """Whether the laboratory only found it, between its limits."""
    return reading.text.lower().split() == [FOUND]


def _is_number(reading: Reading) -> bool:
    return reading.value is not None and not reading.limit and not is_found(reading)


def _gaps(heading: str, laboratory: Laboratory) -> Mapping[str, str]:
    return {
        "what": heading,
        "laboratory": laboratory.name,
        "low": _amount(laboratory.detection_limit),
        "high": _amount(laboratory.report_limit),
    }


def _amount(amount: Amount | None) -> str:
    return joined(as_written(amount.value), amount.unit) if amount else ""
