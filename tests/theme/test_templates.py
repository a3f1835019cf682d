"""Templates stay dumb: short parts, no arithmetic, no style or script of their own, no name that isn't given."""

from __future__ import annotations

import re

import pytest
from jinja2 import Environment, nodes

from reportgen.theme import load_theme

THEME = load_theme(None)
MARKUP = sorted(name for name in THEME.templates if name.endswith(".html"))
SUMS = (nodes.Add, nodes.Sub, nodes.Mul, nodes.Div, nodes.FloorDiv, nodes.Mod, nodes.Pow)


@pytest.mark.parametrize("name", [n for n in MARKUP if n.startswith("parts/")])
def test_a_part_is_short(name: str) -> None:
    assert len(THEME.templates[name].splitlines()) <= 80


def test_no_template_does_sums() -> None:
    found = [n for n in MARKUP if list(Environment().parse(THEME.templates[n]).find_all(SUMS))]
    assert found == []


def test_no_template_carries_a_style_or_a_handler() -> None:
    forbidden = re.compile(r"\s(style|on[a-z]+)=|<style|integrity=")
    assert [n for n in MARKUP if forbidden.search(THEME.templates[n])] == []


def test_every_template_compiles() -> None:
    for name in MARKUP:
        THEME.environment.get_template(name)
