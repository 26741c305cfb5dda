"""Python throws away what is of no use while nobody waits, and in the window's own thread only."""

import gc
import threading
import weakref

import pytest

from inspector.window.tidying import Tidying
from tests.window.walked import MACHINE, fill


class Knot:
    """Holds itself, so that only a search finds that nobody else does."""

    def __init__(self):
        self.myself = self


@pytest.fixture
def tidying(house):
    house.build()
    made = Tidying(house.desk)
    yield made
    made.end()
    assert gc.isenabled()
    assert gc.get_freeze_count() == 0


@pytest.fixture
def searched():
    """The threads in which a search began, and how deep it went."""
    found = []

    def note(phase, told):
        if phase == "start":
            found.append((threading.current_thread(), told["generation"]))

    gc.callbacks.append(note)
    yield found
    gc.callbacks.remove(note)


def many_knots():
    return [weakref.ref(Knot()) for _ in range(2 * gc.get_threshold()[0])]


def test_nothing_is_searched_while_one_marks_and_walks_on(house, tidying, searched, qtbot):
    fill(house)
    tidying.tidy_all()
    searched.clear()
    for _ in range(12):
        house.press(house.walk.item.marks.key("pass"))
        house.desk.next_item()
    assert len(searched) < 12  # not one a mark, let alone the dozens that Python itself would begin
    assert all(generation < 2 for _, generation in searched)
    assert {thread for thread, _ in searched} <= {threading.main_thread()}


def test_what_is_of_no_use_is_gone_after_a_while(house, tidying, qtbot):
    knots = many_knots()
    assert all(knot() is not None for knot in knots)
    qtbot.waitUntil(lambda: not any(knot() for knot in knots), timeout=5000)


def test_what_another_thread_leaves_is_thrown_away_in_this_one(house, tidying, searched, qtbot):
    knots = []
    thread = threading.Thread(target=lambda: knots.extend(many_knots()))
    thread.start()
    thread.join()
    assert searched == []
    qtbot.waitUntil(lambda: not any(knot() for knot in knots), timeout=5000)
    assert {where for where, _ in searched} == {threading.main_thread()}


def test_what_was_put_aside_is_gone_when_another_machine_is_opened(house, tidying, qtbot):
    knot = Knot()
    gone = weakref.ref(knot)
    tidying.tidy_all()
    del knot
    gc.collect()
    assert gone() is not None
    assert house.desk.open(MACHINE)
    qtbot.waitUntil(lambda: gone() is None)
