"""Which logger file is of which contender and pass: told from its name, listed, or from columns inside it."""

from __future__ import annotations

import posixpath
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from reportgen.campaign.declared import Campaign, Logger, Source
from reportgen.finding import Finding, Place, Refused, refuse
from reportgen.intake.names import contenders_in, find_contender, names_of, spellings, unknown_contender
from reportgen.sources import Workspace, list_files

IN_NAMES = ("contender", "specimen", "session", "round", "pass", "part")
_BRACES = re.compile(r"\{([^{}]*)\}")


@dataclass(frozen=True)
class LoggerFile:
    """A file from the workspace, and what its name (or the declaration) says of what is in it."""

    path: str
    says: Mapping[str, str] = field(default_factory=dict)


def files_of(
    ws: Workspace, campaign: Campaign, source: Source, logger: Logger
) -> tuple[tuple[LoggerFile, ...], tuple[Finding, ...]]:
    """The files of one source, sorted, with what is wrong with their names. Raises `Refused` where there is none."""
    if logger.files:
        return _listed(campaign, source, logger)
    pattern = posixpath.normpath(posixpath.join(campaign.folder, source.file))
    if not _BRACES.search(pattern):
        return (LoggerFile(pattern),), ()
    fixed = pattern[: pattern.index("{")]
    folder = posixpath.dirname(fixed)
    named = _matcher(pattern, campaign)
    found, findings = [], []
    try:
        paths = list_files(ws, folder)
    except Refused as refused:
        raise Refused(replace(f, place=source.place) for f in refused.findings) from None
    for path in paths:
        match = named.fullmatch(path)
        if match is None:
            continue
        says = {name: text for name, text in match.groupdict().items() if text}
        if "contender" in says:
            contender = find_contender(says["contender"], names_of(campaign))
            if contender is None:
                findings.append(_stranger(path, says["contender"], campaign))
                continue
            says["contender"] = contender
            if other := _another(says, campaign):
                findings.append(_of_two(path, contender, other))
                continue
        found.append(LoggerFile(path, says))
    if not found:
        raise refuse(
            "missing-file",
            source.place,
            f"No file is named like {source.file}.",
            "Its readings would be lost.",
            "Put the files there; every name in braces stands for what differs: contender, pass, part.",
        )
    return tuple(sorted(found, key=lambda f: _natural(f.path))), tuple(findings)


def _matcher(pattern: str, campaign: Campaign) -> re.Pattern[str]:
    """The pattern as an expression; a contender is one of the names it goes by, else anything."""
    people = "|".join(re.escape(n) for n in sorted(_written(campaign), key=len, reverse=True))
    parts = _BRACES.split(pattern)
    made = ""
    for i, part in enumerate(parts):
        if i % 2 == 0:
            made += re.escape(part)
        elif f"(?P<{part}>" in made:
            made += f"(?P={part})"
        else:
            made += f"(?P<{part}>(?:{people})|[^/]+?)" if part == "contender" else f"(?P<{part}>[^/]+?)"
    return re.compile(made, re.IGNORECASE)


def _written(campaign: Campaign) -> set[str]:
    """Contenders' names as a file's name may spell them: spaces may be hyphens or underscores there."""
    names = spellings(campaign)
    return {n.replace(" ", sign) for n in names for sign in (" ", "-", "_")}


def _another(says: Mapping[str, str], campaign: Campaign) -> str:
    """Another contender named in what should be the pass or part; "" where there is none."""
    names = names_of(campaign)
    for text in (f"-{text}-" for role, text in says.items() if role != "contender"):
        for name in _written(campaign):
            letters = any(c.isalpha() for c in name)
            if letters and re.search(rf"[-_ ]{re.escape(name)}[-_ ]", text, re.IGNORECASE):
                other = find_contender(name, names)
                if other is not None and other != says["contender"]:
                    return other
    return ""


def _of_two(path: str, contender: str, other: str) -> Finding:
    return Finding(
        "error",
        "two-contenders",
        Place(path),
        f"This file's name names two contenders, “{contender}” and “{other}”.",
        "Whose trace it is can't be known.",
        "Rename it, so that contender and pass stand where the braces are, or list a file for each contender.",
    )


def _stranger(path: str, name: str, campaign: Campaign) -> Finding:
    wrong = unknown_contender(name, campaign, Place(path))
    return Finding("warning", "unread-file", wrong.place, f"{wrong.says} This file was not read.", wrong.why, wrong.do)


def _natural(path: str) -> tuple[tuple[int, str], ...]:
    """Pass 10 comes after pass 9."""
    return tuple((int(p), "") if p.isdecimal() else (-1, p) for p in re.split(r"(\d+)", path))


def _listed(campaign: Campaign, source: Source, logger: Logger) -> tuple[tuple[LoggerFile, ...], tuple[Finding, ...]]:
    people = contenders_in(logger.files, campaign)
    found: list[LoggerFile] = []
    findings: list[Finding] = []
    for name, files in logger.files.items():
        contender = people[name]
        if contender is None:
            findings.append(unknown_contender(name, campaign, source.place))
            continue
        found += _numbered(campaign, contender, files)
    return tuple(found), tuple(findings)


def _numbered(campaign: Campaign, contender: str, files: Sequence[str]) -> list[LoggerFile]:
    paths = (posixpath.normpath(posixpath.join(campaign.folder, file)) for file in files)
    return [LoggerFile(path, {"contender": contender, "pass": str(n)}) for n, path in enumerate(paths, 1)]
