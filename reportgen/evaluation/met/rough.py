"""Rough readings: which texts they are, and how wide each is taken."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from reportgen.campaign.declared import Declared
from reportgen.evaluation.evaluated import Caveat
from reportgen.evaluation.met.by_column import told_by_column
from reportgen.evaluation.met.where import whose_reading
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.wording.met import Met
from reportgen.wording.quoting import first_few, taken, taken_of_whom


def rough_readings(declared: Declared, readings: Mapping[ReadingKey, Reading]) -> Iterable[Caveat]:
    """`about 250`, `250 ±10`, `2 to 3`: a caveat for each column that has such readings."""

    def tell(heading: str, several: Sequence[Reading]) -> Met:
        texts = [
            taken_of_whom(taken(r.text, r.value, r.width, r.unit), whose_reading(declared, readings, r))
            for r in several if r.value is not None and r.width is not None
        ]  # fmt: skip
        about = any(r.rough == "about" for r in several)
        return Met("rough-about" if about else "rough", {"what": heading, "texts": first_few(texts)})

    return told_by_column(declared, readings, lambda r: bool(r.rough), tell)
