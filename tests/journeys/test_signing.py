"""Beside the machine both sign on the screen, the version is sealed, and at home the file is checked."""

from io import BytesIO

from pypdf import PdfReader
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from inspector.cli import AMISS, WELL, main

LEFT, NONE = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier


def draw(pad):
    """A hand that writes over half the pad."""
    wide, high = pad.width(), pad.height()
    points = [QPoint(wide * n // 10, high // 2 + (-1) ** n * high // 8) for n in range(2, 8)]
    QTest.mousePress(pad, LEFT, NONE, points[0])
    for point in points[1:]:
        QTest.mouseMove(pad, point)
    QTest.mouseRelease(pad, LEFT, NONE, points[-1])


def sign(house, page, number):
    house.press(page.signing.people.widgets()[number])
    draw(page.signing.one.pad)
    house.press(page.signing.one.sign)


def seal(house, page, qtbot, number):
    before = page.pdf
    house.press(page.signing.sealer.seal)
    qtbot.waitUntil(lambda: len(house.record.versions) == number, timeout=30_000)
    qtbot.waitUntil(lambda: page.pdf != before and page._job is None, timeout=30_000)
    house.window.activateWindow()
    qtbot.waitUntil(lambda: QApplication.activeWindow() is house.window)
    house.settle()


def text_of(path):
    return " ".join(" ".join(p.extract_text() for p in PdfReader(BytesIO(path.read_bytes())).pages).split())


def declare(house, page, qtbot):
    """The interests come first: the key beside the sentence leads to them."""
    house.press(page.sign)
    house.press(page.signing.to_claim)
    form = house.window.pages["claim"].people.forms["inspector"]
    qtbot.waitUntil(form.fields["interest"].control.hasFocus)
    house.type(form.fields["name"], "A. Teasel")
    house.type(form.fields["interest"], "none declared")
    house.page("sheet")
    house.settle()


def first_version(house, page, qtbot, item, to):
    """The seller replies, both sign, the sheet is sealed and saved."""
    house.press(page.sign)
    house.type(page.signing.replies.fields[f"{item}/inspector"], "It came so.")
    sign(house, page, 0)
    sign(house, page, 1)
    seal(house, page, qtbot, 1)
    page.save_to(to)
    assert "It came so." in text_of(to)
    assert "not yet signed" not in text_of(to)


def second_version(house, page, qtbot, to):
    """Something is seen otherwise: nobody has signed that, and the sheet says what differs."""
    house.page("walk")
    house.key(Qt.Key.Key_2)
    house.page("sheet")
    house.settle()
    house.press(page.sign)
    assert "not yet signed" in page.signing.people.widgets()[0].accessibleName()
    seal(house, page, qtbot, 2)
    page.save_to(to)
    name = house.desk.profile.item_by_id[house.desk.item].name
    assert f"{name} (A. Teasel): now doubt, before fail." in text_of(to)


def test_from_an_undeclared_interest_to_two_sealed_versions(house, qtbot, tmp_path, monkeypatch, capsys):
    first, second = tmp_path / "first.pdf", tmp_path / "second.pdf"
    house.build()
    house.start()
    house.page("walk")
    house.key(Qt.Key.Key_3)
    house.page("sheet")
    house.settle()
    page = house.window.pages["sheet"]
    declare(house, page, qtbot)
    first_version(house, page, qtbot, house.desk.item, first)
    second_version(house, page, qtbot, second)
    house.close()

    monkeypatch.setenv("INSPECTOR_DATA", str(house.library))
    assert main(["check", str(first), str(second)]) == WELL
    told = capsys.readouterr().out
    assert "It is the very file that was sealed here as version 1." in told
    assert "Newer here: version 2" in told
    second.write_bytes(second.read_bytes() + b"\n")
    assert main(["check", str(second)]) == AMISS
    assert "1 byte stands behind the end of the sheet as it was sealed." in capsys.readouterr().out
