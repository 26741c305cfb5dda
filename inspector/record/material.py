"""What magnet, tap and the underside told of what a part is made of."""

from __future__ import annotations

from enum import StrEnum

from inspector.record.base import Piece


class Magnet(StrEnum):
    """What a magnet does."""

    STICKS = "magnet sticks"
    FALLS = "magnet does not stick"
    CANNOT = "magnet cannot be tried"


class Sound(StrEnum):
    """What it sounds of when it is tapped."""

    METAL = "sounds of metal"
    FIBRE = "sounds of fibre"
    PLASTIC = "sounds of plastic"
    CANNOT = "sound cannot be told"


class Beneath(StrEnum):
    """What is seen where no paint lies, on the underside or at an edge."""

    METAL = "metal seen underneath"
    FIBRE = "fibre seen underneath"
    PLASTIC = "plastic seen underneath"
    CANNOT = "underside cannot be seen"


class Material(Piece):
    """What was told by each of three looks; None where it was not tried."""

    magnet: Magnet | None = None
    sound: Sound | None = None
    beneath: Beneath | None = None

    @property
    def told(self) -> tuple[Magnet | Sound | Beneath, ...]:
        """Everything that was noted, what could not be tried as well."""
        return tuple(one for one in (self.magnet, self.sound, self.beneath) if one is not None)

    @property
    def says(self) -> bool:
        """Whether any of them tells something of the material."""
        return any(one not in (Magnet.CANNOT, Sound.CANNOT, Beneath.CANNOT) for one in self.told)
