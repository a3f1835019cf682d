"""English, part of its table: what templates say on the data page and on pages across campaigns."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

TEMPLATES_WIDE: Mapping[str, str | Forms] = {
    "on.listing.file": "the file",
    "on.listing.says.text": "Each line as it stands in {file}. SHA-256 {digest}",
    "on.listing.says.spreadsheet": "Each cell as it was read from {file}. SHA-256 {digest}",
    "on.listing.says.parquet": "Each row as it was read from {file}. SHA-256 {digest}",
    "on.text.chapters": "Chapters",
    "on.text.turn": "Before and after",
    "on.instruments.lead": (
        "What took the readings, and how well each of them can tell. ± is how far a reading may be off, "
        "either way, as the maker states it; % is of the reading, a digit is one step of the display."
    ),
    "on.instruments.line": "Reads in steps of {resolution}; accuracy {accuracy}.",
    "on.methods.lead": (
        "How things are tested here. Each version keeps its page, so that an old comparison still shows how "
        "it was done."
    ),
    "on.methods.versions": {"one": "Version {versions}", "other": "Version {versions}"},
    "on.instrument.can-tell": "What it can tell",
    "on.instrument.can-tell-in": "What it can tell, in “{campaign}”",
    "on.instrument.model": "Model",
    "on.instrument.serial": "Serial number",
    "on.instrument.resolution": "Resolution",
    "on.instrument.range": "Range",
    "on.instrument.accuracy": "Accuracy",
    "on.instrument.by-hand": "By hand",
    "on.instrument.in-differences": "In differences",
    "on.instrument.calibrated": "Calibrated",
    "on.instrument.source": "Source",
    "on.archive.of": "{contenders}. {date}",
    "on.shared-method.version": "Version {version}.",
    "on.shared-method.version-of": "Version {version}. All versions: {all}.",
    "on.shared-method.changed": "What this version changed: {changed}",
    "on.shared-method.caution": "Caution",
    "on.shared-method.steps": "Steps",
    "on.shared-method.laid-down": "Laid down before the test",
    "on.shared-method.order": "Order of runs",
    "on.shared-method.scatter": "Scatter",
    "on.shared-method.also": "Also",
    "on.shared-method.cannot-tell": "What this can’t tell you",
    "on.uses.title": "Where it was used",
    "on.calibration.title": "Points of its calibration",
    "on.calibration.read": "It read",
    "on.calibration.added": "Added",
}
