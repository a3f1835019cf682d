"""Kind order through a compiled campaign: its words, its record, its page, and what is refused."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest

from tests.campaigns import comparison_of, compile_campaign, refusal, result_of, results_of

HEAD = """\
title: Which stove smells least?
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II, tamsin: Tamsin 3, brindle: Brindle}
measure:
  smell: {kind: order, better: lower}
readings: readings.csv
"""
LOG = "contender,what,value\n"
SEEN = """\
title: Which stove smells least?
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II, tamsin: Tamsin 3, brindle: Brindle}
measure:
  smell:
    better: lower
    seen:
      - corvane less than ostler
      - ostler about like tamsin
"""


def page(place: Path, name: str = "tests/smell") -> str:
    """The text of a page, without its drawing."""
    (path,) = (place / "stoves" / ".site").glob(f"stoves/{name}.html")
    html = re.sub(r"<svg.*?</svg>", " ", path.read_text(encoding="utf-8"), flags=re.S)
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", html))


def seen(told: dict[str, Any], first: str, second: str) -> tuple[Any, ...]:
    pair = comparison_of(told, "smell", first, second)
    return pair["observed"]["told"], pair["observed"]["follows"], pair["differed"]


def test_an_order_in_a_bench_log_is_recorded_without_a_rank_or_a_winner(tmp_path: Path) -> None:
    """The results format: decision, differed and favours of a pair that no rule decides; no value, no rank, no first."""
    told = results_of(tmp_path, HEAD, readings=LOG + "corvane,smell,much less than Ostler Mk II\n"
                            "tamsin,smell,about like ostler; more than corvane\n")  # fmt: skip
    corvane = result_of(told, "smell", "corvane")
    assert (corvane["kind"], corvane["value"], corvane["rank"], corvane["u"]) == ("order", None, None, None)
    assert corvane["stands"] == [
        {"other": "ostler", "told": "less", "degree": "much", "follows": False},
        {"other": "tamsin", "told": "less", "degree": None, "follows": False},
    ]
    assert corvane["printed"] == "much less than Ostler Mk II; less than Tamsin 3"
    assert result_of(told, "smell", "brindle")["missing"] == "never compared"
    assert not told["first"]
    assert {(c["decision"], c["resolved"], c["favours"]) for c in told["comparisons"]} == {
        ("not enough to say", False, None)
    }
    assert seen(told, "corvane", "ostler") == ("less", False, True)
    assert seen(told, "ostler", "tamsin") == ("alike", False, False)
    assert seen(told, "corvane", "brindle") == ("never", False, None)


def whole(place: Path, *sentences: str) -> dict[str, Any]:
    said = "".join(f"      - {s}\n" for s in sentences)
    return compile_campaign(place, SEEN[: SEEN.index("      - ")] + said)


def test_a_whole_order_in_one_go_sets_every_pair_side_by_side(tmp_path: Path) -> None:
    told = whole(tmp_path, "corvane less than ostler a little less than Tamsin 3 about like brindle")
    assert seen(told, "corvane", "ostler") == ("less", False, True)
    assert seen(told, "corvane", "tamsin") == ("less", False, True)
    assert seen(told, "corvane", "brindle") == ("less", False, True)
    assert seen(told, "ostler", "brindle") == ("less", False, True)
    assert seen(told, "tamsin", "brindle") == ("alike", False, False)
    degrees = {(s["other"], s["degree"]) for s in result_of(told, "smell", "ostler")["stands"]}
    assert degrees == {("corvane", None), ("tamsin", "a little"), ("brindle", None)}
    text = page(tmp_path)
    assert "Never put side by side" not in text
    assert "was never compared" not in text


def test_a_whole_order_goes_one_way(tmp_path: Path) -> None:
    yaml = SEEN[: SEEN.index("      - ")] + "      - corvane less than ostler more than tamsin\n"
    (found,) = refusal(tmp_path, yaml)
    assert "goes up and down" in found.says
    assert found.place.line == 7


def test_a_cell_takes_no_whole_order_and_says_where_it_goes(tmp_path: Path) -> None:
    (found,) = refusal(tmp_path, HEAD, readings=LOG + "corvane,smell,less than ostler less than tamsin\n")
    assert (found.rule, found.place.line) == ("not-an-order", 2)
    assert "`seen:`" in found.do


def test_sentences_in_the_yaml_are_one_look(tmp_path: Path) -> None:
    told = compile_campaign(tmp_path, SEEN)
    assert result_of(told, "smell", "ostler")["printed"] == "more than Corvane Sol; about like Tamsin 3"
    assert result_of(told, "smell", "corvane")["trace"][0]["lines"] == [7]
    assert seen(told, "corvane", "tamsin") == ("never", False, None)
    text = page(tmp_path)
    assert "Smell, least first: Corvane Sol, then Ostler Mk II; Ostler Mk II about like Tamsin 3." in text
    assert "Never put side by side, nor ordered through others: Corvane Sol and Tamsin 3." in text
    assert "Brindle was never compared." in text
    assert "It is one look: whether a second would agree isn’t known" in text.replace("isn't", "isn’t")


def test_what_only_follows_is_told_apart_from_what_was_seen(tmp_path: Path) -> None:
    told = compile_campaign(tmp_path, HEAD, readings=LOG + "corvane,smell,less than ostler\n"
                            "ostler,smell,a little less than tamsin\n")  # fmt: skip
    assert seen(told, "corvane", "tamsin") == ("less", True, True)
    assert result_of(told, "smell", "corvane")["printed"] == "less than Ostler Mk II; so less than Tamsin 3"
    text = page(tmp_path)
    assert "Corvane Sol, then Ostler Mk II, then Tamsin 3 (a little more)" in text
    assert "a dashed line joins two whose order only follows from others" in text
    assert (
        "Smell: Corvane Sol less than Tamsin 3; that follows through Ostler Mk II, "
        "and no look at the two side by side was noted." in text
    )


def test_passes_that_disagree_are_shown_and_never_merged(tmp_path: Path) -> None:
    told = compile_campaign(tmp_path, HEAD, readings="contender,pass,smell\ncorvane,1,less than ostler\n"
                            "corvane,2,more than ostler\n")  # fmt: skip
    assert seen(told, "corvane", "ostler") == ("both ways", False, None)
    assert result_of(told, "smell", "corvane")["passes"] == 2
    assert "Smell: the looks don’t agree on Corvane Sol and Ostler Mk II" in page(tmp_path)


def test_a_look_left_out_no_longer_counts(tmp_path: Path) -> None:
    yaml = HEAD + "exclude:\n  - {contender: corvane, pass: 2, because: the wind turned, decided: during the test}\n"
    told = results_of(tmp_path, yaml, readings="contender,pass,smell\ncorvane,1,less than ostler\n"
                            "corvane,2,more than ostler\n")  # fmt: skip
    assert seen(told, "corvane", "ostler") == ("less", False, True)
    result = result_of(told, "smell", "corvane")
    assert (result["passes"], result["excluded"]) == (1, 1)


def test_a_caveat_that_blocks_leaves_the_order_shown_and_says_why(tmp_path: Path) -> None:
    yaml = SEEN + "    caveats:\n      - {says: Its jet was worn, contender: corvane, so: do not rank}\n"
    told = compile_campaign(tmp_path, yaml)
    assert result_of(told, "smell", "corvane")["blocked"] == "Its jet was worn"
    assert comparison_of(told, "smell", "corvane", "ostler")["differed"] is None
    assert "Its jet was worn" in page(tmp_path)


def test_parts_stay_apart(tmp_path: Path) -> None:
    yaml = HEAD.replace("better: lower", "better: lower, over parts: each")
    told = results_of(tmp_path, yaml, readings="contender,part,smell\ncorvane,cold,less than ostler\n"
                            "corvane,hot,more than ostler\n")  # fmt: skip
    pairs = [c for c in told["comparisons"] if (c["first"], c["second"]) == ("corvane", "ostler")]
    assert [(c["part"], c["observed"]["told"]) for c in pairs] == [("cold", "less"), ("hot", "more")]


def test_the_other_pages_show_an_order_beside_measured_results(tmp_path: Path) -> None:
    yaml = HEAD.replace("measure:\n", "measure:\n  boil: timed, s, lower\n")
    rows = "contender,boil,smell\ncorvane,210,less than ostler\nostler,230,none (no nose left)\ncorvane,212,\n"
    compile_campaign(tmp_path, yaml, readings=rows)
    assert "less than B" in page(tmp_path, "index")
    assert "less than Ostler Mk II" in page(tmp_path, "contenders/corvane")
    assert "more than Corvane Sol" in page(tmp_path, "contenders/ostler")


@pytest.mark.parametrize(
    ("cell", "rule", "says"),
    [
        ("less than ostlr", "unknown-contender", "no contender is called “ostlr”"),
        ("less than corvane", "order-of-itself", "compared with itself"),
        ("lses than ostler", "not-an-order", "Did you mean “less than”"),
        ("less ostler", "not-an-order", "less than"),
        ("quieter", "not-an-order", "doesn't say how it stood"),
        ("3", "not-an-order", "doesn't say how it stood"),
        ("less than ostler; more than ostler", "order-circle", "can't be said two ways in one look"),
    ],
)
def test_a_cell_that_tells_no_order_is_refused_at_its_place(tmp_path: Path, cell: str, rule: str, says: str) -> None:
    (finding,) = refusal(tmp_path, HEAD, readings=LOG + f"corvane,smell,{cell}\n")
    assert finding.rule == rule
    assert (finding.place.file, finding.place.line) == ("readings.csv", 2)
    assert says in f"{finding.says} {finding.do}"


def test_a_circle_within_one_look_names_both_places(tmp_path: Path) -> None:
    (finding,) = refusal(tmp_path, HEAD, readings=LOG + "corvane,smell,less than ostler\nostler,smell,less than tamsin\n"
                         "tamsin,smell,less than corvane\n")  # fmt: skip
    assert finding.rule == "order-circle"
    assert (finding.place.file, finding.place.line) == ("readings.csv", 4)
    assert "“ostler less than tamsin” in readings.csv:3" in finding.says
    assert "corvane – ostler – tamsin" in finding.says


@pytest.mark.parametrize(
    ("old", "new", "rule"),
    [
        ("corvane less than ostler", "corvane lses than ostler", "wrong-value"),
        ("corvane less than ostler", "corvin less than ostler", "unknown-contender"),
        ("better: lower", "kind: timed\n    unit: s", "order-of-another-kind"),
    ],
)
def test_a_sentence_that_tells_no_order_is_refused_at_its_line(tmp_path: Path, old: str, new: str, rule: str) -> None:
    findings = refusal(tmp_path, SEEN.replace(old, new))
    assert rule in {f.rule for f in findings}
    assert all(f.place.file == "campaign.yaml" and f.place.line for f in findings)


@pytest.mark.parametrize(
    ("old", "new", "rule", "says"),
    [
        ("better: lower", "better: lower, unit: s", "unit-of-words", "the kind order has no unit"),
        ("better: lower", "better: lower, over passes: mean", "order-joined", "orders have no mean"),
        ("better: lower", "better: lower, over parts: sum", "order-joined", "orders have no sum"),
        ("readings:", "  twice: {formula: smell * 2, unit: s}\nreadings:", "unit", "it is a word"),
    ],
)
def test_what_only_numbers_can_do_is_refused_for_an_order(
    tmp_path: Path, old: str, new: str, rule: str, says: str
) -> None:
    (finding,) = refusal(tmp_path, HEAD.replace(old, new), readings=LOG + "corvane,smell,less than ostler\n")
    assert finding.rule == rule
    assert says in finding.says
    assert finding.place.line


def test_an_order_of_all_to_one_is_refused(tmp_path: Path) -> None:
    (finding,) = refusal(tmp_path, HEAD, readings=LOG + "all,smell,less than ostler\n")
    assert (finding.rule, finding.place.line) == ("order-of-itself", 2)


def test_the_drawing_tells_what_was_seen_from_what_follows(tmp_path: Path) -> None:
    compile_campaign(tmp_path, HEAD, readings=LOG + "corvane,smell,less than ostler\nostler,smell,less than tamsin\n"
                     "tamsin,smell,about like brindle\n")  # fmt: skip
    html = (tmp_path / "stoves" / ".site" / "stoves" / "tests" / "smell.html").read_text(encoding="utf-8")
    (drawing,) = re.findall(r'<svg[^>]*class="drawing orders".*?</svg>', html, flags=re.S)
    (follows,) = re.findall(r'<g[^>]*class="d-follows"[^>]*>.*?</g>', drawing, flags=re.S)
    (links,) = re.findall(r'<g[^>]*class="d-links"[^>]*>.*?</g>', drawing, flags=re.S)
    (alike,) = re.findall(r'<g[^>]*class="d-alike"[^>]*>.*?</g>', drawing, flags=re.S)
    assert "stroke-dasharray" in follows
    assert "stroke-dasharray" not in links + alike
    assert (links.count("<line"), alike.count("<line"), follows.count("<line")) == (2, 2, 2)
    assert 'aria-label="Smell. Least first: Corvane Sol, then Ostler Mk II, then Tamsin 3.' in drawing
