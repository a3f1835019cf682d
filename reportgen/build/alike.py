"""One text for one value, whatever the run: what a key of kept things is made of."""

from __future__ import annotations

from collections.abc import Mapping, Set
from dataclasses import fields, is_dataclass
from typing import Any

from reportgen.finding import Place


def alike(value: Any) -> str:
    """Equal values give equal text and different ones different text, but for places: a line number changes nothing.

    Takes what the frozen records between stages are made of; sets come sorted, mappings in their order.
    """
    if isinstance(value, Place):
        return "@"
    if is_dataclass(value) and not isinstance(value, type):
        inner = ",".join(f"{field.name}={alike(getattr(value, field.name))}" for field in fields(value))
        return f"{type(value).__name__}({inner})"
    if isinstance(value, Mapping):
        return "{" + ",".join(f"{alike(key)}:{alike(item)}" for key, item in value.items()) + "}"
    if isinstance(value, Set):
        return "<" + ",".join(sorted(map(alike, value))) + ">"
    if isinstance(value, tuple | list):
        return "[" + ",".join(map(alike, value)) + "]"
    return repr(value)
