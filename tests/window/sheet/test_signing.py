"""The pad keeps what pen, finger and mouse draw; nobody signs before the interests are told; the seal is one press."""

from io import BytesIO

import pytest
from pypdf import PdfReader
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QPointingDevice, QTabletEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from inspector.answer import Answer
from inspector.packing.pack import pack
from inspector.record.claim import Person
from inspector.record.edits import Part
from inspector.record.signing import standing
from inspector.record.verbs import put_entry
from inspector.record.words import Role
from inspector.sheet.checking import check_sheet
from inspector.sheet.keys import key_path, key_state, make_key
from inspector.texts import say
from inspector.window.look.look import Look
from inspector.window.look.press import TARGET
from inspector.window.sheet.signing_pad import Pad
from tests.window.walked import fill

LEFT, NONE = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
PATH = [(20, 60), (60, 20), (100, 90), (160, 50)]


@pytest.fixture
def pad(qtbot):
    made = Pad(Look("light", px_per_mm=4.0), "R. Quill, seller")
    qtbot.addWidget(made)
    made.resize(400, 240)
    made.show()
    return made


def draw(pad, path=PATH):
    points = [QPoint(*point) for point in path]
    QTest.mousePress(pad, LEFT, NONE, points[0])
    for point in points[1:]:
        QTest.mouseMove(pad, point)
    QTest.mouseRelease(pad, LEFT, NONE, points[-1])


def from_its_start(stroke):
    return [(x - stroke[0][0], y - stroke[0][1]) for x, y in stroke]


# the pad

MM = ((5.0, 15.0), (15.0, 5.0), (25.0, 22.5), (40.0, 12.5))  # the path at four pixels to the millimetre


def test_the_mouse_draws_in_millimetres(pad):
    draw(pad)
    assert pad.strokes() == (MM,)


def test_each_stroke_stands_for_itself_and_a_dot_is_one(pad):
    draw(pad)
    draw(pad, [(200, 100)])
    assert pad.strokes() == (MM, ((50.0, 25.0),))


def test_a_finger_draws_and_a_palm_beside_it_does_not(pad):
    device = QTest.createTouchDevice()
    touch = QTest.touchEvent(pad, device)
    touch.press(0, QPoint(*PATH[0])).commit()
    touch.stationary(0).press(1, QPoint(300, 200)).commit()
    for point in PATH[1:]:
        touch.move(0, QPoint(*point)).stationary(1).commit()
    touch.release(0, QPoint(*PATH[-1])).release(1, QPoint(300, 200)).commit()
    (stroke,) = pad.strokes()
    assert from_its_start(stroke) == from_its_start(MM)  # the platform puts fingers a pixel or two beside


def test_a_pen_draws(pad):
    def tablet(kind, point, buttons):
        at = QPointF(*point)
        event = QTabletEvent(
            kind, QPointingDevice.primaryPointingDevice(), at, QPointF(pad.mapToGlobal(at)), 0.7, 0, 0, 0, 0, 0, NONE,
            LEFT, buttons,
        )  # fmt: skip
        QApplication.sendEvent(pad, event)
        assert event.isAccepted()

    tablet(QEvent.Type.TabletPress, PATH[0], LEFT)
    for point in PATH[1:]:
        tablet(QEvent.Type.TabletMove, point, LEFT)
    tablet(QEvent.Type.TabletRelease, PATH[-1], Qt.MouseButton.NoButton)
    assert pad.strokes() == (MM,)


def test_clearing_leaves_nothing(pad, qtbot):
    draw(pad)
    with qtbot.waitSignal(pad.drawn):
        pad.clear()
    assert pad.strokes() == ()


def test_a_trembling_hand_does_not_fill_the_record(pad):
    draw(pad, [(100, 100)] * 50 + [(101, 100)])
    ((first, *rest),) = pad.strokes()
    assert first == (25.0, 25.0)
    assert len(rest) <= 1


# signing and sealing


@pytest.fixture
def signing(house):
    house.build()
    fill(house)
    house.page("sheet")
    page = house.window.pages["sheet"]
    house.settle()
    page.open_signing()
    house.settle()
    yield page.signing
    if house.window is not None and house.desk.session is not None:
        for dialog in (page.signing.one, page.signing, page.checking):
            close(dialog)


def close(dialog):
    from shiboken6 import isValid

    if dialog is not None and isValid(dialog):
        dialog.close()


def declare(house, interest="none declared"):
    person = Person(id="inspector", name="A. Teasel", role=Role.INSPECTOR, interest=interest)
    assert house.desk.do(put_entry(Part.PEOPLE, person, label="Interest"))


def opened(signing, number):
    signing.people.widgets()[number].click()
    return signing.one


def test_a_blank_interest_blocks_signing_and_leads_to_the_field(house, signing, qtbot):
    assert "not declared" in signing.why.words
    assert signing.people.widgets()[0].off
    assert signing.sealer.seal.off
    house.press(signing.to_claim)
    claim = house.window.pages["claim"]
    assert house.window.stack.currentWidget() is claim
    field = claim.people.forms["inspector"].fields["interest"].control
    qtbot.waitUntil(field.hasFocus)


def test_a_declared_interest_opens_signing(house, signing):
    declare(house)
    assert not signing.why.isVisible()
    assert not signing.people.widgets()[0].off
    assert not signing.sealer.seal.off


def test_the_pad_is_large_and_says_what_is_asserted(house, signing):
    declare(house)
    one = opened(signing, 0)
    look = house.desk.look
    assert one.pad.width() >= look.mm(120)
    assert one.pad.height() >= look.mm(60)
    assert "do not say who owns" in one.statement
    assert one.sign.off  # nothing is drawn
    assert min(key.height() for key in (one.sign, one.again, one.decline, one.leave)) >= look.mm(TARGET)


def test_signing_and_refusing_are_kept_and_shown(house, signing):
    declare(house)
    one = opened(signing, 0)
    draw(one.pad)
    one.sign.click()
    opened(signing, 1).decline.click()
    signed = standing(house.record)
    assert (signed["inspector"].refused, signed["seller"].refused) == (False, True)
    rows = [row.accessibleName() for row in signing.people.widgets()]
    assert "signed, 9 May 2026" in rows[0]
    assert "asked, did not sign" in rows[1]
    opened(signing, 1).back.click()
    assert set(standing(house.record)) == {"inspector"}


def test_what_is_drawn_counts_before_what_is_typed(house, signing):
    declare(house)
    one = opened(signing, 0)
    assert one.sign.off
    one.typed.show_value("A. Teasel")
    assert not one.sign.off
    assert one.sign.title == "this typed name is mine"
    assert "name typed, not drawn" in one.typed.note.words
    draw(one.pad)
    assert one.sign.title == "this is my signature"
    assert "What is drawn counts" in one.typed.note.words
    one.sign.click()
    (signature,) = standing(house.record).values()
    assert (bool(signature.strokes), signature.typed) == (True, "")


def test_a_name_without_a_letter_is_refused_in_the_dialog_itself(house, signing):
    declare(house)
    one = opened(signing, 0)
    one.typed.show_value("...")
    one.sign.click()
    assert standing(house.record) == {}
    assert "No name is typed yet" in signing.sealer.state.words


def test_a_change_after_signing_asks_to_sign_again(house, signing):
    declare(house)
    one = opened(signing, 0)
    draw(one.pad)
    one.sign.click()
    field = next(iter(signing.replies.fields.values()))
    field.show_value("It was so when I bought it.")
    field.commit()
    assert [f.reply for f in house.record.findings if f.reply] == ["It was so when I bought it."]
    assert "sign again" in signing.people.widgets()[0].accessibleName()
    assert standing(house.record) == {}


def test_sealing_makes_the_version_shows_it_and_keeps_it(house, signing, qtbot, tmp_path):
    declare(house)
    page, before = house.window.pages["sheet"], house.window.pages["sheet"].pdf
    house.press(signing.sealer.seal)
    qtbot.waitUntil(lambda: len(house.record.versions) == 1, timeout=30_000)
    qtbot.waitUntil(lambda: page.pdf != before and page._job is None, timeout=30_000)
    check = check_sheet(page.pdf)
    assert (check.as_sealed, check.version, check.record_id) == (True, 1, house.record.id)
    assert "version 1 as it was sealed" in page.state.words
    page.save_to(tmp_path / "kept.pdf")
    assert (tmp_path / "kept.pdf").read_bytes() == page.pdf
    house.settle()
    page.check_file(tmp_path / "kept.pdf")
    qtbot.waitUntil(lambda: page.checking.first.words.startswith("As sealed."), timeout=20_000)
    close(page.checking)

    sealed = page.pdf
    declare(house, "knows the seller")
    qtbot.waitUntil(lambda: page.pdf != sealed and page._job is None, timeout=30_000)
    text = " ".join(p.extract_text() for p in PdfReader(BytesIO(page.pdf)).pages)
    assert "Version 1 was sealed on" in " ".join(text.split())
    assert not page.versions.check.isVisible()
    page.versions.rows.widgets()[0].click()
    assert page.pdf == sealed
    assert page.file_name().endswith("-version-1.pdf")
    house.settle()
    house.press(page.versions.check)
    qtbot.waitUntil(lambda: page.checking.first.words.startswith("As sealed."), timeout=20_000)
    lines = [line.words for line in page.checking.lines.widgets()]
    assert "It is the very file that was sealed here as version 1." in lines
    assert "The record here was changed since version 1 was sealed." in lines
    close(page.checking)


def test_who_signed_a_sealed_version_is_told_while_nothing_was_changed(house, signing, qtbot):
    declare(house)
    one = opened(signing, 0)
    one.typed.show_value("A. Teasel")
    one.sign.click()
    house.press(signing.sealer.seal)
    qtbot.waitUntil(lambda: len(house.record.versions) == 1, timeout=30_000)
    house.settle()
    page = house.window.pages["sheet"]
    page.open_signing()
    assert "name typed, not drawn" in page.signing.people.widgets()[0].accessibleName()


def test_the_dialog_is_not_left_while_it_seals(house, signing, qtbot):
    declare(house)
    house.press(signing.sealer.seal)
    assert signing.sealer.busy
    signing.leave.click()
    assert signing.isVisible()
    qtbot.waitUntil(lambda: len(house.record.versions) == 1, timeout=30_000)
    house.settle()


def test_of_very_many_faults_the_first_are_shown_and_the_rest_counted(house, signing, qtbot):
    signing.close()
    page = house.window.pages["sheet"]
    faults = tuple(say("data/photographs/{n}.jpg: missing", n=n) for n in range(5000))
    page._check("bag.zip", lambda: Answer(faults))
    qtbot.waitUntil(lambda: page.checking.first.words == "data/photographs/0.jpg: missing", timeout=20_000)
    lines = [line.words for line in page.checking.lines.widgets()]
    assert len(lines) == 61
    assert lines[-1].startswith("And 4939 more.")


def test_a_wrong_passphrase_is_one_sentence_and_nothing_is_sealed(house, signing, qtbot):
    make_key(house.library, "2026-05-09T10:00:00+02:00", "heron")
    declare(house)
    assert key_state(house.library) == "locked"
    signing.sealer.passphrase.show_value("teal")
    house.press(signing.sealer.seal)
    qtbot.waitUntil(lambda: "does not open" in signing.sealer.state.words, timeout=20_000)
    assert house.record.versions == ()


def test_a_lost_key_says_so_and_offers_a_new_one(house, signing):
    old = make_key(house.library, "2026-05-09T10:00:00+02:00")
    key_path(house.library).unlink()
    declare(house)
    assert "is not at" in signing.sealer.key_words.words
    house.press(signing.sealer.renew)
    assert key_state(house.library) == "ready"
    assert old.fingerprint[:4] not in signing.sealer.key_words.words[:4]


def test_a_dropped_bag_is_checked(house, signing, qtbot, tmp_path):
    signing.close()
    page = house.window.pages["sheet"]
    pack(house.desk.library, house.record.id, tmp_path / "bag.zip")
    house.drop(page, [tmp_path / "bag.zip"])
    qtbot.waitUntil(lambda: page.checking.first.words == "As it should be.", timeout=20_000)
    assert "It is in the library here, the same." in [line.words for line in page.checking.lines.widgets()]


def test_a_dropped_sheet_is_checked(house, signing, qtbot, tmp_path):
    signing.close()
    page = house.window.pages["sheet"]
    (tmp_path / "plain.pdf").write_bytes(page.pdf)
    house.drop(page, [tmp_path / "plain.pdf"])
    qtbot.waitUntil(lambda: page.checking.first.words.startswith("Not sealed."), timeout=20_000)
