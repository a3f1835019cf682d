"""The instruments and methods the program brings along."""

import math

import pytest

from reportgen.campaign.kinds import KINDS
from reportgen.campaign.shared_things import read_shared
from reportgen.evaluation.instrument_fits import instrument_misfits
from reportgen.evaluation.instruments_known import instrument_for_metrology
from reportgen.finding import Place
from reportgen.metrology.instrument import observed
from reportgen.metrology.stated import accuracy
from reportgen.metrology.unit import parse_unit
from reportgen.sources import Workspace, carried


@pytest.fixture(scope="module")
def shared():
    told = []
    found = read_shared(Workspace(carried("shared"), ()), "", told, origin="ready-made")
    assert not told
    return found


def test_every_instrument_says_where_its_figures_come_from(shared):
    for found in shared.instruments.values():
        assert found.value.resolution is not None or found.value.frame_rate is not None
        assert found.value.source, found.value.id


def test_every_kind_is_offered_an_instrument_that_exists(shared):
    for kind in KINDS.values():
        assert kind.instrument == "" or kind.instrument in shared.instruments


def test_every_method_has_steps_and_says_what_it_cannot_tell(shared):
    for found in shared.methods.values():
        assert len(found.value.steps) >= 3
        assert found.value.cannot_tell
        assert not found.value.repeatability, "a scatter is the tester's own"


def test_every_later_version_says_what_it_changed(shared):
    for (_, version), found in shared.methods.items():
        assert bool(found.value.changed) == (version > 1)


def test_a_tape_of_class_two_may_err_by_its_legal_limit(shared):
    # Directive 2014/32/EU, annex X: 0.3 mm + 0.2 mm for each metre (from memory)
    accuracy = shared.instruments["tape-measure"].value.accuracy
    assert float(accuracy.absolute.value) + float(accuracy.percent) / 100 * 5000 == pytest.approx(0.3 + 0.2 * 5)


def within(instrument, value, unit):
    """The widest a reading may be off by its stated limits: the sum of their half-widths (JCGM 100, 4.3.7)."""
    limits = accuracy(instrument_for_metrology(instrument), value, parse_unit(unit), "", "")
    return math.sqrt(3) * sum(abs(u) for u in limits.values())


def test_every_instrument_can_read(shared):
    for found in shared.instruments.values():
        instrument = found.value
        if instrument.frame_rate:
            continue
        assert not list(instrument_misfits(instrument, Place("")))
        middle = instrument.high or instrument.resolution
        read = observed(
            float(middle.value) / 2, parse_unit(middle.unit), instrument_for_metrology(instrument), "day 1", "1"
        )
        sorts = {source.sort for source in read.contributions}
        assert "step" in sorts, instrument.id
        assert bool(sorts & {"offset", "gain", "accuracy"}) == instrument.accuracy.known, instrument.id
        assert instrument.accuracy.known or instrument.accuracy.text == "unknown"


@pytest.mark.parametrize(
    ("id", "value", "unit", "limit"),
    [
        # IEC 60751, tolerances at 0, 100 and 200 °C (from memory)
        ("pt100-class-a", 0.0, "°C", 0.15), ("pt100-class-a", 100.0, "°C", 0.35), ("pt100-class-a", 200.0, "°C", 0.55),
        ("pt100-class-b", 0.0, "°C", 0.3), ("pt100-class-b", 100.0, "°C", 0.8), ("pt100-class-b", 200.0, "°C", 1.3),
        ("pt100-class-b", 212.0, "°F", 0.8 * 1.8),
        # IEC 60584-1: 1.5 °C or 0.4 %, 2.5 °C or 0.75 %, the greater, here at the ends where both agree (from memory)
        ("thermocouple-k-class-1", 375.0, "°C", 0.004 * 375), ("thermocouple-k-class-2", 333.0, "°C", 2.5),
        # EN 837-1 and IEC 60051: so many percent of the range, wherever the pointer stands (from memory)
        ("pressure-gauge-with-pointer", 2.0, "bar", 0.16), ("voltmeter-with-pointer", 3.0, "V", 0.75),
        # IEC 61672-1:2013, at 1 kHz (from memory)
        ("sound-meter-class-1", 94.0, "dB(A)", 0.7), ("sound-meter-class-2", 94.0, "dB(A)", 1.0),
        # ISO 4788 and ISO 1042, class B (from memory)
        ("measuring-cylinder", 50.0, "mL", 1.0), ("measuring-flask", 1000.0, "mL", 0.8),
        # ISO 6789-1 (from memory)
        ("torque-wrench-that-clicks", 50.0, "N·m", 2.0),
    ],
)  # fmt: skip
def test_an_instrument_of_a_standard_may_err_by_its_limit(id, value, unit, limit, shared):
    assert within(shared.instruments[id].value, value, unit) == pytest.approx(limit)
