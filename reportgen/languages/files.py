"""The files a language is made of, the nearest first: the author's before the program's own, a region's before all."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.campaign.did_you_mean import did_you_mean
from reportgen.campaign.folder import read_file
from reportgen.finding import Finding, Place, Refused, refuse
from reportgen.languages.written import WrittenLanguage
from reportgen.sources import Workspace, carried, exists, list_files

OWN = "content/languages"
SOURCE = "en"  # the program's own table, which needs no file


@dataclass(frozen=True)
class LanguageFile:
    """`tag` is that of its name, `path` what messages call it, `own`: the author's."""

    tag: str
    path: str
    own: bool
    written: WrittenLanguage


def files_of(ws: Workspace | None, tag: str, told: list[Finding]) -> tuple[LanguageFile, ...]:
    """Every file that has a say in the language `tag`, the nearest first; none where there is no file for it.

    Findings go to `told`. Raises `Refused` where a file is based on one that isn't there, or on itself.
    """
    way: list[LanguageFile] = []
    wanted, carried_only, named_at = tag, False, None
    while wanted:
        found = _file(ws, wanted, carried_only, told)
        if found is None:
            if named_at is not None and carried_only:
                raise _ring(tag, way[-1])
            if named_at is not None and wanted != SOURCE:
                raise refuse(
                    "no-language",
                    named_at,
                    f"there is no language file “{wanted}”",
                    "what this file doesn't say would come from it",
                    did_you_mean(wanted, tags(ws)) or "take the line out",
                )
            wanted, carried_only, named_at = _wider(wanted), False, None
            continue
        if any((found.path, found.own) == (seen.path, seen.own) for seen in way):
            raise _ring(tag, way[-1])
        way.append(found)
        base = found.written.based_on
        if base is not None:
            wanted, carried_only, named_at = base.value, found.own and base.value == found.tag, base.at
        elif found.own:
            wanted, carried_only, named_at = found.tag, True, None
        else:
            wanted, carried_only, named_at = _wider(found.tag), False, None
    return tuple(way)


def _ring(tag: str, last: LanguageFile) -> Refused:
    at = last.written.based_on
    return refuse(
        "language-ring",
        at.at if at else Place(last.path),
        f"the language “{tag}” is based on itself",
        do="take `based on:` out of one of the files in the ring",
    )


def tags(ws: Workspace | None) -> tuple[str, ...]:
    """The languages there are files for, and English."""
    paths = [*list_files(_ours(), ""), *(list_files(ws, OWN) if ws is not None else ())]
    names = {path.rpartition("/")[2].removesuffix(".yaml") for path in paths if path.endswith(".yaml")}
    return tuple(sorted({SOURCE, *names}))


def _file(ws: Workspace | None, tag: str, carried_only: bool, told: list[Finding]) -> LanguageFile | None:
    if ws is not None and not carried_only and exists(ws, f"{OWN}/{tag}.yaml"):
        return _read(ws, f"{OWN}/{tag}.yaml", tag, True, told)
    if exists(_ours(), f"{tag}.yaml"):
        return _read(_ours(), f"{tag}.yaml", tag, False, told)
    return None


def _read(ws: Workspace, path: str, tag: str, own: bool, told: list[Finding]) -> LanguageFile:
    found: list[Finding] = []
    written = read_file(ws, path, WrittenLanguage, found)
    told.extend(found)
    if written is None:
        raise Refused(found)
    if not any(f.severity == "error" for f in found) and written.language.value != tag:
        told.append(_named_otherwise(tag, written))
    return LanguageFile(tag, path, own, written)


def _named_otherwise(tag: str, written: WrittenLanguage) -> Finding:
    return Finding(
        "error", "language-and-file", written.language.at,
        f"the file is named {tag}.yaml and says that it is “{written.language.value}”",
        "A publication finds its language by the name of the file.",
        f"Write `language: {tag}`, or rename the file.",
    )  # fmt: skip


def _ours() -> Workspace:
    return Workspace(carried("languages"), ())


def _wider(tag: str) -> str:
    """The tag without its last part: `de-AT` is a kind of `de`."""
    return tag.rpartition("-")[0]
