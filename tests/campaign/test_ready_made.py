"""The instruments and methods the program brings along."""

import pytest

from reportgen.campaign.kinds import KINDS
from reportgen.campaign.shared_things import read_shared
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
