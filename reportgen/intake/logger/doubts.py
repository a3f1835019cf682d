"""What in the rows of a logger file is none that a logger writes, found in its table of DuckDB before it is used."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from reportgen.finding import Finding, Place, Refused, refuse
from reportgen.intake.logger.asked import Ask
from reportgen.intake.logger.cells import short
from reportgen.intake.logger.layout import Layout

FURTHEST, NEAREST = 1e12, 1e-15  # s: thirty thousand years; a thousandth of what the fastest samplers need
TOLD = 5  # mistakes of one sort in one file; the rest are like them
LineOf = Callable[[int], int]  # a row of samples, from 0 → its line


def check_rows(db: Any, ask: Ask, layout: Layout) -> None:
    """Rows that don't fit the headings, as DuckDB turned them away."""
    rejected = db.execute(f"SELECT line, csv_line, error_type FROM reject_errors ORDER BY line LIMIT {TOLD}").fetchall()
    if not rejected:
        return
    db.execute("DELETE FROM reject_errors")
    raise Refused(_misfit(ask.file, layout, int(line), str(text or ""), str(sort)) for line, text, sort in rejected)


def check_times(db: Any, ask: Ask, table: str, line: LineOf) -> None:
    """Raises `Refused` for times that are none, or that no clock gives."""
    wrong = db.execute(f"SELECT n, tick FROM {table} WHERE t IS NULL ORDER BY k LIMIT {TOLD}").fetchall()
    if wrong:
        raise Refused(
            Finding(
                "error",
                "no-times",
                Place(ask.file, line(int(n))),
                f"“{short(tick)}” is no time such as those above it." if tick else "This sample has no time.",
                "Where it belongs in the trace can't be known.",
                "Correct it in a copy of the file and say so, or give `rate:` where samples came evenly.",
            )
            for n, tick in wrong
        )
    _check_span(db, ask, table, line)


def _check_span(db: Any, ask: Ask, table: str, line: LineOf) -> None:
    """Times that no clock gives: so far apart, or so near, that a unit must be wrong."""
    far = db.execute(f"SELECT n FROM {table} WHERE NOT abs(t) < {FURTHEST} ORDER BY k LIMIT 1").fetchone()
    (near,) = db.execute(f"SELECT max(t) - min(t) < {NEAREST} * count(*) AND max(t) > min(t) FROM {table}").fetchone()
    if far or near:
        says = "The times in this file lie nearer together than any logger takes samples."
        if far:
            says = "The time of this sample is thousands of years away."
        raise refuse(
            "no-times",
            Place(ask.file, line(int(far[0]) if far else 0)),
            says,
            "A unit of times must be wrong, or a number damaged.",
            "Correct the unit beside `time:`, or the number in a copy of the file, and say so.",
        )


def check_signs(db: Any, ask: Ask, table: str, line: LineOf) -> None:
    """A point and a comma in one channel: one of the two may part thousands."""
    _check_thousands(db, ask, table, line)
    signs = db.execute(
        f"SELECT least(sign, 2) AS s, min(n) FROM {table} WHERE sign > 0 GROUP BY s ORDER BY 2"
    ).fetchall()
    if len(signs) > 1:
        sign = "comma" if signs[1][0] == 2 else "point"
        raise refuse(
            "separator-in-number",
            Place(ask.file, line(int(signs[1][1]))),
            f"{ask.heading}: here a number has a {sign}, while those above have the other sign.",
            "One of the two may part thousands; that is never guessed.",
            "Export the file again with one decimal sign.",
        )


def _check_thousands(db: Any, ask: Ask, table: str, line: LineOf) -> None:
    """Whole numbers below a thousand beside such as 1,204: its comma may be either sign."""
    first, commas, whole, most = db.execute(
        f"SELECT min(n) FILTER (sign = 3), count(*) FILTER (sign = 2), count(*) FILTER (sign = 0 AND v <> 0), "
        f"max(abs(v)) FILTER (sign = 0) FROM {table}"
    ).fetchone()
    if first is not None and not commas and whole and most < 1000:
        raise refuse(
            "separator-in-number",
            Place(ask.file, line(int(first))),
            f"{ask.heading}: the comma here may be a decimal sign or part thousands: every number with one has three "
            "digits behind it, and others have none.",
            "One of the two would make samples a thousand times too small; that is never guessed.",
            "Export the file again with a decimal point, or without a sign between thousands.",
        )


def _misfit(file: str, layout: Layout, line: int, text: str, sort: str) -> Finding:
    if "QUOTE" in sort:
        return Finding(
            "error",
            "quotes",
            Place(file, line),
            "The quotes in this row don't fit.",
            "Where a cell ends can't be known.",
            "Look whether the file was cut off here, and export it again.",
        )
    cells = text.count(layout.separator) + 1
    return Finding(
        "error",
        "ragged-row",
        Place(file, line),
        f"This row has {cells} {'cell' if cells == 1 else 'cells'}, those above have {layout.width}.",
        "From here on every value could stand under the wrong heading.",
        "Look whether the logger stopped here, or wrote a line of its own; take that line out in a copy and say so.",
    )
