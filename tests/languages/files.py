"""Language files for tests, in a workspace of their own."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from reportgen.finding import Finding, Place, Refused
from reportgen.languages import load_language
from reportgen.sources import Workspace
from reportgen.wording.language import Language

ASKED = Place("content/publication.yaml", 3, 11)


def workspace(root: Path, files: Mapping[str, str]) -> Workspace:
    folder = root / "content" / "languages"
    folder.mkdir(parents=True)
    for tag, text in files.items():
        (folder / f"{tag}.yaml").write_text(text, encoding="utf-8")
    return Workspace(root, ())


def loaded(root: Path, tag: str, **files: str) -> tuple[Language, tuple[Finding, ...]]:
    """The language from files by tag (`de_AT` for de-AT)."""
    return load_language(workspace(root, {t.replace("_", "-"): text for t, text in files.items()}), tag, ASKED)


def refused(root: Path, tag: str, **files: str) -> dict[str, Finding]:
    """What is wrong with the files, by rule; at least one thing."""
    try:
        loaded(root, tag, **files)
    except Refused as refused:
        return {f.rule: f for f in refused.findings}
    raise AssertionError("nothing was found wrong")


def french(phrases: str, more: str = "") -> str:
    return f"language: fr\nname: français\n{more}phrases:\n{phrases}"
