"""The list of machines shows some at once, more when asked, and those that the search finds."""

import pytest

from inspector.record.begin import new_record
from inspector.record.model import ProfileRef
from inspector.storage.library import Library
from inspector.window.look.rows import Row
from inspector.window.machines.listing import SHOWN_AT_ONCE
from tests.journeys.drive import heron

COUNT = 2 * SHOWN_AT_ONCE + 5


@pytest.fixture
def crowd(house):
    """The window over more machines than are shown at once."""
    ref = ProfileRef(id="brackwater-heron", version="1", title="Brackwater Heron")
    with Library.open(house.library, house.clock) as library:
        for n in range(COUNT):
            record = new_record(f"M{n:04d}", house.clock(), ref)
            claim = record.claim.model_copy(update={"model": f"Heron {n:04d}", "model_year": 1953})
            library.create(record.model_copy(update={"claim": claim}), heron())
    house.build()
    return house


def titles(house):
    return [w.title for w in house.window.pages["machines"].rows.widgets() if isinstance(w, Row)]


def test_some_are_shown_at_once_and_the_rest_when_asked(crowd):
    machines = crowd.window.pages["machines"].machines
    newest = [f"Heron {n:04d}" for n in reversed(range(COUNT))]
    assert titles(crowd) == newest[:SHOWN_AT_ONCE]
    assert machines.more.accessibleName() == f"show {COUNT - SHOWN_AT_ONCE} more"
    crowd.press(machines.more)
    assert titles(crowd) == newest[: 2 * SHOWN_AT_ONCE]
    crowd.settle()
    crowd.press(machines.more)
    assert titles(crowd) == newest
    assert not machines.more.isVisible()


def test_a_search_finds_those_that_are_not_shown_yet(crowd):
    page = crowd.window.pages["machines"]
    page.search.edit.setText("heron 0003")
    assert titles(crowd) == ["Heron 0003"]
    assert not page.machines.more.isVisible()
    page.search.edit.setText("")
    assert len(titles(crowd)) == SHOWN_AT_ONCE
    page.search.edit.setText("no such thing")
    assert titles(crowd) == []
    assert page.machines.isVisible()
