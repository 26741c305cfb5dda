"""Magnet, tap and underside: three quick looks at what a part is made of, beside the evidence "material"."""

from collections.abc import Iterable
from enum import StrEnum
from functools import partial

from inspector.judgement.material import material_beware
from inspector.profile.items import Item
from inspector.record.finding import Finding
from inspector.record.material import Beneath, Magnet, Sound
from inspector.record.verbs_material import see_material
from inspector.record.words import Evidence
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import ChoiceKeys
from inspector.window.look.keys import Option
from inspector.window.look.text import Text

LOOKS: dict[str, type[StrEnum]] = {"magnet": Magnet, "sound": Sound, "beneath": Beneath}
MAGNET = "magnet"  # among what a profile says to bring to an item


class MaterialLooks(Column):
    """A row of keys for each look; touched again a key takes it back. Below them what must not be taken from it."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk.look, edge=0, top=0)
        self.desk = desk
        self.keys = {look: self._keys(look, words) for look, words in LOOKS.items()}
        self.beware = Text(desk.look, ink="soft")
        self.add(Text(desk.look, tr("What is it made of?"), semibold=True))
        self.add(Text(desk.look, tr(
            "Hold a magnet in a cloth, tap with a knuckle, look where no paint lies. Ask before touching.",
        ), ink="soft"), 1)  # fmt: skip
        for keys in self.keys.values():
            self.add(keys, 2)
        self.add(self.beware, 2)

    def _keys(self, look: str, words: Iterable[StrEnum]) -> ChoiceKeys:
        options = [Option(word.value, tr(word.value)) for word in words]
        keys = ChoiceKeys(self.look, options, held="kept", may_clear=True, fit="fill")
        keys.changed.connect(partial(self._note, look))
        return keys

    def show_finding(self, found: Finding, item: Item) -> None:
        """The keys hold what was noted; they are there where material is evidence, or the item asks for a magnet."""
        material = found.material
        self.setVisible(Evidence.MATERIAL in found.evidence or bool(material.told) or MAGNET in item.bring)
        for look, keys in self.keys.items():
            told = getattr(material, look)
            keys.set_held(*([told.value] if told is not None else []))
        words = " ".join(tr(said) for said in material_beware(material))
        self.beware.say(words)
        self.beware.setVisible(bool(words))

    def _note(self, look: str, held: list[str]) -> None:
        self.desk.do(see_material(*self.desk.at(), look, held[0] if held else ""))
