"""A limit says which pass, part and specimen it is about, beside the results and in the record."""

from __future__ import annotations

import html
import re
from pathlib import Path

from tests.campaigns import compile_campaign

YAML = """\
title: Which kettle?
contenders:
  aven: {title: Aven, specimens: {A: {serial: K-1}, B: {serial: K-2}}}
  brook: Brook
measure: {boil time: "timed, s, lower", warmth: "one reading, °C, lower"}
readings: readings.csv
incidents:
  - aven, specimen B, pass 2: the lid popped
  - brook: the plug was loose all day
exclude:
  - {contender: brook, pass: 3, about: boil time, because: The lid was open., decided: during the test}
amend:
  - {file: readings.csv, line: 6, column: boil time, from: 15.03, to: 150.3, why: The sheet says 150.3.}
two records:
  - where: brook, pass 2, boil time
    said: [139.0 s, 143.5 s]
    used: 139.0 s
    because: Nobody knows.
"""
READINGS = """\
contender,specimen,pass,boil time,warmth
aven,A,1,160.2,40.1
aven,B,2,161.4,40.3
brook,,1,about 140,about 30
brook,,2,139.0,
brook,,3,15.03,
"""


def boxes(place: Path) -> tuple[dict[str, object], str]:
    told = compile_campaign(place, YAML, readings=READINGS)
    page = (place / "stoves/.site/stoves/tests/boil-time.html").read_text(encoding="utf-8")
    return told, read(page)


def read(page: str) -> str:
    """The words of a page: what parts a line of text parts no words."""
    words = re.sub(r"<[^>]+>", " ", re.sub(r"</?(?:span|bdi)\b[^>]*>", "", page))
    return " ".join(html.unescape(words).replace("\u00a0", " ").split())


def test_a_limit_names_the_pass_and_the_specimen_it_is_about(tmp_path: Path) -> None:
    told, text = boxes(tmp_path)
    assert "What happened, Aven, specimen B (serial K-2), pass 2. The lid popped." in text
    assert "What happened, Brook. The plug was loose all day." in text
    assert "Left out, Brook, pass 3. The lid was open." in text
    assert "Put right, Brook, pass 3. One reading was put right" in text
    assert "Two records disagree, Brook, pass 2." in text
    assert "How it was read, Brook, pass 1. Some readings of “boil time” are rough: “about 140” counts as" in text
    assert "(Brook, pass 1), every value" in text
    assert re.search(r"[Ss]pecimen B \(serial K-2\), pass 2 What happened: the lid popped", text), "in the workings too"
    assert "What happened: the plug" not in text, "what is about all passes stands at none"
    rows = {(c["sort"], c["contender"], c["specimen"], c["pass"]) for c in told["caveat_list"]}
    assert ("incident", "aven", "B", "2") in rows
    assert ("incident", "brook", None, None) in rows
    assert ("amendment", "brook", None, "3") in rows


def test_one_reading_alone_needs_no_number_of_its_pass(tmp_path: Path) -> None:
    boxes(tmp_path)
    page = (tmp_path / "stoves/.site/stoves/tests/warmth.html").read_text(encoding="utf-8")
    text = read(page)
    assert "How it was read, Brook. Some readings of “warmth” are rough: “about 30”" in text
