"""A name that something had before leads to one thing alone, whatever it is the name of."""

from __future__ import annotations

from pathlib import Path

import pytest

from reportgen.campaign.declared import Declared, Publication
from reportgen.campaign.load import load_campaign
from reportgen.finding import Refused
from reportgen.sources import Workspace
from tests.campaigns import SMALLEST_READINGS

STOVES = """\
title: Which stove boils a litre on the least gas?
formerly: [camp cookers, burners]
contenders:
  corvane: {title: Corvane Sol, formerly: sol}
  ostler: {title: Ostler Mk II}
measure:
  gas burned: {kind: weighed before and after, unit: g, better: lower, formerly: gas used}
  boil time: timed, s, lower
readings: readings.csv
"""


def loaded(place: Path, text: str = STOVES, others: tuple[str, ...] = ()) -> Declared:
    for folder in ("stoves", *others):
        (place / folder).mkdir()
        (place / folder / "campaign.yaml").write_text(text, encoding="utf-8")
        (place / folder / "readings.csv").write_text(SMALLEST_READINGS, encoding="utf-8")
    return load_campaign(Workspace(place, ("stoves", *others)), "stoves", Publication())


def test_a_campaign_its_contenders_and_measures_keep_the_ids_they_had(tmp_path: Path) -> None:
    campaign = loaded(tmp_path).campaign
    assert campaign.formerly == ("camp-cookers", "burners")
    assert campaign.contender("corvane").formerly == ("sol",)
    assert (campaign.test("gas-burned").formerly, campaign.quantity("gas-burned").formerly) == (("gas-used",),) * 2


@pytest.mark.parametrize(
    ("before", "after", "rule", "line", "says"),
    [
        ("formerly: sol}", "formerly: ostler}", "former-name-in-use", 4, "is the name of another contender now"),
        ("formerly: sol}", "formerly: Corvane}", "former-name-in-use", 4, "is what this contender is called now"),
        ("Ostler Mk II}", "Ostler Mk II, formerly: sol}", "former-name-twice", 5, "was the name of “corvane” before"),
        ("formerly: gas used", "formerly: boil_time", "former-name-in-use", 7, "is the name of another test now"),
        ("[camp cookers, burners]", "[methods]", "former-name-in-use", 2, "is the name of a page that the site has"),
        ("[camp cookers, burners]", "[Kettles]", "former-name-in-use", 2, "another campaign now, in kettles"),
        ("[camp cookers, burners]", "[stoves]", "former-name-in-use", 2, "is what this campaign is called now"),
    ],
)
def test_a_former_name_that_is_in_use_or_was_used_twice_is_refused_at_its_line(
    tmp_path: Path, before: str, after: str, rule: str, line: int, says: str
) -> None:
    with pytest.raises(Refused) as refused:
        loaded(tmp_path, STOVES.replace(before, after), ("kettles",))
    (told,) = refused.value.findings
    assert (told.rule, told.place.file, told.place.line) == (rule, "stoves/campaign.yaml", line)
    assert says in told.says
    assert told.do
