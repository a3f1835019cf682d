"""The pages that a long raw file fills, leaf by leaf."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from reportgen.intake.raw.rows import RawSheet, RawView
from reportgen.pages.traces import leaf_of, sheet_anchors
from reportgen.pages.words import words


@dataclass(frozen=True)
class Leaf:
    """Rows of one sheet from `first` on; the first leaf of a file holds the beginning of every sheet.

    `sheet` is the sheet's anchor, "" on the first leaf and where a file has no sheets. `last` is the last row shown.
    """

    sheet: str
    first: int
    last: int

    def shown(self, view: RawView, anchors: Mapping[str, str]) -> Iterator[tuple[RawSheet, int, int]]:
        """The sheets of the file with the rows that stand on this leaf, the last row shown on the leaf before (0 for
        none) and the first on the leaf after (0 for none): what lies between is left out.
        """
        for sheet in view.sheets:
            if self.first > 1 and anchors[sheet.name] != self.sheet:
                continue
            here = tuple(r for r in sheet.rows if leaf_of(view, r.number) == self.first)
            before = max((r.number for r in sheet.rows if r.number < self.first), default=0)
            last = here[-1].number if here else 0
            after = min((r.number for r in sheet.rows if r.number > last), default=0)
            yield replace(sheet, rows=here), before, after


def leaves_of(view: RawView) -> tuple[Leaf, ...]:
    """Every leaf that has rows, in order; a file without rows has one."""
    anchors = sheet_anchors(sheet.name for sheet in view.sheets)
    last: dict[tuple[str, int], int] = {("", 1): 0}
    for sheet in view.sheets:
        for row in sheet.rows:
            first = leaf_of(view, row.number)
            key = (anchors[sheet.name] if first > 1 else "", first)
            last[key] = max(last.get(key, 0), row.number)
    return tuple(Leaf(sheet, first, end) for (sheet, first), end in last.items())


def leaf_words(view: RawView, leaf: Leaf) -> str:
    """What a leaf holds: "lines 501 to 1000"; on a sheet of several with the sheet's name."""
    sort = "line" if view.form == "text" else "row"
    said = words(f"listing.leaf.{sort}", first=str(leaf.first), last=str(leaf.last))
    names = {anchor: name for name, anchor in sheet_anchors(s.name for s in view.sheets).items()}
    if leaf.sheet and len(names) > 1:
        return words("listing.leaf.sheet", sheet=names[leaf.sheet], rows=said)
    return said
