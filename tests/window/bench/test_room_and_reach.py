"""On the bench nothing is clipped or too small to touch, and Tab reaches all of it, in every kind of work."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from inspector.window.bench.bench import WAYS
from tests.window.bench import scenes
from tests.window.bench.conftest import Benched
from tests.window.test_hands import jumps, tabbed
from tests.window.test_room import SETTINGS, beyond, clipped, too_small, too_wide
from tests.window.walked import begin, named, shown, takes_focus


@pytest.fixture(params=SETTINGS, ids=lambda p: f"{p[0][0]}x{p[0][1]}-{p[1]}")
def benched(request, empty_house, tmp_path):
    """A card beside a tube on the bench, measured and marked, in both shapes and with the largest type."""
    size, scale = request.param
    empty_house.build(size=size, scale=scale)
    begin(empty_house)
    made = Benched(empty_house)
    made.open(made.bring(scenes.card_and_tube(tmp_path / "tube.jpg"), place="frame"))
    measuring = made.bench.measuring
    measuring.look_for_it()
    empty_house.settle()
    for end in scenes.tube_ends():
        measuring.put(end)
    measuring.kept.keep()
    measuring.planes.set_held("out")
    measuring.show_all()
    return made


def test_words_have_room_and_targets_are_large(benched):
    found = {}
    for way in WAYS:
        benched.bench.open_way(way)
        benched.house.settle()
        page = benched.bench
        found[way] = clipped(page) + too_small(page) + too_wide(page) + beyond(page)
    assert {way: faults for way, faults in found.items() if faults} == {}
    assert min(benched.canvas.width(), benched.canvas.height()) > 200


def test_all_of_it_has_a_name_and_is_reached_by_tab(benched):
    missed, nameless, out_of_order = {}, {}, {}
    for way in WAYS:
        benched.bench.open_way(way)
        benched.house.settle()
        holders = {w for w in shown(benched.house.window) if takes_focus(w)}
        assert benched.canvas in holders
        visited = tabbed(benched.house)
        missed[way] = [named(w) for w in holders - set(visited)]
        nameless[way] = [named(w) for w in holders if not w.accessibleName().strip()]
        out_of_order[way] = jumps(visited)
    for faults in (missed, nameless, out_of_order):
        assert {way: names for way, names in faults.items() if names} == {}


def test_keys_open_each_kind_of_work(benched):
    for n, way in enumerate(WAYS, 1):
        benched.house.key(getattr(Qt.Key, f"Key_{n}"), Qt.KeyboardModifier.AltModifier)
        QApplication.processEvents()
        assert benched.bench.way == way
