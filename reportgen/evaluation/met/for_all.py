"""Readings that serve several contenders."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from reportgen.campaign.declared import Declared
from reportgen.evaluation.evaluated import Caveat
from reportgen.evaluation.met.by_column import told_by_column
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.wording.listing import and_list
from reportgen.wording.met import Met
from reportgen.wording.quoting import first_few, quoted


def readings_for_all(declared: Declared, readings: Mapping[ReadingKey, Reading]) -> Iterable[Caveat]:
    """Rows of the contender `all`: a caveat for each column that has them, which names whom they serve."""

    def tell(heading: str, several: Sequence[Reading]) -> Met:
        texts, served = first_few(quoted(r.text) for r in several), {r.key.contender for r in several}
        titles = [c.title for c in declared.campaign.contenders if c.id in served]
        if len(titles) == len(declared.campaign.contenders):
            return Met("for-all", {"what": heading, "texts": texts})
        return Met("for-some", {"what": heading, "texts": texts, "who": and_list(titles)})

    return told_by_column(declared, readings, lambda r: r.for_all and not r.absent_because, tell)
