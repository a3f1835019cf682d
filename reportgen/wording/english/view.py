"""English, part of its table: what the local server says to the author under a page."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

VIEW: Mapping[str, str | Forms] = {
    "on.view.findings": "Findings about the files",
    "on.view.why": "Why: {why}",
    "on.view.do": "Do: {do}",
    "on.view.nearest": "The nearest page that stands",
}
