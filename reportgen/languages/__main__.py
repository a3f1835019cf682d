"""For translators: `python -m reportgen.languages nl` prints what a language still lacks, ready to be filled in.

A second word is the workspace whose `content/languages/` counts as well (by default the folder it is run in).
"""

from __future__ import annotations

import contextlib
import re
import sys
from collections.abc import Iterator
from pathlib import Path

from reportgen.campaign.written.publication import TAG
from reportgen.finding import Place, Refused
from reportgen.languages import load_language
from reportgen.languages.by_cldr import known
from reportgen.sources import Workspace
from reportgen.wording.language import ENGLISH
from reportgen.wording.phrase import CATEGORIES


def lacking(tag: str, workspace: Workspace | None = None) -> Iterator[str]:
    """Lines of YAML, one phrase after another: the key with the English words, and where a number decides the forms
    that the language needs."""
    language, _ = load_language(workspace, tag, Place("content/publication.yaml"))
    of_cldr = known(tag)
    forms = [c for c in CATEGORIES if of_cldr is not None and c in {*of_cldr.categories, "other"}]
    for key in language.lacking if language.digest else ENGLISH.phrases:
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
    """Print what is lacking; 1 where the language can't be loaded, or none is named."""
    if not arguments or not re.fullmatch(TAG, arguments[0]):
        print(__doc__)
        return 1
    try:
        lines = list(lacking(arguments[0], Workspace(Path(*arguments[1:2]), ())))
    except Refused as refused:
        for f in refused.findings:
            print(f"{f.place}: {f.says} {f.do}", file=sys.stderr)
        return 1
    with contextlib.suppress(BrokenPipeError):
        print("\n".join(lines))
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
