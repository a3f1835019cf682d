"""A citation as CSL-JSON, the input of citation processors (Citation Style Language 1.0.2)."""

from __future__ import annotations

import json
from typing import Any

from reportgen.opendata.citing.citation import Citation


def as_csl(cited: Citation) -> bytes:
    """A list of one item."""
    item: dict[str, Any] = {
        "id": cited.key,
        "type": "dataset",
        "title": cited.title,
        "author": [{"literal": cited.author}],
        "issued": {"date-parts": [list(cited.date)]} if cited.date else None,
        "publisher": cited.publisher,
        "version": cited.issue,
        "language": cited.language,
        "DOI": cited.doi,
        "URL": cited.address,
    }
    kept = {key: value for key, value in item.items() if value}
    return (json.dumps([kept], ensure_ascii=False, indent=1) + "\n").encode()
