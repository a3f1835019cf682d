"""JSON-LD as it stands in a page."""

from __future__ import annotations

import json
from typing import Any

# What could end a data block or begin a comment in it is written as JSON escapes it (HTML Living Standard, 4.12.1.3).
_ESCAPED = {ord(sign): f"\\u{code}" for sign, code in (("<", "003c"), (">", "003e"), ("&", "0026"))}
_ESCAPED |= {0x2028: "\\u2028", 0x2029: "\\u2029"}


def as_text(told: dict[str, Any]) -> str:
    """The block's text, safe between script tags."""
    return json.dumps(told, ensure_ascii=False, separators=(",", ":")).translate(_ESCAPED)


def filled(row: dict[str, Any]) -> dict[str, Any]:
    """Without what says nothing; zero and no say something."""
    return {key: value for key, value in row.items() if value is not None and value not in ("", [], {})}
