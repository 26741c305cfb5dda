"""The house of the journeys, for what is looked at in the window itself."""

from tests.journeys.conftest import house

__all__ = ["house"]
