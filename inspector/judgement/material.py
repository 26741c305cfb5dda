"""What magnet, tap and underside say of a part, and what they do not say; nothing is concluded from them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.record.material import Beneath, Magnet, Sound
from inspector.texts import Say, say

if TYPE_CHECKING:
    from inspector.record.material import Material

# Common practice, no source; which metals a magnet holds on is told from memory.
STICKS = say(
    "Iron and most steels hold a magnet, those of a pattern part too: it does not tell whether it is original."
)
FALLS = say(
    "Aluminium, brass, some stainless steel, plastic and fibre hold no magnet; thick filler keeps it off steel."
)
SOUNDS = say("Filler, felt, rubber or a full tank dull the sound: tap beside it too.")
DIFFER = say("Magnet, sound and underside do not tell of the same material: note where each was tried.")
_METAL, _FIBRE, _PLASTIC = "metal", "fibre", "plastic"
_OF = {
    Sound.METAL: _METAL, Beneath.METAL: _METAL, Sound.FIBRE: _FIBRE, Beneath.FIBRE: _FIBRE,
    Sound.PLASTIC: _PLASTIC, Beneath.PLASTIC: _PLASTIC,
}  # fmt: skip


def material_beware(material: Material) -> tuple[Say, ...]:
    """What must not be taken from what was noted; nothing where nothing was."""
    told = {Magnet.STICKS: STICKS, Magnet.FALLS: FALLS}
    said = [told[material.magnet]] if material.magnet in told else []
    if material.sound in (Sound.FIBRE, Sound.PLASTIC):
        said.append(SOUNDS)
    return (*said, DIFFER) if differ(material) else tuple(said)


def differ(material: Material) -> bool:
    """Whether two of them cannot be of one material: a magnet holds on neither fibre nor plastic."""
    seen = {_OF[one] for one in (material.sound, material.beneath) if one in _OF}
    return len(seen) > 1 or (material.magnet is Magnet.STICKS and bool(seen - {_METAL}))
