"""Cards and a site's own texts in a few lines; names and figures are invented."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path
from typing import Any

from reportgen.campaign.declared import (
    Accuracy,
    Amount,
    Campaign,
    Column,
    Contender,
    Day,
    Declared,
    Instrument,
    Method,
    ProseFile,
    Publication,
    Quantity,
    Repeatability,
    Test,
)
from reportgen.evaluation.evaluated import Evaluation
from reportgen.intake.reading import Readings
from reportgen.site.card import Card, card_of
from reportgen.site.texts import SiteText, SiteTexts

PUBLICATION = Publication(
    "Boil and Tell", who_pays="Readers’ donations.", licence="CC BY 4.0", invented="All of it is invented."
)
SCALE = Instrument(
    "bench-scale", "Bench scale, 2 kg", Amount(Decimal("0.1"), "g", "0.1 g"), Amount(Decimal("0"), "g", "0 g"),
    Amount(Decimal("2000"), "g", "2000 g"), Accuracy(True, Amount(Decimal("0.3"), "g", "0.3 g"), text="±0.3 g"),
    shared="offset",
)  # fmt: skip
WATCH = Instrument("stopwatch", "Stopwatch", Amount(Decimal("0.01"), "s", "0.01 s"), by_hand=True, origin="ready-made")


def weighing(version: int = 1, **more: Any) -> Method:
    return Method(
        "weigh-before-and-after", version, "Weigh before and after", order="rounds", chained=True,
        steps=("Weigh the canister with its valve closed, dry.", "Weigh it again when the water boils."),
        cautions=("Let the stove cool before you unscrew it.",), cannot_tell=("What leaks while it stands.",),
        repeatability={"gas-burned": Repeatability(Amount(Decimal("0.9"), "g", "0.9 g"), 20, "24 passes of 4 stoves")},
        origin="shared/methods/weigh.yaml", **more,
    )  # fmt: skip


def card(
    id: str = "stoves", date: str = "2026-05-02", version: int = 1, scale: Instrument = SCALE, **more: Any
) -> Card:
    method = weighing(version)
    quantity = Quantity("gas-burned", "gas-burned", "Gas burned", "", "a - b", "g", "lower")
    test = Test(
        "gas-burned", "Gas burned", (quantity,), "gas-burned", (Column("a", "before", "g", scale.id),), (), False,
        method=method.id, method_version=version,
    )  # fmt: skip
    told = Campaign(
        id, id, more.pop("title", f"Comparison of {id}"), more.pop("question", f"Which of the {id} burns least?"),
        (Contender("corvane", "Corvane Sol"), Contender("ostler", "Ostler Mk II")), (test,),
        {scale.id: scale, "stopwatch": WATCH}, {f"{method.id}.{version}": method}, {},
        published=Day(date, date, date) if date else None, **more,
    )  # fmt: skip
    return card_of(Declared(told, {}), Evaluation(id, (), (), (), (), None, (), ()), Readings({}))


def texts(**pages: str) -> SiteTexts:
    made = [
        SiteText(id, "about.html" if id == "about" else f"about/{id}.html", ProseFile(id, f"content/{id}.md", text))
        for id, text in pages.items()
    ]
    return SiteTexts(tuple(made))


def handbook(*chapters: tuple[str, str]) -> SiteTexts:
    return SiteTexts(
        handbook=tuple(
            SiteText(id, f"handbook/{id}.html", ProseFile(id, f"content/handbook/{id}.md", text))
            for id, text in chapters
        )
    )


def written(folder: Path, files: dict[str, str]) -> Path:
    for name, text in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8")
    return folder
