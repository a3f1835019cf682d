"""Which specimen, pass and part a caveat found among the readings is about, where it is about one."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence, Set
from dataclasses import replace

from reportgen.campaign.declared import Declared
from reportgen.evaluation.evaluated import Caveat
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.wording.quoting import whose


def met_where(caveat: Caveat, readings: Mapping[ReadingKey, Reading]) -> Caveat:
    """The caveat with what all its readings have in common, as far as the contender was read in another besides.

    A contender with one pass of a reading needs no "pass 1"; nor has a caveat on several contenders a pass of its own.
    """
    if not caveat.contender or caveat.sort == "running":
        return caveat
    columns = {(k.test, k.name) for k in caveat.touches}
    alike = _read(readings, columns, caveat.contender)
    return replace(
        caveat,
        specimen=_one((k.specimen for k in caveat.touches), (k.specimen for k in alike)),
        pass_=_one((k.pass_ for k in caveat.touches), (k.pass_ for k in alike)),
        part=_one((k.part for k in caveat.touches), (k.part for k in alike)),
    )


def whose_reading(declared: Declared, readings: Mapping[ReadingKey, Reading], r: Reading) -> str:
    """Whose reading it is, in words, with pass and part where the contender has others: "Hollin K8, pass 3"."""
    key = r.key
    alike = _read(readings, {(key.test, key.name)}, key.contender)
    pass_, part = _one([key.pass_], (k.pass_ for k in alike)), _one([key.part], (k.part for k in alike))
    who = next((c.title for c in declared.campaign.contenders if c.id == key.contender), key.contender)
    return whose(who, pass_, part)


def _read(
    readings: Mapping[ReadingKey, Reading], columns: Set[tuple[str, str]], contender: str
) -> Sequence[ReadingKey]:
    """What was really read of a contender in these columns: an empty cell is no pass to tell another from."""
    of = ((k, r) for k, r in readings.items() if (k.test, k.name) in columns and k.contender == contender)
    return [k for k, r in of if not r.absent_because]


def _one(own: Iterable[str], of: Iterable[str]) -> str:
    """The one that all are of, where there are others to tell it from; else ""."""
    found, others = set(own), set(of)
    return found.pop() if len(found) == 1 and others - found else ""
