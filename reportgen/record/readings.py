"""One reading as the record keeps it: what was written, what was taken, and where it stood. Keys without content stay
away."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.as_shown import correction_of
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.record.plain import number
from reportgen.record.trace import from_folder

ALWAYS = ("name", "text", "file", "line")


def reading_rows(
    keys: Iterable[ReadingKey], readings: Mapping[ReadingKey, Reading], contender: str, campaign: Campaign
) -> list[dict[str, Any]]:
    """The readings behind one pass of a contender, as they stand in their files, each once."""
    read = [readings[key] for key in dict.fromkeys(keys) if key in readings]
    read.sort(key=lambda r: (r.at.file, r.at.sheet, r.at.line, r.at.column, r.order))
    return [_row(r, contender, campaign) for r in read]


def _row(r: Reading, contender: str, campaign: Campaign) -> dict[str, Any]:
    """`contender` stands in the row only where the reading is another's; `column` counts cells from 1; `corrected` is
    the value with what the calibration of its instrument adds."""
    added = correction_of(campaign.instruments.get(r.instrument), r)
    told: dict[str, Any] = {
        "name": r.key.name,
        "text": r.text,
        "value": number(float(r.value)) if r.value is not None else None,
        "corrected": number(float(r.value) + added) if added is not None and r.value is not None else None,
        "unit": r.unit,
        "instrument": r.instrument,
        "limit": r.limit,
        "word": r.word,
        "absent_because": r.absent_because,
        "unfinished": r.unfinished,
        "width": number(float(r.width)) if r.width is not None else None,
        "rough": r.rough,
        "unweighed": r.unweighed,
        "beside": r.beside,
        "for_all": r.for_all,
        "frames": list(r.frames) if r.frames else None,
        "contender": "" if r.for_all or r.key.contender == contender else r.key.contender,
        "was": r.was,
        "amendment": r.amendment,
        "records": r.records,
        "attachment": r.attachment,
        "page": r.page,
        "photos": list(r.photos),
        "film": {"film": r.film.film, "seconds": number(float(r.film.seconds))} if r.film else None,
        "series": _series(r),
        "conditions": dict(r.conditions),
        "session": r.session,
        "round": r.round_,
        "time": r.time,
        "note": r.note,
        "file": from_folder(r.at.file, campaign.folder),
        "sheet": r.at.sheet,
        "line": r.at.line,
        "column": r.at.column,
    }
    return {key: value for key, value in told.items() if key in ALWAYS or _says_something(key, value)}


def _says_something(key: str, value: object) -> bool:
    return value is not None if key == "value" else bool(value)


def _series(r: Reading) -> dict[str, Any] | None:
    """The stretch of a logger's file that stands for the reading; its times and `gaps` are in seconds."""
    s = r.series
    if s is None:
        return None
    return {
        "channel": s.heading, "first": s.first, "last": s.last, "samples": s.samples,
        "begins": number(s.begins), "ends": number(s.ends), "interval": number(s.interval),
        "gaps": [[number(a), number(b)] for a, b in s.gaps],
    }  # fmt: skip
