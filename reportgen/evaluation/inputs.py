"""What each source of error is of: the readings that hold it, and how large it is there, before a formula weighs it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from math import fsum, sqrt

from reportgen.evaluation.behind import Behind
from reportgen.evaluation.working import Working
from reportgen.evaluation.workings import Workings
from reportgen.intake.reading import ReadingKey
from reportgen.metrology.errors import MetrologyError, NoValue
from reportgen.metrology.uncertain import Source, Uncertain


@dataclass(frozen=True)
class Input:
    """A source where it enters: its standard uncertainty in `unit` (of a gain: in percent of the reading)."""

    u: float
    unit: str
    keys: tuple[ReadingKey, ...] = ()


Inputs = Mapping[Source, Input]


def inputs_of(workings: Workings, passes: Iterable[Working], contender: str) -> Inputs:
    """Every source behind the passes of `contender`: of their readings, and of constants and assumptions."""
    read: dict[Source, tuple[float, Uncertain, list[ReadingKey]]] = {}
    for key in dict.fromkeys(k for w in passes for k in w.keys):
        value = _observed(workings, key)
        if value is None:
            continue
        for source, size in value.contributions.items():
            keys = read[source][2] if source in read else []
            keys.append(key)
            read[source] = size, value, keys
    found = {
        source: Input(*_as_entered(source, size, value), tuple(keys)) for source, (size, value, keys) in read.items()
    }
    named = [*workings.constants.values(), *(a.of(contender) for a in workings.assumed.values())]
    for value in named:
        for source, size in value.contributions.items():
            found[source] = Input(abs(size), value.unit.symbol)
    return found


def _observed(workings: Workings, key: ReadingKey) -> Uncertain | None:
    """A reading as it was observed; of a trace one sample of the value 1, whose offset is that of all."""
    reading = workings.readings.get(key)
    if reading is None or reading.word:
        return None
    try:
        if reading.series is not None:
            return workings.observer.trace(reading).observe(1.0, None, "")
        return workings.observer.observed(reading)
    except (NoValue, MetrologyError):
        return None


def _as_entered(source: Source, size: float, value: Uncertain) -> tuple[float, str]:
    if source.sort == "gain" and value.value:
        return abs(100 * size / value.value), "%"
    return abs(size), value.unit.symbol


def behind(sizes: Mapping[Source, float], inputs: Inputs) -> Behind | None:
    """What a line is made of that joins the contributions `sizes`, each a source of its own; None where not known."""
    known = [(size, inputs[source]) for source, size in sizes.items() if source in inputs and size]
    units = {entered.unit for _, entered in known}
    if not known or len(known) != sum(1 for size in sizes.values() if size) or len(units) != 1:
        return None
    u = sqrt(fsum(entered.u**2 for _, entered in known) / len(known))
    if not u:
        return None
    size = sqrt(fsum(size**2 for size, _ in known))
    each = [size / entered.u for size, entered in known if entered.u]
    sensitivity = size / (u * sqrt(len(known)))
    signed = -sensitivity if all(c < 0 for c in each) else sensitivity
    alike = max(map(abs, each)) - min(map(abs, each)) < 1e-6 * max(map(abs, each)) and _same(known)
    keys = tuple(dict.fromkeys(key for _, entered in known for key in entered.keys))
    return Behind(u, units.pop(), len(known), signed, alike, keys)


def _same(known: Iterable[tuple[float, Input]]) -> bool:
    sizes = [entered.u for _, entered in known]
    return max(sizes) - min(sizes) < 1e-6 * max(sizes)
