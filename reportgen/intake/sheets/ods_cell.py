"""One cell of an ODS sheet: its saved value, shown as its number format shows it (OpenDocument 1.3, part 3, 19.383 to
19.391)."""

from __future__ import annotations

import re
from datetime import date, datetime, timedelta
from decimal import Decimal
from xml.etree.ElementTree import Element

from reportgen.intake.sheets.number_format import NumberFormat, held, shown
from reportgen.intake.sheets.ods_styles import TABLE, Shown
from reportgen.intake.sheets.sheet import Cell
from reportgen.intake.sheets.times import day_of, elapsed, time_of_day

OFFICE = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
TEXT = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"
_CALC = "{urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0}"
_ERROR = re.compile(r"Err:[0-9]{3}|#(?:DIV/0!|N/A|NAME\?|NULL!|NUM!|REF!|VALUE!)")
_TIME = re.compile(r"(?P<sign>-?)PT(?:(?P<h>\d+)H)?(?:(?P<m>\d+)M)?(?:(?P<s>\d+(?:[.,]\d+)?)S)?")
_DAY = timedelta(days=1)


def cell_of(element: Element, form: Shown) -> Cell | None:
    """The cell, None for an empty one. Raises ValueError for a value that isn't what its type says."""
    kind, text = element.get(OFFICE + "value-type", ""), _text(element)
    formula = element.get(TABLE + "formula") is not None
    if element.get(_CALC + "value-type") == "error" or (formula and _ERROR.fullmatch(text)):
        return Cell(text or "an error value", "error")
    match kind:
        case "float" | "percentage" | "currency":
            return _number(float(element.get(OFFICE + "value", "")), kind, form)
        case "date":
            return day_of(_moment(element.get(OFFICE + "date-value", "")))
        case "time":
            return _time(element.get(OFFICE + "time-value", ""), form)
        case "boolean":
            return Cell("yes" if element.get(OFFICE + "boolean-value") == "true" else "no", "truth value")
    said = element.get(OFFICE + "string-value", text).strip()
    if formula and not kind and not said:
        return Cell("", "not worked out")
    return Cell(said) if said else None


def _number(value: float, kind: str, form: Shown) -> Cell:
    number: Decimal = held(value)
    percent = kind == "percentage"
    behind = "%" if percent else form.behind
    text, seen = shown(number, NumberFormat(form.decimals, form.decimals, 100 if percent else 1, "", behind))
    if form.decimals is None:
        return Cell(f"{text} {behind}".strip(), "free number")
    return Cell(text, "number" if text == seen else "free number", seen if seen != text else "")


def _moment(text: str) -> date | datetime:
    return datetime.fromisoformat(text) if "T" in text else date.fromisoformat(text)


def _time(text: str, form: Shown) -> Cell:
    found = _TIME.fullmatch(text)
    if found is None:
        raise ValueError(text)
    seconds = float((found["s"] or "0").replace(",", "."))
    stretch = timedelta(hours=int(found["h"] or 0), minutes=int(found["m"] or 0), seconds=seconds)
    if found["sign"] or stretch >= _DAY:
        return elapsed(-stretch if found["sign"] else stretch, form.time)
    return time_of_day((datetime.min + stretch).time(), form.time)


def _text(element: Element) -> str:
    """The text of its paragraphs, a line each; a note beside the cell is no part of it."""
    return "\n".join(_inner(p) for p in element.findall(TEXT + "p")).strip()


def _inner(element: Element) -> str:
    """The text of an element and those in it: `text:s` are spaces, `text:tab` a tab, `text:line-break` a line break."""
    found = [element.text or ""]
    for inner in element:
        if inner.tag == TEXT + "s":
            count = inner.get(TEXT + "c", "1")
            found.append(" " * (min(int(count), 1000) if count.isdecimal() and len(count) < 5 else 1))
        elif inner.tag in (TEXT + "tab", TEXT + "line-break"):
            found.append("\t" if inner.tag == TEXT + "tab" else "\n")
        else:
            found.append(_inner(inner))
        found.append(inner.tail or "")
    return "".join(found)
