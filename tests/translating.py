"""For translators: what a language still lacks, ready to be filled in.

    python -m tests.translating de            what the program's own file lacks
    python -m tests.translating de WORKSPACE  what it lacks with the workspace's content/languages/de.yaml

Prints YAML: each key with the English words and, where a number decides, the forms that the language needs.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path

from reportgen.finding import Place, Refused
from reportgen.languages import load_language
from reportgen.languages.by_cldr import known
from reportgen.sources import Workspace
from reportgen.wording.language import ENGLISH
from reportgen.wording.phrase import CATEGORIES


def lacking(tag: str, workspace: Workspace | None = None) -> Iterator[str]:
    """Lines of YAML, one phrase after another, in the order of the English tables."""
    language, _ = load_language(workspace, tag, Place("content/publication.yaml"))
    of_cldr = known(tag)
    forms = [c for c in CATEGORIES if of_cldr is not None and c in {*of_cldr.categories, "other"}]
    for key in language.lacking if language is not ENGLISH else ENGLISH.phrases:
        entry = ENGLISH.phrases[key]
        if isinstance(entry, str):
            yield f"  {key}: {_quoted(entry)}"
            continue
        yield f"  {key}:"
        for form in forms or ["other"]:
            yield f"    {form}: {_quoted(entry.get(form, entry['other']))}"


def _quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def main(arguments: list[str]) -> int:
    """Print what is lacking; 1 where the language can't be loaded."""
    if not arguments:
        print(__doc__)
        return 1
    workspace = Workspace(Path(arguments[1]), ()) if len(arguments) > 1 else None
    try:
        lines = list(lacking(arguments[0], workspace))
    except Refused as refused:
        for f in refused.findings:
            print(f"{f.place}: {f.says} {f.do}", file=sys.stderr)
        return 1
    print("\n".join(lines))
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
