"""Incidents said in one line: `ostler, pass 3: blew out twice and was relit`, as a mapping of one or in quotes."""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Mapping, Sequence
from typing import Any

from reportgen.addresses import as_id
from reportgen.campaign import short
from reportgen.campaign.did_you_mean import did_you_mean
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.look_up import error
from reportgen.campaign.shape import NotThat
from reportgen.campaign.written.remarks import WrittenIncident
from reportgen.finding import Finding

KEYS = tuple(f.name.strip("_").replace("_", " ") for f in dataclasses.fields(WrittenIncident) if f.metadata)


def spread(x: WrittenIncident, contenders: Mapping[str, str], told: list[Finding]) -> WrittenIncident:
    """The incident with the keys that its one line stands for; what doesn't fit is told.

    `contenders` maps every name a contender goes by to its id. In a quoted text what stands before the first colon is
    a place only where it begins with a contender: `Second try: better` is a sentence.
    """
    lines = _lines(x, contenders)
    if not lines and (x.what is None or _a_place_alone(x.what.value, contenders)):
        do = "Add `what: …`, or write `ostler, pass 3: what happened`."
        error(told, "missing-key", x.at, "this doesn't say what happened", do=do)
    for extra in lines[1:]:
        says = f"“{extra.name.value}:” is no key here, and one incident has one line"
        error(told, "unknown-key", extra.name.at, says, do=f"{did_you_mean(extra.name.value, KEYS)} Or begin another.")
    for line in lines[:1]:
        x = _with_line(x, line, contenders, told)
    return x if x.what else dataclasses.replace(x, what=Given("", "", x.at))


def _a_place_alone(text: str, contenders: Mapping[str, str]) -> bool:
    """Whether it says whom it befell and nothing else: `ostler, pass 3` or `ostler:`."""
    try:
        found = dict(short.where(text.strip().removesuffix(":")))
    except NotThat:
        return False
    return "reading" not in found and as_id(found.get("contender", "")) in contenders


def _lines(x: WrittenIncident, contenders: Mapping[str, str]) -> Sequence[Entry[Given[str]]]:
    if x.in_one_line or x.what is None:
        return x.in_one_line
    head, colon, rest = x.what.value.partition(": ")
    if colon and as_id(head.partition(",")[0]) in contenders and not x.contender:
        return (Entry(Given(head, head, x.what.at), Given(rest.strip(), rest, x.what.at), x.what.at),)
    return ()


def _with_line(
    x: WrittenIncident, line: Entry[Given[str]], contenders: Mapping[str, str], told: list[Finding]
) -> WrittenIncident:
    name = line.name
    try:
        found = dict(short.where(name.value))
    except NotThat as wrong:
        error(told, "wrong-value", name.at, wrong.says, do="Write it like this: ostler, pass 3: what happened.")
        return dataclasses.replace(x, what=line.value)
    if as_id(found.get("contender", "")) not in contenders and re.fullmatch(r"\w[\w ]*", name.value):
        do = did_you_mean(name.value, [*KEYS, *contenders.values()])
        error(told, "unknown-key", name.at, f"“{name.value}:” is no key here, and no contender", do=do)
        return dataclasses.replace(x, what=line.value)
    placed: dict[str, Any] = {
        field: Given(found[role], found[role], name.at)
        for role, field in (("contender", "contender"), ("pass", "pass_"), ("part", "part"), ("specimen", "specimen"))
        if role in found
    }
    for field in placed:
        if getattr(x, field) is not None:
            says = f"the {field.strip('_')} stands in the line and under a key of its own"
            error(told, "said-twice", name.at, says, do="Take one of them out.")
    if x.what is not None and x.what is not line.value and x.in_one_line:
        error(told, "said-twice", x.what.at, "what happened stands in the line and under `what:`", do="Keep one.")
    if "reading" in found:
        placed["about"] = (*x.about, Given(found["reading"], found["reading"], name.at))
    return dataclasses.replace(x, what=line.value, **placed)
