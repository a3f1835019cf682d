"""contenders.csv: contenders as a grid, a row each."""

from __future__ import annotations

import csv
import io
from typing import Any

from reportgen.addresses import as_id
from reportgen.campaign.did_you_mean import did_you_mean
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.look_up import error
from reportgen.campaign.scalar import LONGEST_NAME
from reportgen.campaign.shape import Listed, NotThat, Scalar, shape_of
from reportgen.campaign.written.contender import WrittenContender, WrittenPurchase
from reportgen.finding import Finding, Place

_PURCHASE = {"bought where": "where", "bought date": "date"}
_FACT = "fact "
_BOX = "in the box"


def read_grid(text: str, file: str, told: list[Finding]) -> tuple[Entry[WrittenContender], ...]:
    """The contenders of a grid. Its headings are the keys of a contender (`bought where`, `bought date`), and
    `fact …` for further lines of the spec sheet; several texts in one cell are set apart by semicolons, and what was in
    the box is written `pouch; igniter: missing`.
    """
    try:
        return _read_rows(text, file, told)
    except csv.Error as broken:
        says = f"this can't be read as a table ({broken})"
        error(told, "broken-table", Place(file), says, do="Write it as CSV, cells with commas in double quotes.")
        return ()


def _read_rows(text: str, file: str, told: list[Finding]) -> tuple[Entry[WrittenContender], ...]:
    rows = csv.reader(io.StringIO(text, newline=""), delimiter="\t" if "\t" in text.partition("\n")[0] else ",")
    headings = [h.strip() for h in next(rows, [])]
    keys = {k.name: k.shape for k in shape_of(WrittenContender).keys}
    known = ["id", *_PURCHASE, _BOX, *(n for n, s in keys.items() if isinstance(s, Scalar) or _texts(s))]
    if not {"id", "title"} <= set(headings):
        error(told, "missing-column", Place(file, 1), "a grid of contenders needs the columns id and title",
              do=f"Its headings may be: {', '.join(known)}.")  # fmt: skip
        return ()
    for heading in headings:
        if heading not in known and not heading.startswith(_FACT):
            do = f"{did_you_mean(heading, known)} For a line of the spec sheet write “{_FACT}{heading}”."
            error(told, "unknown-column", Place(file, 1), f"“{heading}” is no column of a grid of contenders", do=do)
    found: list[Entry[WrittenContender]] = []
    for row in rows:
        place = Place(file, rows.line_num)
        if not any(cell.strip() for cell in row):
            continue
        if len(row) > len(headings):
            error(told, "row-too-long", place, f"this row has {len(row)} cells under {len(headings)} headings",
                  do="Put a text that holds a comma in double quotes.")  # fmt: skip
        cells = {h: c.strip() for h, c in zip(headings, row, strict=False) if c.strip()}
        id = cells.pop("id", "")
        if not as_id(id):
            error(told, "missing-id", place, "this row has no id", do="Write a short plain name in the column id.")
            continue
        if len(as_id(id)) > LONGEST_NAME:
            says = f"the id of this row has more than {LONGEST_NAME} letters"
            error(told, "name-too-long", place, says, do="Write a short plain name in the column id.")
        found.append(Entry(Given(id, id, place), _contender(cells, keys, place, told), place))
    return tuple(found)


def _contender(cells: dict[str, str], keys: dict[str, Any], place: Place, told: list[Finding]) -> WrittenContender:
    fields: dict[str, Any] = {"at": place, "title": Given("", "", place)}
    purchase: dict[str, Any] = {"at": place}
    facts = []
    purchase_keys = {k.name: k.shape for k in shape_of(WrittenPurchase).keys}
    for heading, text in cells.items():
        if heading in _PURCHASE:
            purchase[_PURCHASE[heading]] = _read(purchase_keys[_PURCHASE[heading]], text, heading, place, told)
        elif heading.startswith(_FACT):
            label = heading.removeprefix(_FACT)
            facts.append(Entry(Given(label, label, place), Given(text, text, place), place))
        elif heading == _BOX:
            fields["in_the_box"] = tuple(_item(t.strip(), place) for t in text.split(";") if t.strip())
        elif heading in keys:
            fields[heading.replace(" ", "_")] = _read(keys[heading], text, heading, place, told)
    if len(purchase) > 1:
        fields["bought"] = WrittenPurchase(**purchase)
    if not fields["title"].value:
        error(told, "missing-key", place, "this contender has no title", do="Fill in the column title.")
    return WrittenContender(**fields, facts=tuple(facts))


def _read(shape: Any, text: str, heading: str, place: Place, told: list[Finding]) -> Any:
    if isinstance(shape, Listed):
        return tuple(_read(shape.item, t.strip(), heading, place, told) for t in text.split(";") if t.strip())
    try:
        return Given(shape.parse(text), text, place)
    except NotThat as not_that:
        do = not_that.do or f"Write it like this: {' · '.join(shape.examples)}"
        error(told, "wrong-value", place, f"column {heading}: {not_that.says}", do=do)
        return Given(shape.filler, text, place)


def _item(text: str, place: Place) -> Given[str] | Entry[Given[str]]:
    """An item of the box: `pouch`, or `igniter: missing`."""
    name, colon, said = (part.strip() for part in text.partition(":"))
    if not colon or not said:
        return Given(name, text, place)
    return Entry(Given(name, name, place), Given(said, said, place), place)


def _texts(shape: object) -> bool:
    return isinstance(shape, Listed) and isinstance(shape.item, Scalar)
