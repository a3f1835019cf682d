"""Moments and lengths of films as text: for readers, as authors type them, and for addresses."""

from __future__ import annotations

from decimal import Decimal

from reportgen.wording.language import spoken

_BESIDE = "\u00a0"


def spelled_out(seconds: Decimal) -> str:
    """`4 min 20 s`, `1 h 2 min 3 s`, `0 s` (symbols of ISO 80000-3)."""
    pieces = _pieces(seconds)
    return " ".join(f"{n}{_BESIDE}{symbol}" for n, symbol in zip(pieces, ("h", "min", "s"), strict=True) if n) or (
        f"0{_BESIDE}s"
    )


def as_typed(seconds: Decimal) -> str:
    """`4m20s`, as an author writes it."""
    hours, minutes, rest = _pieces(seconds, ".")
    return "".join(f"{n}{letter}" for n, letter in ((hours, "h"), (minutes, "m"), (rest, "s")) if n) or "0s"


def in_seconds(seconds: Decimal) -> str:
    """`260` or `260.5`, for a media fragment (Media Fragments URI 1.0, 4.2.1: npt-sec)."""
    return _plain(seconds)


def whole_seconds(seconds: Decimal) -> str:
    """`260`: the second the moment lies in, for hosts that take no part of one."""
    return str(int(seconds))


def _pieces(seconds: Decimal, sign: str = "") -> tuple[str, str, str]:
    whole, minutes = divmod(seconds, 3600)[0], divmod(seconds, 3600)[1] // 60
    rest = _plain(seconds % 60).replace(".", sign or spoken().decimal_sign)
    return str(int(whole)) if whole else "", str(int(minutes)) if minutes else "", "" if rest == "0" else rest


def _plain(value: Decimal) -> str:
    text = str(value)
    return (text.rstrip("0").rstrip(".") if "." in text else text) or "0"
