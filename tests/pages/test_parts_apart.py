"""Parts that stand apart, whatever they are called: each has addresses of its own that any browser finds."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from reportgen.addresses import part_called, part_id, quantity_anchor
from tests.campaigns import compile_campaign

YAML = """\
title: Which stove is quieter?
contenders: {a: Corvane Sol, b: Ostler Mk II}
measure:
  noise: {kind: level, unit: dB, better: lower, over parts: each}
readings: readings.csv
"""
PARTS = ("Low flame", "50 % full", "50", "../C#?", "شعلة هادئة", "شعلة قوية")


def test_a_part_in_plain_letters_is_told_in_them() -> None:
    """As the handbook has it: the second evening's place ends with `second-evening`."""
    assert quantity_anchor("gas-burned", "Second evening") == "gas-burned-second-evening"
    assert quantity_anchor("gas-burned") == "gas-burned"


def test_no_two_parts_share_an_address() -> None:
    ids = [part_id(part) for part in PARTS]
    assert len(set(ids)) == len(PARTS)
    assert all(re.fullmatch("[a-z0-9]+(-[a-z0-9]+)*", id) for id in ids)


@pytest.mark.parametrize(
    ("said", "part"),
    [
        ("low-flame", "Low flame"),
        ("شعلة قوية", "شعلة قوية"),
        ("50", "50"),
        ("50 % full", "50 % full"),
        ("50 full", "50 % full"),
        ("شعلة", None),
        ("", None),
    ],
)
def test_a_part_is_meant_by_its_name_or_by_its_plain_letters(said: str, part: str | None) -> None:
    assert part_called(said, PARTS) == part


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    place = tmp_path_factory.mktemp("parts")
    rows = [f"{who},1,{part},{60 + n}.{m}" for n, part in enumerate(PARTS) for m, who in enumerate("ab")]
    words = "It is [?](<value:noise/a/شعلة هادئة>) and [?](<value:noise/a/شعلة قوية>).\n"
    files = {"readings": "\n".join(["contender,pass,part,noise", *rows]) + "\n", "conclusions.md": words}
    compile_campaign(place, YAML, **files)
    return place / "stoves" / ".site" / "stoves"


def test_every_place_has_a_name_that_html_allows_and_every_way_ends_at_one(site: Path) -> None:
    """HTML Living Standard, 3.2.6.1: an id holds no white space, and no two elements share one."""
    page = (site / "tests" / "noise.html").read_text(encoding="utf-8")
    ids = re.findall(r'\bid="([^"]*)"', page)
    assert len(ids) == len(set(ids))
    assert not [id for id in ids if re.search(r"\s", id) or not id.isascii()]
    assert set(re.findall(r'href="#([^"]+)"', page)) <= set(ids)


def test_lists_of_all_comparisons_lead_to_the_first_part(site: Path) -> None:
    listed = (site.parent / "about" / "lists.html").read_text(encoding="utf-8")
    (anchor,) = set(re.findall(r'href="\.\./stoves/tests/noise\.html#([^"]+)"', listed))
    assert anchor == "noise-low-flame"
    assert f'id="{anchor}"' in (site / "tests" / "noise.html").read_text(encoding="utf-8")


def test_a_text_speaks_of_the_part_that_it_names(site: Path) -> None:
    page = (site / "index.html").read_text(encoding="utf-8")
    said = re.search(r"It is <a [^>]*>([\d.]+)\s*dB</a> and <a [^>]*>([\d.]+)\s*dB</a>", page)
    assert said
    assert said.groups() == ("64.0", "65.0")


def test_what_a_chart_is_explored_with_lies_where_its_page_asks_for_it(site: Path) -> None:
    asked = set(re.findall(r'data-chart="([^"]*)"', (site / "tests" / "noise.html").read_text(encoding="utf-8")))
    assert len(asked) == len(PARTS)
    made = {
        path.relative_to(site / "charts").as_posix().removesuffix(".js") for path in (site / "charts").rglob("*.js")
    }
    assert asked <= made
    assert all(re.fullmatch("[a-z0-9-]+", name) for name in made)
