"""Type B parts of a difference or of a result: independent, centred, each of its own shape (JCGM 101:2008, 6.4)."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import fsum, hypot, isinf, sqrt

HALF_WIDTH = {"uniform": sqrt(3.0), "triangular": sqrt(6.0), "arcsine": sqrt(2.0)}  # of u
SHAPELESS = 0.02  # of the whole: the shape of a part as narrow as this shows nowhere
TAILLESS = 1e-5  # of the whole: as narrow a Student's t shows nowhere either, whatever its degrees of freedom
EXACT = 16  # so many of the widest parts keep their shape; the rest together are all but normal


@dataclass(frozen=True)
class Parts:
    """Half-widths of the parts of each shape, widest first; one sd for all normal ones; (size, degrees of freedom) of
    each Student's t, which is t times its size (JCGM 101, 6.4.9)."""

    uniform: tuple[float, ...] = ()
    normal: float = 0.0
    triangular: tuple[float, ...] = ()
    arcsine: tuple[float, ...] = ()
    student: tuple[tuple[float, float], ...] = ()

    def __bool__(self) -> bool:
        return bool(self.uniform or self.normal > 0.0 or self.triangular or self.arcsine or self.student)

    @property
    def bounded(self) -> float:
        """How far all parts with ends reach together."""
        return fsum((*self.uniform, *self.triangular, *self.arcsine))

    def divided(self, unit: float) -> Parts:
        """The parts in another unit, to ten digits: what differs by rounding of the last place is equal then."""
        uniform, triangular, arcsine = (
            tuple([_ten_digits(a / unit) for a in halves]) for halves in (self.uniform, self.triangular, self.arcsine)
        )
        student = tuple([(_ten_digits(size / unit), degrees) for size, degrees in self.student])
        return Parts(uniform, _ten_digits(self.normal / unit), triangular, arcsine, student)


NOTHING = Parts()


def parts_of(
    uniform_sds: Iterable[float] = (),
    normal_sds: Iterable[float] = (),
    triangular_sds: Iterable[float] = (),
    arcsine_sds: Iterable[float] = (),
    student: Iterable[tuple[float, float]] = (),
) -> Parts:
    """Parts from standard uncertainties, whatever their sign; zeros fall out, and of many the small join the normal."""
    with_ends = [(abs(u), "uniform") for u in uniform_sds if u]
    with_ends += [(abs(u), "triangular") for u in triangular_sds if u]
    with_ends += [(abs(u), "arcsine") for u in arcsine_sds if u]
    normal = [u for u in normal_sds if u]
    tailed = []
    for u, degrees in student:
        if u and isinf(degrees):
            normal.append(u)
        elif u:
            tailed.append((abs(u), degrees))
    if not with_ends and not tailed:
        return Parts(normal=hypot(*normal)) if normal else NOTHING
    with_ends.sort(reverse=True)
    sizes = [u for u, _ in with_ends]
    whole = hypot(*normal, *sizes, *[u for u, _ in tailed])
    kept = min(EXACT, sum([u > SHAPELESS * whole for u in sizes]))
    normal += sizes[kept:] + [u for u, _ in tailed if u <= TAILLESS * whole]
    halves: dict[str, list[float]] = {shape: [] for shape in HALF_WIDTH}
    for u, shape in with_ends[:kept]:
        halves[shape].append(u * HALF_WIDTH[shape])
    uniform, triangular, arcsine = map(tuple, halves.values())
    student = tuple(sorted([part for part in tailed if part[0] > TAILLESS * whole]))
    return Parts(uniform, hypot(*normal), triangular, arcsine, student)


def joined(*several: Parts) -> Parts:
    """All parts of several together."""
    return parts_of(
        [a / HALF_WIDTH["uniform"] for parts in several for a in parts.uniform],
        [parts.normal for parts in several],
        [a / HALF_WIDTH["triangular"] for parts in several for a in parts.triangular],
        [a / HALF_WIDTH["arcsine"] for parts in several for a in parts.arcsine],
        [part for parts in several for part in parts.student],
    )


def with_part(parts: Parts, normal_sd: float) -> Parts:
    """The parts and one more normal one."""
    return joined(parts, Parts(normal=normal_sd)) if normal_sd else parts


def sd_of(parts: Parts) -> float:
    """Combined standard uncertainty of the sum (JCGM 100, 5.1.2): of Student's t its size, of which it is t times."""
    sds = [a / HALF_WIDTH["uniform"] for a in parts.uniform]
    sds += [a / HALF_WIDTH["triangular"] for a in parts.triangular]
    sds += [a / HALF_WIDTH["arcsine"] for a in parts.arcsine]
    return hypot(*sds, parts.normal, *(size for size, _ in parts.student))  # squares of tiny parts would vanish


def _ten_digits(x: float) -> float:
    return float(f"{x:.10g}")
