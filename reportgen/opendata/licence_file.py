"""licence.txt: what others may do with the data, beside the data."""

from __future__ import annotations

from reportgen.opendata.citing.citation import Citation, as_line
from reportgen.wording.language import say


def as_licence(cited: Citation) -> bytes:
    """The licence by the name its author gave it, where its text stands, and how to cite."""
    licence = cited.licence
    if licence is None:
        lines = [say("opendata.licence.none", author=cited.author)]
    else:
        lines = [say("opendata.licence", licence=licence.said)]
        lines += [say("opendata.licence.at", address=licence.address)] if licence.address else []
    return "\n".join([*lines, "", say("opendata.cite.please"), as_line(cited), ""]).encode()
