from reportgen.campaign.load import load_campaign, load_publication
from reportgen.sources import find_workspace

SMALLEST = """\
# campaign.yaml
title: Which stove boils a litre on the least gas?
contenders:
  corvane: Corvane Sol
  ostler: Ostler Mk II
measure:
  gas burned:
    kind: weighed before and after
    unit: g
    better: lower
  boil time:
    kind: timed
    unit: s
    better: lower
readings: readings.csv
"""


def test_the_smallest_campaign_loads_from_one_file(tmp_path):
    folder = tmp_path / "stoves"
    folder.mkdir()
    (folder / "campaign.yaml").write_text(SMALLEST)
    (folder / "readings.csv").write_text("contender,pass,gas burned before,gas burned after,boil time\n")
    ws = find_workspace(folder)
    publication, _ = load_publication(ws)
    declared = load_campaign(ws, "", publication)
    campaign = declared.campaign
    assert campaign.id == "stoves"
    assert [c.title for c in campaign.contenders] == ["Corvane Sol", "Ostler Mk II"]
    gas = campaign.quantity("gas-burned")
    assert gas.formula == "gas_burned_before - gas_burned_after"
    assert gas.reads == ("gas_burned_before", "gas_burned_after")
    assert campaign.quantity("boil-time").formula == "boil_time"
    assert declared.at("quantity/gas-burned").line == 7
    assert campaign.test("boil-time").sources[0].file == "readings.csv"
