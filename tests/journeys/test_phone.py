"""The phone in the other hand: its own browser, at phone size, and the real window, both at work at once."""

import http.client
import socket
import threading
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image, ImageDraw
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from inspector.phone.addresses import Place
from inspector.phone.limits import Limits
from inspector.profile.read import read_profile
from inspector.record.summary import summary
from tests.journeys.drive import heron
from tests.journeys.test_trouble import FULL, full
from tests.phone.browser import SIZE, Phone, browsing
from tests.phone.hosts import LOOPBACK, Clock

HERE = Place(LOOPBACK, "loopback")
TARGET = 72  # of a phone's pixels: 12 mm on one that is 65 mm wide and 390 pixels across
MEGAPIXELS_12 = (4000, 3000)
# Drawn for this test with Pillow and pillow-heif: 4000 by 3000, an oval and a bar; encoding takes too long for a test.
HEIC = Path(__file__).parents[1] / "phone" / "drawn.heic"
CLEAR_SIGHT = """[...document.querySelectorAll('.key')].filter(key => key.offsetParent)
    .map(key => [key.innerText.trim(), key.offsetWidth, key.offsetHeight])"""

CUT_SHORT = """[...document.querySelectorAll('.key, h1, p')].filter(part => part.offsetParent)
    .filter(part => part.scrollWidth > part.clientWidth + 4 && part.clientWidth).map(part => part.innerText)"""

BROKEN = """[...document.querySelectorAll('.key')].filter(key => key.offsetParent).filter(key => {
    const text = [...key.childNodes].find(node => node.nodeType === 3 && node.data.trim());
    const range = document.createRange();
    range.selectNodeContents(text);
    return !text.data.trim().includes(' ') && range.getClientRects().length > 1;
}).map(key => key.innerText)"""


@pytest.fixture
def walking(house):
    """The walk of a new machine; this computer has one address, its own."""
    house.build()
    assert house.desk.start(read_profile(heron()), 1953)
    house.page("walk")
    key_of(house).link.places = lambda: (HERE,)
    return house


@pytest.fixture(scope="module")
def browser():
    """The browser, started once; each phone gets a memory of its own."""
    with browsing() as made:
        yield made


@pytest.fixture
def hand(qtbot, browser):
    """A phone that has not joined yet."""
    made = Phone(qtbot, browser)
    yield made
    made.close()


def key_of(house):
    return house.walk.item.photographs.phone


def open_page(house):
    """The page is open, as a person opens it; gives its address."""
    key = key_of(house)
    house.press(key)
    house.qtbot.waitUntil(key.sheet.isVisible)
    house.press(key.sheet.places.widgets()[0])
    assert key.link.on
    return key.link.address


def joined(house, hand):
    """The phone shows the page and the sheet is out of the way."""
    assert hand.visit(open_page(house)) == 200
    hand.sees("#name", house.desk.profile.item_by_id[house.desk.item].name)
    house.press(key_of(house).sheet.leave)
    return key_of(house).link


def taken_by_a_camera(folder):
    """Twelve files of twelve megapixels: ten JPEG, a HEIC, and a JPEG that is cut short in the middle."""
    image = Image.effect_noise(tuple(side // 8 for side in MEGAPIXELS_12), 60).resize(MEGAPIXELS_12).convert("RGB")
    files = []
    for n in range(11):
        ImageDraw.Draw(image).rectangle((300 * n, 200, 300 * n + 250, 2600), fill=(20 * n, 90, 120))
        whole = BytesIO()
        image.save(whole, "JPEG", quality=88)
        files.append(folder / f"IMG_{n:04}.jpg")
        files[-1].write_bytes(whole.getvalue() if n else whole.getvalue()[: len(whole.getvalue()) // 2])
    broken = files.pop(0).rename(folder / "broken.jpg")
    heic = folder / "IMG_0011.heic"
    heic.write_bytes(HEIC.read_bytes())
    return [*files[:5], broken, *files[5:], heic]


def nothing_kept(house):
    folder = house.library / "photographs"
    return house.record.photographs == () and not [file for file in folder.rglob("*") if file.is_file()]


def works(house):
    """A key of the window does what it should."""
    house.window.activateWindow()
    house.qtbot.waitUntil(lambda: QApplication.activeWindow() is house.window)
    before = house.finding() and house.finding().mark
    house.key(Qt.Key.Key_1)
    return house.finding().mark is not before


def test_twelve_files_land_on_the_item_that_the_phone_showed(walking, hand):
    link = joined(walking, hand)
    first = walking.desk.item
    files = taken_by_a_camera(walking.folder)
    hand.choose("#several", *files)
    hand.do(lambda: hand.page.wait_for_selector("#rows li"))
    walking.press(walking.walk.item.next)  # meanwhile the walk goes on at the computer
    second = walking.desk.profile.item_by_id[walking.desk.item].name
    hand.sees("#name", second)
    walking.qtbot.waitUntil(lambda: over(hand, len(files)), timeout=60_000)
    fates = hand.fates()
    assert {name: fate[0] for name, fate in fates.items()} == {
        file.name: "refused" if file.name == "broken.jpg" else "kept" for file in files
    }
    assert "broken.jpg is cut short" in fates["broken.jpg"][2]
    name = walking.desk.profile.item_by_id[first].name
    assert {fate[1] for fate in fates.values()} == {f"for {name}"}
    kept = walking.record.photographs
    assert {photograph.item for photograph in kept} == {first}
    assert sorted(p.name for p in kept) == sorted(file.name for file in files if file.name != "broken.jpg")
    assert {(p.width, p.height) for p in kept} == {MEGAPIXELS_12}
    assert {p.media for p in kept} == {"image/jpeg", "image/heic"}
    store = walking.desk.library.photographs
    whole = {file.read_bytes() for file in files if file.name != "broken.jpg"}
    assert {store.path(p.sha256).read_bytes() for p in kept} == whole
    assert [guest.photographs for guest in link.guests] == [11]
    hand.choose("#several", files[0])
    walking.qtbot.waitUntil(lambda: over(hand, len(files) + 1), timeout=20_000)
    assert walking.record.photographs[-1].item == walking.desk.item
    assert hand.complaints == []


def over(hand, count):
    """Whether so many photographs have a fate."""
    return hand.evaluate("document.querySelectorAll('#rows .kept, #rows .there, #rows .refused').length") == count


def test_the_phone_shows_the_item_marks_it_and_goes_on(walking, hand):
    joined(walking, hand)
    profile, first = walking.desk.profile, walking.desk.item
    assert profile.item_by_id[first].question in hand.text("#question")
    assert hand.evaluate("document.documentElement.scrollWidth") <= SIZE["width"]
    assert [size for size in hand.evaluate(CLEAR_SIGHT) if min(size[1:]) < TARGET] == []
    hand.evaluate("void (document.documentElement.style.fontSize = '28px')")  # type at 175 %
    assert hand.evaluate("document.documentElement.scrollWidth") <= SIZE["width"]
    assert hand.evaluate(CUT_SHORT) == []
    assert hand.evaluate(BROKEN) == []
    hand.evaluate("void (document.documentElement.style.fontSize = '')")
    hand.tap("[data-verb=doubt]")
    walking.qtbot.waitUntil(lambda: walking.finding(first) is not None)
    assert walking.finding(first).mark.value == "doubt"
    hand.sees("[aria-pressed=true]", "doubt")
    hand.tap("[data-verb=doubt]")
    walking.qtbot.waitUntil(lambda: walking.finding(first).mark is None)
    hand.tap("[data-verb=next]")
    walking.qtbot.waitUntil(lambda: walking.desk.item != first)
    hand.sees("#name", profile.item_by_id[walking.desk.item].name)
    hand.tap("[data-verb=back]")
    walking.qtbot.waitUntil(lambda: walking.desk.item == first)
    with_shots = next(shot for shot in profile.shots if shot.item and shot.item != first)
    walking.desk.go_to(with_shots.item)
    hand.sees("#shots", with_shots.name)
    assert hand.complaints == []


def test_while_the_camera_is_open_the_walk_may_go_on_and_the_photograph_stays_with_its_item(walking, hand):
    joined(walking, hand)
    first, names = walking.desk.item, walking.desk.profile.item_by_id
    camera = hand.open_camera("#shoot")
    walking.press(walking.walk.item.next)
    hand.sees("#name", names[walking.desk.item].name)
    hand.do(lambda: camera.set_files(str(small_picture(walking.folder / "Vögel 車 🏍.jpg", 5))))
    hand.sees("#rows li.kept", f"for {names[first].name}")
    assert names[first].name in hand.text("#moved")
    assert names[walking.desk.item].name in hand.text("#moved")
    (kept,) = walking.record.photographs
    assert (kept.item, kept.name) == (first, "Vögel 車 🏍.jpg")
    assert walking.desk.item != first


def test_a_photograph_sent_again_is_told_to_be_there_and_a_full_disk_in_its_words(walking, hand, monkeypatch):
    joined(walking, hand)
    small = small_picture(walking.folder / "one.jpg", 1)
    hand.choose("#several", small)
    hand.sees("#rows li.kept", "kept")
    hand.choose("#camera", small)
    hand.sees("#rows li.there", "already there")
    assert len(walking.record.photographs) == 1
    monkeypatch.setattr(walking.desk.library, "commit", full)
    hand.choose("#several", small_picture(walking.folder / "two.jpg", 2))
    hand.sees("#rows li.refused", FULL)
    assert len(walking.record.photographs) == 1
    assert walking.says() == FULL


def small_picture(path, n):
    Image.new("RGB", (64, 48), (10 * n, 90, 120)).save(path)
    return path


def test_wrong_and_old_codes_show_a_sentence_and_nothing_else(walking, hand):
    clock = key_of(walking).link.clock = Clock()
    address = open_page(walking)
    wrong = address[:-4] + ("0000" if not address.endswith("0000") else "1111")
    assert hand.visit(wrong) == 403
    assert "does not hold" in hand.text("body")
    clock.now += Limits().join + 1
    assert hand.visit(address) == 403
    assert "run out" in hand.text("body")
    assert hand.visit(address.rpartition("/")[0] + "/") == 403
    assert key_of(walking).link.guests == ()
    walking.press(key_of(walking).sheet.renew)
    assert hand.visit(key_of(walking).link.address) == 200
    walking.press(key_of(walking).sheet.leave)
    assert nothing_kept(walking)
    assert works(walking)


def test_a_phone_that_is_cut_off_says_so_and_may_do_nothing(walking, hand):
    link = joined(walking, hand)
    walking.qtbot.waitUntil(lambda: bool(link.guests) and link.guests[0].live)
    before = link.address
    key_of(walking).click()
    sheet = key_of(walking).sheet
    walking.qtbot.waitUntil(sheet.isVisible)
    walking.press(sheet.guests.widgets()[0])
    hand.sees("#state", "cut off")
    assert link.address != before
    hand.do(lambda: hand.page.reload())
    assert "not joined" in hand.text("body")
    assert hand.visit(before) == 403
    walking.press(sheet.leave)
    assert nothing_kept(walking)


CLOSINGS = {
    "by its key": lambda house: key_of(house).link.close(),
    "with its machine": lambda house: house.desk.close(),
    "with the machine taken out of the list": lambda house: taking(house).take_out(summary(house.record)),
    "with the window": lambda house: house.window.close(),
    "with its network": lambda house: gone(key_of(house).link),
    "by the computer's sleep": lambda house: slept(key_of(house).link),
}


def taking(house):
    return house.window.pages["machines"].machines.taking


def gone(link):
    link.places = tuple
    link.server.at = "192.168.77.7:1"  # as if it had been open on a network that is there no longer
    link.look_for_network()


def slept(link):
    link.clock.now += 100.0


def test_a_page_left_open_says_so_however_it_was_closed(walking, hand):
    record, link = walking.record.id, key_of(walking).link
    link.clock, link.limits = Clock(), Limits(beat=0.05, rate=1e6)
    for how, close in CLOSINGS.items():
        joined(walking, hand)
        port = int(link.server.at.rpartition(":")[2])
        close(walking)
        hand.sees("#state", "closed this page")
        walking.qtbot.waitUntil(lambda: not link.on)
        with pytest.raises(ConnectionRefusedError):
            socket.create_connection((LOOPBACK, port), timeout=2)
        hand.evaluate("document.getElementById('several').disabled = false")
        hand.choose("#several", small_picture(walking.folder / "late.jpg", 3))
        hand.sees("#rows li.refused", "closed this page")
        if "sleep" in how:
            assert "slept" in walking.says()
        if "taken out" in how:
            taking(walking).undo()
        walking.show()
        assert walking.desk.open(record)
        link.places = lambda: (HERE,)
        assert nothing_kept(walking)
        assert works(walking)


def test_two_hundred_requests_and_two_gigabytes_leave_the_window_alive_and_nothing_stored(walking, hand):
    link = joined(walking, hand)
    cookie = hand.do(lambda: hand.page.context.cookies())[0]
    headers = {"Cookie": f"{cookie['name']}={cookie['value']}", "Origin": f"http://{link.server.at}"}
    where = f"/photograph?record={walking.record.id}&item={walking.desk.item}"
    statuses = []
    given = (link.server.at, where, headers, statuses)
    threads = [threading.Thread(target=ask, args=(*given, n), daemon=True) for n in range(200)]
    for thread in threads:
        thread.start()
    walking.qtbot.waitUntil(lambda: not any(thread.is_alive() for thread in threads), timeout=30_000)
    assert len(statuses) == 200
    assert 413 in statuses
    assert set(statuses) <= {0, 200, 413, 429, 503}
    walking.settle()
    assert nothing_kept(walking)
    assert works(walking)
    hand.sees("[aria-pressed=true]", "pass")
    assert hand.complaints == []


def ask(at, where, headers, statuses, n):
    """One of many at once: nonsense that is no picture, or the beginning of two gigabytes."""
    connection = http.client.HTTPConnection(at, timeout=20)
    try:
        more = {"Content-Length": "2000000000"} if n % 2 else {"Content-Length": "9"}
        connection.request("POST", where, b"no photo!", headers | more)
        statuses.append(connection.getresponse().status)
    except (OSError, http.client.HTTPException):
        statuses.append(0)
    finally:
        connection.close()


def test_without_a_network_the_sheet_says_what_to_do_and_nothing_is_open(walking):
    key = key_of(walking)
    key.link.places = tuple
    walking.press(key)
    walking.qtbot.waitUntil(key.sheet.isVisible)
    words = " ".join(widget.words for widget in key.sheet.places.widgets())
    assert "hotspot" in words
    assert not key.link.on
    walking.press(key.sheet.not_now)
    assert QApplication.activeModalWidget() is None
