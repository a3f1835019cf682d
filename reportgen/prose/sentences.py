"""Every sentence the program writes about results, by what it is about. Words come from `wording`, decisions from data.

Each function takes the campaign as declared and its evaluation, and returns plain text: no markup, no number that was
not rounded by `wording`. Every sentence speaks of what was bought and of these runs, never of a model.
"""

from __future__ import annotations

from reportgen.prose.amounts import full, short
from reportgen.prose.answer import campaign_answer, campaign_answer_led
from reportgen.prose.budgets import budget_line
from reportgen.prose.claim import bound, claim_in_short, claim_line, claimed
from reportgen.prose.comparison import PairCell, comparison_line, pair_cell
from reportgen.prose.exclusion import exclusion_line
from reportgen.prose.finding_line import finding_line
from reportgen.prose.firm import how_firm
from reportgen.prose.first_place import first_place, first_place_led
from reportgen.prose.money import money_line, money_line_led
from reportgen.prose.order import order_line
from reportgen.prose.result import result_line, why_no_u_line
from reportgen.prose.standing import name, names
from reportgen.prose.table_notes import (
    also_line,
    counting_line,
    covers_line,
    instrument_line,
    lost_line,
    missing_line,
    single_line,
    yes_no_line,
)
from reportgen.prose.verdict import must_line

__all__ = [
    "PairCell",
    "also_line",
    "bound",
    "budget_line",
    "campaign_answer",
    "campaign_answer_led",
    "claim_in_short",
    "claim_line",
    "claimed",
    "comparison_line",
    "counting_line",
    "covers_line",
    "exclusion_line",
    "finding_line",
    "first_place",
    "first_place_led",
    "full",
    "how_firm",
    "instrument_line",
    "lost_line",
    "missing_line",
    "money_line",
    "money_line_led",
    "must_line",
    "name",
    "names",
    "order_line",
    "pair_cell",
    "result_line",
    "short",
    "single_line",
    "why_no_u_line",
    "yes_no_line",
]
