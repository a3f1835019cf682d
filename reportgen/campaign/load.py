"""A campaign's folder → `Declared`, or every mistake in it at once."""

from __future__ import annotations

import posixpath
from collections.abc import Sequence

from reportgen.addresses import SITE_PAGES, as_id
from reportgen.campaign.assemble import Records, assemble
from reportgen.campaign.declared import Declared, Publication
from reportgen.campaign.folder import Folder, look_into, read_file
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.grid import read_grid
from reportgen.campaign.look_up import error, is_misshapen, without_consequences
from reportgen.campaign.members import Member, members
from reportgen.campaign.publication import load_publication
from reportgen.campaign.written.campaign import WrittenCampaign
from reportgen.campaign.written.contender import WrittenContender
from reportgen.campaign.written.test import WrittenTest
from reportgen.campaign.written.verdict import WrittenVerdict
from reportgen.finding import Finding, Place, Refused, in_order
from reportgen.sources import Workspace, read_text
from reportgen.sources.workspace import CAMPAIGN

__all__ = ["load_campaign", "load_publication"]


class RefusedInPart(Refused):
    """A campaign with errors, and what of it could be read: enough to look for further errors, never to go on with."""

    def __init__(self, declared: Declared) -> None:
        self.declared = declared
        super().__init__(declared.findings)


def load_campaign(ws: Workspace, folder: str, publication: Publication) -> Declared:
    """The campaign in `folder` (from the workspace). Raises Refused with every error found, warnings among them."""
    told: list[Finding] = []
    path = posixpath.join(folder, CAMPAIGN)
    id = _id_of(ws, folder, path, told)
    inside = look_into(ws, folder, told)
    written = read_file(ws, path, WrittenCampaign, told)
    contenders = _contenders(ws, inside, written, told)
    tests = _tests(ws, inside, written, told)
    verdict = _verdict(ws, inside, written, told)
    if written is None:
        raise Refused(in_order(dict.fromkeys(told)))
    declared = assemble(ws, Records(id, inside, written, contenders, tests, verdict), publication, told)
    findings = in_order(dict.fromkeys(without_consequences(told, inside.tests.values())))
    declared = Declared(declared.campaign, declared.places, findings)
    if any(f.severity == "error" for f in findings):
        raise RefusedInPart(declared)
    return declared


def _id_of(ws: Workspace, folder: str, path: str, told: list[Finding]) -> str:
    """The campaign's id: its folder's name, which must give an address nobody else has."""
    name = posixpath.basename(folder) or ws.root.name
    id = as_id(name)
    if not id:
        error(told, "name-without-letters", Place(path), f"the folder's name “{name}” gives no address",
              "Addresses are lower-case ASCII.", "Give the folder a plain name.")  # fmt: skip
    if id in SITE_PAGES:
        error(told, "hides-a-page", Place(path), f"a campaign called “{id}” would hide the site's page of that name",
              do="Give the folder another name.")  # fmt: skip
    others = [c for c in ws.campaigns if c != folder and as_id(posixpath.basename(c)) == id]
    if others:
        error(told, "duplicate-campaign", Place(path), f"{folder} and {others[0]} would have one address, {id}/",
              "One would overwrite the other.", "Give one of the folders another name.")  # fmt: skip
    return id


def _contenders(
    ws: Workspace, inside: Folder, written: WrittenCampaign | None, told: list[Finding]
) -> tuple[Member[WrittenContender | Given[str]], ...]:
    def read(path: str) -> WrittenContender | Given[str] | None:
        return read_file(ws, path, WrittenContender, told)

    listed: Sequence[Given[str] | Entry[WrittenContender | Given[str] | None]] | None = None
    names = written.contenders if written is not None else None
    if isinstance(names, Given):
        listed = _grid(ws, inside, names, told)
    elif names is not None:
        listed = names
    found: tuple[Member[WrittenContender | Given[str]], ...]
    found = members(listed, inside.contenders, "contenders", read, told, name_is_enough=True)
    if written is not None and not found and not is_misshapen(told, written.at.file):
        error(told, "no-contenders", written.at, "this campaign names no contenders",
              do="List them: `contenders:` and below it a line `id: Title` for each.")  # fmt: skip
    for member in found:
        if member.id == "all":
            error(told, "reserved-name", member.at, "no contender can be called “all”",
                  "In tables of readings that word stands for every contender.", "Give it another id.")  # fmt: skip
    return found


def _grid(ws: Workspace, inside: Folder, given: Given[str], told: list[Finding]) -> tuple[Entry[WrittenContender], ...]:
    path = posixpath.join(inside.path, given.value)
    if path.lower().endswith((".xlsx", ".xlsm", ".xls", ".ods", ".parquet")):
        error(told, "unknown-format", given.at, f"“{given.value}” is no text; a grid of contenders is a CSV table",
              "Only readings are read from spreadsheets.", "Save it as “CSV UTF-8” and name that file.")  # fmt: skip
        return ()
    try:
        return read_grid(read_text(ws, path), path, told)
    except Refused as refused:
        for f in refused.findings:
            place = f.place if f.place.line else given.at
            told.append(Finding(f.severity, f.rule, place, f.says, f.why, f.do))
        return ()


def _tests(
    ws: Workspace, inside: Folder, written: WrittenCampaign | None, told: list[Finding]
) -> tuple[Member[WrittenTest], ...]:
    def read(path: str) -> WrittenTest | None:
        return read_file(ws, path, WrittenTest, told)

    listed: Sequence[Given[str] | Entry[WrittenTest | None]] | None = written.tests if written else None
    return members(listed, inside.tests, "tests", read, told, name_is_enough=False)


def _verdict(
    ws: Workspace, inside: Folder, written: WrittenCampaign | None, told: list[Finding]
) -> WrittenVerdict | None:
    here = written.verdict if written else None
    if not inside.verdict:
        return here
    if here is not None:
        says = f"the verdict is described here and in {inside.verdict}"
        error(told, "described-twice", here.at, says, do="Keep one of them.")
    return read_file(ws, inside.verdict, WrittenVerdict, told)
