"""Where there is little or nothing to judge: a truthful sentence, never a crash, never a winner nobody showed to be one."""

from __future__ import annotations

import re
from html import unescape
from pathlib import Path
from typing import Any

import pytest

from reportgen.build.run import audit_path
from tests.campaigns import compile_folder, write_campaign
from tests.evaluation.bench import evaluated

HEAD = "title: T\nwho pays: Readers.\n"
MEASURE = "measure:\n  gas: {kind: one reading, unit: g, better: lower, instrument: scale}\nreadings: readings.csv\n"
SCALE = "scale: 0.1 g, up to 500 g, accuracy ±0.3 g\n"
UNKNOWN = "scale: {resolution: 0.1 g, accuracy: unknown}\n"
TWO = "contenders: {corvane: Corvane, ostler: Ostler}\n"
ALL_OUT = "exclude:\n" + "".join(
    f"  - {{contender: {c}, pass: {n}, because: the wind rose, decided: during the test}}\n"
    for c in ("corvane", "ostler")
    for n in (1, 2)
)
METHODS = ("", "own", "relative")


def told(place: Path, yaml: str, readings: str, scatter: str = "", scale: str = SCALE) -> tuple[dict[str, Any], str]:
    """results.json, and the words of its pages together; none may hold what a computer says for want of a number."""
    files = {"methods/weigh-it.1.yaml": f"title: Weigh it\nscatter: {scatter}\n"} if scatter else {}
    measure = MEASURE.replace("instrument: scale", "instrument: scale, method: weigh-it") if scatter else MEASURE
    folder = write_campaign(
        place, HEAD + yaml.replace("MEASURE", measure), readings=readings, **{"instruments.yaml": scale, **files}
    )
    record = compile_folder(folder)
    site = folder / ".site" / record["campaign"]
    pages = [p.read_text(encoding="utf-8") for p in sorted(site.rglob("*.html"))]
    text = re.sub(r"\s+", " ", unescape(re.sub(r"<[^>]+>", " ", " ".join(pages))))
    assert not re.search(r"\b(?:nan|inf|None|Traceback)\b", text)
    assert all(f.says and f.why for f in audit_path(folder))
    return record, text


def no_winner(record: dict[str, Any]) -> None:
    assert all(f["winner"] is None for f in record["first"])
    assert all(c["favours"] is None for c in record["comparisons"])


@pytest.mark.parametrize("scatter", ["", "relative"])
def test_one_contender_has_nobody_to_be_compared_with(scatter: str, tmp_path: Path) -> None:
    rows = "contender,pass,gas\ncorvane,1,10.1\ncorvane,2,10.4\n"
    record, text = told(tmp_path, "contenders: {corvane: Corvane}\nMEASURE", rows, scatter)
    no_winner(record)
    assert record["comparisons"] == []
    assert "Only Corvane has a result, so there is nothing to compare" in text


def test_no_passes_at_all_is_not_yet_tested(tmp_path: Path) -> None:
    record, text = told(
        tmp_path, TWO + "MEASURE", "contender,pass,gas\ncorvane,1,none (spilled)\nostler,1,none (spilled)\n"
    )
    no_winner(record)
    assert "spilled" in text
    assert all(r["value"] is None and r["missing"] for r in record["results"])


def test_with_every_pass_left_out_there_is_no_result(tmp_path: Path) -> None:
    rows = "contender,pass,gas\ncorvane,1,10.1\nostler,1,12.3\nostler,2,12.2\ncorvane,2,10.4\n"
    record, text = told(tmp_path, TWO + "MEASURE" + ALL_OUT, rows)
    no_winner(record)
    assert {r["missing"] for r in record["results"]} == {"every pass is left out"}
    assert "every pass is left out" in text


@pytest.mark.parametrize(("scatter", "bound"), [("", "over"), ("own", "under"), ("relative", "over")])
def test_all_beyond_the_scale_share_first_place(scatter: str, bound: str, tmp_path: Path) -> None:
    rows = "contender,pass,gas\n" + "".join(f"{c},{n},{bound} 400\n" for n in (1, 2) for c in ("corvane", "ostler"))
    record, text = told(tmp_path, TWO + "MEASURE", rows, scatter)
    no_winner(record)
    assert [f["may_be_first"] for f in record["first"]] == [["corvane", "ostler"]]
    assert "Not ranked: each is known from one side only" in text


@pytest.mark.parametrize(("scatter", "passes"), [("", 1), ("", 3), ("own", 2), ("relative", 3)])
def test_the_same_number_everywhere_is_no_lead(scatter: str, passes: int, tmp_path: Path) -> None:
    three = "contenders: {corvane: Corvane, ostler: Ostler, brindle: Brindle}\n"
    rows = "contender,pass,gas\n" + "".join(
        f"{c},{n},12.1\n" for n in range(1, passes + 1) for c in ("corvane", "ostler", "brindle")
    )
    record, _ = told(tmp_path, three + "MEASURE", rows, scatter)
    no_winner(record)
    assert all(c["difference"] == 0.0 for c in record["comparisons"])
    assert {tuple(r["rank"]) for r in record["results"]} == {(1, 3)}


@pytest.mark.parametrize("scatter", METHODS)
def test_passes_of_unequal_number_are_judged_by_the_fewer(scatter: str, tmp_path: Path) -> None:
    """JUDGING 2: own, unequal n: ν = min(n) − 1, so one pass beside five leaves nothing to say under own."""
    rows = "contender,pass,gas\ncorvane,1,10.1\n" + "".join(f"ostler,{n},{12 + n / 10}\n" for n in range(1, 6))
    record, _ = told(tmp_path, TWO + "MEASURE", rows, scatter)
    (pair,) = record["comparisons"]
    if scatter == "own":
        assert (pair["decision"], pair["reason"]["code"]) == ("not enough to say", "no-scatter-known")
    else:
        assert pair["favours"] == "corvane"  # 2.2 g, and t(4)·0.16·√(1 + 1/5) is 0.5


def test_a_hundred_contenders_are_judged(tmp_path: Path) -> None:
    """Without pages, of which there would be a hundred and more; thirty below have theirs."""
    found = evaluated(tmp_path, HEAD + many(100)[0], **{"readings": many(100)[1], "instruments.yaml": UNKNOWN})
    (first,) = found.firsts
    assert (first.winner, first.may_be_first) == ("c0", ("c0",))
    assert len(found.comparisons) == 4950
    assert all(c.low is not None and c.low < c.high for c in found.comparisons)


def test_thirty_contenders_are_shown(tmp_path: Path) -> None:
    yaml, rows = many(30)
    record, text = told(tmp_path, yaml, rows, scale=UNKNOWN)
    assert record["first"][0]["winner"] == "c0"
    assert len(record["comparisons"]) == 435
    assert "Stove c0 is lowest" in text


def many(contenders: int) -> tuple[str, str]:
    """A campaign of so many, two passes each, 2 g apart."""
    names = [f"c{n}" for n in range(contenders)]
    rows = "".join(f"{c},{p},{10 + 2 * n + 0.1 * p:.1f}\n" for p in (1, 2) for n, c in enumerate(names))
    yaml = "contenders: {" + ", ".join(f"{c}: Stove {c}" for c in names) + "}\n"
    return yaml + MEASURE, "contender,pass,gas\n" + rows


@pytest.mark.parametrize("cell", ["-1.0", "0.0"])
def test_a_ratio_of_what_is_not_above_nothing_is_said_and_ranks_nobody(cell: str, tmp_path: Path) -> None:
    rows = f"contender,pass,gas\ncorvane,1,{cell}\nostler,1,12.3\nostler,2,12.2\ncorvane,2,1.0\n"
    record, text = told(tmp_path, TWO + "MEASURE", rows, "relative")
    no_winner(record)
    assert "needs readings above zero" in text
