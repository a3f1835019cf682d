"""Two records of one reading that disagree: both are told wherever the reading bears."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from reportgen.addresses import as_id, part_id
from reportgen.campaign.declared import Declared, TwoRecords
from reportgen.campaign.declared.remarks import NOT_KNOWN
from reportgen.evaluation.evaluated import Caveat
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.wording.listing import and_list
from reportgen.wording.met import Met
from reportgen.wording.quoting import whose
from reportgen.wording.sentence import capital


def two_records(declared: Declared, readings: Mapping[ReadingKey, Reading]) -> Iterable[Caveat]:
    """One caveat for each pair of records. What would change with the other is added once results are worked out."""
    for records in declared.campaign.two_records:
        touched = frozenset(k for k, r in readings.items() if r.records == records.id)
        yield Caveat(
            f"records-{records.id}", 0, "records", "", "", False, touched, (), records.about.contender,
            declared.at(f"records/{records.id}"), met=_met(records), said=records.said, used=records.used,
            name=_name(records),
        )  # fmt: skip


def _name(records: TwoRecords) -> str:
    about = records.about
    pass_ = f"pass {about.pass_}" if about.pass_ else ""
    return as_id(f"records {records.reading} {about.contender} {about.specimen} {pass_} {part_id(about.part)}")


def _met(records: TwoRecords) -> Met:
    about = records.about
    gaps = {
        "what": whose(records.reading, about.pass_, about.part),
        "said": and_list(records.said),
        "used": records.used,
        "why": capital(records.because.rstrip(".")),
    }
    return Met("records.open" if records.used == NOT_KNOWN else "records", gaps)
