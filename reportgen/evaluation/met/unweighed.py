"""Additions that nobody weighed."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from reportgen.campaign.declared import Declared
from reportgen.evaluation.evaluated import Caveat
from reportgen.evaluation.met.by_column import told_by_column
from reportgen.evaluation.met.where import whose_reading
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.wording.met import Met
from reportgen.wording.quoting import first_few, of_whom


def unweighed_readings(declared: Declared, readings: Mapping[ReadingKey, Reading]) -> Iterable[Caveat]:
    """`some`: a caveat for each column that has such readings."""

    def tell(heading: str, several: Sequence[Reading]) -> Met:
        texts = [of_whom(r.text, whose_reading(declared, readings, r)) for r in several]
        return Met("unweighed", {"what": heading, "texts": first_few(texts)})

    return told_by_column(declared, readings, lambda r: r.unweighed and r.limit is not None, tell)
