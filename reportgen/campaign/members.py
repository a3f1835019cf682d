"""A campaign's list of contenders or tests, written in place or in a file each → the records in their order."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Generic, TypeVar

from reportgen.addresses import as_id
from reportgen.campaign.did_you_mean import did_you_mean
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.look_up import error
from reportgen.finding import Finding, Place

T = TypeVar("T")


@dataclass(frozen=True)
class Member(Generic[T]):
    """One contender or test: its id, its name as typed, what is written about it, and where that begins."""

    id: str
    name: str
    written: T | None
    at: Place


def members(
    listed: Sequence[Given[str] | Entry[T | None]] | None,
    files: Mapping[str, str],
    folder: str,
    read: Callable[[str], T | None],
    told: list[Finding],
    *,
    name_is_enough: bool,
) -> tuple[Member[T], ...]:
    """`listed` in its order (None: every file in the order of ids). A name without text is looked for in `files`;
    in a mapping, a name with neither will do where `name_is_enough`.

    What is described twice, what is listed twice and what has no description is an error; a file that isn't listed,
    a warning.
    """
    if listed is None:
        return tuple(Member(id, id, read(path), Place(path)) for id, path in sorted(files.items()))
    found: dict[str, Member[T]] = {}
    for one in listed:
        name, written, needs_file = (
            (one, None, True) if isinstance(one, Given) else (one.name, one.value, not name_is_enough)
        )
        id = as_id(name.value)
        if id in found:
            error(told, "duplicate-name", name.at, f"“{name.value}” is listed twice", do="Take one of them out.")
        elif id in files and written is not None:
            says = f"“{name.value}” is described here and in {files[id]}"
            do = f"List the ids alone ([{name.value}, …]), or delete the file."
            error(told, "described-twice", name.at, says, "Nobody could say which of them counts.", do)
            found[id] = Member(id, name.value, written, name.at)
        elif id in files:
            found[id] = Member(id, name.value, read(files[id]), Place(files[id]))
        else:
            if needs_file and written is None and id:
                do = (
                    did_you_mean(id, files)
                    if files
                    else f"Write {folder}/{id}.yaml, or describe it here: `{id}: Title`."
                )
                error(told, "missing-file", name.at, f"there is no file {folder}/{id}.yaml", do=do)
            found[id] = Member(id, name.value, written, name.at)
    for id in sorted(set(files) - set(found)):
        told.append(
            Finding("warning", "unlisted-file", Place(files[id]), f"{files[id]} is in no list and is left out",
                    do=f"Add {id} to `{folder}:` in campaign.yaml, or delete the file.")
        )  # fmt: skip
    return tuple(found.values())
