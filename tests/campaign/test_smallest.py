from pathlib import Path

from reportgen.campaign.load import load_campaign, load_publication
from reportgen.sources import find_workspace
from tests.campaigns import write_campaign


def test_the_smallest_campaign_loads_from_one_file(tmp_path: Path) -> None:
    folder = write_campaign(tmp_path)
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
    assert declared.at("quantity/gas-burned").line == 6
    assert campaign.test("boil-time").sources[0].file == "readings.csv"
