"""From what was made of every campaign to one site: pages of campaigns, pages across them, style sheet, files."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from reportgen.addresses import results_file


def finish(workspace: Any, publication: Any, shown: Sequence[Mapping[str, Any]], out: Path) -> int:
    """Put the whole site at `out` in one exchange; the number of its pages."""
    from reportgen.site.write import exchange

    outputs: dict[str, bytes] = {}
    pages = 0
    for made in shown:
        for page in made["pages"]:
            outputs[page.address] = page.html.encode()
            pages += 1
        outputs[results_file(made["declared"].campaign.id)] = made["record"].encode()
    exchange(out, outputs)
    return pages
