"""What the cells of a spreadsheet or a Parquet file hold, against what a reading is: a clock time is none."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from reportgen.campaign.declared import Test
from reportgen.finding import Finding
from reportgen.intake.layouts.seen import Seen
from reportgen.intake.notations.cell import UnreadableError
from reportgen.intake.reading import Reading
from reportgen.intake.sheets.sheet import Sort
from reportgen.intake.table import Table


def fitting(table: Table, seen: Sequence[Seen], test: Test) -> tuple[tuple[Seen, ...], tuple[Finding, ...]]:
    """The cells whose sort a reading can be, and an error for each of the others."""
    if not table.sorts:
        return tuple(seen), ()
    kinds = {name: q.kind for q in reversed(test.quantities) if q.kind for name in q.reads}
    fit: list[Seen] = []
    findings: list[Finding] = []
    for cell in seen:
        sort = table.sorts.get((cell.at.line, cell.at.column), "text")
        if sort in ("error", "not worked out"):
            continue  # told where the sheet was read
        wrong = _unfit(sort, cell.text, kinds.get(cell.column.name, ""))
        if wrong is None:
            fit.append(cell)
        else:
            says = f"{cell.column.heading}: {wrong.says}"
            findings.append(Finding("error", wrong.rule, cell.at, says, wrong.why, wrong.do))
    return tuple(fit), tuple(findings)


def as_held(table: Table, readings: Iterable[Reading]) -> tuple[Reading, ...]:
    """The readings without decimals where nobody wrote any: no step is seen in them (JUDGING section 3)."""
    if not table.sorts:
        return tuple(readings)
    return tuple(
        replace(r, decimals=None) if table.sorts.get((r.at.line, r.at.column)) == "free number" else r for r in readings
    )


def _unfit(sort: Sort, text: str, kind: str) -> UnreadableError | None:
    match sort:
        case "time of day":
            return UnreadableError(
                "time-of-day",
                f"This cell holds a time of day, {text}.",
                "A spreadsheet makes hours and minutes of 4:20, even where minutes and seconds were meant.",
                "Write the seconds as a plain number, or all three parts, such as 0:04:20.",
            )
        case "date":
            return UnreadableError(
                "date-for-reading",
                f"This cell holds a date, {text}.",
                "A spreadsheet makes dates of what looks like one, such as 3-5 or 1/2.",
                "Format the cell as text, and type again what was read.",
            )
        case "truth value" if kind != "yes/no":
            return UnreadableError(
                "truth-value",
                f"This cell holds a truth value ({'true' if text == 'yes' else 'false'}).",
                "It is neither a number nor a word that was read.",
                "Write what was read; a truth value is yes or no for the kind yes/no alone.",
            )
    return None
