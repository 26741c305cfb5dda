"""The house of the journeys, for what is seen of the phone at the window."""

from tests.journeys.conftest import house  # noqa: F401
