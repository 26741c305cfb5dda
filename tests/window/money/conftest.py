"""The demo machine with Money open, all people and figures invented."""

import shutil

import pytest

from inspector.clock import now
from inspector.demo import put_demo
from inspector.storage.library import Library
from tests.journeys.conftest import house as empty_house  # noqa: F401


@pytest.fixture(scope="session")
def demo_library(tmp_path_factory):
    """A library with the demo machine, made once, and the machine's id."""
    folder = tmp_path_factory.mktemp("demo") / "library"
    with Library.open(folder, now) as library:
        return folder, put_demo(library, money=False)


@pytest.fixture
def house(empty_house, demo_library):  # noqa: F811
    """No window is open yet; the library holds the demo machine."""
    shutil.copytree(demo_library[0], empty_house.library)
    return empty_house


@pytest.fixture
def money(house, demo_library):
    """The page Money of the demo machine."""
    return opened(house, demo_library[1])


def opened(house, record, **how):
    """The page Money is open in a window of that look and size."""
    house.build(**how)
    assert house.desk.open(record, "money")
    house.settle()
    page = house.window.pages["money"]
    assert house.window.stack.currentWidget() is page
    return page
