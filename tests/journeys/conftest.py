"""A house for each journey: closed again whatever happened in it."""

import pytest
from PySide6.QtWidgets import QApplication

from tests.journeys.drive import House


@pytest.fixture
def house(qtbot, tmp_path):
    """A folder without any machine; the application looks afterwards as it did before."""
    application = QApplication.instance()
    palette, font = application.palette(), application.font()
    made = House(qtbot, tmp_path)
    yield made
    made.close()
    application.setPalette(palette)
    application.setFont(font)
    QApplication.clipboard().clear()
