"""The house theme's colours, held against WCAG 2.2 in both schemes.

Contrast ratio and relative luminance: WCAG 2.2, definitions; 1.4.3 asks 4.5 for text, 1.4.11 asks 3 for what must be
seen to understand a chart. The two ratios that hold the formula itself: black on white 21, #777777 on white 4.48
(common practice, no source).
"""

from __future__ import annotations

import re
from itertools import combinations

import pytest

from reportgen.marks import COLOURS, mark_of
from reportgen.theme import load_theme

SHEET = "\n".join(text for _, text in sorted(load_theme(None).styles.items()))
DARK = r"@media screen and \(prefers-color-scheme: dark\) \{\s*:root \{(.*?)\}\s*\}"


def variables(scheme: str) -> dict[str, str]:
    """Colours by name; dark ones over the light ones they don't change."""
    light = "".join(re.findall(r"^:root \{(.*?)^\}", SHEET, re.S | re.M))
    dark = "".join(re.findall(DARK, SHEET, re.S))
    text = light + (dark if scheme == "dark" else "")
    return dict(re.findall(r"--([a-z0-9]+):\s*(#[0-9a-f]{6})", text))


def luminance(colour: str) -> float:
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    r, g, b = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * r + 0.7152 * g + 0.0722 * b


def contrast(a: str, b: str) -> float:
    high, low = sorted((luminance(a), luminance(b)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def test_the_formula_gives_the_known_ratios() -> None:
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.005)


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("name", ["ink", "quiet", "follow", "caution"])
def test_text_can_be_read_on_paper_and_on_what_is_marked(scheme: str, name: str) -> None:
    found = variables(scheme)
    assert contrast(found[name], found["paper"]) >= 4.5
    assert contrast(found[name], found["faint"]) >= 4.5


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_every_contender_colour_can_be_seen_on_paper(scheme: str) -> None:
    found = variables(scheme)
    for n in range(1, 9):
        assert contrast(found[f"c{n}"], found["paper"]) >= 3


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_first_four_contenders_differ_in_greyscale(scheme: str) -> None:
    found = variables(scheme)
    for a, b in combinations([found[f"c{n}"] for n in range(1, 5)], 2):
        assert contrast(a, b) >= 1.15


def test_dark_is_drawn_for_every_colour() -> None:
    dark = set(re.findall(r"--([a-z0-9]+):", "".join(re.findall(DARK, SHEET, re.S))))
    colours = set(variables("light"))
    assert colours >= {"paper", "ink", "c1", "c8"}
    assert dark >= colours


def test_there_are_as_many_colours_in_drawings_as_in_the_style_sheet() -> None:
    assert len(COLOURS) == len([name for name in variables("light") if re.fullmatch(r"c\d", name)])


def test_contenders_keep_a_letter_and_the_first_sixty_four_differ_in_colour_and_shape() -> None:
    assert [mark_of(n).letter for n in (0, 25, 26, 27, 51, 52, 701, 702)] == [
        *("A", "Z", "AA", "AB", "AZ", "BA", "ZZ", "AAA"),
    ]
    assert len({(mark_of(n).shape, mark_of(n).css_class) for n in range(64)}) == 64


def test_a_drawing_without_a_style_sheet_keeps_the_light_colours() -> None:
    light = variables("light")
    assert {f"c{n}": colour for n, colour in enumerate(COLOURS, 1)} == {
        name: value for name, value in light.items() if re.fullmatch(r"c\d", name)
    }
