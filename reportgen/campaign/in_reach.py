"""What a campaign can name: shared things in the order they are looked up, its instruments by unit."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

from reportgen.addresses import as_id, in_formula
from reportgen.campaign.declared import Constant, Instrument, Method
from reportgen.campaign.did_you_mean import did_you_mean
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.look_up import error
from reportgen.campaign.shape import shape_of
from reportgen.campaign.shared_things import Found, Shared, add_constants, add_instruments, read_shared
from reportgen.campaign.written.campaign import WrittenCampaign
from reportgen.campaign.written.shared import WrittenInstrument
from reportgen.campaign.written.test import MethodName
from reportgen.campaign.yaml_reader import read_short
from reportgen.campaign.yaml_text import Document
from reportgen.finding import Finding
from reportgen.sources import Workspace, carried


@dataclass
class Reach:
    """Shared things, nearest place first, and those that were used."""

    places: Sequence[Shared]
    told: list[Finding]
    by_unit: dict[str, str] = field(default_factory=dict)
    instruments: dict[str, Found[Instrument]] = field(default_factory=dict)
    methods: dict[str, Found[Method]] = field(default_factory=dict)

    def is_instrument(self, name: str) -> bool:
        """Whether there is an instrument of this name."""
        return any(as_id(name) in shared.instruments for shared in self.places)

    def read_in(self, id: str) -> str:
        """The unit in which an instrument reads, "" where nobody says."""
        found = self.instruments.get(id)
        return found.value.resolution.unit if found and found.value.resolution else ""

    @property
    def shelf(self) -> dict[str, Found[Instrument]]:
        """Every instrument in reach, each from the nearest place that has it."""
        return {id: found for shared in reversed(self.places) for id, found in shared.instruments.items()}

    def use_instrument(self, given: Given[str]) -> str:
        """The id of the instrument named, marked as used; "" where there is none, which is told."""
        id = as_id(given.value)
        for shared in self.places:
            if id in shared.instruments:
                self.instruments[id] = shared.instruments[id]
                return id
        if id:
            known = sorted({i for shared in self.places for i in shared.instruments})
            do = f"{did_you_mean(id, known)} Or describe it in instruments.yaml: `{id}: 0.1 g, up to 2000 g`."
            error(self.told, "unknown-instrument", given.at, f"there is no instrument “{given.value}”", do=do)
        return ""

    def use_method(self, given: Given[MethodName]) -> Method | None:
        """The method named, marked as used: the version asked for, else the newest of the nearest place."""
        id, version = as_id(given.value.name), given.value.version
        if not id:
            return None
        versions: set[int] = set()
        for shared in self.places:
            here = {v for i, v in shared.methods if i == id}
            versions |= here
            if version in here or (here and not version):
                found = shared.methods[id, version or max(here)]
                self.methods[f"{id}.{found.value.version}"] = found
                return found.value
        if versions:
            says = f"the method “{given.value.name}” has no version {version}"
            do = f"There is version {', '.join(map(str, sorted(versions)))}."
        else:
            says = f"there is no method “{given.value.name}”"
            do = did_you_mean(id, sorted({i for shared in self.places for i, _ in shared.methods}))
        error(self.told, "unknown-method", given.at, says, do=f"{do} Or write it in methods/{id}.{version or 1}.yaml.")
        return None

    def constants_in(self, names: frozenset[str]) -> Iterator[Found[Constant]]:
        """The constants that formulas name, each from the nearest place that has it."""
        seen: set[str] = set()
        for shared in self.places:
            for id, found in shared.constants.items():
                if in_formula(id) in names and id not in seen:
                    seen.add(id)
                    yield found


def reach_of(ws: Workspace, folder: str, path: str, written: WrittenCampaign, told: list[Finding]) -> Reach:
    """Everything in reach of the campaign in `folder`, whose file is `path`."""
    own = read_shared(ws, folder, told)
    by_unit = _described_here(written.instruments, path, own, told)
    add_constants(written.constants, path, own, told)
    places = [own]
    if not ws.lone:
        places.append(read_shared(ws, "shared", told))
    ready = carried("shared")
    if ready.resolve() != (ws.root / "shared").resolve() or ws.lone:
        places.append(_ready_made(ready))
    reach = Reach(places, told)
    for unit, name in by_unit.items():
        reach.by_unit[unit] = reach.use_instrument(name)
    return reach


@cache
def _ready_made(folder: Path) -> Shared:
    told: list[Finding] = []
    shared = read_shared(Workspace(folder, ()), "", told, origin="ready-made")
    assert not told, told
    return shared


def _described_here(
    entries: Sequence[Entry[Given[str] | WrittenInstrument]], path: str, own: Shared, told: list[Finding]
) -> Mapping[str, Given[str]]:
    """`instruments:` of campaign.yaml: descriptions join the campaign's own; the others are names, by unit."""
    by_unit: dict[str, Given[str]] = {}
    for entry in entries:
        value = entry.value
        if isinstance(value, Given) and not _is_description(value.value):
            by_unit[entry.name.value] = value
            continue
        if isinstance(value, Given):
            document = Document(path, [])
            value = read_short(document, value.value, value.at, shape_of(WrittenInstrument))
            told.extend(document.findings)
        if not as_id(entry.name.value):
            do = "Choose a plain name and put this one in `title:`."
            error(told, "name-without-letters", entry.name.at, f"“{entry.name.value}” gives no id", do=do)
            continue
        add_instruments((Entry(entry.name, value, entry.at),), path, own, told)
    return by_unit


def _is_description(text: str) -> bool:
    return "," in text or text[:1].isdigit() or text.startswith(("by hand", "accuracy", "class ", "±", "up to", "from"))
