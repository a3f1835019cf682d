"""What the audit asks of prices and of what is sold; silent where there is nothing to ask."""

from __future__ import annotations

from pathlib import Path

from reportgen.build.run import audit_path
from reportgen.finding import Finding
from tests.campaigns import write_campaign

REST = """\
measure: {oil: "one reading, g, lower, scale"}
constants: {oil price: {value: 0.012 EUR/g, source: receipt}}
instruments: {scale: 0.1 g, accuracy ±0.3 g}
who pays: Readers.
readings: readings.csv
"""
USE = "verdict: {use: {per: evening, cost: oil * oil_price, times: 0 to 500}}\n"
OIL = "contender,pass,oil\nharl,1,20.1\ntolk,1,30.2\ntolk,2,30.4\nharl,2,20.2\n"


def asked(place: Path, harl: str, tolk: str, more: str = "") -> list[Finding]:
    """What the audit says of two lamps' prices, but for what is no matter here."""
    yaml = f"title: T\ncontenders:\n  harl: {{title: Harl, {harl}}}\n  tolk: {{title: Tolk, {tolk}}}\n"
    rest = REST.replace("instruments: {scale: 0.1 g, accuracy ±0.3 g}\n", "")
    found = audit_path(
        write_campaign(
            place, yaml + rest + more, readings=OIL, **{"instruments.yaml": "scale: 0.1 g, accuracy ±0.3 g\n"}
        )
    )
    return list(found)


def test_two_that_bear_one_makers_name_and_model_are_asked_whether_they_are_one_product(tmp_path: Path) -> None:
    (found,) = asked(tmp_path, "maker: Aven, model: L 2", "maker: aven, model: L-2")
    assert (found.rule, found.severity, found.place.line) == ("sold-as-one", "warning", 4)
    assert "two of one product" in found.says


def test_one_makers_two_models_are_two_products(tmp_path: Path) -> None:
    assert asked(tmp_path, "maker: Aven, model: L 2", "maker: Aven, model: L 3") == []


def test_a_price_of_nothing_is_asked_about_where_it_stands(tmp_path: Path) -> None:
    (found,) = asked(tmp_path, "paid: 20 EUR", "prices: [{listed: 30 EUR}, {paid: 0 EUR}]")
    assert (found.rule, found.place.line, found.contender) == ("price-of-nothing", 4, "tolk")
    assert "Tolk is paid at 0 EUR." in found.says


def test_one_without_a_price_is_named_where_another_has_one(tmp_path: Path) -> None:
    (found,) = asked(tmp_path, "paid: 20 EUR", "maker: Tolk")
    assert (found.rule, found.severity) == ("no-price", "note")
    assert asked(tmp_path, "maker: Harl", "maker: Tolk") == []


def test_prices_of_days_more_than_a_year_apart_are_asked_about(tmp_path: Path) -> None:
    def dated(day: str) -> str:
        return f"prices: [{{paid: 20 EUR, date: {day}}}]"

    (found,) = asked(tmp_path, dated("2024-05-02"), dated("2026-05-02"))
    assert (found.rule, found.contender) == ("prices-apart", "harl")
    assert "2024" in found.says
    assert "2026" in found.says
    assert asked(tmp_path, dated("2025-06-02"), dated("2026-05-02")) == []
    assert asked(tmp_path, dated("not noted"), dated("2026-05-02")) == []


def test_a_use_in_another_currency_than_a_price_is_asked_about(tmp_path: Path) -> None:
    (found,) = asked(tmp_path, "paid: 20 EUR", "paid: 30 USD", USE)
    assert (found.rule, found.severity) == ("use-in-other-money", "warning")
    assert "A use is reckoned in EUR, and these have prices in other money: Tolk." in found.says
