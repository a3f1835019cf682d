"""The colours of our themes, held against WCAG 2.2 in both schemes: every pair that the sheets can bring together.

Contrast ratio and relative luminance: WCAG 2.2, definitions. 1.4.3 asks 4.5 for text, 1.4.11 asks 3 for what must be seen to
use a page or understand a picture, 2.4.13 asks 3 for the mark of focus. Ratios that hold the formula itself: black on white
21 (WCAG 2.2, note to the definition); #767676 on white 4.54 and #777777 on white 4.48, the two sides of 4.5 (from memory).
Hairlines (`--hair`) and the ground of what is marked (`--faint`) carry nothing that words and places don't.
"""

from __future__ import annotations

import re
from itertools import combinations, product

import pytest

from reportgen.marks import COLOURS, mark_of
from reportgen.theme import load_theme
from tests.theme.themes import OURS

DARK = r"@media screen and \(prefers-color-scheme: dark\) \{\s*:root \{(.*?)\}\s*\}"
EACH = pytest.mark.parametrize(("theme", "scheme"), list(product(OURS, ("light", "dark"))))


def sheet(theme: str) -> str:
    styles = load_theme(None, theme).styles
    text = "\n".join(text for name, text in sorted(styles.items()) if not name.endswith("-print.css"))
    return re.sub(r"/\*.*?\*/", "", text, flags=re.S)


def variables(theme: str, scheme: str) -> dict[str, str]:
    """Colours by name; dark ones over the light ones they don't change."""
    light = "".join(re.findall(r"^:root \{(.*?)^\}", sheet(theme), re.S | re.M))
    dark = "".join(re.findall(DARK, sheet(theme), re.S))
    text = light + (dark if scheme == "dark" else "")
    return dict(re.findall(r"--([a-z0-9]+):\s*(#[0-9a-f]{6})", text))


def pairs_of_text(theme: str) -> set[tuple[str, str]]:
    """(text, ground) as the sheets can bring them together: a rule's own two, else any text on any ground."""
    blocks = re.findall(r"\{([^{}]*)\}", sheet(theme))
    colour = [re.search(r"(?<![\w-])color:\s*var\(--(\w+)\)", block) for block in blocks]
    ground = [re.search(r"(?<![\w-])background(?:-color)?:\s*var\(--(\w+)\)", block) for block in blocks]
    own = {(c[1], g[1]) for c, g in zip(colour, ground, strict=True) if c and g}
    texts = {c[1] for c, g in zip(colour, ground, strict=True) if c and not g} | {"ink"}
    grounds = {g[1] for c, g in zip(colour, ground, strict=True) if g and not c} | {"paper"}
    return own | {(c, g) for c in texts for g in grounds if not re.fullmatch(r"c\d", c)}


def luminance(colour: str) -> float:
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    r, g, b = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * r + 0.7152 * g + 0.0722 * b


def contrast(a: str, b: str) -> float:
    high, low = sorted((luminance(a), luminance(b)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def test_the_formula_gives_the_known_ratios() -> None:
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.005)
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.005)


@pytest.mark.parametrize("theme", OURS)
def test_the_pairs_are_found(theme: str) -> None:
    found = pairs_of_text(theme)
    assert found >= {(text, "paper") for text in ("ink", "quiet", "follow", "caution")}
    assert found >= {("quiet", "faint"), ("paper", "ink")}


@EACH
def test_every_text_can_be_read_on_every_ground(theme: str, scheme: str) -> None:
    found = variables(theme, scheme)
    assert [pair for pair in sorted(pairs_of_text(theme)) if contrast(found[pair[0]], found[pair[1]]) < 4.5] == []


@EACH
def test_lines_that_say_something_and_the_mark_of_focus_can_be_seen(theme: str, scheme: str) -> None:
    found = variables(theme, scheme)
    lines = set(re.findall(r"(?:border|outline|stroke|fill)[\w-]*:[^;{}]*var\(--(\w+)\)", sheet(theme)))
    assert lines >= {"ink", "follow", "caution"}
    meaning = sorted(lines - {"hair", "faint", "paper"})
    assert [(name, on) for name in meaning for on in ("paper", "faint") if contrast(found[name], found[on]) < 3] == []


@EACH
def test_every_contender_colour_can_be_seen_on_paper(theme: str, scheme: str) -> None:
    found = variables(theme, scheme)
    assert [n for n in range(1, 9) if contrast(found[f"c{n}"], found["paper"]) < 3] == []


@EACH
def test_the_first_four_contenders_differ_in_greyscale(theme: str, scheme: str) -> None:
    found = variables(theme, scheme)
    for a, b in combinations([found[f"c{n}"] for n in range(1, 5)], 2):
        assert contrast(a, b) >= 1.15


@pytest.mark.parametrize("theme", OURS)
def test_dark_is_drawn_for_every_colour(theme: str) -> None:
    dark = set(re.findall(r"--([a-z0-9]+):", "".join(re.findall(DARK, sheet(theme), re.S))))
    colours = set(variables(theme, "light"))
    assert colours >= {"paper", "ink", "c1", "c8"}
    assert dark >= colours


@pytest.mark.parametrize("theme", OURS)
def test_no_colour_stands_outside_the_table_of_colours(theme: str) -> None:
    """So that a theme which brings other colours brings all of them. On paper a frame around a photograph is grey."""
    outside = {
        name: found
        for name, text in load_theme(None, theme).styles.items()
        if name != "10-colours.css" and not name.endswith("-print.css")
        if (
            found := re.findall(
                r"#[0-9a-fA-F]{3,8}\b(?=[^{}]*\})|\brgba?\(|\bhsla?\(", re.sub(r"/\*.*?\*/", "", text, flags=re.S)
            )
        )
    }
    assert outside == {}


def test_the_two_themes_share_no_colour_of_the_page() -> None:
    one, other = (variables(theme, "light") for theme in OURS)
    page = ("paper", "ink", "quiet", "hair", "faint", "follow", "caution")
    assert [name for name in page if one[name] == other[name]] == []


def test_there_are_as_many_colours_in_drawings_as_in_the_style_sheet() -> None:
    assert len(COLOURS) == len([name for name in variables(OURS[0], "light") if re.fullmatch(r"c\d", name)])


def test_contenders_keep_a_letter_and_the_first_sixty_four_differ_in_colour_and_shape() -> None:
    assert [mark_of(n).letter for n in (0, 25, 26, 27, 51, 52, 701, 702)] == [
        *("A", "Z", "AA", "AB", "AZ", "BA", "ZZ", "AAA"),
    ]
    assert len({(mark_of(n).shape, mark_of(n).css_class) for n in range(64)}) == 64


def test_a_drawing_without_a_style_sheet_keeps_the_light_colours() -> None:
    light = variables(OURS[0], "light")
    assert {f"c{n}": colour for n, colour in enumerate(COLOURS, 1)} == {
        name: value for name, value in light.items() if re.fullmatch(r"c\d", name)
    }
