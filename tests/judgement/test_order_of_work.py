"""The order of work of the demo profile: paint goes on last."""

import pytest

from inspector.demo import demo_folder
from inspector.judgement.exchange import exchange
from inspector.judgement.offered import offered
from inspector.judgement.order_of_work import order_of_work
from inspector.judgement.remedies import remedies
from inspector.judgement.state import states
from inspector.profile.read import read_profile
from inspector.record.begin import new_record
from inspector.record.model import ProfileRef
from inspector.record.money import Remedy
from tests.judgement.make import found

# Common practice, no source: metal is beaten, straightened and brazed before it is painted, since each spoils paint.
BEFORE_PAINT = ("rear-guard-beat", "fm-straighten", "rail-braze", "cradle-repair")


@pytest.fixture(scope="module")
def heron():
    """The profile of the demo machine."""
    return read_profile(demo_folder()).profile


@pytest.fixture(scope="module")
def bare(heron):
    """A record of the demo profile in which nothing was seen."""
    return new_record("AB12CD34", "2025-05-17T10:00:00+01:00", ProfileRef(id=heron.id, version=heron.version))


def ways_at(heron, record):
    return {way.cost: way for those in offered(heron, record, exchange(heron, record)).values() for way in those}


def test_paint_comes_after_all_that_is_beaten_straightened_or_brazed(heron, bare):
    ways = ways_at(heron, bare)
    # The walk meets the paint last; turned round, nothing but the profile holds it back.
    order = [work.way.cost for work in order_of_work(heron, tuple(reversed(ways.values()))) if work.way]
    assert [cost for cost in BEFORE_PAINT if order.index(cost) > order.index("repaint")] == []
    assert order.index("badge-transfer") > order.index("repaint")


def test_a_mudguard_is_beaten_out_whether_or_not_the_machine_is_painted(heron, bare):
    record = bare.model_copy(update={"findings": (found("rear-mudguard", "fail"), found("paint", "doubt"))})
    told = {fault.item: fault for fault in remedies(heron, record, states(heron, record), exchange(heron, record))}
    assert [way.cost for way in told["rear-mudguard"].counted] == ["rear-guard-beat"]


def test_paint_waits_until_it_is_decided_whether_the_guard_below_it_is_beaten(heron, bare):
    chosen = (Remedy(item="paint", cost="repaint"),)
    record = bare.model_copy(update={"findings": (found("rear-mudguard", "doubt"),), "remedies": chosen})
    told = {fault.item: fault for fault in remedies(heron, record, states(heron, record), exchange(heron, record))}
    assert "Beat out and fill with lead" in str(told["paint"].to_decide)
    assert told["paint"].counted == ()
