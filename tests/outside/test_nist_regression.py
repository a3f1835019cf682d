"""Least squares against the NIST Statistical Reference Datasets, linear regression, to all digits certified.

Source: NIST StRD, https://www.itl.nist.gov/div898/strd/lls/lls.shtml: data and certified values of each set by its name.
Norris is read from the file that the scipy wheel carries, Longley's data from statsmodels; the others stand below as
published. Certified residual deviations and R² of sets other than Norris: from memory, and they agree to their last digit.
"""

from __future__ import annotations

import math
from decimal import Decimal
from importlib.resources import files

import pytest

from reportgen.metrology import combined_standard_uncertainty, fit
from reportgen.metrology.orthogonal import as_fraction, dot, orthogonal, root

DIGITS = 2e-14  # certified to 15 significant digits, some of them printed with fewer

NOINT1 = "130 60 131 61 132 62 133 63 134 64 135 65 136 66 137 67 138 68 139 69 140 70"
NOINT2 = "3 4 4 5 4 6"
PONTIUS = """
.11019 150000 .21956 300000 .32949 450000 .43899 600000 .54803 750000 .65694 900000 .76562 1050000 .87487 1200000
.98292 1350000 1.09146 1500000 1.20001 1650000 1.30822 1800000 1.41599 1950000 1.52399 2100000 1.63194 2250000
1.73947 2400000 1.84646 2550000 1.95392 2700000 2.06128 2850000 2.16844 3000000
.11052 150000 .22018 300000 .32939 450000 .43886 600000 .54798 750000 .65739 900000 .76596 1050000 .87474 1200000
.98300 1350000 1.09150 1500000 1.20004 1650000 1.30818 1800000 1.41613 1950000 1.52408 2100000 1.63159 2250000
1.73965 2400000 1.84696 2550000 1.95445 2700000 2.06177 2850000 2.16829 3000000
"""
FILIP = """
0.8116 -6.860120914 0.9072 -4.324130045 0.9052 -4.358625055 0.9039 -4.358426747 0.8053 -6.955852379
0.8377 -6.661145254 0.8667 -6.355462942 0.8809 -6.118102026 0.7975 -7.115148017 0.8162 -6.815308569
0.8515 -6.519993057 0.8766 -6.204119983 0.8885 -5.853871964 0.8859 -6.109523091 0.8959 -5.79832982
0.8913 -5.482672118 0.8959 -5.171791386 0.8971 -4.851705903 0.9021 -4.517126416 0.909 -4.143573228
0.9139 -3.709075441 0.9199 -3.499489089 0.8692 -6.300769497 0.8872 -5.953504836 0.89 -5.642065153
0.891 -5.031376979 0.8977 -4.680685696 0.9035 -4.329846955 0.9078 -3.928486195 0.7675 -8.56735134
0.7705 -8.363211311 0.7713 -8.107682739 0.7736 -7.823908741 0.7775 -7.522878745 0.7841 -7.218819279
0.7971 -6.920818754 0.8329 -6.628932138 0.8641 -6.323946875 0.8804 -5.991399828 0.7668 -8.781464495
0.7633 -8.663140179 0.7678 -8.473531488 0.7697 -8.247337057 0.77 -7.971428747 0.7749 -7.676129393
0.7796 -7.352812702 0.7897 -7.072065318 0.8131 -6.774174009 0.8498 -6.478861916 0.8741 -6.159517513
0.8061 -6.835647144 0.846 -6.53165267 0.8751 -6.224098421 0.8856 -5.910094889 0.8919 -5.598599459
0.8934 -5.290645224 0.894 -4.974284616 0.8957 -4.64454848 0.9047 -4.290560426 0.9129 -3.885055584
0.9209 -3.408378962 0.9219 -3.13200249 0.7739 -8.726767166 0.7681 -8.66695597 0.7665 -8.511026475
0.7703 -8.165388579 0.7702 -7.886056648 0.7761 -7.588043762 0.7809 -7.283412422 0.7961 -6.995678626
0.8253 -6.691862621 0.8602 -6.392544977 0.8809 -6.067374056 0.8301 -6.684029655 0.8664 -6.378719832
0.8834 -6.065855188 0.8898 -5.752272167 0.8964 -5.132414673 0.8963 -4.811352704 0.9074 -4.098269308
0.9119 -3.66174277 0.9228 -3.2644011
"""
# y at x = 0, 1, … 20
WAMPLER_1 = """1 6 63 364 1365 3906 9331 19608 37449 66430 111111 177156 271453 402234 579195 813616 1118481 1508598 2000719
2613660 3368421"""
WAMPLER_2 = """1.00000 1.11111 1.24992 1.42753 1.65984 1.96875 2.38336 2.94117 3.68928 4.68559 6.00000 7.71561 9.92992 12.75603
16.32384 20.78125 26.29536 33.05367 41.26528 51.16209 63.00000"""
WAMPLER_3 = """760 -2042 2111 -1684 3888 1858 11379 17560 39287 64382 113159 175108 273291 400186 581243 811568 1121004 1506550
2002767 2611612 3369180"""
WAMPLER_4 = """75901 -204794 204863 -204436 253665 -200894 214131 -185192 221249 -138370 315911 -27644 455253 197434 783995
608816 1370781 1303798 2205519 2408860 3444321"""
WAMPLER_5 = """7590001 -20479994 20480063 -20479636 25231365 -20476094 20489331 -20460392 18417449 -20413570 20591111 -20302844
18651453 -20077766 21059195 -19666384 26348481 -18971402 22480719 -17866340 10958421"""


def pairs(text: str) -> tuple[list[Decimal], list[Decimal]]:
    """x and y of pairs printed as y x."""
    numbers = [Decimal(word) for word in text.split()]
    return numbers[1::2], numbers[::2]


def certified(found: fit.Fitted, parameters: list[float], deviations: list[float], s: float, r_squared: float) -> None:
    assert [c.value for c in found.coefficients] == pytest.approx(parameters, rel=DIGITS)
    u = [combined_standard_uncertainty(c) for c in found.coefficients]
    assert u == pytest.approx(deviations, rel=DIGITS)
    assert found.residual_sd == pytest.approx(s, rel=DIGITS)
    assert found.r_squared == pytest.approx(r_squared, rel=DIGITS)


def test_norris() -> None:
    lines = (files("scipy") / "stats/tests/data/nist_linregress/Norris.dat").read_text().splitlines()
    xs, ys = pairs(" ".join(lines[60:96]))
    assert (len(xs), str(ys[0]), str(xs[0])) == (36, "0.1", "0.2")
    found = fit.line(xs, ys, name="Norris")
    certified(
        found, [-0.262323073774029, 1.00211681802045], [0.232818234301152, 0.429796848199937e-03],
        0.884796396144373, 0.999993745883712,
    )  # fmt: skip
    assert found.degrees == 34


def test_no_intercept_1() -> None:
    found = fit.line_through_origin(*pairs(NOINT1), name="NoInt1")
    certified(found, [2.07438016528926], [0.165289256198347e-01], 3.56753034006338, 0.999365492298663)
    assert found.degrees == 10


def test_no_intercept_2() -> None:
    found = fit.line_through_origin(*pairs(NOINT2), name="NoInt2")
    certified(found, [0.727272727272727], [0.420827318078432e-01], 0.369274472937998, 0.993348115299335)


def test_pontius() -> None:
    found = fit.polynomial(*pairs(PONTIUS), 2, name="Pontius")
    certified(
        found, [0.673565789473684e-03, 0.732059160401003e-06, -0.316081871345029e-14],
        [0.107938612033077e-03, 0.157817399981659e-09, 0.486652849992036e-16], 0.205177424076185e-03, 0.999999900178537,
    )  # fmt: skip


FILIP_PARAMETERS = [
    -1467.48961422980, -2772.17959193342, -2316.37108160893, -1127.97394098372, -354.478233703349, -75.1242017393757,
    -10.8753180355343, -1.06221498588947, -0.670191154593408e-01, -0.246781078275479e-02, -0.402962525080404e-04,
]  # fmt: skip


def test_filip_with_its_power_of_ten() -> None:
    """Eleven parameters, nearly dependent: programs lose seven digits here and more."""
    found = fit.polynomial(*pairs(FILIP), 10, name="Filip")
    certified(
        found, FILIP_PARAMETERS,
        [298.084530995537, 559.779865474950, 466.477572127796, 227.204274477751, 71.6478660875927, 15.2897178747400,
         2.23691159816033, 0.221624321934227, 0.142363763154724e-01, 0.535617408889821e-03, 0.896632837373868e-05],
        0.334801051324544e-02, 0.996727416185620,
    )  # fmt: skip


def test_filip_in_binary_has_the_digits_that_its_rounded_points_leave() -> None:
    """A decimal such as −6.860120914 is no number a computer holds; the ill condition (1e15) makes of that what it does."""
    xs, ys = pairs(FILIP)
    found = fit.polynomial([float(x) for x in xs], [float(y) for y in ys], 10, name="Filip")
    assert [c.value for c in found.coefficients] == pytest.approx(FILIP_PARAMETERS, rel=1e-7)


@pytest.mark.parametrize(
    ("ys", "parameters", "deviations", "s", "r_squared"),
    [
        pytest.param(WAMPLER_1, [1.0] * 6, [0.0] * 6, 0.0, 1.0, id="1"),
        pytest.param(WAMPLER_2, [10.0**-k for k in range(6)], [0.0] * 6, 0.0, 1.0, id="2"),
        pytest.param(
            WAMPLER_3, [1.0] * 6,
            [2152.32624678170, 2363.55173469681, 779.343524331583, 101.475507550350, 5.64566512170752, 0.112324854679312],
            2360.14502379268, 0.999995559025820, id="3",
        ),
        pytest.param(
            WAMPLER_4, [1.0] * 6,
            [215232.624678170, 236355.173469681, 77934.3524331583, 10147.5507550350, 564.566512170752, 11.2324854679312],
            236014.502379268, 0.957478440825662, id="4",
        ),
        pytest.param(
            WAMPLER_5, [1.0] * 6,
            [21523262.4678170, 23635517.3469681, 7793435.24331583, 1014755.07550350, 56456.6512170752, 1123.24854679312],
            23601450.2379268, 0.224668921574940e-02, id="5",
        ),
    ],
)  # fmt: skip
def test_wampler(ys: str, parameters: list[float], deviations: list[float], s: float, r_squared: float) -> None:
    found = fit.polynomial(range(21), [Decimal(y) for y in ys.split()], 5, name="Wampler")
    certified(found, parameters, deviations, s, r_squared)


def test_longley_with_six_variables() -> None:
    """The sums under a fit, on several variables: estimates from the orthogonal columns, last parameter first."""
    text = (files("statsmodels") / "datasets/longley/longley.csv").read_text()
    rows = [[as_fraction(Decimal(cell)) for cell in line.split(",")[1:]] for line in text.splitlines()[1:]]
    ys, design = [row[0] for row in rows], [[as_fraction(1), *row[1:]] for row in rows]
    columns = orthogonal(design)
    found = [dot(c, ys) / d for c, d in zip(zip(*columns.rows, strict=True), columns.squares, strict=True)]
    left = [y - dot(row, found) for row, y in zip(columns.rows, ys, strict=True)]
    s = root(dot(left, left) / (len(ys) - 7))
    assert s == pytest.approx(304.854073561965, rel=DIGITS)
    parameters = [float(dot(columns.seen([as_fraction(int(j == k)) for j in range(7)]), found)) for k in range(7)]
    assert parameters == pytest.approx(
        [-3482258.63459582, 15.0618722713733, -0.358191792925910e-01, -2.02022980381683, -1.03322686717359,
         -0.511041056535807e-01, 1829.15146461355], rel=DIGITS,
    )  # fmt: skip
    assert s / math.sqrt(columns.squares[-1]) == pytest.approx(455.478499142212, rel=DIGITS)
