"""No rule stumbles over a form of reading: each of them alone, and all of them in one campaign."""

from __future__ import annotations

import io
from pathlib import Path

import pytest

from reportgen.build.run import audit_path
from reportgen.finding import Finding
from tests.campaigns import write_campaign

HEAD = "title: T\nwho pays: Readers.\ncontenders: {corvane: Corvane Sol, ostler: Ostler Mk II, tamsin: Tamsin}\n"
INSTRUMENTS = (
    "scale: 0.1 g, up to 500 g, accuracy ±0.3 g\nsonde: 1 °C, accuracy ±1 °C\ncamera: 240 frames a second\n"
    "meter: 1 ppm, up to 999 ppm, accuracy unknown\n"
)
LABORATORY = (
    "{name: A laboratory, report: attachments/report.txt, page: 1, detection limit: 0.5 mg/kg, report limit: 2 mg/kg}"
)

# form → what is measured, and the readings of corvane, ostler, tamsin as the log has them
FORMS: dict[str, tuple[str, tuple[str, str, str]]] = {
    "limits": ("one reading, ppm, lower, meter", ("over 999", "38", "under 1")),
    "limit unknown": ("one reading, ppm, lower, meter", ("over unknown", "38", "41")),
    "rough": ("one reading, g, lower, scale", ("about 250", "250.3 ±10", "200 to 300")),
    "some": ("one reading, g, lower, scale", ("some", "some", "3.2")),
    "beside": ("one reading, °C, lower, sonde", ("90", "corvane + 72", "corvane + about 70")),
    "absent": ("one reading, g, lower, scale", ("none (spilled)", "", "12.3")),
    "frames": ("timed, s, lower, camera", ("frames 1204 to 4820", "frames 300 to 3916", "3700 frames")),
    "order": ("order, lower", ("less than ostler", "a little less than tamsin", "")),
    "grade": ("{kind: grade, grades: [poor, fair, good]}", ("poor", "good", "fair")),
    "yes or no": ("yes/no", ("yes", "no", "yes")),
    "ranked grade": ("{kind: grade, grades: [poor, fair, good], better: higher}", ("poor", "good", "fair")),
    "ranked yes or no": ("yes/no, higher", ("yes", "no", "none (lighter lost)")),
    "ranked count": ("{kind: count, better: lower, independent: yes}", ("0", "9", ">9")),
    "unfinished": ("timed, s, lower", ("212", "did not finish (blown out)", "did not finish")),
    "count": ("count, lower", ("3", "5", "over 9")),
    "laboratory": (
        f"{{kind: laboratory, unit: mg/kg, better: lower, laboratory: {LABORATORY}}}",
        ("not found", "found", "3.1"),
    ),
}


SHEET: list[list[object]] = [["corvane", 12.1, 3], ["ostler", 12.3, 4], ["tamsin", 12.4, 3]]


def workbook(name: str, rows: list[list[object]]) -> bytes:
    from openpyxl import Workbook

    book = Workbook()
    sheet = book.worksheets[0]
    sheet.title = name
    for row in rows:
        sheet.append(row)
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def audited(place: Path, measure: str, log: str, **files: str | bytes) -> list[Finding]:
    files = {
        "instruments.yaml": INSTRUMENTS,
        "attachments/report.txt": "What was found.\n",
        "readings": f"contender,what,value\n{log}",
        **files,
    }
    return list(audit_path(write_campaign(place, f"{HEAD}measure:\n{measure}readings: readings.csv\n", **files)))


def rows(name: str, said: tuple[str, ...]) -> str:
    order = ("corvane", "ostler", "tamsin")
    return "".join(f"{who},{name},{text}\n" for who, text in zip(order, said, strict=True) if text or name != "order")


@pytest.mark.parametrize("form", sorted(FORMS))
def test_every_rule_can_be_asked_of_a_form_of_reading(form: str, tmp_path: Path) -> None:
    measure, said = FORMS[form]
    found = audited(tmp_path, f"  {form}: {measure}\n", rows(form, said))
    assert [f for f in found if f.severity == "error"] == []
    assert all(f.says and f.place.file for f in found)


def test_every_rule_can_be_asked_of_a_campaign_with_one_of_each(tmp_path: Path) -> None:
    measure = "".join(f"  {form}: {measure}\n" for form, (measure, _) in FORMS.items())
    found = audited(tmp_path, measure, "".join(rows(form, said) for form, (_, said) in FORMS.items()))
    assert [f for f in found if f.severity == "error"] == []
    assert {f.subject for f in found if f.rule == "empty-cell"} == {"test/absent"}


def test_a_column_of_a_sheet_that_nothing_reads_is_told_of_its_sheet(tmp_path: Path) -> None:
    book = workbook("Bench", [["contender", "mass", "wind"], *SHEET])
    yaml_text = f"{HEAD}measure:\n  mass: one reading, g, lower, scale\nreadings: raw/day.xlsx\n"
    folder = write_campaign(tmp_path, yaml_text, **{"instruments.yaml": INSTRUMENTS, "raw/day.xlsx": book})
    unread = {str(f.place): f.says for f in audit_path(folder) if f.rule == "unread-column"}
    assert unread == {"raw/day.xlsx, sheet Bench": "Nothing reads the column “wind”."}
