"""Encodings of text tables by the names authors write (IANA, "Character Sets"), and by Python's."""

from __future__ import annotations

from collections.abc import Mapping

ENCODINGS: Mapping[str, str] = {
    "utf-8": "utf-8-sig",
    "utf-16": "utf-16",
    "utf-16-le": "utf-16-le",
    "utf-16-be": "utf-16-be",
    **{f"windows-{n}": f"cp{n}" for n in range(1250, 1259)},
    **{f"iso-8859-{n}": f"iso8859-{n}" for n in (1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 13, 14, 15, 16)},
    "cp437": "cp437",
    "cp850": "cp850",
    "macintosh": "mac-roman",
}
