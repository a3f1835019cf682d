"""Readings taken against another contender."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from reportgen.campaign.declared import Declared
from reportgen.evaluation.evaluated import Caveat
from reportgen.evaluation.met.by_column import told_by_column
from reportgen.intake.notations.against import other_of, theirs_of
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.wording.met import Met
from reportgen.wording.quoting import first_few, of_whom, of_whom_against


def readings_against(declared: Declared, readings: Mapping[ReadingKey, Reading]) -> Iterable[Caveat]:
    """`ostler + 72`: a caveat for each column that has such readings."""

    def tell(heading: str, several: Sequence[Reading]) -> Met:
        texts = [_told(r, declared.campaign.contender(r.key.contender).title, readings) for r in several]
        return Met("against", {"what": heading, "texts": first_few(texts)})

    return told_by_column(declared, readings, lambda r: bool(r.beside), tell)


def _told(reading: Reading, who: str, readings: Mapping[ReadingKey, Reading]) -> str:
    """What was typed and for whom; where the other contender has several passes, also on which of them it stands."""
    other = other_of(reading, readings)
    if other is None or len(theirs_of(reading, readings, other.key.part)) < 2:
        return of_whom(reading.text, who)
    return of_whom_against(reading.text, who, other.key.pass_)
