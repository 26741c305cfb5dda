"""What one sees of the phone's page at the computer: where to open it, its code, and who has joined."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QVBoxLayout, QWidget

from inspector.texts import tr
from inspector.window.longwords import LongWords
from inspector.window.look.columns import Column, Columns
from inspector.window.look.inks import palette
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.rows import Row
from inspector.window.look.scroll import Scroll
from inspector.window.look.text import SectionHead, Text
from inspector.window.phone.code import WIDE, QrCode
from inspector.window.phone.guests import Guests
from inspector.window.reading import step_focus

if TYPE_CHECKING:
    from PySide6.QtGui import QCloseEvent

    from inspector.phone.addresses import Place
    from inspector.window.phone.link import PhoneLink

SHEET_WIDE, SHEET_HIGH = 190, 142  # of the sheet where there is room, in millimetres at plain text size
CODE_EDGE = 7.0


class PhoneSheet(QDialog):
    """Off, it says what will be open to whom and asks on which network; on, it shows code, address and guests."""

    def __init__(self, link: PhoneLink, window: QWidget) -> None:
        super().__init__(window)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(tr("The phone"))
        self.link = link
        self.look = look = link.desk.look
        self.setPalette(palette(look.inks))
        self.trouble = LongWords(look, semibold=True)
        self.off, self.code_side, self.on = Column(look), Column(look, edge=CODE_EDGE), Column(look)
        self.places = Column(look, edge=0, top=0)
        self.guests = Guests(look)
        self.qr = QrCode(look)
        self.typed = LongWords(look, step="key", zero=True)
        self.until = Text(look)
        self.renew = Key(look, tr("new code"), name=tr("New code; the one shown is of no use any more"))
        self.stop = Key(look, tr("close the page"), name=tr("Close the page; no phone can do anything then"))
        self.leave = Key(look, tr("go on, page stays open"), strong=True)
        self.not_now = Key(look, tr("not now"))
        self._fill_off()
        self._fill_on()
        self.columns = Columns(look, [(self.code_side, WIDE + 2 * CODE_EDGE), (self.on, 0)], beside=False)
        self.box = QVBoxLayout(self)
        self.box.setContentsMargins(0, 0, 0, 0)
        self.box.setSpacing(0)
        self.closed = Scroll(look, self.off)
        self.box.addWidget(self.closed)
        self.box.addWidget(self.columns)
        self._connect()
        self.show_link()
        wide, high = look.grown(SHEET_WIDE), look.grown(SHEET_HIGH)
        self.resize(min(wide, window.width()), min(high, window.height()))

    def _fill_off(self) -> None:
        add, look = self.off.add, self.look
        add(Text(look, tr("The phone in the other hand"), step="head"))
        add(self.trouble, 2)
        add(Text(look, tr(
            "The phone's own browser opens a small page from this computer: no program to install, no internet. "
            "It shows the item that is open here, and what you photograph there lands on that item.",
        )), 2)  # fmt: skip
        add(SectionHead(look, tr("Open the page on")))
        add(self.places, 0)
        add(Text(look, tr(
            "Computer and phone must be on the same network; the phone's own hotspot is one. "
            "The page is open on this one address only, and only until you close it.",
        ), ink="soft"), 2)  # fmt: skip
        add(Text(look, _plain(), semibold=True), 2)
        add(KeyRow(look, [self.not_now], fit="flow"))

    def _fill_on(self) -> None:
        look = self.look
        self.code_side.add(self.qr)
        add = self.on.add
        add(Text(look, tr("Scan this with the phone"), step="head"))
        add(Text(look, tr("or type this address into its browser, without a gap; hyphens need not be typed")), 1)
        add(self.typed, 1)
        add(self.until, 2)
        add(KeyRow(look, [self.renew], fit="flow"), 2)
        add(SectionHead(look, tr("Phones that have joined")))
        add(self.guests, 0)
        add(Text(look, _plain(), semibold=True))
        add(KeyRow(look, [self.leave, self.stop], fit="flow"))

    def _connect(self) -> None:
        self.link.changed.connect(self.show_link)
        self.link.desk.opened.connect(self.close)
        self.guests.cutOff.connect(self.link.cut_off)
        self.renew.clicked.connect(self.link.renew)
        self.stop.clicked.connect(self.link.close)
        self.leave.clicked.connect(self.close)
        self.not_now.clicked.connect(self.close)
        self.look.changed.connect(self._dress)

    def _dress(self) -> None:
        self.setPalette(palette(self.look.inks))

    # what it shows

    def show_link(self) -> None:
        """The sheet shows how things stand now."""
        on = self.link.on
        self.closed.setVisible(not on)
        self.columns.setVisible(on)
        if on:
            self._show_open()
        else:
            self._show_places()

    def _show_places(self) -> None:
        self.trouble.say(self.link.trouble)
        self.trouble.setVisible(bool(self.link.trouble))
        self.places.clear()
        found = self.link.places()
        for place in found:
            self.places.add(self._place(place), 0)
        if not found:
            self.places.add(Text(self.look, tr(
                "This computer is on no local network. Turn on the phone's hotspot, connect this computer to it, "
                "and open this sheet again.",
            ), semibold=True), 2)  # fmt: skip

    def _place(self, place: Place) -> Row:
        row = Row(self.look, place.address, second=tr("network connection {name}", name=place.name), strong=True)
        row.clicked.connect(partial(self._open, place.address))
        return row

    def _open(self, address: str, _: bool = False) -> None:
        self.link.open(address)

    def _show_open(self) -> None:
        link = self.link
        self.qr.say(link.address, tr("Code for the phone's camera; it says the address that stands beside it"))
        self.typed.say(link.typed)
        self.qr.setVisible(not link.run_out)
        self.typed.setVisible(not link.run_out)
        if link.run_out:
            self.until.say(tr("The code has run out: no more phones may join by it. Those that have joined stay."))
        else:
            self.until.say(tr("Phones may join until {time}. Those that have joined stay.", time=link.until))
        self.guests.show_guests(link.guests)

    def closeEvent(self, event: QCloseEvent) -> None:
        """The page for the phone stays as it is."""
        super().closeEvent(event)
        self.link.trouble = ""

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Tab goes on in reading order."""
        return step_focus(self, forward)


def _plain() -> str:
    return tr(
        "The local network is not encrypted: whoever is on it can see what is sent. "
        "Use a network of your own, or the phone's hotspot."
    )
