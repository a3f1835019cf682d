"""The handbook answers every one of the W3C's best practices, and names every file and key of open data."""

from __future__ import annotations

import re
from pathlib import Path

from tests.handbook.test_examples import HANDBOOK

# Data on the Web Best Practices, W3C Recommendation 31 January 2017, section 7, in its words.
PRACTICES = (
    "Provide metadata",
    "Provide descriptive metadata",
    "Provide structural metadata",
    "Provide data license information",
    "Provide data provenance information",
    "Provide data quality information",
    "Provide a version indicator",
    "Provide version history",
    "Use persistent URIs as identifiers of datasets",
    "Use persistent URIs as identifiers within datasets",
    "Assign URIs to dataset versions and series",
    "Use machine-readable standardized data formats",
    "Use locale-neutral data representations",
    "Provide data in multiple formats",
    "Reuse vocabularies, preferably standardized ones",
    "Choose the right formalization level",
    "Provide bulk download",
    "Provide Subsets for Large Datasets",
    "Use content negotiation for serving data available in multiple formats",
    "Provide real-time access",
    "Provide data up to date",
    "Provide an explanation for data that is not available",
    "Make data available through an API",
    "Use Web Standards as the foundation of APIs",
    "Provide complete documentation for your API",
    "Avoid Breaking Changes to Your API",
    "Preserve identifiers",
    "Assess dataset coverage",
    "Gather feedback from data consumers",
    "Make feedback available",
    "Enrich data by generating new data",
    "Provide Complementary Presentations",
    "Provide Feedback to the Original Publisher",
    "Follow Licensing Terms",
    "Cite the Original Publication",
)


def page() -> str:
    return (HANDBOOK / "open-data.md").read_text(encoding="utf-8")


def test_all_35_best_practices_are_answered_by_number_and_name() -> None:
    rows = re.findall(r"^\| (\d+) \| ([^|]+) \| ([^|]+) \|$", page(), re.MULTILINE)
    assert [(int(n), name) for n, name, _ in rows] == list(enumerate(PRACTICES, 1))
    assert all(len(answer.split()) > 1 for _, _, answer in rows)


def test_every_file_of_open_data_is_told(demo_site: Path) -> None:
    told = set(re.findall(r"`([^`]+)`", page()))
    folder = demo_site / "demo-campaign"
    made = [
        p for d in (folder, folder / "data") for p in d.iterdir() if p.is_file() and p.suffix not in (".html", ".png")
    ]
    names = {p.relative_to(folder).as_posix() for p in made}
    assert len(names) > 20
    missing = {n for n in names if n not in told and n.replace(".parquet", ".csv") not in told}
    assert missing == set()


def test_the_table_shapes_keep_the_columns_they_have() -> None:
    """Best practice 26: columns are added, never renamed or dropped. This list only ever grows."""
    from reportgen.opendata.tables import SHAPES

    assert {shape.name: set(FIRST[shape.name].split()) - {c.name for c in shape.columns} for shape in SHAPES} == {
        shape.name: set() for shape in SHAPES
    }


FIRST = {
    "results": "result test quantity contender part kind value unit u low high coverage limit at_least printed passes excluded "
    "without_exclusions yes of grade rank_from rank_to not_ranked_because no_u_because missing running caveats",
    "comparisons": "comparison test quantity part first second difference unit u low high percent percent_low percent_high "
    "decision favours resolved differed differed_low differed_high reason caveats",
    "claims": "claim contender says sources quantity part under accept_from accept_to unit outcome probability scope reason caveats",
    "passes": "pass_of result quantity contender specimen pass part value unit limit word excluded absent_because",
    "readings": "reading test contender specimen pass part name typed value unit limit word absent_because half_width corrected "
    "instrument shared beside session round time conditions note left_out_of left_out_because amended_from channel samples "
    "attachment page file sheet line column",
    "contenders": "contender title maker model gtin specimens price_low price_high currency price_sort price_date firmware settings",
    "quantities": "quantity title test test_title kind unit better matters matters_unit formula method method_version",
    "caveats": "caveat number sort says pushes blocks contender specimen pass part quantities decided file line",
}
