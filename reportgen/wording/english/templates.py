"""English, part of its table: what the templates of themes say."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

TEMPLATES: Mapping[str, str | Forms] = {
    "on.skip": "Skip to the text",
}
