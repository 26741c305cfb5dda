"""A house of the journeys in which one machine was walked already."""

import shutil

import pytest

from tests.journeys.conftest import house as empty_house  # noqa: F401
from tests.window.walked import make


@pytest.fixture(scope="session")
def walked_library(tmp_path_factory):
    """A library with one machine, made once."""
    folder = tmp_path_factory.mktemp("walked")
    make(folder / "library")
    return folder / "library"


@pytest.fixture
def house(empty_house, walked_library):  # noqa: F811
    """No window is open yet; the library holds the walked machine."""
    shutil.copytree(walked_library, empty_house.library)
    return empty_house
