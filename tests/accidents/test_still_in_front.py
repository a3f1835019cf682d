"""Who is in front while another still runs is open, and neither chart nor sentence names anybody."""

from __future__ import annotations

import html
import re
from pathlib import Path

from tests.campaigns import compile_campaign

YAML = """\
title: Which lasts?
contenders: {aven: Aven, brook: Brook, corrie: Corrie}
measure: {life: "run to a limit, min, higher"}
readings: readings.csv
running: [{contender: corrie, test: life, since: 2026-11-10}]
"""


def page(place: Path, corrie: int) -> str:
    compile_campaign(place, YAML, readings=f"contender,life\naven,212\nbrook,150\ncorrie,{corrie}\n")
    text = (place / "stoves/.site/stoves/tests/life.html").read_text(encoding="utf-8")
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", text)).replace("\u00a0", " ").split())


def test_one_that_may_yet_pass_the_best_leaves_first_place_open(tmp_path: Path) -> None:
    text = page(tmp_path, 118)
    assert "Who read highest is open: Corrie is known from one side only" in text
    assert "read highest in this run" not in text
    assert "Aven read 62 min higher than Brook in this run" in text


def test_one_that_has_passed_the_best_already_is_in_front(tmp_path: Path) -> None:
    text = page(tmp_path, 300)
    assert "Corrie read highest in this run; whether a repeat would agree isn’t known" in text
