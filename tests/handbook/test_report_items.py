"""What the handbook says of the items of a report is so: its table has all sixteen, its example lacks three."""

from __future__ import annotations

import re
from pathlib import Path

from tests.campaigns import compile_folder
from tests.handbook.test_examples import EXAMPLES, HANDBOOK
from tests.pages.reading import read
from tests.pages.test_report_items import LETTERS, state


def test_the_table_has_every_item_once_in_its_order() -> None:
    text = (HANDBOOK / "report-items.md").read_text(encoding="utf-8")
    assert "".join(re.findall(r"^\| ([a-z]) ", text, re.M)) == LETTERS


def test_the_example_lacks_what_the_page_says(tmp_path: Path) -> None:
    (example,) = [e for e in EXAMPLES if e.name.startswith("report-items")]
    for name, text in example.files.items():
        path = tmp_path / "stoves" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    compile_folder(tmp_path / "stoves")
    page = tmp_path / "stoves/.site/stoves/report-items.html"
    states = {letter: state(read(page.read_text(encoding="utf-8")), letter) for letter in LETTERS}
    assert {x for x, s in states.items() if s == "In part"} == set("ehk")
    assert "Not stated" not in states.values()
