"""The photographs of the open item."""

from inspector.window.bringing import PhotographStrip as Strip
from inspector.window.bringing import Tie


class PhotographStrip(Strip):
    """Small pictures of the open item, and keys to bring more."""

    def tie(self) -> Tie:
        """The item that is open."""
        return Tie(item=self.desk.item)
