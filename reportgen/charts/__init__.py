"""Results drawn: one file a kind of chart.

In: results. Out: `Figure` (SVG, alternative text, rows). Never knows views or templates.
"""

from reportgen.charts.figure import Drawn, Figure

__all__ = ["Drawn", "Figure"]
