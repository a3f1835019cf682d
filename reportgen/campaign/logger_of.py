"""Logger files as they are declared: a name with braces, one file, or a file a pass for each contender."""

from __future__ import annotations

import re
from decimal import Decimal

from reportgen.campaign.declared import Amount, Logger, Source
from reportgen.campaign.did_you_mean import did_you_mean
from reportgen.campaign.given import Given
from reportgen.campaign.look_up import error
from reportgen.campaign.written.measure import WrittenSource
from reportgen.finding import Finding, Place

IN_NAMES = ("contender", "pass", "part", "specimen", "session", "round")
RATES = ("Hz", "kHz", "1/s", "/s", "1/min", "/min", "1/h", "/h")
SLOWEST, FASTEST = Decimal("1e-9"), Decimal("1e12")  # in any of these units: beyond, a power of ten is wrong
TIMES = ("s", "ms", "min", "h", "d")
_NOT_BESIDE = ("file", "table", "sheet", "what", "value")


def logger_of(written: WrittenSource, roles: dict[str, str], told: list[Finding]) -> Source:
    """A source that is a logger's. Its times aren't times of day, so `time` is no role of a table."""
    assert written.logger is not None
    beside = next((n for n in _NOT_BESIDE if getattr(written, n) is not None), "")
    if beside:
        says = f"a logger's files have no `{beside}:` beside them"
        error(told, "readings-without-place", written.at, says, do=f"Take out `logger:` or `{beside}:`.")
    heading, unit = _time(written)
    if written.rate is not None and written.time is not None:
        says = "a logger has a column of times or a rate, not both"
        why = "Where the two differ, one of them is wrong."
        error(told, "rate-and-time", written.rate.at, says, why, "Take one of them out.")
    logger = Logger(heading, unit, _rate(written.rate, told), _columns(written))
    place = written.at
    file, files = "", {}
    if isinstance(written.logger, Given):
        file, place = written.logger.value, written.logger.at
        _check_braces(file, place, told)
    else:
        files = {entry.name.value: tuple(f.value for f in entry.value) for entry in written.logger}
    roles = {role: heading for role, heading in roles.items() if role != "time"}
    logger = Logger(logger.time, logger.unit, logger.rate, logger.columns, files)
    encoding = written.encoding.value if written.encoding else ""
    return Source(file=file, roles=roles, encoding=encoding, logger=logger, place=place)


def named_in(written: WrittenSource, told: list[Finding]) -> Logger | None:
    """How logger's files that a table names are read, where its source says so: `time: Elapsed, s` (a time of day has
    no unit) or `rate: 10 Hz`."""
    heading, unit = _time(written)
    if written.rate is None:
        return Logger(heading, unit, None) if unit in TIMES else None
    return Logger("", "", _rate(written.rate, told))


def _time(written: WrittenSource) -> tuple[str, str]:
    """`Elapsed, s` → heading and unit."""
    if written.time is None:
        return "", ""
    heading, comma, unit = written.time.value.rpartition(",")
    return (heading.strip(), unit.strip()) if comma else (written.time.value, "")


def _rate(rate: Given[Amount] | None, told: list[Finding]) -> Amount | None:
    if rate is None:
        return None
    if rate.value.unit not in RATES or not SLOWEST <= rate.value.value <= FASTEST:
        says = f"“{rate.text}” is no rate of samples"
        error(told, "no-rate", rate.at, says, do="Write how many come in a second, minute or hour: `rate: 10 Hz`.")
        return None
    return rate.value


def _columns(written: WrittenSource) -> tuple[str, ...]:
    """Names of the channels declared with these files."""
    from reportgen.addresses import in_formula

    return tuple(in_formula((c if isinstance(c, Given) else c.name).value) for c in written.columns or ())


def _check_braces(file: str, at: Place, told: list[Finding]) -> None:
    if re.search(r"\{[^{}]*(?:\{|$)", file) or re.search(r"(?:^|\})[^{}]*\}", file):
        says = "a brace in this file's name never opens or never closes"
        error(told, "unknown-brace", at, says, do="Write the names in pairs of braces: raw/run-{contender}-{pass}.csv")
        return
    for name in re.findall(r"\{([^{}]*)\}", file):
        if name not in IN_NAMES:
            known = ", ".join(IN_NAMES)
            do = did_you_mean(name, IN_NAMES) or f"In braces stand: {known}."
            error(told, "unknown-brace", at, f"“{{{name}}}” stands for nothing in a file's name", do=do)
