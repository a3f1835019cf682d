"""One channel of a logger file brought into a table of DuckDB: seconds, value, side; everything else is told.

A table has a row a sample: `k` its number, `n` its row in the file, both from 0, `t` seconds, `v` the value, `side` 1
where it is over `v`, −1 where under. `raw` holds the text of what was no plain number, `tick` of a time that was none.
"""

from __future__ import annotations

from typing import Any

from reportgen.finding import Finding, Place, Refused, refuse
from reportgen.intake.logger.asked import Ask
from reportgen.intake.logger.cells import Sample, sample_of, short
from reportgen.intake.logger.clock import NUMBER, Clock, NoTimes, clock_of
from reportgen.intake.logger.doubts import TOLD, LineOf, check_rows, check_signs, check_times
from reportgen.intake.logger.layout import Layout
from reportgen.intake.notations.notation import MOST_POWERS

DIFFERENT = 2000  # texts that are no plain numbers, in one channel
_LIKE_THOUSANDS = "[+-]?[1-9][0-9]{0,2},[0-9]{3}"


def load(db: Any, csv: str, ask: Ask, layout: Layout, index: int, table: str, line: LineOf) -> Clock | None:
    """Makes `table`; how its times are written, None where a rate stands for them. `csv` is the file as DuckDB reads
    it, `index` the channel's column. Raises `Refused` with what can't be used, the first few of each sort."""
    clock, seconds = _seconds(ask, layout)
    db.execute(_query(csv, ask, layout, index, seconds, table))
    check_rows(db, ask, layout)
    check_times(db, ask, table, line)
    check_signs(db, ask, table, line)
    _settle_cells(db, ask, layout.separator, table, line)
    return clock


def _seconds(ask: Ask, layout: Layout) -> tuple[Clock | None, str]:
    """How times are written, and the query for seconds."""
    if ask.rate:
        return None, f"(row_number() OVER () - 1) / {ask.rate!r}"
    at = layout.find(ask.time) if ask.time else 0
    if at is None or at >= layout.width:
        raise refuse(
            "missing-column",
            Place(ask.file, layout.heading_line),
            f"There is no one column of times “{ask.time}” in this logger file.",
            "Without times nothing can be said of a trace.",
            "Name it as the file has it, or give `rate: 10 Hz` for a file without times.",
        )
    try:
        clock = clock_of(layout.cells(at), ask.time_unit or layout.units[at])
    except NoTimes as wrong:
        raise refuse("no-times", Place(ask.file, layout.first, at + 1), wrong.says, wrong.why, wrong.do) from None
    return clock, clock.sql.replace("{x}", f"trim(c{at})")


def _query(csv: str, ask: Ask, layout: Layout, index: int, seconds: str, table: str) -> str:
    x = f"trim(c{index})"
    decimals = "'[.,]'" if layout.separator != "," else "'[.]'"
    plain = NUMBER.replace("[.,]", decimals.strip("'"))
    value = f"CASE WHEN regexp_full_match({x}, '{plain}') THEN TRY_CAST(replace({x}, ',', '.') AS DOUBLE) END"
    only = " AND ".join(f"coalesce(trim(c{layout.find(h)}), '') = '{_quoted(text)}'" for h, text in ask.only)
    time = "NULL" if ask.rate else f"trim(c{layout.find(ask.time) if ask.time else 0})"
    sign = (
        f"CASE WHEN regexp_full_match({x}, '{_LIKE_THOUSANDS}') THEN 3 WHEN contains({x}, ',') THEN 2 "
        f"WHEN contains({x}, '.') THEN 1 ELSE 0 END"
    )
    return (
        f"CREATE OR REPLACE TABLE {table} AS SELECT row_number() OVER () - 1 AS k, n, t, v, "
        f"CAST(0 AS TINYINT) AS side, CASE WHEN v IS NULL OR NOT abs(v) < 1e{MOST_POWERS} THEN x END AS raw, "
        f"CASE WHEN t IS NULL THEN tick END AS tick, "
        f"CAST(CASE WHEN v IS NULL THEN 0 ELSE sign END AS TINYINT) AS sign FROM "
        f"(SELECT n, x, v, sign, {'t' if not ask.rate else seconds} AS t, tick FROM "
        f"(SELECT *, {x} AS x, {value} AS v, {sign} AS sign, {time} AS tick"
        f"{'' if ask.rate else f', {seconds} AS t'} FROM "
        f"(SELECT *, row_number() OVER () - 1 AS n FROM {csv})"
        f"{f' WHERE {only}' if only else ''})) WHERE x IS NOT NULL AND x <> ''"
    )


def _settle_cells(db: Any, ask: Ask, separator: str, table: str, line: LineOf) -> None:
    """What is no plain number: limits are written beside it, gaps taken out, the rest refused."""
    texts = db.execute(
        f"SELECT raw, min(n) AS first FROM {table} WHERE raw IS NOT NULL "
        f"GROUP BY raw ORDER BY first LIMIT {DIFFERENT + 1}"
    ).fetchall()
    if len(texts) > DIFFERENT:
        raise refuse(
            "text-in-a-channel",
            Place(ask.file, line(int(texts[0][1]))),
            f"{ask.heading}: “{short(texts[0][0])}” and more than {DIFFERENT} others are no plain numbers.",
            "Only numbers can be computed with.",
            "Export the channel without units in its cells, or name another one.",
        )
    wrong: list[Finding] = []
    for text, n in texts:
        found = sample_of(text, ask.unit, Place(ask.file, line(int(n))), ask.heading, separator)
        if isinstance(found, Finding):
            wrong.append(found)
            if len(wrong) == TOLD:
                break
        elif isinstance(found, Sample):
            value = float("nan") if found.value is None else found.value
            db.execute(f"UPDATE {table} SET v = ?, side = ? WHERE raw = ?", [value, found.side, text])
        else:
            db.execute(f"DELETE FROM {table} WHERE raw = ?", [text])
    if wrong:
        raise Refused(wrong)
    if texts:  # rows taken out leave holes in k
        db.execute(
            f"CREATE OR REPLACE TABLE {table} AS SELECT * REPLACE (row_number() OVER () - 1 AS k) "
            f"FROM (SELECT * FROM {table} ORDER BY k)"
        )


def _quoted(text: str) -> str:
    return text.replace("'", "''")
