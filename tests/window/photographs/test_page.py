"""The page Photographs under a person's hands: brought in, found, moved, offered, taken out, said to be missing."""

import hashlib
from datetime import datetime, timedelta

import pytest
from PIL import Image
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QGuiApplication, QImage
from PySide6.QtTest import QAbstractItemModelTester, QTest
from PySide6.QtWidgets import QApplication

from inspector.judgement.offers import Opened
from inspector.record.finding import PhotoMark
from inspector.record.photographs import change_photograph, tie_photographs
from inspector.record.words import Drawn
from inspector.storage.photographs import State
from inspector.window.intake import Tie
from inspector.window.openlog import OPENED_ITEMS, opened_items
from inspector.window.photographs.entries import LOOSE, NUMBERS, TROUBLE
from inspector.window.photographs.listing import Photos
from tests.journeys.drive import BEGUN, LEFT, busy
from tests.window.walked import SIZES, begin

CTRL, SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier
NONE = Qt.KeyboardModifier.NoModifier


def shot(path, n=0, taken=None, camera="Nocam One"):
    """A photograph as an invented camera writes it."""
    exif = Image.Exif()
    exif[0x0110] = camera
    if taken:
        exif.get_ifd(0x8769)[0x9003] = taken.strftime("%Y:%m:%d %H:%M:%S")
    Image.new("RGB", (320, 240), (20 * n % 250, n % 256, 120)).save(path, exif=exif)
    return path


@pytest.fixture(params=SIZES, ids=["wide", "tall"])
def page(request, house):
    """A machine without photographs, the page open."""
    house.build(size=request.param)
    return opened(house)


@pytest.fixture
def wide(house):
    house.build()
    return opened(house)


def opened(house):
    begin(house)
    house.settle()
    house.page("photographs")
    house.settle()
    made = house.window.pages["photographs"]
    made.house = house
    return made


def settle(page):
    page.house.settle()
    page.house.qtbot.waitUntil(page.loader.idle)
    page.house.settle()


def part(page, name):
    """Where only one of the three has room, that one is asked for by its key."""
    if page.parts.isVisible():
        page.house.press(page.parts.key(name))


def bring(page, *paths):
    page.house.ask.pictures = list(paths)
    part(page, "tasks")
    page.house.press(page.bring_in.choose)
    settle(page)
    part(page, "list")


def row_point(page, row):
    return page.view.visualRect(page.view.photos.index(row)).center()


def touch(page, row, modifier=NONE):
    page.house.qtbot.mouseClick(page.view.viewport(), LEFT, modifier, row_point(page, row))
    settle(page)


def shown(page):
    return [(e.group, e.photograph.name) for e in page.view.photos.entries]


def record(page):
    return page.desk.record


# coming in


def test_chosen_photographs_stand_in_the_list_not_assigned_to_anything(page, tmp_path):
    bring(page, *(shot(tmp_path / f"{n}.jpg", n) for n in range(5)))
    assert shown(page) == [("Not yet assigned", f"{n}.jpg") for n in range(5)]
    assert {(p.item, p.place, p.camera) for p in record(page).photographs} == {("", "", "Nocam One")}
    kept = page.desk.library.load(record(page).id).record
    assert kept.photographs == record(page).photographs
    assert page.desk.undo()
    assert record(page).photographs == ()
    assert page.desk.redo()
    assert len(shown(page)) == 5


def test_a_bad_file_names_itself_and_the_others_come_in(page, tmp_path):
    bad = tmp_path / "parts.jpg"
    bad.write_text("a list of parts")
    bring(page, shot(tmp_path / "1.jpg", 1), bad, shot(tmp_path / "2.jpg", 2))
    assert [name for _, name in shown(page)] == ["1.jpg", "2.jpg"]
    assert page.house.says().startswith("parts.jpg is not a photograph the program can read (it holds text).")


def test_many_bad_files_are_all_named(wide, tmp_path):
    bad = [tmp_path / f"bad {n}.jpg" for n in range(6)]
    for path in bad:
        path.write_text("a list of parts")
    bring(wide, *bad)
    assert all(path.name in wide.house.says() for path in bad)


def test_a_photograph_that_is_there_is_known_by_its_hash_and_said(wide, tmp_path):
    one = shot(tmp_path / "one.jpg", 1)
    bring(wide, one)
    copy = tmp_path / "another name.jpg"
    copy.write_bytes(one.read_bytes())
    bring(wide, copy, shot(tmp_path / "two.jpg", 2))
    assert [name for _, name in shown(wide)] == ["one.jpg", "two.jpg"]
    assert wide.house.says() == "another name.jpg is here already (not yet assigned)."


def test_one_that_waits_for_an_item_belongs_to_the_item_it_is_brought_to(wide, tmp_path):
    paths = [shot(tmp_path / f"{n}.jpg", n) for n in range(3)]
    bring(wide, paths[0], paths[1])
    waiting = record(wide).photographs
    wide.house.page("walk")
    strip = wide.house.walk.item.photographs
    strip.take_in([paths[0], paths[2], paths[0]])
    wide.house.qtbot.waitUntil(lambda: not strip.bringing.running and not busy())
    item = wide.desk.item
    assert [(p.name, p.item) for p in record(wide).photographs] == [("0.jpg", item), ("1.jpg", ""), ("2.jpg", item)]
    assert record(wide).photographs[0].id == waiting[0].id
    name = wide.desk.profile.item_by_id[item].name
    assert wide.house.says() == (
        f"0.jpg was here already, not assigned; it belongs to {name} now."
        " A photograph that is already here was not added twice."
    )
    assert wide.desk.undo()
    assert record(wide).photographs == waiting


def test_who_sent_one_that_waited_for_an_item_hears_that_it_is_kept(wide, tmp_path):
    one = shot(tmp_path / "1.jpg", 1)
    bring(wide, one)
    told, item = [], wide.desk.walk[1]
    for _ in range(2):
        wide.bringing.take_in([one], Tie(item=item), quiet=True, each=lambda *fate: told.append(fate))
        settle(wide)
    assert told == [("kept", ""), ("there", "")]
    assert [p.item for p in record(wide).photographs] == [item]


def test_a_time_that_is_none_is_no_clock_to_set(wide, tmp_path):
    bring(wide, shot(tmp_path / "1.jpg", 1))
    assert wide.desk.do(change_photograph(record(wide).photographs[0], label="Time", taken_at="soon after noon"))
    wide.view.pick(record(wide).photographs[0].id)
    settle(wide)
    assert not wide.one.clock.isVisible()
    assert "soon after noon" in wide.one.facts.words


def test_one_that_belongs_to_an_item_stays_there_when_it_is_brought_to_another(wide, tmp_path):
    one = shot(tmp_path / "1.jpg", 1)
    bring(wide, one)
    first, second = wide.desk.walk[:2]
    assert wide.desk.do(tie_photographs(record(wide).photographs, item=first))
    wide.bringing.take_in([one], Tie(item=second))
    settle(wide)
    assert [p.item for p in record(wide).photographs] == [first, second]


def test_what_is_dropped_comes_in_and_the_files_stay(page, tmp_path):
    paths = [shot(tmp_path / f"{n}.jpg", n) for n in range(3)]
    before = [hashlib.sha256(p.read_bytes()).hexdigest() for p in paths]
    page.house.drop(page, paths)
    settle(page)
    assert [p.sha256 for p in record(page).photographs] == before
    assert [hashlib.sha256(p.read_bytes()).hexdigest() for p in paths] == before


def test_what_is_no_file_and_no_picture_cannot_be_dropped(wide):
    mime = QMimeData()
    mime.setText("a word")
    enter = QDragEnterEvent(QPoint(5, 5), Qt.DropAction.CopyAction, mime, LEFT, NONE)
    QApplication.sendEvent(wide, enter)
    assert not enter.isAccepted()


def test_a_picture_and_a_file_are_pasted_and_an_empty_clipboard_is_said(wide, tmp_path):
    QGuiApplication.clipboard().clear()
    wide.house.press(wide.bring_in.paste)
    assert wide.house.says() == "There is no photograph to paste. Copy a picture or a file first."
    image = QImage(40, 30, QImage.Format.Format_RGB32)
    image.fill(Qt.GlobalColor.darkGreen)
    QGuiApplication.clipboard().setImage(image)
    wide.house.press(wide.bring_in.paste)
    settle(wide)
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(shot(tmp_path / "file.jpg", 3)))])
    QGuiApplication.clipboard().setMimeData(mime)
    wide.house.qtbot.keyClick(wide, Qt.Key.Key_V, CTRL)
    settle(wide)
    assert {name for _, name in shown(wide)} == {"pasted.png", "file.jpg"}


def test_a_heic_is_kept_as_it_is_and_has_a_picture_that_can_be_shown(wide, tmp_path):
    from tests.photo.pictures import heic, plain

    data = heic(plain((64, 48)))
    (tmp_path / "phone.heic").write_bytes(data)
    bring(wide, tmp_path / "phone.heic")
    one = record(wide).photographs[0]
    assert one.media == "image/heic"
    assert wide.desk.library.photographs.path(one.sha256).read_bytes() == data
    assert not QImage.fromData(wide.desk.library.thumbs.get(one.sha256)).isNull()
    assert not wide.loader.image(one.sha256).isNull()


def test_stopped_what_has_come_stays_and_nothing_is_half_there(wide, tmp_path):
    paths = [shot(tmp_path / f"{n:03d}.jpg", n) for n in range(60)]
    wide.bringing.progress.connect(lambda done, total, name: wide.bring_in.stop.click() if done == 8 else None)
    bring(wide, *paths)
    names = [p.name for p in record(wide).photographs]
    assert 8 <= len(names) < 60
    assert names == [p.name for p in paths[: len(names)]]
    assert not wide.bring_in.stop.isVisible()
    kept = wide.desk.library.photographs
    assert all(kept.check(p.sha256) is State.OK for p in record(wide).photographs)


def test_while_they_come_in_the_window_answers(wide, tmp_path):
    wide.take_in([shot(tmp_path / f"{n}.jpg", n) for n in range(40)])
    assert wide.bring_in.stop.isVisible()
    wide.house.page("walk")
    wide.house.key(Qt.Key.Key_PageDown)
    assert wide.desk.item == wide.desk.walk[1]
    settle(wide)
    assert len(record(wide).photographs) == 40


def test_those_for_another_machine_are_not_put_into_this_one(wide, tmp_path):
    wide.take_in([shot(tmp_path / f"{n}.jpg", n) for n in range(3)])
    begin(wide.house)
    settle(wide)
    assert record(wide).photographs == ()


def test_a_caption_that_is_too_long_is_refused_in_a_sentence_and_stays_written(wide, tmp_path):
    bring(wide, shot(tmp_path / "1.jpg", 1))
    wide.view.pick(record(wide).photographs[0].id)
    settle(wide)
    wide.one.caption.edit.setText("long " * 110)
    wide.one.caption.commit()
    settle(wide)
    assert record(wide).photographs[0].caption == ""
    assert "500" in wide.house.says()
    assert wide.house.says().endswith("Nothing was changed.")
    assert wide.one.caption.value() == "long " * 110


# finding and picking


def test_a_touch_shows_the_photograph_with_all_that_is_known(page, tmp_path):
    when = datetime.fromisoformat("2026-05-09T09:41:05")
    bring(page, shot(tmp_path / "1.jpg", 1, when), shot(tmp_path / "2.jpg", 2))
    touch(page, 0)
    one = next(p for p in record(page).photographs if p.id == page.one.photographs[0].id)
    assert page.one.picture.isVisible()
    assert one.sha256[:16] in page.one.hash.words
    known = page.one.facts.words
    if one.taken_at:
        assert "The camera says 2026-05-09 09:41:05" in known
    assert "320 × 240" in known


def test_a_finger_picks_as_the_mouse_does(wide, tmp_path):
    bring(wide, shot(tmp_path / "1.jpg", 1), shot(tmp_path / "2.jpg", 2))
    device = QTest.createTouchDevice()
    at = row_point(wide, 1)
    port = wide.view.viewport()
    QTest.touchEvent(port, device).press(1, at, port).commit()
    QTest.touchEvent(port, device).release(1, at, port).commit()
    settle(wide)
    wide.house.qtbot.waitUntil(lambda: [p.name for p in wide.one.photographs] == ["2.jpg"])


def test_keys_alone_find_pick_and_open(page, tmp_path):
    bring(page, *(shot(tmp_path / f"{n}.jpg", n) for n in range(4)))
    page.view.setFocus(Qt.FocusReason.TabFocusReason)
    page.house.key(Qt.Key.Key_Down)
    page.house.key(Qt.Key.Key_Down)
    settle(page)
    assert [p.name for p in page.one.photographs] == ["2.jpg"]
    page.house.key(Qt.Key.Key_Return)
    assert page.one.isVisible()
    page.house.qtbot.keyClick(page, Qt.Key.Key_F, CTRL)
    assert QApplication.focusWidget() is page.pane.search.edit
    page.house.qtbot.keyClicks(page.pane.search.edit, "3.jpg")
    assert [name for _, name in shown(page)] == ["3.jpg"]
    assert page.pane.count.words == "1 of 4 photographs"


def test_a_row_says_all_of_it_to_who_does_not_see_it(wide, tmp_path):
    bring(wide, shot(tmp_path / "1.jpg", 1, datetime.fromisoformat("2026-05-09T09:41:00")))
    said = wide.view.photos.data(wide.view.photos.index(0), Qt.ItemDataRole.AccessibleTextRole)
    assert said == "photograph 1 of 1, Not yet assigned, 1.jpg, 2026-05-09 09:41, Nocam One"


def test_the_model_keeps_what_it_promises(wide, tmp_path, qtmodeltester):
    tester = QAbstractItemModelTester(wide.view.photos, QAbstractItemModelTester.FailureReportingMode.Warning)
    bring(wide, *(shot(tmp_path / f"{n}.jpg", n) for n in range(4)))
    assert tester.model() is wide.view.photos
    qtmodeltester.check(wide.view.photos)
    empty = Photos()
    assert empty.data(empty.index(3)) is None
    assert empty.rowCount() == 0


def test_filters_leave_those_of_their_kind(page, tmp_path):
    bring(page, *(shot(tmp_path / f"{n}.jpg", n) for n in range(3)))
    first = page.desk.profile.places[0].id
    page.view.pick(record(page).photographs[1].id)
    page.one._move("place:" + first)
    page.pane.filter.picked.emit(NUMBERS)
    assert [name for _, name in shown(page)] == ["1.jpg"]
    page.pane.filter.picked.emit(LOOSE)
    assert [name for _, name in shown(page)] == ["0.jpg", "2.jpg"]


# moving and telling


def test_several_are_moved_to_an_item_together_and_back_by_one_undo(page, tmp_path):
    bring(page, *(shot(tmp_path / f"{n}.jpg", n) for n in range(4)))
    page.house.press(page.pane.several)
    touch(page, 0)
    touch(page, 2)
    part(page, "one")
    words = page.one.belongs.open()
    row = next(r for r in words.rows if r.property("option") == "item:carburettor")
    row.click()
    settle(page)
    assert [p.item for p in record(page).photographs] == ["carburettor", "", "carburettor", ""]
    page.house.qtbot.keyClick(page, Qt.Key.Key_Z, CTRL)
    assert {p.item for p in record(page).photographs} == {""}


def test_a_number_is_asked_for_light_cleaning_and_scale(page, tmp_path):
    bring(page, shot(tmp_path / "1.jpg", 1), shot(tmp_path / "2.jpg", 2))
    touch(page, 0)
    part(page, "one")
    assert not page.one.of_number.isVisible()
    page.one._move("place:frame")
    settle(page)
    for key in (
        page.one.of_number.light.key("from the left"), page.one.of_number.cleaned.key("before cleaning"),
        page.one.of_number.scale.key("with"),
    ):  # fmt: skip
        page.house.press(key)
    one = page.one.photographs[0]
    assert (one.place, one.light, one.cleaned, one.scale_present) == ("frame", "from the left", "before cleaning", True)
    page.house.press(page.one.of_number.scale.key("with"))
    assert not page.one.photographs[0].scale_present


def test_before_and_after_cleaning_stand_together(wide, tmp_path):
    bring(wide, *(shot(tmp_path / f"{n}.jpg", n, BEGUN + timedelta(minutes=n)) for n in range(4)))
    ids = [p.id for p in record(wide).photographs]
    for n, cleaned in ((3, "before cleaning"), (0, "after cleaning"), (1, ""), (2, "")):
        wide.view.pick(ids[n])
        wide.one._move("place:frame")
        if cleaned:
            wide.one.of_number.cleaned.key(cleaned).click()
    assert [name for _, name in shown(wide)] == ["1.jpg", "2.jpg", "3.jpg", "0.jpg"]


def test_a_caption_is_kept_and_found(page, tmp_path):
    bring(page, shot(tmp_path / "1.jpg", 1), shot(tmp_path / "2.jpg", 2))
    touch(page, 0)
    part(page, "one")
    page.house.type(page.one.caption, "Weld below the lug")
    assert page.one.photographs[0].caption == "Weld below the lug"
    part(page, "list")
    page.house.type(page.pane.search, "lug")
    assert len(shown(page)) == 1


def test_taken_out_and_brought_back(page, tmp_path):
    bring(page, shot(tmp_path / "1.jpg", 1), shot(tmp_path / "2.jpg", 2))
    touch(page, 0)
    part(page, "one")
    page.house.press(page.one.out)
    assert [name for _, name in shown(page)] == ["2.jpg"]
    assert page.desk.undo()
    assert [name for _, name in shown(page)] == ["1.jpg", "2.jpg"]
    part(page, "list")
    touch(page, 1)
    page.view.setFocus()
    page.house.key(Qt.Key.Key_Delete)
    assert len(shown(page)) == 1


def test_moved_away_and_brought_in_again_it_does_not_come_back_to_where_it_was(wide, tmp_path):
    one = shot(tmp_path / "1.jpg", 1)
    wide.desk.go_to("carburettor")
    wide.house.walk.item.photographs.take_in([one])
    settle(wide)
    first = record(wide).photographs[0]
    wide.view.pick(first.id)
    wide.one._move("item:fuel-tank")
    wide.house.walk.item.photographs.take_in([one])
    settle(wide)
    assert [(p.item, p.sha256 == first.sha256) for p in record(wide).photographs] == [
        ("fuel-tank", True), ("carburettor", True),
    ]  # fmt: skip
    assert len({p.id for p in record(wide).photographs}) == 2


# what became of the files


@pytest.mark.parametrize("trouble", ["gone", "changed"])
def test_a_kept_photograph_that_is_gone_or_changed_is_told(page, tmp_path, trouble):
    bring(page, shot(tmp_path / "1.jpg", 1), shot(tmp_path / "2.jpg", 2))
    file = page.desk.library.photographs.path(record(page).photographs[0].sha256)
    if trouble == "gone":
        file.rename(file.with_name("renamed by somebody"))
    else:
        file.chmod(0o644)
        file.write_bytes(file.read_bytes() + b"more")
    page.house.page("walk")
    page.house.page("photographs")
    settle(page)
    page.pane.filter.picked.emit(TROUBLE)
    assert [name for _, name in shown(page)] == ["1.jpg"]
    said = page.view.photos.data(page.view.photos.index(0), Qt.ItemDataRole.AccessibleTextRole)
    assert ("is gone" if trouble == "gone" else "was changed") in said
    touch(page, 0)
    assert page.one.trouble.isVisible()


# which item?


def at(seconds):
    return BEGUN + timedelta(seconds=seconds)


def log(page, *lines):
    text = "\n".join(f"{when.isoformat()}\t{item}" for when, item in lines)
    page.desk.library.remember(record(page).id, OPENED_ITEMS, text)


def test_what_is_open_is_written_down_beside_the_record(wide):
    wide.desk.go_to("carburettor")
    wide.desk.go_to("fuel-tank")
    wide.house.settle()
    found = opened_items(wide.desk.library, record(wide).id)
    assert [o.item for o in found][-2:] == ["carburettor", "fuel-tank"]
    assert all(isinstance(o, Opened) and datetime.fromisoformat(o.at).tzinfo for o in found)
    assert wide.desk.session.undo_label == "Claim: model year" or "carburettor" not in wide.desk.session.undo_label


def test_offers_come_with_their_reason_and_nothing_is_assigned_until_taken(page, tmp_path):
    bring(page, *(shot(tmp_path / f"{n}.jpg", n, at(60 * n).replace(tzinfo=None)) for n in range(4)))
    log(page, (at(-30), "carburettor"), (at(90), "fuel-tank"), (at(600), ""))
    page.show_rest()
    assert {p.item for p in record(page).photographs} == {""}
    assert [o.item for o in page.which.offers] == ["carburettor", "carburettor", "fuel-tank", "fuel-tank"]
    part(page, "tasks")
    rows = page.which.rows.widgets()
    assert "was open from" in rows[0].accessibleName()
    page.house.press(rows[0])
    settle(page)
    assert page.one.offer.lead.startswith("Offered: ")
    page.house.press(page.one.take_key)
    assert [p.item for p in record(page).photographs] == ["carburettor", "", "", ""]
    page.show_rest()
    part(page, "tasks")
    page.house.press(page.which.all)
    assert [p.item for p in record(page).photographs] == ["carburettor", "carburettor", "fuel-tank", "fuel-tank"]
    assert page.desk.undo()
    assert [p.item for p in record(page).photographs] == ["carburettor", "", "", ""]


def test_a_photograph_of_a_clock_sets_the_offset_and_no_time_is_rewritten(page, tmp_path):
    slow = [at(60 * n).replace(tzinfo=None) - timedelta(hours=1, minutes=2) for n in range(3)]
    paths = [shot(tmp_path / f"{n}.jpg", n, when) for n, when in enumerate(slow)]
    bring(page, *paths)
    log(page, (at(-30), "carburettor"), (at(600), ""))
    page.show_rest()
    assert page.which.offers == ()
    times = [p.taken_at for p in record(page).photographs]
    page.open_one(record(page).photographs[0].id)
    settle(page)
    page.house.type(page.one.clock, "half past")
    assert page.one.clock.note.words.startswith("Write the time as 14:32")
    page.house.type(page.one.clock, at(0).strftime("%H:%M:%S"))
    assert page.one.clock.note.words == (
        "The camera's clock is 1 hour 2 minutes behind the clock in the photograph."
    )
    page.show_rest()
    assert [o.item for o in page.which.offers] == ["carburettor"] * 3
    assert "put right by a photograph of a clock" in str(page.which.offers[0].reason)
    assert [p.taken_at for p in record(page).photographs] == times
    kept = page.desk.library.photographs
    assert [kept.path(p.sha256).read_bytes() for p in record(page).photographs] == [p.read_bytes() for p in paths]
    assert page.desk.undo()
    assert record(page).choices.clocks == ()


# what is missing


def test_what_is_missing_is_listed_and_gets_less(page, tmp_path):
    page.show_rest()
    part(page, "tasks")
    assert "not complete" in page.missing.caution.words
    before = page.missing.head.aside
    bring(page, shot(tmp_path / "1.jpg", 1))
    touch(page, 0)
    page.one._move("place:engine")
    page.show_rest()
    assert page.missing.head.aside != before
    page.one.shot._picked("right-side")
    assert record(page).photographs[0].shot == "right-side"
    page.show_rest()
    ids = [line.id for line in page.missing._list.missing]
    assert "right-side" not in ids
    assert "engine-pad" in ids


def test_at_the_end_of_the_walk_it_is_said_before_leaving(house):
    house.build()
    begin(house)
    house.settle()
    house.page("walk")
    house.desk.go_to(house.desk.walk[-1])
    house.settle()
    house.press(house.walk.item.next)
    assert house.says().startswith("Before you leave: ")
    assert "not complete" in house.says()
    house.press(house.window.told.act)
    assert house.window.stack.currentWidget() is house.window.pages["photographs"]


def test_a_missing_shot_opens_its_item(wide):
    wide.show_rest()
    settle(wide)
    wide.house.press(wide.missing.more)
    settle(wide)
    row = next(r for r in wide.missing.rows.widgets() if r.accessibleName().startswith("Tank from below"))
    wide.house.press(row)
    assert wide.desk.item == "fuel-tank"
    assert wide.house.window.stack.currentWidget() is wide.house.walk


def row_of(page, words):
    """The row of the missing shot whose name begins so."""
    if page.missing.more.isVisible():
        page.house.press(page.missing.more)
        settle(page)
    return next(r for r in page.missing.rows.widgets() if r.accessibleName().startswith(words))


def test_a_missing_shot_of_a_number_opens_its_place_among_the_numbers(wide, tmp_path):
    bring(wide, shot(tmp_path / "1.jpg", 1))
    after = change_photograph(record(wide).photographs[0], label="After", place="gearbox", cleaned="after cleaning")
    assert wide.desk.do(after)
    wide.show_rest()
    settle(wide)
    wide.house.press(row_of(wide, "Gearbox number, before cleaning"))
    numbers = wide.house.window.pages["numbers"]
    assert wide.house.window.stack.currentWidget() is numbers
    assert numbers.shown.place == "gearbox"


def test_a_general_view_has_nothing_to_open(wide):
    wide.show_rest()
    settle(wide)
    assert not row_of(wide, "Right side").opens


# handing on


def test_look_closely_tells_which_photograph(page, tmp_path):
    bring(page, shot(tmp_path / "1.jpg", 1))
    touch(page, 0)
    part(page, "one")
    with page.house.qtbot.waitSignal(page.look_at) as told:
        page.house.press(page.one.closely)
    assert told.args == [record(page).photographs[0].id]


def sheet_of(page):
    """The sheet on which boxes are drawn over the one photograph."""
    touch(page, 0)
    part(page, "one")
    page.house.press(page.one.covers)
    settle(page)
    return next(w for w in QApplication.topLevelWidgets() if type(w).__name__ == "CoverSheet" and w.isVisible())


def masks(page):
    return record(page).photographs[0].masks


def drag(page, canvas, begin, end):
    """From one share of the picture to another, as a hand draws a box."""
    room = canvas.room()
    a, b = (QPointF(room.x() + x * room.width(), room.y() + y * room.height()).toPoint() for x, y in (begin, end))
    page.house.qtbot.mousePress(canvas, LEFT, pos=a)
    page.house.qtbot.mouseMove(canvas, b)
    page.house.qtbot.mouseRelease(canvas, LEFT, pos=b)


def test_a_box_is_drawn_by_hand_and_by_keys(page, tmp_path):
    bring(page, shot(tmp_path / "1.jpg", 1))
    sheet = sheet_of(page)
    drag(page, sheet.canvas, (0.1, 0.1), (0.5, 0.4))
    assert [round(edge, 1) for edge in (masks(page)[0].left, masks(page)[0].right)] == [0.1, 0.5]
    sheet.kinds.key("plate").click()
    sheet.canvas.setFocus()
    for key, with_ in ((Qt.Key.Key_Space, NONE), (Qt.Key.Key_Right, NONE), (Qt.Key.Key_Down, SHIFT)):
        page.house.qtbot.keyClick(sheet.canvas, key, with_)
    second = masks(page)[1]
    assert (round(second.left, 2), round(second.right, 2), round(second.bottom, 2)) == (0.41, 0.61, 0.61)
    assert second.hides == "plate"
    assert sheet.count.words == "2 parts are covered: number, plate"
    sheet.last.click()
    assert len(masks(page)) == 1
    sheet.close()
    assert page.desk.undo()
    assert len(masks(page)) == 2


def test_a_touch_without_a_drag_draws_no_box(wide, tmp_path):
    bring(wide, shot(tmp_path / "1.jpg", 1))
    sheet = sheet_of(wide)
    drag(wide, sheet.canvas, (0.3, 0.3), (0.301, 0.301))
    drag(wide, sheet.canvas, (0.8, 0.8), (3.0, 3.0))
    assert [(round(b.left, 1), b.right, b.bottom) for b in masks(wide)] == [(0.8, 1.0, 1.0)]
    sheet.close()


def test_copies_are_covered_and_the_kept_photograph_is_not(page, tmp_path):
    bring(page, shot(tmp_path / "1.jpg", 1))
    sheet = sheet_of(page)
    drag(page, sheet.canvas, (0.1, 0.1), (0.5, 0.5))
    sheet.close()
    folder = tmp_path / "out"
    folder.mkdir()
    page.house.ask.a_folder = lambda words, answer: answer(folder)
    part(page, "tasks")
    page.house.press(page.copies.write)
    settle(page)
    (copy,) = folder.iterdir()
    assert copy.name == "01 Not yet assigned.jpg"
    with Image.open(copy) as image:
        assert max(image.getpixel((60, 60))) < 70
        assert not image.getexif()
    kept = page.desk.library.photographs.path(record(page).photographs[0].sha256).read_bytes()
    assert kept == (tmp_path / "1.jpg").read_bytes()
    assert page.house.says().startswith("1 copy is in ")


def dark_at(folder, spot):
    """How dark each copy is at a share of the picture, by name."""
    found = {}
    for path in sorted(folder.iterdir()):
        with Image.open(path) as image:
            grey = image.convert("L")
            found[path.name] = grey.getpixel((round(spot[0] * grey.width), round(spot[1] * grey.height)))
    return found


def test_marks_are_drawn_into_copies_where_that_is_wished_and_said_before(page, tmp_path):
    bring(page, shot(tmp_path / "1.jpg", 9), shot(tmp_path / "2.jpg", 8))
    arrow = PhotoMark(kind=Drawn.ARROW, points=((0.2, 0.5), (0.8, 0.5)))
    assert page.desk.do(change_photograph(record(page).photographs[0], label="Mark", marks=(arrow.model_dump(),)))
    settle(page)
    assert page.copies.marked.words.startswith("1 of them carries marks.")
    assert page.copies.marked.words.endswith("read the words first.")
    folder = tmp_path / "out"
    folder.mkdir()
    page.house.ask.a_folder = lambda words, answer: answer(folder)
    part(page, "tasks")
    page.house.press(page.copies.write)
    settle(page)
    assert min(dark_at(folder, (0.5, 0.5)).values()) > 60
    page.house.press(page.copies.extras.key("marks"))
    page.house.press(page.copies.write)
    settle(page)
    assert sorted(v < 60 for v in dark_at(folder, (0.5, 0.5)).values()) == [False, False, False, True]
    kept = page.desk.library.photographs.path(record(page).photographs[0].sha256).read_bytes()
    assert kept in [(tmp_path / name).read_bytes() for name in ("1.jpg", "2.jpg")]


def test_where_nothing_carries_a_mark_the_key_says_so(wide, tmp_path):
    bring(wide, shot(tmp_path / "1.jpg", 1))
    key = wide.copies.extras.key("marks")
    wide.house.press(key)
    assert not key.held
    assert not wide.copies.marked.isVisible()


def test_numbers_without_a_box_are_counted_before_they_are_handed_on(wide, tmp_path):
    bring(wide, *(shot(tmp_path / f"{n}.jpg", n) for n in range(2)))
    wide.view.pick(record(wide).photographs[0].id)
    wide.one._move("place:frame")
    assert wide.copies.words.words == "1 photograph of a number has nothing covered."


# a folder that is watched, and a camera


def test_a_watched_folder_brings_what_is_new_and_is_remembered(wide, tmp_path, monkeypatch):
    monkeypatch.setattr("inspector.window.photographs.watching.SETTLE_MS", 1)
    monkeypatch.setattr("inspector.window.photographs.watching.AGAIN_MS", 20)
    folder = tmp_path / "phone"
    folder.mkdir()
    shot(folder / "1.jpg", 1)
    wide.house.ask.a_folder = lambda words, answer: answer(folder)
    wide.house.press(wide.bring_in.watch)
    wide.house.qtbot.waitUntil(lambda: len(record(wide).photographs) == 1)
    assert str(folder) in wide.bring_in.watched.words
    shot(folder / "2.jpg", 2)
    (folder / "notes.txt").write_text("nothing")
    wide.house.qtbot.waitUntil(lambda: len(record(wide).photographs) == 2)
    machine = record(wide).id
    wide.desk.close()
    assert wide.watching.folder is None
    shot(folder / "3.jpg", 3)
    assert wide.desk.open(machine, "photographs")
    assert wide.watching.folder == folder
    wide.house.qtbot.waitUntil(lambda: len(record(wide).photographs) == 3)
    wide.house.press(wide.bring_in.watch)
    assert wide.watching.folder is None
    assert sorted(p.name for p in folder.iterdir()) == ["1.jpg", "2.jpg", "3.jpg", "notes.txt"]
    wide.house.qtbot.waitUntil(lambda: not busy())


def test_a_folder_that_went_is_said_and_comes_back(wide, tmp_path, monkeypatch):
    monkeypatch.setattr("inspector.window.photographs.watching.AGAIN_MS", 20)
    folder = tmp_path / "card"
    wide.watching.turn_on(folder)
    wide.house.qtbot.waitUntil(lambda: "cannot be looked into" in wide.bring_in.watched.words)
    folder.mkdir()
    wide.house.qtbot.waitUntil(lambda: wide.watching.trouble == "")
    wide.watching.turn_off()
    wide.house.qtbot.waitUntil(lambda: not busy())


class Still:
    """A camera that sees one picture."""

    def __init__(self):
        self.on = False

    def start(self, show, fail):
        self.on = True
        image = QImage(64, 48, QImage.Format.Format_RGB32)
        image.fill(Qt.GlobalColor.darkBlue)
        show(image)

    def stop(self):
        self.on = False


def test_a_camera_takes_a_picture_and_is_off_afterwards(wide):
    feed = Still()
    wide.feed = lambda: feed
    wide.bring_in.camera.show()
    wide.open_camera()
    sheet = next(w for w in QApplication.topLevelWidgets() if type(w).__name__ == "CameraSheet" and w.isVisible())
    assert feed.on
    wide.house.qtbot.mouseClick(sheet.take, LEFT)
    settle(wide)
    assert record(wide).photographs[0].name.startswith("camera 2026-05-09")
    sheet.close()
    assert not feed.on


def test_without_a_camera_the_key_goes_and_it_is_said(wide):
    wide.feed = lambda: None
    wide.open_camera()
    assert not wide.bring_in.camera.isVisible()
    assert wide.house.says() == "No camera of this computer can be used. Choose photographs as files."


def test_a_row_in_its_new_form_stands_where_it_stood(wide, tmp_path):
    bring(wide, *(shot(tmp_path / f"{n}.jpg", n) for n in range(4)))
    wide.view.pick(record(wide).photographs[2].id)
    before = [p.id for p in wide.view.picked_photographs()]
    wide.one._change("Caption", caption="Lug")
    assert [e.second for e in wide.view.photos.entries] == ["0.jpg", "1.jpg", "Lug", "3.jpg"]
    assert [e.photograph for e in wide.view.photos.entries] == list(record(wide).photographs)
    assert [p.id for p in wide.view.picked_photographs()] == before
    assert wide.one.photographs[0].caption == "Lug"
    assert wide.desk.undo()
    assert [e.second for e in wide.view.photos.entries] == ["0.jpg", "1.jpg", "2.jpg", "3.jpg"]
    wide.pane.search.edit.setText("3.jpg")
    wide.pane.show_list()
    wide.one._change("Caption", caption="Lug")
    assert [e.photograph.name for e in wide.view.photos.entries] == ["3.jpg"]
