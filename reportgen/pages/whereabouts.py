"""Where on the site that stands which a finding is about: from its subject, its line in the author's files, its row."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from reportgen.addresses import campaign_page, claim_anchor, contender_page, quantity_anchor, test_page
from reportgen.campaign.declared import Campaign
from reportgen.finding import Finding, Place
from reportgen.pages.told import Told
from reportgen.pages.traces import leaf_of, listing_page, row_anchor, sheet_anchors

Row = tuple[int, str]  # a line and the address of what is declared from there on


@dataclass(frozen=True)
class Whereabouts:
    """Addresses on the site (`page#anchor`).

    `subjects` are found by file of the campaign and subject, `declared` and `raw` by file; `rows` by place.
    """

    subjects: Mapping[tuple[str, str], str] = field(default_factory=dict)
    declared: Mapping[str, tuple[Row, ...]] = field(default_factory=dict)
    rows: Mapping[Place, str] = field(default_factory=dict)
    folders: tuple[str, ...] = ()

    def of(self, finding: Finding) -> tuple[str, ...]:
        """Every address at which the finding belongs, the closest first; none where the site shows nothing of it."""
        at = finding.place
        folder = next((f for f in self.folders if not f or at.file.startswith(f"{f}/")), "")
        found = (
            self.rows.get(Place(at.file, at.line, 0, at.sheet)),
            self.subjects.get((folder, finding.subject)),
            self._declared(at),
        )
        return tuple(dict.fromkeys(address for address in found if address))

    def _declared(self, at: Place) -> str:
        rows = self.declared.get(at.file, ())
        before = bisect_right([line for line, _ in rows], at.line) if at.line else 0
        return rows[before - 1][1] if before else ""


def whereabouts(campaigns: Iterable[Told]) -> Whereabouts:
    """Of everything that these campaigns declared and read."""
    told = tuple(campaigns)
    subjects: dict[tuple[str, str], str] = {}
    declared: dict[str, dict[int, str]] = {}
    for one in told:
        for path, place in one.declared.places.items():
            address = address_of(one.campaign, path)
            if not address:
                continue
            subjects[one.campaign.folder, path] = address
            if place.line:
                declared.setdefault(place.file, {})[place.line] = address
    folders = sorted((one.campaign.folder for one in told), key=len, reverse=True)
    by_line = {file: tuple(sorted(rows.items())) for file, rows in declared.items()}
    return Whereabouts(subjects, by_line, dict(_rows(told)), tuple(folders))


def address_of(campaign: Campaign, path: str) -> str:
    """Where that is told which stands at `path` of the declaration; "" where no one place tells it."""
    sort, _, rest = path.partition("/")
    id = rest.partition("/")[0]
    if sort == "test":
        return test_page(campaign.id, id) if id in {t.id for t in campaign.tests} else ""
    if sort == "quantity":
        test = next((t.id for t in campaign.tests if id in {q.id for q in t.quantities}), "")
        return f"{test_page(campaign.id, test)}#{quantity_anchor(id)}" if test else ""
    if sort == "contender":
        return contender_page(campaign.id, id)
    if sort == "claim":
        claims = {c.id: c.name for c in campaign.contender(id).claims}
        return f"{contender_page(campaign.id, id)}#{claim_anchor(claims[rest.rpartition('/')[2]])}"
    if sort == "verdict":
        return f"{campaign_page(campaign.id)}#verdict"
    return campaign_page(campaign.id) if sort in ("title", "question") else ""


def _rows(told: Iterable[Told]) -> Iterator[tuple[Place, str]]:
    for one in told:
        for file, view in one.raw_views.items():
            anchors = sheet_anchors(sheet.name for sheet in view.sheets)
            for sheet in view.sheets:
                for row in sheet.rows:
                    place = Place(file, row.number, 0, sheet.name)
                    page = listing_page(one.campaign, file, anchors[sheet.name], leaf_of(view, row.number))
                    yield place, f"{page}#{row_anchor(anchors[sheet.name], row.number)}"
