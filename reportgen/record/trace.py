"""From a result back to the cells it came from."""

from __future__ import annotations

import posixpath
from collections.abc import Iterable, Mapping
from typing import Any

from reportgen.finding import Place
from reportgen.intake.reading import Reading, ReadingKey


def trace(keys: Iterable[ReadingKey], readings: Mapping[ReadingKey, Reading], folder: str) -> list[dict[str, Any]]:
    """The places of readings, merged: a file each, with its lines and its cells (line, column) in order, each once.

    Files are named from the campaign's folder, as the author names them.
    """
    places = sorted({readings[k].at for k in keys if k in readings})
    by_file: dict[str, list[Place]] = {}
    for place in places:
        by_file.setdefault(posixpath.relpath(place.file, folder or "."), []).append(place)
    return [
        {
            "file": file,
            "lines": sorted({p.line for p in by_file[file]}),
            "cells": [[p.line, p.column] for p in by_file[file] if p.column],
        }
        for file in sorted(by_file)
    ]
