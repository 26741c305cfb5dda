"""The sheet of the phone: room for its words, names for its keys, a code that says the address, and its state told."""

import pytest
from PySide6.QtWidgets import QApplication

from inspector.phone.addresses import Place, usable
from inspector.phone.limits import Limits
from inspector.phone.messages import Guest
from inspector.profile.read import read_profile
from inspector.window.look.press import Pressable
from inspector.window.phone.places import local_places
from tests.journeys.drive import PX_PER_MM, heron
from tests.phone.hosts import LOOPBACK
from tests.window.walked import named, shown

OFFERED = (Place("192.168.43.7", "wlan0"), Place("10.0.0.12", "a connection with a rather long name of its own"))
GUESTS = (Guest(1, "192.168.43.1", True, 12), Guest(2, "192.168.43.9", False, 0))
TARGET = 12 * PX_PER_MM - 1
SETTINGS = [(size, scale) for size in ((1280, 800), (800, 1280)) for scale in (1.0, 1.75)]


@pytest.fixture
def begun(house):
    """A machine is open in a window of the usual size."""
    house.build()
    assert house.desk.start(read_profile(heron()), 1953)
    house.page("walk")
    return house


def sheet_of(house):
    key = house.walk.item.photographs.phone
    key.link.places = lambda: OFFERED
    key.click()
    house.qtbot.waitUntil(key.sheet.isVisible)
    return key.link, key.sheet


def test_words_have_room_and_targets_are_large(begun):
    faults = {}
    for size, scale in SETTINGS:
        begun.window.resize(*size)
        begun.desk.look.set_text_scale(scale)
        link, sheet = sheet_of(begun)
        faults[size, scale, "off"] = faults_of(sheet)
        assert link.open(LOOPBACK)
        link.guests = GUESTS
        link.changed.emit()
        faults[size, scale, "on"] = faults_of(sheet)
        sheet.stop.click()
        sheet.close()
    assert len(faults) == 2 * len(SETTINGS)
    assert {setting: found for setting, found in faults.items() if found} == {}


def faults_of(sheet):
    for _ in range(6):
        QApplication.processEvents()
    keys = shown(sheet, Pressable)
    assert len(keys) >= 3
    found = [f"{named(key)} is small" for key in keys if min(key.width(), key.height()) < TARGET]
    found += [f"{named(key)} has no name" for key in keys if not key.accessibleName()]
    for widget in shown(sheet):
        if widget.hasHeightForWidth() and widget.height() < widget.heightForWidth(widget.width()) - 1:
            found.append(f"{named(widget)} needs {widget.heightForWidth(widget.width())} in height")
        if widget.x() + widget.width() > widget.parentWidget().width() + 1:
            found.append(f"{named(widget)} reaches past {named(widget.parentWidget())}")
    return found


def test_the_code_says_the_address_that_stands_beside_it(begun):
    import cv2
    import numpy as np

    link, sheet = sheet_of(begun)
    assert link.open(LOOPBACK)
    QApplication.processEvents()
    image = sheet.qr.grab().toImage().convertToFormat(sheet.qr.grab().toImage().Format.Format_Grayscale8)
    grey = np.frombuffer(image.constBits(), np.uint8).reshape(image.height(), image.bytesPerLine())[:, : image.width()]
    # OpenCV's reader, which shares nothing with the writer of the code.
    read, _, _ = cv2.QRCodeDetector().detectAndDecode(np.ascontiguousarray(grey))
    assert read == link.address
    assert sheet.typed.words.replace("\n", "").replace("-", "") == link.address
    assert link.address.startswith(f"http://{LOOPBACK}:")
    sheet.close()


def test_it_is_off_until_it_is_asked_for_and_again_after_it_was_closed(begun):
    key = begun.walk.item.photographs.phone
    assert not key.link.on
    assert key.held == ""
    link, sheet = sheet_of(begun)
    assert not link.on
    assert "not encrypted" in words_of(sheet.off)
    assert link.open(LOOPBACK)
    assert "not encrypted" in words_of(sheet.on)
    sheet.close()
    assert link.on
    assert key.held == "kept"
    assert "open" in key.title
    key.click()
    begun.qtbot.waitUntil(key.sheet.isVisible)
    key.sheet.stop.click()
    assert not link.on
    assert key.held == ""
    key.sheet.close()


def test_a_code_that_ran_out_is_shown_no_more_until_there_is_a_new_one(begun):
    link, sheet = sheet_of(begun)
    link.limits = Limits(join=0.3)
    assert link.open(LOOPBACK)
    before = link.address
    assert sheet.qr.isVisible()
    begun.qtbot.waitUntil(lambda: not sheet.qr.isVisible())
    assert "run out" in sheet.until.words
    assert not sheet.typed.isVisible()
    link.limits = Limits()
    sheet.renew.click()
    assert sheet.qr.isVisible()
    assert link.address != before
    sheet.close()


def words_of(widget):
    return " ".join(getattr(one, "words", "") for one in shown(widget))


def test_it_says_why_it_could_not_be_opened(begun):
    link, sheet = sheet_of(begun)
    begun.press(sheet.places.widgets()[0])  # an address that this computer has not got
    assert not link.on
    assert "192.168.43.7" in sheet.trouble.words
    assert "Check the network" in sheet.trouble.words
    sheet.close()


def test_the_addresses_offered_are_this_computers_own_on_local_networks():
    given = ("192.168.1.4", "127.0.0.1", "8.8.8.8", "0.0.0.0", "224.0.0.1", "fe80::1", "::1", "172.20.10.3",
             "192.168.1.4", "100.64.0.1", "10.1.2.3", "169.254.3.4")  # fmt: skip
    found = usable(Place(address, "x") for address in given)
    assert [place.address for place in found] == ["192.168.1.4", "172.20.10.3", "10.1.2.3", "169.254.3.4"]
    assert all(place.name for place in local_places())
    assert LOOPBACK not in {place.address for place in local_places()}


def test_the_row_of_a_phone_stays_under_the_finger_while_others_come_and_send(begun):
    link, sheet = sheet_of(begun)
    assert link.open(LOOPBACK)
    assert sheet.guests.nobody.isVisible()

    def come(*guests):
        link.guests = tuple(Guest(number, LOOPBACK, live=True, photographs=sent) for number, sent in guests)
        link.changed.emit()

    come((1, 0))
    row = sheet.guests.rows[1]
    row.setFocus()
    come((1, 3), (2, 0))
    assert sheet.guests.rows[1] is row
    assert sheet.focusWidget() is row
    assert "3 photographs sent" in row.accessibleName()
    assert not sheet.guests.nobody.isVisible()
    come((2, 0))
    assert list(sheet.guests.rows) == [2]
    come()
    assert sheet.guests.rows == {}
    assert sheet.guests.nobody.isVisible()
    sheet.close()
