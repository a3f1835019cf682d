"""Contenders are told apart by colour, to eyes of every kind and in greyscale; where colours come round, by shape and letter.

How far apart colours must lie is common practice, no source: a CIEDE2000 distance of about 1 is seen only side by side, and marks
of a few px want ten and more. Held here in both themes and both schemes: 12 to eyes that lack a cone and 17 to all others,
15 among the first four; in greyscale 14 in lightness between any two that follow one another, 3 between any two at all.
"""

from __future__ import annotations

from itertools import combinations, pairwise, product

import pytest

from reportgen.charts.draw import figures
from reportgen.marks import COLOURS, SHAPES, mark_of
from tests.charts.bench_of_results import campaign, contenders, measured, quantity
from tests.charts.pictures import layer
from tests.theme.seeing import EYES, apart, seen
from tests.theme.test_colours import contrast, variables
from tests.theme.themes import OURS

# Sharma, Wu and Dalal 2005, table 1: L, a, b of one and of the other, and their distance.
PUBLISHED = [
    tuple(map(float, line.split()))
    for line in """
    50.0000 2.6772 -79.7751 50.0000 0.0000 -82.7485 2.0425
    50.0000 3.1571 -77.2803 50.0000 0.0000 -82.7485 2.8615
    50.0000 2.8361 -74.0200 50.0000 0.0000 -82.7485 3.4412
    50.0000 -1.3802 -84.2814 50.0000 0.0000 -82.7485 1.0000
    50.0000 -1.1848 -84.8006 50.0000 0.0000 -82.7485 1.0000
    50.0000 -0.9009 -85.5211 50.0000 0.0000 -82.7485 1.0000
    50.0000 0.0000 0.0000 50.0000 -1.0000 2.0000 2.3669
    50.0000 -1.0000 2.0000 50.0000 0.0000 0.0000 2.3669
    50.0000 2.4900 -0.0010 50.0000 -2.4900 0.0009 7.1792
    50.0000 2.4900 -0.0010 50.0000 -2.4900 0.0010 7.1792
    50.0000 2.4900 -0.0010 50.0000 -2.4900 0.0011 7.2195
    50.0000 2.4900 -0.0010 50.0000 -2.4900 0.0012 7.2195
    50.0000 -0.0010 2.4900 50.0000 0.0009 -2.4900 4.8045
    50.0000 -0.0010 2.4900 50.0000 0.0010 -2.4900 4.8045
    50.0000 -0.0010 2.4900 50.0000 0.0011 -2.4900 4.7461
    50.0000 2.5000 0.0000 50.0000 0.0000 -2.5000 4.3065
    50.0000 2.5000 0.0000 73.0000 25.0000 -18.0000 27.1492
    50.0000 2.5000 0.0000 61.0000 -5.0000 29.0000 22.8977
    50.0000 2.5000 0.0000 56.0000 -27.0000 -3.0000 31.9030
    50.0000 2.5000 0.0000 58.0000 24.0000 15.0000 19.4535
    50.0000 2.5000 0.0000 50.0000 3.1736 0.5854 1.0000
    50.0000 2.5000 0.0000 50.0000 3.2972 0.0000 1.0000
    50.0000 2.5000 0.0000 50.0000 1.8634 0.5757 1.0000
    50.0000 2.5000 0.0000 50.0000 3.2592 0.3350 1.0000
    60.2574 -34.0099 36.2677 60.4626 -34.1751 39.4387 1.2644
    63.0109 -31.0961 -5.8663 62.8187 -29.7946 -4.0864 1.2630
    61.2901 3.7196 -5.3901 61.4292 2.2480 -4.9620 1.8731
    35.0831 -44.1164 3.7933 35.0232 -40.0716 1.5901 1.8645
    22.7233 20.0904 -46.6940 23.0331 14.9730 -42.5619 2.0373
    36.4612 47.8580 18.3852 36.2715 50.5065 21.2231 1.4146
    90.8027 -2.0831 1.4410 91.1528 -1.6435 0.0447 1.4441
    90.9257 -0.5406 -0.9208 88.6381 -0.8985 -0.7239 1.5381
    6.7747 -0.2908 -2.4247 5.8714 -0.0985 -2.2286 0.6377
    2.0776 0.0795 -1.1350 0.9033 -0.0636 -0.5514 0.9082
    """.strip().splitlines()
]
EACH = pytest.mark.parametrize(("theme", "scheme"), list(product(OURS, ("light", "dark"))))
BLIND = [eyes for eyes in EYES if eyes != "all three cones"]


def colours(theme: str, scheme: str) -> list[str]:
    found = variables(theme, scheme)
    return [found[f"c{n}"] for n in range(1, len(COLOURS) + 1)]


def close(among: list[str], least: float, eyes: str) -> list[tuple[str, str, float]]:
    """The pairs nearer to one another than `least` to these eyes."""
    pairs = ((a, b, apart(seen(a, eyes), seen(b, eyes))) for a, b in combinations(among, 2))
    return [(a, b, round(d, 1)) for a, b, d in pairs if d < least]


@pytest.mark.parametrize("pair", PUBLISHED)
def test_the_distance_is_as_published(pair: tuple[float, ...]) -> None:
    one, other = pair[0:3], pair[3:6]
    assert len(PUBLISHED) == 34
    assert apart(one, other) == pytest.approx(pair[6], abs=0.00005)  # type: ignore[arg-type]  # three numbers each
    assert apart(other, one) == pytest.approx(pair[6], abs=0.00005)  # type: ignore[arg-type]  # three numbers each


@pytest.mark.parametrize("eyes", list(EYES))
def test_grey_stays_grey_to_all_eyes(eyes: str) -> None:
    """In the table of Machado, Oliveira and Fernandes the rows add up to 1, so that what is white stays white."""
    for row in EYES[eyes]:
        assert sum(row) == pytest.approx(1.0, abs=2e-6)
    for grey in ("#000000", "#777777", "#ffffff"):
        assert apart(seen(grey, eyes), seen(grey)) < 0.1


def test_red_and_green_of_one_lightness_fall_together_without_a_cone_for_red_or_green() -> None:
    """Common practice, no source: to whom the second cone lacks, these two are nearly one; to whom the third, they aren't."""
    red, green = "#b5501f", "#717c1e"
    assert apart(seen(red), seen(green)) > 30
    assert apart(seen(red, "deuteranopia"), seen(green, "deuteranopia")) < 8
    assert apart(seen(red, "tritanopia"), seen(green, "tritanopia")) > 25


@EACH
@pytest.mark.parametrize("eyes", BLIND)
def test_any_two_of_eight_contenders_differ_to_eyes_that_lack_a_cone(theme: str, scheme: str, eyes: str) -> None:
    found = colours(theme, scheme)
    assert close(found, 12, eyes) == []
    assert close(found[:4], 15, eyes) == []


@EACH
def test_any_two_of_eight_contenders_differ(theme: str, scheme: str) -> None:
    assert close(colours(theme, scheme), 17, "all three cones") == []


@EACH
def test_contenders_differ_in_greyscale_most_where_they_follow_one_another(theme: str, scheme: str) -> None:
    light = [seen(c)[0] for c in colours(theme, scheme)]
    assert [(a, b) for a, b in pairwise(light) if abs(a - b) < 14] == []
    assert [(a, b) for a, b in combinations(light, 2) if abs(a - b) < 3] == []


@EACH
def test_every_colour_stands_out_from_paper_and_from_what_is_marked(theme: str, scheme: str) -> None:
    """WCAG 2.2, 1.4.11."""
    found = variables(theme, scheme)
    grounds = (found["paper"], found["faint"])
    assert [c for c in colours(theme, scheme) if min(contrast(c, ground) for ground in grounds) < 3] == []


def test_where_colours_come_round_shapes_do_not() -> None:
    marks = [mark_of(n) for n in range(40)]
    assert len(set(SHAPES)) == len(COLOURS) == 8
    for one, other in combinations(marks, 2):
        assert one.letter != other.letter
        assert (one.ink, one.shape) != (other.ink, other.shape)
        assert (one.ink == other.ink) == (one.css_class == other.css_class)


def test_a_contender_keeps_colour_shape_and_letter_in_every_chart_of_a_campaign_whatever_its_place() -> None:
    tried = contenders("Corvane Sol", "Ostler Mk II", "Tamsin")
    weight, heat = quantity("weight", "g"), quantity("heat", "kJ", "higher")
    results = [
        (weight, [measured(weight, c.id, [v, v + 0.1], 0.3, rank=(n, n)) for c, v, n in zip(tried, (9, 5, 7), (3, 1, 2), strict=True)]),
        (heat, [measured(heat, c.id, [v, v + 0.1], 0.3, rank=(n, n)) for c, v, n in zip(tried, (9, 5, 7), (1, 3, 2), strict=True)]),
    ]  # fmt: skip
    drawn = figures(*campaign(tried, results))
    seen_as: dict[str, set[tuple[str, str, str]]] = {}
    for q in ("weight", "heat"):
        names, letters, marks = (layer(drawn[q].svg, name) for name in ("names", "letters", "marks"))
        assert len(names) == 3
        for name, letter, mark in zip(names, letters, marks, strict=True):
            seen_as.setdefault(name.text, set()).add((letter.text, mark.said["fill"], mark.said["d"]))
    assert [name.text for name in layer(drawn["weight"].svg, "names")] != [
        n.text for n in layer(drawn["heat"].svg, "names")
    ]
    assert all(len(looks) == 1 for looks in seen_as.values())
    assert len({look for looks in seen_as.values() for look in looks}) == 3
