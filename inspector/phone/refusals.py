"""A request that is not done: its status and the sentence for the person."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from inspector.texts import Say


class Refused(Exception):
    """Nothing was done or stored; ``status`` is that of HTTP, ``said`` the reason."""

    def __init__(self, status: int, said: Say) -> None:
        super().__init__(str(said))
        self.status, self.said = status, said


class CannotOpen(Exception):
    """The page cannot be opened there; ``said`` tells why and what to do."""

    def __init__(self, said: Say) -> None:
        super().__init__(str(said))
        self.said = said
