"""One mistake each, put through compile as a user would: its place, its remedy, and nothing built."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.campaigns import refusal

HEAD = "title: T\ncontenders: {corvane: Corvane Sol, ostler: Ostler Mk II}\nreadings: readings.csv\n"
TIMED = HEAD + "measure:\n  boil time: timed, s, lower\n"
ROWS = "contender,pass,boil time\ncorvane,1,212.4\nostler,1,230.1\nostler,2,226.4\ncorvane,2,214.9\n"


def quantity(more: str) -> str:
    """The campaign with one more key of its quantity, written in line 5 from column 51 on."""
    return HEAD + "measure:\n  boil time: {kind: timed, unit: s, better: lower, " + more + "}\n"


def cell(text: str) -> dict[str, str | bytes]:
    """The table with another first reading, in line 2, cell 3."""
    return {"readings": ROWS.replace("212.4", text)}


# mistake → YAML, files, (rule, place), a word of the remedy
DECLARED: dict[str, tuple[str, tuple[str, str], str]] = {
    "a difference that matters below nothing": (quantity("matters: -1 s"), ("wrong-value", "campaign.yaml:5:61"), "without a sign"),
    "a name that no file could bear": (TIMED + f"  {'b' * 121}: timed, s, lower\n", ("name-too-long", "campaign.yaml:6:3"), "`title:`"),
    "a title that no file could bear": (TIMED.replace("Corvane Sol", "Sol " * 51), ("name-too-long", "campaign.yaml:2:14"), "`facts:`"),
    "a difference that matters in another unit": (quantity("matters: 1 g"), ("unit", "campaign.yaml:5:61"), "of the two"),
    "a difference beyond all numbers": (quantity("matters: 1e400 s"), ("wrong-value", "campaign.yaml:5:61"), "unit"),
    "a kind that measures something else": (HEAD + "measure:\n  boil time: timed, g, lower\n", ("unit", "campaign.yaml:5:14"), "one reading"),
    "a level in grams": (HEAD + "measure:\n  boil time: level, g, lower\n", ("unit", "campaign.yaml:5:14"), "one reading"),
    "an unknown name in a formula": (quantity("formula: boil_time * foo"), ("formula", "campaign.yaml:5:73"), "name"),
    "a call that is none of ours": (quantity("formula: open(boil_time)"), ("formula", "campaign.yaml:5:61"), "functions are"),
    "an attribute in a formula": (quantity("formula: boil_time.real"), ("formula", "campaign.yaml:5:70"), "underscores"),
    "an index in a formula": (quantity("formula: 'boil_time[0]'"), ("formula", "campaign.yaml:5:70"), "( and )"),
    "a function with too little": (quantity("formula: of(ostler)"), ("formula", "campaign.yaml:5:61"), "2 with commas"),
    "a step of no size": (TIMED + "instruments: {s: watch, watch: {resolution: 0 s}}\n", ("wrong-value", "campaign.yaml:6:45"), "how large"),
    "a range in two sorts of unit": (quantity("instrument: watch") + "instruments: {watch: {range: 0 s to 5 kg}}\n", ("unit", "campaign.yaml:6:30"), "`range:`"),
    "an accuracy of another sort": (quantity("instrument: watch") + "instruments: {watch: '0.1 s, accuracy ±1 g'}\n", ("unit", "campaign.yaml:6:22"), "`accuracy:`"),
    "a condition nobody could meet": (TIMED + "verdict: {must: {quantity: boil time, at most: 3 s, at least: 9 s}}\n", ("condition-upside-down", "campaign.yaml:6:17"), "Exchange"),
    "a condition in another unit": (TIMED + "verdict: {must: {quantity: boil time, at most: 3 g}}\n", ("unit", "campaign.yaml:6:17"), "check the unit"),
    "anchors the wrong way round": (TIMED + "verdict: {groups: {g: {criteria: {boil time: {worst: 1 s, best: 9 s}}}}}\n", ("anchors-upside-down", "campaign.yaml:6:35"), "Exchange"),
    "anchors in another unit": (TIMED + "verdict: {groups: {g: {criteria: {boil time: {worst: 9 g, best: 1 g}}}}}\n", ("unit", "campaign.yaml:6:35"), "check the unit"),
    "a group of no criteria": (TIMED + "verdict: {groups: {g: {criteria: {}}}}\n", ("group-without-criteria", "campaign.yaml:6:20"), "Name its criteria"),
    "a reader of a group that isn't there": (TIMED + "verdict: {readers: {hasty: {speed: 3}}}\n", ("unknown-group", "campaign.yaml:6:29"), "groups:"),
    "a cost that breaks off": (TIMED + "verdict: {use: {per: litre, cost: boil_time *, times: 0 to 5}}\n", ("formula", "campaign.yaml:6:46"), "missing"),
    "a cost of unknown things": (TIMED + "verdict: {use: {per: litre, cost: boil_time * fuel, times: 0 to 5}}\n", ("formula", "campaign.yaml:6:35"), "constant"),
    "a price beyond all numbers": (TIMED.replace("{corvane: Corvane Sol", "{corvane: {title: C, paid: 1e999 EUR}"), ("wrong-value", "campaign.yaml:2:40"), "unit"),
    "a tolerance below nothing": (
        TIMED.replace("corvane: Corvane Sol", "corvane: {title: C, claims: {says: q, quantity: boil time, is: 3 s, within: -1 s}}"),
        ("wrong-value", "campaign.yaml:2:90"), "without a sign",
    ),
    "a control character as an escape": (TIMED.replace("title: T", 'title: "T\\0"'), ("wrong-value", "campaign.yaml:1:8"), "Delete"),
    "a key with a character nobody sees": (TIMED + "place\u200b: here\n", ("unknown-key", "campaign.yaml:6:1"), "zero width space"),
    "a file listed twice": (TIMED.replace("readings: readings.csv", "readings: [readings.csv, ./readings.csv]"), ("listed-twice", "campaign.yaml:3:26"), "Take one of them out"),
    "a file's name longer than any system takes": (TIMED.replace("readings.csv", "x" * 300), ("unreadable-file", "campaign.yaml:3:11"), "Check the path"),
    "an address for a file": (TIMED.replace("readings.csv", "https://example.org/r.csv"), ("missing-file", "campaign.yaml:3:11"), "Download"),
    "a path with backslashes": (TIMED.replace("readings.csv", "raw\\readings.csv"), ("missing-file", "campaign.yaml:3:11"), "Write /"),
    "a file's name in capitals": (TIMED.replace("readings.csv", "READINGS.CSV"), ("missing-file", "campaign.yaml:3:11"), "mean readings.csv"),
    "a unit to show that nobody knows": (TIMED + "show: [flurb]\n", ("unit", "campaign.yaml:6:8"), "such as"),
}  # fmt: skip

READ: dict[str, tuple[dict[str, str | bytes], tuple[str, str], str]] = {
    "a reading in another unit": (cell("212.4 g"), ("unit", "readings.csv:2:3"), "check the unit"),
    "a reading in an unknown unit": (cell("212.4 flurb"), ("unit", "readings.csv:2:3"), "such as"),
    "digits of another script": (cell("١٢"), ("not-a-number", "readings.csv:2:3"), "digits 0 to 9"),
    "digits of double width": (cell("１２．５"), ("not-a-number", "readings.csv:2:3"), "digits 0 to 9"),
    "a fraction of one letter": (cell("½"), ("not-a-number", "readings.csv:2:3"), "digits 0 to 9"),
    "a long dash for a minus": (cell("—5"), ("not-a-number", "readings.csv:2:3"), "- for minus"),
    "a character that can't be seen": (cell("12.5\u200b"), ("not-a-number", "readings.csv:2:3"), "type the number again"),
    "a decimal comma": (cell('"1,5"'), ("separator-in-number", "readings.csv:2:3"), "1.5"),
    "a formula of a spreadsheet": (cell("=1+1"), ("not-a-number", "readings.csv:2:3"), "decimal point"),
    "two notations in one": (cell("about over 5"), ("rough-unclear", "readings.csv:2:3"), "over 250"),
    "a range with a dash": (cell("5–6"), ("rough-unclear", "readings.csv:2:3"), "5 to 6"),
    "another sign for about": (cell("~250"), ("rough-unclear", "readings.csv:2:3"), "about 250"),
    "a width in percent": (cell("250 ±2 %"), ("rough-unclear", "readings.csv:2:3"), "250 ±5"),
    "a range from more to less": (cell("6 to 5"), ("rough-unclear", "readings.csv:2:3"), "smaller number first"),
    "a difference to nobody": (cell("oster + 72"), ("unknown-contender", "readings.csv:2:3"), "ostler"),
    "a name and a sign without a space": (cell("ostler+72"), ("against-unclear", "readings.csv:2:3"), "ostler + 72"),
    "a difference to itself": (cell("corvane + 72"), ("against-itself", "readings.csv:2:3"), "what was read"),
    "a difference to a pass that isn't there": ({"readings": ROWS.replace("corvane,2,214.9", "corvane,3,ostler + 7")}, ("against-nothing", "readings.csv:5:3"), "pass of ostler"),
    "differences that go round": ({"readings": ROWS.replace("212.4", "ostler + 7").replace("230.1", "corvane - 7")}, ("against-circle", "readings.csv:3:3"), "what one of them"),
    "frames of no camera": (cell("frames 1204 to 4820"), ("unit", "readings.csv:2:3"), "frame rate"),
    "frames that run backwards": (cell("frames 4820 to 1204"), ("frames-unclear", "readings.csv:2:3"), "earlier frame first"),
    "two readings for all": ({"readings": ROWS + "all,,5\nall,,6\n"}, ("reading-twice", "readings.csv:7:3"), "its pass"),
    "a reading for all in a pass nobody ran": ({"readings": ROWS + "all,9,5\n"}, ("reading-for-nobody", "readings.csv:6:3"), "every pass"),
    "no number at all": (cell("nan"), ("not-a-number", "readings.csv:2:3"), "none (reason)"),
    "a quotation mark that swallows the rest": (
        {"readings": ROWS.replace("212.4", '"212.4') + "x" * 200_000 + '"\n'}, ("not-a-number", "readings.csv:2:3"), "should end",
    ),
    "a row of another encoding at the end": (
        {"readings": ROWS.encode("utf-16") + b"corvane,9,1.0\n"}, ("two-encodings", f"readings.csv:{ROWS.count(chr(10)) + 1}"), "UTF-8",
    ),
    "letters in UTF-32": ({"readings": b"\xff\xfe\0\0" + ROWS.encode("utf-32-le")}, ("not-utf-8", "readings.csv:1:1"), "UTF-8"),
    "a picture called a table": ({"readings": b"\x89PNG\r\n\x1a\n"}, ("not-utf-8", "readings.csv:1:1"), "UTF-8"),
    "nothing but a byte order mark": ({"readings": b"\xef\xbb\xbf"}, ("empty-table", "readings.csv"), "headings"),
}  # fmt: skip


@pytest.mark.parametrize("mistake", DECLARED)
def test_a_mistake_in_a_declaration_is_told_once_at_its_place(mistake: str, tmp_path: Path) -> None:
    text, (rule, place), remedy = DECLARED[mistake]
    (finding,) = [f for f in refusal(tmp_path, text, readings=ROWS) if f.severity == "error"]
    assert (finding.rule, str(finding.place)) == (rule, place)
    assert finding.says
    assert remedy in finding.do


@pytest.mark.parametrize("mistake", READ)
def test_a_mistake_in_a_table_is_told_once_at_its_cell(mistake: str, tmp_path: Path) -> None:
    files, (rule, place), remedy = READ[mistake]
    (finding,) = [f for f in refusal(tmp_path, TIMED, **files) if f.severity == "error"]
    assert (finding.rule, str(finding.place)) == (rule, place)
    assert finding.says
    assert remedy in finding.do
    assert len(finding.says) < 400, "a message shows no more of a long cell than names it"


def test_a_mistake_in_every_row_is_told_once_with_its_lines(tmp_path: Path) -> None:
    rows = "contender,boil time\n" + "corvan,212.4\n" * 5000 + "ostler,230.1\n"
    (finding,) = refusal(tmp_path, TIMED, readings=rows)
    assert (finding.rule, str(finding.place)) == ("unknown-contender", "readings.csv:2:1")
    assert "lines 3, 4, 5 and 4996 more" in finding.says


def test_a_thousand_different_mistakes_of_one_sort_are_counted(tmp_path: Path) -> None:
    rows = "contender,pass,boil time\n" + "".join(f"corvane,{i},fast{i}\n" for i in range(1, 1001))
    told = refusal(tmp_path, TIMED, readings=rows)
    assert len(told) == 20
    assert "980 more mistakes of this sort" in told[-1].says


def test_a_pull_in_kilograms_is_sent_to_kilograms_of_force_whichever_way_it_is_written(tmp_path: Path) -> None:
    yaml = HEAD + "measure:\n  pull: {kind: peak, unit: lbf, better: higher}\n"
    ways = {
        "readings.csv:2:2": (yaml, "contender,pull\ncorvane,3 kg\nostler,4 kg\n"),
        "readings.csv:2:3": (yaml, "contender,what,value,unit\ncorvane,pull,3,kg\nostler,pull,4,kg\n"),
        "campaign.yaml:3:42": (
            yaml.replace("readings: readings.csv", "readings: {file: readings.csv, columns: {pull: {unit: kg}}}"),
            "contender,pull\ncorvane,3\nostler,4\n",
        ),
    }
    for i, (place, (text, rows)) in enumerate(ways.items()):
        (finding,) = refusal(tmp_path / str(i), text, readings=rows)
        assert "kgf" in finding.do
        assert str(finding.place) == place


def test_a_weight_in_seconds_is_refused_at_its_reading(tmp_path: Path) -> None:
    """A scale declared in grams reads no seconds, however fine the digits typed."""
    yaml = "title: T\nwho pays: us\ncontenders: {a: A, b: B}\nmeasure: {w: 'one reading, s, lower, kitchen-scale'}\nreadings: readings.csv\n"
    found = [f for f in refusal(tmp_path, yaml, readings="contender,w\na,812\nb,845\n") if f.severity == "error"]
    assert [str(f.place) for f in found] == ["readings.csv:2:2"]
    assert "kitchen-scale" in found[0].says
    assert "unit" in found[0].do
