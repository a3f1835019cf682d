"""A citation as CITATION.cff (Citation File Format 1.2.0)."""

from __future__ import annotations

from typing import Any

from reportgen.opendata.citing.citation import Citation
from reportgen.wording.language import say


def as_cff(cited: Citation) -> bytes:
    """The file. The author stands as an entity: a publication names who is behind it in its own words."""
    import yaml

    licence = cited.licence
    told: dict[str, Any] = {
        "cff-version": "1.2.0",
        "message": say("opendata.cite.please"),
        "type": "dataset",
        "title": cited.title,
        "abstract": cited.about,
        "authors": [{"name": cited.author}],
        "version": cited.issue,
        "date-released": cited.released,
        "doi": cited.doi,
        "url": cited.address,
        "license": licence.id if licence else "",
        "license-url": licence.address if licence and not licence.id else "",
    }
    kept = {key: value for key, value in told.items() if value}
    text = yaml.safe_dump(kept, sort_keys=False, allow_unicode=True, width=100, default_flow_style=False)
    return str(text).encode()
