"""Raw files → readings, each with its file and line.

In: `Declared` and tables. Out: `Readings`. Never computes anything.
"""

from reportgen.intake.layouts.instruments import with_instruments
from reportgen.intake.read import damage, read_readings
from reportgen.intake.reading import RawFile, Reading, ReadingKey, Readings

__all__ = ["RawFile", "Reading", "ReadingKey", "Readings", "damage", "read_readings", "with_instruments"]
