"""A file that holds cells rather than text → one sheet of it."""

from __future__ import annotations

from pathlib import PurePosixPath

from reportgen.finding import Place, refuse
from reportgen.intake.reading import FileForm
from reportgen.intake.sheets.ods import read_ods
from reportgen.intake.sheets.package import OTHER_SPREADSHEETS, other_spreadsheet
from reportgen.intake.sheets.sheet import Sheet
from reportgen.intake.sheets.xlsx import read_xlsx
from reportgen.sources import Workspace, path_of, read_bytes

_FORMS: dict[str, FileForm] = {
    ".xlsx": "spreadsheet",
    ".xlsm": "spreadsheet",
    ".ods": "spreadsheet",
    ".parquet": "parquet",
}
ENDINGS = (*_FORMS, *OTHER_SPREADSHEETS)


def form_of(file: str) -> FileForm:
    """What sort of file this is by its name; "text" for whatever isn't one of cells."""
    return _FORMS.get(PurePosixPath(file).suffix.lower(), "text")


def open_sheet(ws: Workspace, file: str, sheet: str = "") -> Sheet:
    """The sheet of that name, else the only visible one with cells; of a Parquet file all rows. Raises `Refused`."""
    ending = PurePosixPath(file).suffix.lower()
    data = read_bytes(ws, file)
    if ending == ".parquet":
        from reportgen.intake.sheets.parquet import read_parquet

        if sheet:
            raise without_sheets(file, sheet)
        return read_parquet(path_of(ws, file), data, file)
    if ending == ".ods":
        return read_ods(data, file, sheet)
    if ending in OTHER_SPREADSHEETS:
        raise other_spreadsheet(file, ending)
    return read_xlsx(data, file, sheet)


def without_sheets(file: str, sheet: str) -> Exception:
    """`sheet:` beside a file that has none."""
    return refuse(
        "no-sheets",
        Place(file),
        f"{file} has no sheets, and “{sheet}” is asked for.",
        "Only spreadsheets (.xlsx, .ods) have sheets.",
        "Take `sheet:` out, or name the spreadsheet.",
    )
