"""Every result of the demonstration worked out again from what its page prints, and from nothing else.

Sources: JCGM 100:2008, 4.2 (mean, s, s/√n), 5.1.2 and 5.1.3 (u as the root of squares of c·u(x)), 7.2.6 (digits);
JCGM 101:2008, 5 (distributions are convolved) with Student's t of scipy and uniform densities on a grid of our own here;
units by Pint. Tolerance: the last digit that is printed.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import reduce
from math import log10, prod, sqrt
from pathlib import Path

import numpy as np
import pint
import pytest
from scipy import stats

from tests.pages.reading import Element, read

UNITS = pint.UnitRegistry()
NUMBER = r"[−+]?\d[\d\u202f]*(?:\.\d+)?"
RAISED = str.maketrans("⁻⁰¹²³⁴⁵⁶⁷⁸⁹", "-0123456789")


def number(text: str) -> float:
    return float(text.replace("−", "-").replace("\u202f", ""))


def first_number(text: str) -> float:
    found = re.search(NUMBER, text)
    assert found, text
    return number(found[0])


def place(text: str) -> float:
    """One in the last digit of the first number printed."""
    found = re.search(NUMBER, text)
    assert found, text
    return float(10.0 ** -len(found[0].partition(".")[2]))


@dataclass(frozen=True)
class Line:
    known: str
    weighed: str
    size: str


@dataclass(frozen=True)
class Shown:
    where: str
    working: Element

    @property
    def text(self) -> str:
        return self.working.text

    @property
    def result(self) -> str:
        (found,) = [p.text for p in self.working.all("p") if p.text.startswith("Result:")]
        return found

    @property
    def lines(self) -> list[Line]:
        rows = self.working.one("table", class_="budget").one("tbody").all("tr")
        return [Line(*(cell.text for cell in row.all("td")[:3])) for row in rows]


@pytest.fixture(scope="module")
def shown(demo_site: Path) -> list[Shown]:
    pages = sorted((demo_site / "demo-campaign" / "tests").glob("*.html"))
    found = [
        Shown(f"{page.stem} {working.attrs['id']}", working)
        for page in pages
        for working in read(page.read_text(encoding="utf-8")).all("div", class_="worked")
        if working.all("table", class_="budget")
    ]
    assert len(found) > 40
    return found


def test_a_mean_is_that_of_the_passes_printed(shown: list[Shown]) -> None:
    found = 0
    for one in shown:
        for values, n, mean in re.findall(rf"\(([^()]+)\) ÷ (\d+) = ({NUMBER})", one.text):
            each = [number(v) for v in values.split(" + ")]
            assert len(each) == int(n)
            assert sum(each) / len(each) == pytest.approx(number(mean), abs=0.51 * place(mean)), one.where
            found += 1
    assert found > 15


def test_a_lines_size_is_what_stands_beside_it_multiplied(shown: list[Shown]) -> None:
    found = 0
    for one in shown:
        for line in (x for x in one.lines if x.weighed):
            if " ÷ √" in line.weighed:
                u, _, n = line.weighed.partition(" ÷ √")
                size = first_number(u) / sqrt(int(n))
            else:
                factors = line.weighed.split(" × ")
                roots = [f for f in factors if f.startswith("√")]
                size = prod(first_number(f) for f in factors if f not in roots) * sqrt(prod(int(f[1:]) for f in roots))
            printed = first_number(line.size)  # rounded, as its factors are: both roundings add up
            assert abs(size) == pytest.approx(printed, abs=4e-4 * printed + 0.51 * place(line.size)), (
                f"{one.where}: {line}"
            )
            found += 1
    assert found > 80


def test_all_lines_together_are_the_standard_uncertainty(shown: list[Shown]) -> None:
    for one in shown:
        sizes = [first_number(line.size) for line in one.lines]
        total = sqrt(sum(x * x for x in sizes))
        (printed,) = re.findall(rf"Standard uncertainty ({NUMBER})", one.result)
        whole = one.working.one("tfoot").all("td")[2].text
        assert total == pytest.approx(first_number(whole), abs=len(sizes) * place(whole)), one.where
        if "lies more than a tenth from that" in one.result:  # u is then that of the draws, and the page says so
            (printed,) = re.findall(rf"made of, below, is told to first order, and adds up to ({NUMBER})", one.result)
        assert total == pytest.approx(number(printed), abs=0.51 * place(printed)), one.where


def density(line: Line, width: float, cells: int) -> np.ndarray:
    """Probabilities of one type B line on cells of `width`, its middle in the middle: of all its inputs, where several
    are joined in it."""
    at = (np.arange(cells) - cells // 2) * width
    count = int(re.findall(r"√(\d+)", f"{line.weighed} √1")[0])
    size = first_number(line.size) / sqrt(count)
    if "any value as likely" in line.known:
        spread = stats.uniform(-size * sqrt(3), 2 * size * sqrt(3))
    else:
        assert "bell curve" in line.known, line
        spread = stats.norm(0, size)
    each = np.asarray(spread.cdf(at + width / 2) - spread.cdf(at - width / 2))
    return reduce(lambda a, b: np.convolve(a, b, "same"), [each] * count)


def holds(one: Shown, half: float) -> float:
    """The chance that the sum of all lines stays within ±half: type B by repeated convolution, then Student's t."""
    t_lines = [line for line in one.lines if "Student’s t" in line.known]
    rest = [line for line in one.lines if line not in t_lines]
    width, cells = half / 400, 4001
    middle = np.zeros(cells)
    middle[cells // 2] = 1
    sums = reduce(lambda a, b: np.convolve(a, b, "same"), [density(line, width, cells) for line in rest], middle)
    at = (np.arange(cells) - cells // 2) * width
    if not t_lines:
        inside = np.abs(at) <= half * (1 + 1e-9)
        edge = np.abs(np.abs(at) - half) < width / 2
        return float(sums[inside].sum() - sums[edge].sum() / 2)
    (line,) = t_lines
    (degrees,) = re.findall(r"([\d.]+) degrees? of freedom", line.known)
    scale = sqrt(sum(first_number(x.size) ** 2 for x in t_lines))
    t = stats.t(float(degrees), scale=scale)
    return float(np.sum(sums * (t.cdf(half - at) - t.cdf(-half - at))))


def test_the_range_holds_95_in_100_of_what_the_lines_say(shown: list[Shown]) -> None:
    found = 0
    for one in shown:
        reach = re.findall(rf"range reaches ({NUMBER}).{{1,12}}? either way", one.text)
        ends = re.findall(rf"\(({NUMBER}) to ({NUMBER})\)", one.result)
        if not reach or not ends:
            continue
        half, (low, high) = number(reach[0]), (number(x) for x in ends[0])
        assert (high - low) / 2 == pytest.approx(half, abs=1.01 * place(ends[0][0])), one.where
        assert holds(one, half) == pytest.approx(0.95, abs=0.003), one.where
        found += 1
    assert found > 40


def value(of: Element) -> pint.Quantity:
    """A formula's piece with its numbers and units, as Pint has them."""
    name = of.name
    if name == "mn":
        text = of.text
        (figure,) = re.findall(rf"^{NUMBER}", text)
        unit = re.sub(r"[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+", lambda m: f"**{m[0].translate(RAISED)}", text[len(figure) :].strip())
        unit = unit.replace("·", "*").replace("%", "percent")
        return UNITS.Quantity(number(figure), unit or "dimensionless")
    if name == "mfrac":
        return value(of.children[0]) / value(of.children[1])
    if name == "mrow" or name == "math":
        terms: list[pint.Quantity] = []
        sign = "+"
        for piece in of.children:
            if piece.name == "mo":
                sign = piece.text
            elif sign == "×":
                terms[-1] = terms[-1] * value(piece)
            else:
                terms.append(-value(piece) if sign == "−" else value(piece))
        return sum(terms[1:], start=terms[0])
    raise AssertionError(f"a formula of the demonstration has {name}")


def test_a_formula_gives_its_value_with_the_values_in_it(shown: list[Shown]) -> None:
    found = 0
    for one in shown:
        for row in one.working.all("tr", class_="sum"):
            left, right = row.all("math")
            if "lg" in "".join(x.text for x in left.all("mi")):
                continue  # levels: worked out below
            if "(" in {x.text for x in left.all("mo")}:
                continue  # a function of several names, which Pint doesn't know
            made, told = value(left), value(right.one("mn"))
            assert made.to(told.units).magnitude == pytest.approx(told.magnitude, rel=2e-5), f"{one.where}: {row.text}"
            found += 1
    assert found > 30


def bare(of: Element) -> float:
    """A piece of a formula of levels, as a calculator has it: 10 lg(…) of powers of ten."""
    if of.name == "mn":
        return number(of.text)
    if of.name == "msup":
        return bare(of.children[0]) ** bare(of.children[1])
    total, sign, logarithm = 0.0, "+", False
    for piece in of.children:
        if piece.name == "mi":
            assert piece.text.replace("\u2009", " ") == "10 lg"
            logarithm = True
        elif piece.name == "mo":
            sign = piece.text if piece.text in "+−×" else sign
        else:
            x = bare(piece)
            total = total * x if sign == "×" else total - x if sign == "−" else total + x
    return 10 * log10(total) if logarithm else total


def test_a_formula_of_levels_gives_its_value_on_a_calculator(shown: list[Shown]) -> None:
    found = 0
    for one in shown:
        for row in one.working.all("tr", class_="sum"):
            left, right = row.all("math")
            if "lg" in "".join(x.text for x in left.all("mi")):
                printed = right.one("mn").text
                assert bare(left) == pytest.approx(first_number(printed), abs=0.51 * place(printed)), one.where
                found += 1
    assert found > 2
