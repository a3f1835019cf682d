"""What stands on printed sheets only."""

from __future__ import annotations

from collections.abc import Mapping

PAPER: Mapping[str, str] = {
    "page.paper.at": "{address}, issue {issue}",
    "page.paper.issue": "Issue {issue}",
    "on.workings.fold": "Workings stay folded, on paper too, unless you open them.",
    "on.workings.unfold": "Unfold them all, to read or to print",
}
