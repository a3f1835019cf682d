"""What a compile does, done by hand with the bare libraries: the yardstick for bench.py. Not a test.

``python by_hand.py CAMPAIGN OUT PAGES CHARTS`` reads every table of the campaign, takes means, sizes its photographs,
renders as many pages and draws as many charts as the compile did, and writes them. With ``SITE`` behind, the compiled
site, it also makes what stands beside pages there: the search index of its pages, its Parquet tables, as many preview
pictures. With ``nothing`` in front it only digests what is there.
"""

from __future__ import annotations

import hashlib
import sys
from collections.abc import Iterator
from pathlib import Path

PAGE = "<!doctype html><title>{{ title }}</title><h1>{{ title }}</h1>{{ prose | safe }}{{ svg | safe }}<table>{% for row in rows %}<tr>{% for cell in row %}<td>{{ cell }}</td>{% endfor %}</tr>{% endfor %}</table>"


def everything(campaign: Path, out: Path, pages: int, charts: int) -> list[str]:
    """Tables, means, charts, prose, pages, once each; the charts."""
    import json

    import numpy
    import vl_convert
    import yaml
    from jinja2 import Template
    from markdown_it import MarkdownIt

    for path in sorted(campaign.rglob("*.yaml")):
        yaml.load(path.read_text(encoding="utf-8"), yaml.CSafeLoader)
    rows: list[list[str]] = []
    means = []
    for table in tables(campaign):
        rows += table if len(table) < 100 else table[:10]  # a logger's samples stand on no page as a whole
        for column in zip(*table[1:], strict=False):
            numbers = [float(cell) for cell in column if cell.replace(".", "", 1).isdigit()]
            means += [float(numpy.mean(numbers)), float(numpy.std(numbers, ddof=1))] if len(numbers) > 1 else []
    pictures(campaign, out)
    drawn = []
    for number in range(charts):
        values = [{"c": f"contender {i}", "x": float(means[(i + number) % len(means)])} for i in range(4)]
        bars = {
            "$schema": "https://vega.github.io/schema/vega-lite/v5.json",
            "width": 480,
            "data": {"values": values},
            "layer": [
                {"mark": "rule", "encoding": {"y": {"field": "c"}, "x": {"field": "x", "type": "quantitative"}}},
                {"mark": "point", "encoding": {"y": {"field": "c"}, "x": {"field": "x", "type": "quantitative"}}},
            ],
        }
        drawn.append(vl_convert.vegalite_to_svg(json.dumps(bars)))
    prose = "".join(MarkdownIt().render(path.read_text(encoding="utf-8")) for path in sorted(campaign.rglob("*.md")))
    template = Template(PAGE, autoescape=True)
    out.mkdir(parents=True, exist_ok=True)
    for number in range(pages):
        svg = drawn[number % len(drawn)] if drawn else ""
        text = template.render(title=f"Page {number}", prose=prose, svg=svg, rows=rows)
        (out / f"{number}.html").write_text(text, encoding="utf-8")
    return drawn


def besides(site: Path, out: Path, charts: list[str]) -> None:
    """What a site holds beside its pages, from what `site` holds."""
    import io
    import subprocess

    import duckdb
    import vl_convert
    from pagefind_bin import get_executable
    from PIL import Image

    for path in sorted(site.glob("*/data/*.parquet")):
        table = path.with_suffix(".csv")
        duckdb.sql(f"COPY (FROM read_csv('{table}', all_varchar = true)) TO '{out / path.name}' (FORMAT parquet)")
    for number, path in enumerate(sorted(site.rglob("preview.png"))):
        with Image.open(path) as made:
            scale = made.width / 480
        with Image.open(io.BytesIO(vl_convert.svg_to_png(charts[number % len(charts)], scale=scale))) as picture:
            picture.convert("RGB").quantize(128).save(out / f"{number}.png", optimize=True)
    index = [str(get_executable()), "--site", str(site), "--output-path", str(out / "search")]
    subprocess.run(index, check=True, capture_output=True)


def tables(campaign: Path) -> Iterator[list[list[str]]]:
    """Every table as rows of text."""
    import csv

    import duckdb
    import openpyxl
    import pandas

    for path in sorted(campaign.rglob("*.csv")):
        data = path.read_bytes()
        encoding = "utf-16" if data[:2] in (b"\xff\xfe", b"\xfe\xff") else "utf-8-sig"
        yield list(csv.reader(data.decode(encoding, "replace").splitlines()))
    for path in sorted(campaign.rglob("*.xlsx")):
        for sheet in openpyxl.load_workbook(path, data_only=True).worksheets:
            yield [[str(cell) for cell in row] for row in sheet.iter_rows(values_only=True)]
    for path in sorted(campaign.rglob("*.ods")):
        yield pandas.read_excel(path, header=None, engine="odf").astype(str).values.tolist()
    for path in sorted(campaign.rglob("*.parquet")):
        yield [[str(cell) for cell in row] for row in duckdb.read_parquet(str(path)).fetchall()]


def pictures(campaign: Path, out: Path) -> None:
    """Each photograph in three widths and two formats."""
    from PIL import Image

    out.mkdir(parents=True, exist_ok=True)
    for path in sorted(campaign.rglob("*.jpg")):
        with Image.open(path) as photo:
            for width in (480, 960, 1600):
                small = photo.resize((width, photo.height * width // photo.width), Image.Resampling.LANCZOS)
                small.save(out / f"{path.stem}-{width}.jpg", quality=82)
                small.save(out / f"{path.stem}-{width}.webp", quality=80)


def nothing(campaign: Path, out: Path) -> None:
    """Digest every file that went in and came out, as the plainest check that nothing has changed."""
    for folder in (campaign, out):
        for path in sorted(folder.rglob("*")):
            if path.is_file():
                hashlib.sha256(path.read_bytes()).hexdigest()


if __name__ == "__main__":
    if sys.argv[1] == "nothing":
        nothing(Path(sys.argv[2]), Path(sys.argv[3]))
    else:
        drawn = everything(Path(sys.argv[1]), Path(sys.argv[2]), int(sys.argv[3]), int(sys.argv[4]))
        if sys.argv[5:]:
            besides(Path(sys.argv[5]), Path(sys.argv[2]), drawn)
