"""The drawer "what can it be": thread, tyre and colour, each with its sources and warnings."""

from collections.abc import Callable

from PySide6.QtCore import Signal

from inspector.profile.items import Item
from inspector.profile.words import Safety
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import ChoiceKeys
from inspector.window.look.keys import Option
from inspector.window.walk.colour_tool import ColourTool
from inspector.window.walk.thread_tool import ThreadTool
from inspector.window.walk.tyre_tool import TyreTool

THREAD, TYRE, COLOUR = "thread", "tyre", "colour"


class WhatCanItBe(Column):
    """One of three small tools; each is made when it is first wanted, and none ever marks anything.

    ``opened`` tells that one of them was chosen.
    """

    opened = Signal()

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk.look, edge=0, top=0)
        self.desk = desk
        self.tools: dict[str, ThreadTool | TyreTool | ColourTool] = {}
        self._keys: ChoiceKeys | None = None
        self._at = ""

    @property
    def keys(self) -> ChoiceKeys:
        """One key for each tool."""
        if self._keys is None:
            self._keys = ChoiceKeys(self.look, held="kept", fit="fill")
            self._keys.picked.connect(self.open_tool)
            self.add(self._keys, 2)
        return self._keys

    def show_item(self, item: Item) -> None:
        """The tools stand ready for this item; at a tyre its own comes first and is open."""
        words = {THREAD: tr("thread"), TYRE: tr("tyre"), COLOUR: tr("colour")}
        first = TYRE if item.safety is Safety.TYRE else ""
        self.keys.set_options([Option(tool, words[tool]) for tool in sorted(words, key=lambda tool: tool != first)])
        for tool in self.tools.values():
            tool.show_item(item)
        self.open_tool(first or self._at)

    def open_tool(self, name: str) -> None:
        """That tool is shown, and no other; none for an empty name."""
        self._at = name
        if name and name not in self.tools:
            self.tools[name] = MAKE[name](self.desk)
            self.tools[name].show_item(self.desk.profile.item_by_id[self.desk.item])
            self.add(self.tools[name], 2)
        for other, tool in self.tools.items():
            tool.setVisible(other == name)
        self.keys.set_held(name)
        self.opened.emit()


MAKE: dict[str, Callable[[Desk], ThreadTool | TyreTool | ColourTool]] = {
    THREAD: ThreadTool, TYRE: TyreTool, COLOUR: ColourTool,
}  # fmt: skip
