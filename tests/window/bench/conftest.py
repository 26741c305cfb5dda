"""A machine with photographs of its own, and a bench for one of them."""

import hashlib

import pytest

from inspector.photo.intake import intake
from inspector.record.verbs import add_photographs
from inspector.window.bench import open_bench
from inspector.window.bringing import Tie, photograph_of
from tests.journeys.conftest import house as empty_house  # noqa: F401
from tests.window.bench import scenes
from tests.window.walked import begin


class Benched:
    """A house with one photograph on the bench."""

    def __init__(self, house):
        self.house = house

    def bring(self, path, **ties):
        """The photograph is in the record, with the words given."""
        words = {name: ties.pop(name) for name in ("cleaned", "light", "caption") if name in ties}
        taken = intake([path], self.house.desk.library.photographs)[0]
        made = photograph_of(taken, Tie(**ties), self.house.clock(), "inspector").model_copy(update=words)
        assert self.house.desk.do(add_photographs((made,)))
        return made.id

    def open(self, photo_id):
        open_bench(self.house.desk, photo_id)
        self.house.settle()
        return self.bench

    @property
    def bench(self):
        return self.house.window.stack.currentWidget()

    @property
    def canvas(self):
        return self.bench.canvas

    @property
    def photograph(self):
        return self.bench.subject.photograph

    def way(self, name):
        self.house.press(self.bench.ways.key(name))
        self.house.settle()
        return self.bench.panels[name]

    def kept_bytes(self):
        path = self.house.desk.library.photographs.path(self.photograph.sha256)
        return hashlib.sha256(path.read_bytes()).hexdigest()


@pytest.fixture
def made(empty_house):  # noqa: F811
    """A machine without a finding; no photograph is open yet."""
    empty_house.build()
    begin(empty_house)
    empty_house.settle()
    return Benched(empty_house)


@pytest.fixture
def pad(made, tmp_path):
    """A number pad on the bench."""
    made.open(made.bring(scenes.pad(tmp_path / "pad.jpg", 150), place="frame"))
    return made


@pytest.fixture
def card(made, tmp_path):
    """A card beside a tube on the bench, tied to the first item with a length to measure."""
    item = next(i for s in made.house.desk.profile.stations for i in s.items if any(m.unit == "mm" for m in i.measures))
    made.open(made.bring(scenes.card_and_tube(tmp_path / "tube.jpg"), item=item.id))
    return made
