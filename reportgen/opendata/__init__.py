"""A campaign's data for others to take: tables, what describes them, how to check and to cite them.

In: what results.json holds, the readings, what was declared. Out: files, byte for byte the same for the same input.
Never knows pages or the disk (but for the folder in which DuckDB writes Parquet).
"""

from reportgen.opendata.files import DataFile as DataFile
from reportgen.opendata.files import OpenData as OpenData
from reportgen.opendata.files import PassedOn as PassedOn
from reportgen.opendata.open_data import open_data as open_data
