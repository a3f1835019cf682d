"""The theme that the handbook makes, compiled; and what it says templates are given, held against the code."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from reportgen.theme import load_theme
from reportgen.theme.sheets import page_templates
from tests.campaigns import SMALLEST, SMALLEST_READINGS
from tests.handbook.test_examples import BLOCK, HANDBOOK
from tests.handbook.views_told import FIELDS, PARTS, table_of_fields, table_of_parts, views, written

RECIPE = {m["file"]: m["text"] for m in BLOCK.finditer((HANDBOOK / "themes.md").read_text(encoding="utf-8"))}


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A site of one small campaign, set in the handbook's theme."""
    from reportgen.build.run import compile_site

    place = tmp_path_factory.mktemp("slate")
    campaign = {
        "stoves/campaign.yaml": SMALLEST.replace(
            "corvane: Corvane Sol", "corvane: {title: Corvane Sol, maker: Corvane}"
        ),
        "stoves/readings.csv": SMALLEST_READINGS,
    }
    for name, text in {**RECIPE, **campaign}.items():
        (place / name).parent.mkdir(parents=True, exist_ok=True)
        (place / name).write_text(text, encoding="utf-8")
    return compile_site(place).out


def test_the_recipe_holds_only_what_differs() -> None:
    assert "themes/slate/theme.yaml" in RECIPE
    assert sum(name.startswith("themes/slate/") for name in RECIPE) <= 8


def test_the_handbooks_theme_sets_every_page(site: Path) -> None:
    pages = list(site.rglob("*.html"))
    sheets = [re.findall(r'rel="stylesheet" href="[./]*(static/\S+?)"', p.read_text(encoding="utf-8")) for p in pages]
    assert pages
    assert all(all(a.startswith("static/slate/") and (site / a).is_file() for a in found) and found for found in sheets)


def test_its_files_take_the_place_of_those_of_the_same_name(site: Path) -> None:
    sheet = (site / "static/slate/contender.css").read_text(encoding="utf-8")
    assert "--follow:#1d4f91" in sheet
    assert load_theme(None).styles["10-colours.css"].split("--follow: ")[1][:7] not in sheet
    assert sheet.rindex("font-weight:600") > sheet.index(".claims{")
    spec_sheet = (site / "stoves/contenders/corvane.html").read_text(encoding="utf-8")
    assert re.search(r"<dt>[^<]+:</dt>", spec_sheet)


def test_a_file_for_one_thing_goes_only_where_that_thing_is(site: Path) -> None:
    assert ".claim .word{font-style:normal" in (site / "static/slate/contender.css").read_text(encoding="utf-8")
    assert ".claim .word{font-style:normal" not in (site / "static/slate/test.css").read_text(encoding="utf-8")


def test_every_template_of_a_page_is_one_that_pages_are_rendered_with() -> None:
    assert set(views()) | {"base.html"} == set(page_templates(load_theme(None).templates))


def test_the_handbook_tells_every_field_and_every_part() -> None:
    """Where a view or a part has changed: `.venv/bin/python -m tests.handbook.views_told` writes both tables anew."""
    assert written(FIELDS) == table_of_fields()
    assert written(PARTS) == table_of_parts()
