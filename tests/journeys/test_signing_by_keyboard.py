"""With the keyboard alone a sheet is signed by a typed name, sealed, and told as what it is."""

from io import BytesIO

from pypdf import PdfReader
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from inspector.record.claim import Person
from inspector.record.edits import Part
from inspector.record.signing import standing
from inspector.record.verbs import put_entry
from inspector.record.words import Role


def tab_to(house, widget):
    """The focus comes to the widget by Tab alone."""
    for _ in range(200):
        if QApplication.focusWidget() is widget:
            return
        house.key(Qt.Key.Key_Tab)
    raise AssertionError(f"Tab does not reach {widget.accessibleName()}")


def use(house, widget):
    """The widget is reached by Tab and pressed with the space bar."""
    tab_to(house, widget)
    house.key(Qt.Key.Key_Space)


def over(house, dialog):
    """The dialog is what the keys go to; a desktop sees to that, the tests' screen does not."""
    dialog.activateWindow()
    house.qtbot.waitUntil(lambda: QApplication.activeWindow() is dialog)


def the_sheet(house):
    """The page Sheet of a new machine whose inspector has told of interests."""
    house.build()
    house.start()
    person = Person(id="inspector", name="A. Teasel", role=Role.INSPECTOR, interest="none declared")
    assert house.desk.do(put_entry(Part.PEOPLE, person, label="Interest"))
    house.window.show_page("sheet")
    house.settle()
    return house.window.pages["sheet"]


def test_a_name_is_typed_the_version_sealed_and_both_are_told(house, qtbot):
    page = the_sheet(house)
    use(house, page.sign)
    over(house, page.signing)
    use(house, page.signing.people.widgets()[0])
    one = page.signing.one
    over(house, one)
    assert one.sign.off
    tab_to(house, one.typed.control)
    qtbot.keyClicks(one.typed.control, "A. Teasel")
    house.key(Qt.Key.Key_Return)  # to the key that signs, not past it
    assert standing(house.record) == {}
    house.key(Qt.Key.Key_Space)
    (signature,) = standing(house.record).values()
    assert (signature.typed, signature.strokes) == ("A. Teasel", ())
    over(house, page.signing)
    row = page.signing.people.widgets()[0]
    assert "name typed, not drawn" in row.accessibleName()
    qtbot.waitUntil(row.hasFocus)

    use(house, page.signing.sealer.seal)
    qtbot.waitUntil(lambda: len(house.record.versions) == 1, timeout=30_000)
    qtbot.waitUntil(lambda: bool(page.pdf) and page._job is None, timeout=30_000)
    text = " ".join(" ".join(p.extract_text() for p in PdfReader(BytesIO(page.pdf)).pages).split())
    assert "name typed, not drawn, 9 May 2026" in text
    assert "Neither a drawn signature nor a typed name shows whose it is." in text
    house.settle()
