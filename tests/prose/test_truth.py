"""Sentences claim no more than what was decided: held over whole campaigns, evaluated and then put into words."""

from __future__ import annotations

import random
import re
from pathlib import Path

import pytest

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Evaluation
from reportgen.prose import sentences
from tests.evaluation.bench import all_stages

NAMES = {"corvane": "Corvane Sol", "ostler": "Ostler Mk II", "brindle": "Brindle", "tamsin": "Tamsin"}
CAMPAIGN = """\
title: Which stove?
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II, brindle: Brindle, tamsin: Tamsin}
instruments:
  scale: 0.1 g, up to 2000 g, accuracy ±0.3 g
  meter: 1 ppm, up to 999 ppm, accuracy ±5 ppm
measure:
  fuel: {kind: one reading, unit: g, better: lower, matters: 1 g, instrument: scale}
  smoke: {kind: peak, unit: ppm, better: lower, instrument: meter}
  output: {kind: one reading, unit: g, better: higher, instrument: scale}
readings: readings.csv
"""


def readings(seed: int) -> str:
    """Invented readings: three passes of two quantities, one of the third, some of it off the scale."""
    draw = random.Random(seed)
    lines = ["what,pass,corvane,ostler,brindle,tamsin"]
    for what, passes in (("fuel", 3), ("output", 3), ("smoke", 1)):
        centres = [draw.choice([20.0, 20.4, 22.0, 30.0]) for _ in NAMES]
        for n in range(1, passes + 1):
            row = [f"{max(0.0, draw.gauss(c, 0.4)):.1f}" for c in centres]
            if what == "smoke":
                row = ["over 999" if draw.random() < 0.2 else f"{draw.gauss(30, 15):.0f}".lstrip("-") for _ in NAMES]
            lines.append(",".join([what, str(n), *row]))
    return "\n".join(lines) + "\n"


@pytest.mark.parametrize("seed", range(8))
def test_sentences_say_what_was_decided_and_no_more(tmp_path: Path, seed: int) -> None:
    declared, _, evaluation = all_stages(tmp_path, CAMPAIGN, readings=readings(seed))
    campaign = declared.campaign
    for pair in evaluation.comparisons:
        cell = sentences.pair_cell(campaign, evaluation, pair.quantity, pair.first, pair.second)
        assert (cell.word == "better") == (pair.decision == "better" and pair.favours == pair.first)
        assert (cell.word == "worse") == (pair.decision == "better" and pair.favours == pair.second)
        assert ("repeat should agree" in cell.means) <= pair.resolved
    for first in evaluation.firsts:
        words = sentences.first_place(campaign, evaluation, first.quantity)
        named = [NAMES[c] for c in NAMES if f"{NAMES[c]} is lowest" in words or f"{NAMES[c]} is highest" in words]
        assert named == ([NAMES[first.winner]] if first.winner else [])
        assert ("repeat should agree" in words) == (first.winner is not None)
        for contender, title in NAMES.items():
            if re.search(rf"{title}[^.]* share first place", words):
                assert contender in first.may_be_first
    for words in everything_said(campaign, evaluation):
        assert not re.search(r"nan|None|\binf\b|-\d|−0(?![.\d])|\{|\}|\.\.", words), words
        assert words == "" or ((words[0].isupper() or words[0] == "“") and words.endswith("."))


def everything_said(campaign: Campaign, evaluation: Evaluation) -> list[str]:

    quantities = ("fuel", "smoke", "output")
    return [
        sentences.campaign_answer(campaign, evaluation),
        sentences.how_firm(campaign, evaluation),
        *(sentences.first_place(campaign, evaluation, q) for q in quantities),
        *(sentences.covers_line(campaign, evaluation, q) for q in quantities),
        *(sentences.single_line(campaign, evaluation, q) for q in quantities),
        *(sentences.result_line(campaign, r) for r in evaluation.results),
        *(sentences.why_no_u_line(campaign, r) for r in evaluation.results),
        *(sentences.budget_line(campaign, evaluation, r) for r in evaluation.results),
        *(sentences.comparison_line(campaign, evaluation, c) for c in evaluation.comparisons),
    ]


def test_single_readings_are_never_ranked_in_words(tmp_path: Path) -> None:
    once = "what,pass,corvane,ostler,brindle,tamsin\nfuel,1,10.3,20.1,30.7,40.2\n"
    declared, _, evaluation = all_stages(tmp_path, CAMPAIGN, readings=once)
    words = sentences.first_place(declared.campaign, evaluation, "fuel")
    assert "that it would again isn't shown" in words
    assert "is lowest" not in words
    answer = sentences.campaign_answer(declared.campaign, evaluation).replace("\u00a0", " ")
    assert answer == (
        "In this run Corvane Sol read lowest on fuel, 9.8 g below Ostler Mk II; that it would again isn't shown."
    )


def test_the_answer_leads_with_what_the_campaign_asks_first() -> None:
    """A shared first place on the first test comes before sole first places on the others."""
    from pathlib import Path

    from reportgen.campaign.load import load_campaign, load_publication
    from reportgen.evaluation.evaluate import evaluate
    from reportgen.intake import read_readings
    from reportgen.intake.logger.samples import Samples
    from reportgen.sources import find_workspace

    ws = find_workspace(Path(__file__).parents[2])
    declared = load_campaign(ws, "demo_campaign", load_publication(ws)[0])
    samples = Samples(ws)
    evaluation = evaluate(declared, read_readings(ws, declared, samples), samples.pieces)
    answer = sentences.campaign_answer(declared.campaign, evaluation)
    assert answer.startswith("Of the four we bought, Corvane Sol and Ostler Mk II share first place on gas burned")
    assert answer.count(". ") == 1
    assert "; On" not in answer
