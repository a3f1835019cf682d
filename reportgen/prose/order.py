"""In what order the contenders ran, in a sentence: as recorded, not as planned."""

from __future__ import annotations

from reportgen.campaign.declared import Test
from reportgen.evaluation.evaluated import Evaluation
from reportgen.intake.reading import Readings
from reportgen.wording.language import say
from reportgen.wording.sentence import sentence


def order_line(test: Test, readings: Readings, evaluation: Evaluation) -> str:
    """How a test's runs were ordered; empty where each contender ran once and order could mean nothing."""
    if all(r.passes <= 1 for r in evaluation.results if r.test == test.id):
        return ""
    if readings.rounds_recorded.get(test.id):
        return sentence(say("order.random" if test.order == "random" else "order.rounds"))
    return sentence(say("order.as-written" if readings.order_recorded.get(test.id) else "order.unknown"))
