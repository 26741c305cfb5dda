"""A stranger's whole job in the real window: from the list of machines to a PDF in a folder."""

import io
import re

import pytest
from pypdf import PdfReader
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QImage
from PySide6.QtWidgets import QApplication

from inspector.judgement.route import order
from inspector.record.edits import Part, Put, Step
from inspector.record.words import Mark, Seen
from inspector.window.walk.item import UNSEEN
from tests.journeys.drive import picture

CTRL, SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier
NEVER = ("authentic", "genuine", "original numbers", "certified", "not stolen", "safe to ride", "market value")
CLAIM = {
    "advertised": "Heron Twin, barn find, matching. Ran last year.",
    "titled": "Brackwater 500, first used 1953",
    "build_date": "November 1952",
    "first_registration": "4 May 1953",
    "title_year": "1953",
    "market": "home",
    "place": "Yard behind the mill",
    "conditions": "dull, dry, engine cold",
}
MARKS = tuple(Mark)


def at_hand(house):
    """What was entered at the open item: form, mark and seen state."""
    found = house.finding()
    return found.fitted, found.mark, found.seen


def fill_claim(house):
    page = house.window.pages["claim"]
    for name, text in CLAIM.items():
        house.type(page.fields[name], text)
    house.press(page.people.plus)
    form = list(page.people.forms.values())[-1]
    assert form.fields["name"].control.hasFocus()
    house.type(form.fields["name"], "Mara Quill (invented)")
    house.press(form.choices["role"].key("seller"))
    house.page("numbers")
    numbers = house.window.pages["numbers"]
    assert numbers.place.cells.current().hasFocus()
    for letter in "AR3 53? 1[19]4":
        house.qtbot.keyClicks(QApplication.focusWidget(), letter)
    house.press(numbers.place.how.how.key("from a photograph"))
    house.press(numbers.place.how.how.key("from metal by me"))


def assert_claim(house):
    claim = house.record.claim
    assert claim.model_year == 1953
    assert {name: str(getattr(claim, name)) for name in CLAIM} == CLAIM
    *_, person = house.record.people
    assert (person.name, person.role.value) == ("Mara Quill (invented)", "seller")
    (reading,) = house.record.readings
    assert reading.typed().replace(" ", "") == "AR353?1[19]4"
    assert reading.how_read.value == "from metal by me"


def mark_by_hand(house, n):
    """One item, at most three touches, the one that goes on included; gives what is to be kept."""
    view, before = house.walk.item, house.touches
    if n % 5 == 4:
        state = UNSEEN[n // 5 % 4]
        house.press(view.unseen)
        house.press(next(r for r in view.unseen.list.rows if r.property("option") == state.value))
        wanted = ("", None, state)
    else:
        key = view.fitted.keys[n % (len(view.fitted.keys) - 1)]
        wanted = (key.property("option"), MARKS[n % 3], Seen.EXAMINED)
        house.press(key)
        house.press(view.marks.key(MARKS[n % 3].value))
    assert at_hand(house) == wanted
    house.press(view.next)
    assert house.touches - before <= 3
    return wanted


def mark_by_keys(house, n):
    """One item by at most three keys, a reason and how it shows in some; gives what is to be kept."""
    view = house.walk.item
    if n % 4 == 3:
        number = n // 4 % 4
        house.key(Qt.Key(Qt.Key.Key_4 + number))
        wanted = ("", None, UNSEEN[number])
    else:
        at = n % (len(view.fitted.keys) - 1)
        wanted = (view.fitted.keys[at].property("option"), MARKS[n % 3], Seen.EXAMINED)
        house.key(Qt.Key(Qt.Key.Key_A + at))
        house.key(Qt.Key(Qt.Key.Key_1 + n % 3))
    assert at_hand(house) == wanted
    if n % 6 == 1:
        had = len(house.finding().conclusions)
        house.key(Qt.Key.Key_W)
        house.key(Qt.Key.Key_Down)
        house.key(Qt.Key.Key_Space)
        house.key(Qt.Key.Key_H)
        house.key(Qt.Key.Key_Space)
        assert abs(len(house.finding().conclusions) - had) == 1
        assert len(house.finding().evidence) == 1
        house.key(Qt.Key.Key_PageDown)  # Return would press the key that has the ring
    else:
        house.key(Qt.Key.Key_Return)
    return wanted


def walk_forty(house):
    kept, walk = {}, order(house.desk.profile, house.record)
    for n in range(40):
        assert house.desk.item == walk[n]
        kept[walk[n]] = mark_by_hand(house, n) if n < 20 else mark_by_keys(house, n)
    found = {f.item: (f.fitted, f.mark, f.seen) for f in house.record.findings}
    assert found == kept
    return kept


def bring_photographs(house):
    strip = house.walk.item.photographs
    files = [picture(house.folder / f"rear {n}.jpg", n) for n in range(2)]
    house.reach(strip.plus)
    house.drop(strip, files)
    house.qtbot.waitUntil(lambda: len(house.record.photographs) == 2)
    image = QImage(300, 200, QImage.Format.Format_RGB32)
    image.fill(QColor(80, 120, 60))
    QApplication.clipboard().setImage(image)
    house.key(Qt.Key.Key_V, CTRL)
    house.qtbot.waitUntil(lambda: len(house.record.photographs) == 3)
    house.settle()
    assert [p.name for p in house.record.photographs_at(house.desk.item)] == ["rear 0.jpg", "rear 1.jpg", "pasted.png"]
    assert files[0].read_bytes() == house.desk.library.photographs.path(house.record.photographs[0].sha256).read_bytes()


def undo_and_redo(house):
    whole = house.record
    for _ in range(3):
        house.press(house.window.frame.undo)
    assert house.record != whole
    assert len(house.record.photographs) < 3
    house.key(Qt.Key.Key_Z, CTRL)
    for _ in range(4):
        house.key(Qt.Key.Key_Z, CTRL | SHIFT)
    assert house.record == whole


def open_again(house):
    item, record = house.desk.item, house.record
    house.close()
    house.build()
    machines = house.window.pages["machines"]
    house.press(machines.rows.widgets()[0])
    assert house.window.stack.currentWidget() is house.walk
    assert (house.desk.item, house.record) == (item, record)
    undone = house.desk.session.undo_label
    assert undone == "Photographs"
    house.key(Qt.Key.Key_Z, CTRL)
    assert len(house.record.photographs) == 2
    house.key(Qt.Key.Key_Z, CTRL | SHIFT)
    assert house.record == record
    house.settle()


def make_sheet(house):
    """The saved PDF's pages as text, told to be the bytes that the preview shows."""
    house.page("sheet")
    page = house.window.pages["sheet"]
    house.qtbot.waitUntil(lambda: bool(page.pdf), timeout=20_000)
    house.settle()
    house.ask.target = house.folder / "out" / "sheet.pdf"
    house.ask.target.parent.mkdir()
    house.press(page.save)
    assert house.ask.target.read_bytes() == page.pdf
    assert house.ask.names[-1].endswith(".pdf")
    assert page.state.words == "Saved as sheet.pdf."
    return [p.extract_text() for p in PdfReader(io.BytesIO(page.pdf)).pages]


def squeezed(text):
    return re.sub(r"[\s\u00ad]+", "", text).casefold()


def assert_sheet(house, pages, kept):
    text, items = squeezed("".join(pages)), house.desk.profile.item_by_id
    missing = [items[i].name for i in kept if squeezed(items[i].name) not in text]
    assert missing == []
    hidden = [i for i, (_, _, seen) in kept.items() if seen is Seen.CANNOT_BE_SEEN]
    assert len(hidden) >= 2
    assert text.count(squeezed("cannot be seen")) >= len(hidden)
    assert [word for word in NEVER if squeezed(word) in text] == []
    assert "48713" not in text
    assert not re.search(r"[€£$]", text)
    for n, page in enumerate(pages, 1):
        assert squeezed(f"{n} of {len(pages)}") in squeezed(page)


def test_a_strangers_whole_job(house):
    house.build()
    house.start()
    fill_claim(house)
    assert_claim(house)
    house.page("walk")
    kept = walk_forty(house)
    bring_photographs(house)
    undo_and_redo(house)
    open_again(house)
    assert_claim(house)
    assert house.desk.do(Step(label="Price asked", puts=(Put(part=Part.MONEY, key="price_asked", value="48713"),)))
    assert_sheet(house, make_sheet(house), kept)


def test_leaving_the_window_keeps_what_is_being_typed(house):
    house.build()
    house.start()
    field = house.window.pages["claim"].fields["place"]
    house.reach(field)
    house.qtbot.mouseClick(field.control, Qt.MouseButton.LeftButton)
    house.qtbot.keyClicks(field.control, "Half a word")
    record = house.record.id
    house.close()
    house.build()
    assert house.desk.open(record, "claim")
    assert house.record.claim.place == "Half a word"


@pytest.mark.parametrize("word", ["brackwater", "HERON", "1953"])
def test_the_search_finds_a_machine_by_its_words(house, word):
    house.build()
    house.start()
    house.page("machines")
    machines = house.window.pages["machines"]
    house.type(machines.search, word)
    assert len(machines.rows.widgets()) == 1
    house.type(machines.search, "no such machine")
    assert machines.rows.widgets()[-1].words == "No machine has these words."
