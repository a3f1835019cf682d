"""A folder of an author's → `Declared`, or every mistake in it at once."""

from __future__ import annotations

import posixpath

from reportgen.addresses import as_id, in_formula
from reportgen.campaign.declared import Campaign, Column, Contender, Declared, Publication, Quantity, Source, Test
from reportgen.campaign.given import Entry
from reportgen.campaign.kinds import KINDS
from reportgen.campaign.written.campaign import WrittenCampaign
from reportgen.campaign.written.measure import WrittenQuantity
from reportgen.campaign.yaml_reader import read_record
from reportgen.campaign.yaml_text import compose
from reportgen.finding import Finding, Refused
from reportgen.sources import Workspace, exists, read_text
from reportgen.sources.workspace import ARCHIVE, CAMPAIGN, PUBLICATION


def load_publication(ws: Workspace) -> tuple[Publication, tuple[Finding, ...]]:
    """The workspace's settings; where it has none, those of a lone campaign."""
    if not exists(ws, PUBLICATION):
        return Publication(), ()
    raise NotImplementedError


def load_campaign(ws: Workspace, folder: str, publication: Publication) -> Declared:
    """The campaign in `folder` (from the workspace). Raises Refused with every error found."""
    path = posixpath.join(folder, CAMPAIGN)
    document = compose(read_text(ws, path), path)
    written = read_record(document, WrittenCampaign)
    if any(f.severity == "error" for f in document.findings):
        raise Refused(document.findings)
    source = Source(file=written.readings.value, place=written.readings.at) if written.readings else Source()
    campaign = Campaign(
        id=as_id(posixpath.basename(folder) or ws.root.name),
        folder=folder,
        title=written.title.value,
        question=written.question.value if written.question else "",
        contenders=tuple(
            Contender(as_id(e.name.value), e.value.value if e.value else e.name.value) for e in written.contenders
        ),
        tests=tuple(_measured(e, source) for e in written.measure),
        instruments={},
        methods={},
        constants={},
        show=publication.show,
        who_pays=publication.who_pays,
        invented=publication.invented,
        archived=folder.startswith(ARCHIVE),
    )
    places = {"": written.at, "title": written.title.at}
    places |= {f"contender/{as_id(e.name.value)}": e.name.at for e in written.contenders}
    places |= {f"test/{as_id(e.name.value)}": e.name.at for e in written.measure}
    places |= {f"quantity/{as_id(e.name.value)}": e.name.at for e in written.measure}
    return Declared(campaign, places, tuple(document.findings))


def _measured(entry: Entry[WrittenQuantity], source: Source) -> Test:
    label, written = entry.name.value, entry.value
    kind = written.kind.value if written.kind else ""
    headings = KINDS[kind].headings(label) if kind else ()
    unit = written.unit.value if written.unit else ""
    quantity = Quantity(
        id=as_id(label), test=as_id(label), title=label, kind=kind,
        formula=written.formula.value if written.formula else KINDS[kind].writes(label),
        unit=unit, better=written.better.value if written.better else "neither",
        reads=tuple(in_formula(h) for h in headings),
    )  # fmt: skip
    columns = tuple(Column(in_formula(h), h, unit) for h in headings)
    return Test(as_id(label), label, (quantity,), as_id(label), columns, (source,), own_sources=False)
