"""What an ordinary campaign must never load: it would cost each compile a second."""

import subprocess
import sys

ORDINARY = """
import sys
from reportgen.metrology import Instrument, Size, evaluate, observed, parse, parse_unit
scale = Instrument("scale", resolution=Size(0.1, parse_unit("g")), absolute=Size(0.3, parse_unit("g")))
readings = {n: observed(x, parse_unit("g"), scale, "1", n) for n, x in (("before", 231.4), ("after", 217.1))}
class Bench:
    def value(self, name): return readings[name]
print(round(evaluate(parse("before - after"), Bench()).value, 9), {"pint", "numpy", "scipy"} & set(sys.modules))
"""


def test_grams_and_a_scale_load_neither_pint_nor_numpy_nor_scipy() -> None:
    done = subprocess.run([sys.executable, "-c", ORDINARY], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "14.3 set()"
