"""Slips of the pen put right in raw files: each is told wherever the readings it mended bear."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from decimal import Decimal

from reportgen.addresses import as_id
from reportgen.campaign.declared import Amendment, Declared
from reportgen.evaluation.evaluated import Caveat
from reportgen.finding import letters
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.wording.met import Met, at_line, by_how_much
from reportgen.wording.sentence import capital


def amendments(declared: Declared, readings: Mapping[ReadingKey, Reading]) -> Iterable[Caveat]:
    """One caveat an amendment."""
    for a in declared.campaign.amendments:
        touched = {k: r for k, r in readings.items() if r.amendment == a.id}
        contenders = {k.contender for k in touched}
        yield Caveat(
            f"amendment-{a.id}", 0, "amendment", "", "", False, frozenset(touched), (),
            contenders.pop() if len(contenders) == 1 else "", declared.at(f"amendment/{a.id}"),
            met=_met(a, tuple(touched.values())), said=(a.was,), used=a.is_, seen_by=a.seen_by, name=_name(a),
        )  # fmt: skip


def _name(a: Amendment) -> str:
    """The cell that was put right: it stays where it is, for the file stays as it was."""
    return as_id(f"amendment {a.file} {a.sheet} {a.line} {a.column} {a.number or ''}")


def _met(a: Amendment, touched: tuple[Reading, ...]) -> Met:
    own = [r for r in touched if r.was]
    gaps = {
        "place": at_line(a.file, a.line, letters(a.number) if a.number else ""),
        "was": a.was,
        "is": a.is_,
        "why": capital(a.why.rstrip(".")),
    }
    code = "amended.empty" if not a.was else "amended" if own or not touched else "amended.cell"
    then = []
    if own and (old := _number(a.was)) is not None and own[0].value is not None and own[0].limit is None:
        then.append(Met("amended.change", {"change": by_how_much(own[0].value - old, own[0].unit)}))
    if a.seen_by:
        then.append(Met("amended.seen", {"who": a.seen_by}))
    return Met(code, gaps, then=tuple(then))


def _number(text: str) -> Decimal | None:
    """What the file said, where that is a plain number in the reading's unit."""
    found = re.match(r"[-+]?\d+(?:[.,]\d+)?(?=\s|$)", text)
    return Decimal(found[0].replace(",", ".")) if found else None
