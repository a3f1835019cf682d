"""Names as authors write them → ids, each unknown one a finding with the nearest known name."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from reportgen.addresses import as_id
from reportgen.campaign.did_you_mean import did_you_mean
from reportgen.campaign.given import Given
from reportgen.finding import Finding, Place


def look_up(given: Given[str] | None, known: Mapping[str, str], what: str, told: list[Finding]) -> str:
    """The id that `given` stands for among `known` (id of a name → id); "" where nothing is given or known."""
    if given is None or not given.value:
        return ""
    id = known.get(as_id(given.value), "")
    if not id:
        told.append(unknown(given, dict.fromkeys(known.values()), what))
    return id


def look_up_all(
    given: Iterable[Given[str]], known: Mapping[str, str], what: str, told: list[Finding]
) -> tuple[str, ...]:
    """The ids of several names, unknown ones left out, each once."""
    return tuple(dict.fromkeys(filter(None, (look_up(g, known, what, told) for g in given))))


def unknown(
    given: Given[str], known: Iterable[str], what: str, otherwise: str = "Declare it, or take the name out."
) -> Finding:
    """The finding for a name nobody knows: `what` is “contender”, “quantity of this test” …; `otherwise` is what to do
    where there is no name at all."""
    rule = f"unknown-{what.partition(' ')[0]}"
    do = did_you_mean(as_id(given.value), known) or otherwise
    return Finding("error", rule, given.at, f"there is no {what} “{given.value}”", do=do)


SHAPE_RULES = frozenset(
    {"alias", "broken-yaml", "duplicate-key", "empty-file", "later-version", "merge-key", "nothing-written",
     "unknown-key", "wrong-shape"}
)  # fmt: skip


def is_misshapen(told: Iterable[Finding], file: str) -> bool:
    """Whether something of the file could not be read at all, so that what seems to be missing may stand there."""
    return any(f.place.file == file and f.rule in SHAPE_RULES for f in told)


def without_consequences(told: Sequence[Finding], tests: Iterable[str]) -> list[Finding]:
    """Those told, without names of quantities that nobody knows where one of the files of `tests` can't be read: its
    own may be among them. What is told of that file itself stays."""
    files = frozenset(tests)
    broken = {f.place.file for f in told if f.place.file in files and f.rule == "broken-yaml"}
    if not broken:
        return list(told)
    return [f for f in told if f.rule != "unknown-quantity" or f.place.file in broken]


def error(told: list[Finding], rule: str, place: Place, says: str, why: str = "", do: str = "") -> None:
    """One more error among those told."""
    told.append(Finding("error", rule, place, says, why, do))
