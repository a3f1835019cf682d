"""The columns `photo` and `film` of a table: what was photographed and filmed of the readings in a row."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from reportgen.addresses import as_id
from reportgen.campaign.declared import Campaign, Moment
from reportgen.campaign.moments import moment_in
from reportgen.campaign.photos_of import is_picture
from reportgen.campaign.seeing import Shown, unknown_photo
from reportgen.campaign.shape import NotThat
from reportgen.finding import Finding, Place
from reportgen.intake.layouts.seen import Beside, Seen
from reportgen.intake.reading import Reading
from reportgen.intake.table import Row, Table

BETWEEN = ";"  # between several photographs: ids have hyphens, names may have spaces, tables have commas


def shown_in(
    table: Table, cells: Iterable[Seen], campaign: Campaign
) -> tuple[Mapping[int, Shown], tuple[Finding, ...]]:
    """What each row shows, by its place in the table; ids that nobody declared and wrong moments are findings."""
    rows = {s.order: s.beside for s in cells if s.beside.photo or s.beside.film}
    findings: list[Finding] = []
    found = {n: shown_beside(table, table.rows[n], beside, campaign, findings) for n, beside in rows.items()}
    return found, tuple(findings)


def shown_beside(table: Table, row: Row, beside: Beside, campaign: Campaign, findings: list[Finding]) -> Shown:
    """What one row shows; what isn't there is a finding, at its cell."""
    places = [table.at(row.line, row.cells.index(cell) if cell else None) for cell in (beside.photo, beside.film)]
    return Shown(
        photos_in(beside.photo, campaign, places[0], findings), film_in(beside.film, campaign, places[1], findings)
    )


def with_shown(readings: Iterable[Reading], shown: Mapping[int, Shown]) -> list[Reading]:
    """The readings of one table with what their rows show."""
    return [
        replace(r, photos=shown[r.order].photos, film=shown[r.order].film) if r.order in shown else r for r in readings
    ]


def photos_in(text: str, campaign: Campaign, at: Place, findings: list[Finding]) -> tuple[str, ...]:
    """The ids in a cell such as `display-1; display-2`; what isn't one is a finding."""
    known = {p.id: p for p in campaign.photos}
    ids = []
    for name in filter(None, (piece.strip() for piece in text.split(BETWEEN))):
        if as_id(name) in known:
            ids.append(as_id(name))
            continue
        says, do = unknown_photo(name, known)
        if is_picture(name):
            do = f"Write the photograph's id, not its file. {do}"
        elif _pieces_known(name, known):
            do = f"Write {BETWEEN} between several photographs."
        findings.append(Finding("error", "unknown-photo", at, says, "Nobody could see it.", do))
    return tuple(dict.fromkeys(ids))


def film_in(text: str, campaign: Campaign, at: Place, findings: list[Finding]) -> Moment | None:
    """The moment in a cell such as `main 4m20s`; what is none is a finding."""
    if not text.strip():
        return None
    try:
        return moment_in({f.id: f for f in campaign.films}, text)
    except NotThat as wrong:
        why = "The link would open the wrong place."
        findings.append(Finding("error", "no-such-moment", at, wrong.says, why, wrong.do))
        return None


def _pieces_known(name: str, known: Mapping[str, object]) -> bool:
    pieces: Sequence[str] = name.replace(",", " ").split()
    return len(pieces) > 1 and all(as_id(piece) in known for piece in pieces)
