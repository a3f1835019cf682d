"""A reading taken against another contender: `ostler + 72`, `ostler + about 70`, `ostler - some`.

The value is then the difference, and the reading is worked out as the other contender's reading of the same test,
name, part and pass with the difference added.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace

from reportgen.finding import Finding
from reportgen.intake.names import find_contender
from reportgen.intake.notations.cell import Expected, UnreadableError, Written
from reportgen.intake.reading import Limit, Reading, ReadingKey
from reportgen.intake.table import did_you_mean, spelt

NOTHING_THERE = "against-nothing"  # the rule of a difference to a reading that isn't there

_SIGN = re.compile(r"(?<=\S)(?P<before>\s*)(?P<sign>[+−-])\s*(?=\S)")
_NAMED = re.compile(r"(?P<who>[^\W\d].*?)\s+[+−-]\s*(?:about\s|over\s|under\s|some$|[<>]?\s*[0-9.])", re.IGNORECASE)


def read_against(text: str, expected: Expected, difference: Callable[[str], Written]) -> Written | None:
    """The difference and whom it is to, or None where the text is no such notation. Raises `UnreadableError`.

    `difference` reads what stands behind the sign. A sign belongs to the name where the longer text is a name too.
    """
    if not text[:1].isalpha():
        return None
    for who, sign, rest, apart in _splits(text):
        contender = find_contender(who, expected.names)
        if contender is None:
            continue
        if not apart:
            raise UnreadableError(
                "against-unclear",
                f"“{text}” may be a name or a difference.",
                "A name may hold a hyphen or a plus.",
                f"For a reading against {contender} write spaces round the sign: `{who} {sign} {rest}`.",
            )
        found = difference(rest)
        return replace(found if sign == "+" else _turned(found), beside=contender)
    named = _NAMED.match(text)
    if named and expected.names and named["who"].lower().split()[0] not in ("about", "over", "under", "some", "none"):
        near = did_you_mean(named["who"], expected.names)
        raise UnreadableError(
            "unknown-contender",
            f"“{text}” is read against “{named['who']}”, and no contender is called that.",
            f"There are {spelt(sorted({i for ids in expected.names.values() for i in ids}))}.",
            f"Did you mean “{near}”?" if near else "Write the contender's id or title before the sign.",
        )
    return None


def _splits(text: str) -> Iterator[tuple[str, str, str, bool]]:
    """Name, sign, rest, and whether a space parts name and sign; the longest name first."""
    for found in reversed(list(_SIGN.finditer(text))):
        yield text[: found.start()].strip(), found["sign"].replace("−", "-"), text[found.end() :], bool(found["before"])


def _turned(found: Written) -> Written:
    opposite: Mapping[Limit | None, Limit | None] = {"above": "below", "below": "above", None: None}
    value = None if found.value is None else -found.value
    return replace(found, value=value, limit=opposite[found.limit])


def other_of(reading: Reading, readings: Mapping[ReadingKey, Reading]) -> Reading | None:
    """The reading it was taken against: of the same pass where there is one, else the only one of that test, name and
    part; None where there is none, or several and none of the same pass.

    A pass that nobody wrote down, only counted, tells which one is meant where both have as many, in the same order.
    """
    mine = reading.key
    for part in dict.fromkeys((mine.part, "")):
        found = theirs_of(reading, readings, part)
        same = readings.get(replace(mine, contender=reading.beside, part=part))
        if same is not None and (not reading.counted or len(found) in (1, len(_alike(mine, readings)))):
            return same
        if len(found) == 1:
            return found[0]
    return None


def theirs_of(reading: Reading, readings: Mapping[ReadingKey, Reading], part: str) -> Sequence[Reading]:
    """What the other contender has of the same test, name and part."""
    return _alike(replace(reading.key, contender=reading.beside, part=part), readings)


def _alike(key: ReadingKey, readings: Mapping[ReadingKey, Reading]) -> Sequence[Reading]:
    wanted = (key.test, key.contender, key.name, key.part)
    return [r for k, r in readings.items() if (k.test, k.contender, k.name, k.part) == wanted]


def chain_of(reading: Reading, readings: Mapping[ReadingKey, Reading]) -> tuple[Reading, ...]:
    """Every reading that this one stands on, the nearest first; empty where it stands on its own."""
    found: list[Reading] = []
    while reading.beside:
        other = other_of(reading, readings)
        if other is None or other in found:
            break
        found.append(other)
        reading = other
    return tuple(found)


def wrong_against(readings: Mapping[ReadingKey, Reading]) -> Iterator[Finding]:
    """Readings against a contender whose own is missing or not told apart, and those that lead in a circle."""
    told: set[ReadingKey] = set()
    for reading in readings.values():
        if not reading.beside:
            continue
        if other_of(reading, readings) is None:
            yield _no_other(reading, readings)
        elif reading.key not in told:
            circle = _circle(reading, readings)
            told.update(r.key for r in circle)
            if circle:
                yield _told_circle(circle)


def _circle(reading: Reading, readings: Mapping[ReadingKey, Reading]) -> tuple[Reading, ...]:
    chain = chain_of(reading, readings)
    return chain if reading in chain else ()


def _told_circle(circle: tuple[Reading, ...]) -> Finding:
    steps = ", ".join(f"{r.key.contender} “{r.text}”" for r in circle)
    return Finding(
        "error",
        "against-circle",
        circle[0].at,
        f"These readings stand on each other: {steps}.",
        "None of them says how much it is.",
        "Write what one of them was read as.",
        f"test/{circle[0].key.test}",
    )


def _no_other(reading: Reading, readings: Mapping[ReadingKey, Reading]) -> Finding:
    mine = reading.key
    passes = [
        k.pass_
        for k in readings
        if (k.test, k.contender, k.name) == (mine.test, reading.beside, mine.name) and k.part in (mine.part, "")
    ]
    part = f", part {mine.part}" if mine.part else ""
    if passes and reading.counted:
        says = f"“{reading.text}” names no pass{part}, and {reading.beside} has passes {', '.join(passes)}."
        do = f"Write in `pass` which of {reading.beside} it was read against; a reading against each is two rows."
    elif passes:
        says = f"“{reading.text}” is of pass {mine.pass_}{part}; {reading.beside} has passes {', '.join(passes)}."
        do = f"Give it the pass of {reading.beside} that it was read against."
    else:
        says = f"“{reading.text}”: {reading.beside} has no reading of “{mine.name}” here{part}."
        do = f"Add the reading of {reading.beside}, `none (reason)` if it was lost."
    return Finding("error", NOTHING_THERE, reading.at, says, "A difference alone is no value.", do, f"test/{mine.test}")
