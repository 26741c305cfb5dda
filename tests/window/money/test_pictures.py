"""A comparable carries pictures of that other machine, and none of them is ever taken for one of this machine."""

import zipfile
from pathlib import Path

import pytest
from PIL import Image
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QImage
from PySide6.QtWidgets import QApplication

from inspector.handover import dating_pack, owners_file, picture_pack, sellers_copy
from inspector.issuing import Place
from inspector.judgement.shots import shots
from inspector.packing.pack import pack
from inspector.packing.share import pack_to_share
from inspector.packing.take import take_in
from inspector.record.verbs_money import drop_comparable
from inspector.record.versions import attached
from inspector.sheet.text import as_text
from inspector.storage.library import Library
from inspector.window.money.picturing import PictureThumb
from tests.window.money.hands import fill, go

AT = "2026-05-09T12:00:00+02:00"
NAME = "other-machine.jpg"


@pytest.fixture
def picture(tmp_path):
    """A file with a picture of another machine."""
    Image.radial_gradient("L").resize((640, 480)).convert("RGB").save(tmp_path / NAME)
    return tmp_path / NAME


@pytest.fixture
def form(house, money):
    """The fields of the first comparable."""
    fill(house)
    return go(house, "comparables").form


def at_first(house):
    return house.record.comparables[0].pictures


def brought(house, form, path):
    house.ask.pictures = [path]
    house.press(form.pictures.plus)
    house.qtbot.waitUntil(lambda: len(at_first(house)) == 1 and not form.pictures.bringing.running)
    house.settle()


def thumbs(form):
    return [key for key in form.pictures.row.keys if isinstance(key, PictureThumb)]


def test_a_picture_is_chosen_shown_small_and_taken_out_again(house, form, picture):
    before = house.record.photographs
    brought(house, form, picture)
    (kept,) = at_first(house)
    assert (kept.name, kept.item, kept.place) == (NAME, "", "")
    assert house.record.photographs == before
    (thumb,) = thumbs(form)
    dialog = thumb.open_large()
    house.press(dialog.remove)
    house.settle()
    assert at_first(house) == ()
    assert thumbs(form) == []
    house.window.undo()
    assert at_first(house) == (kept,)


def test_a_picture_is_dropped_and_pasted(house, form, picture):
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(picture))])
    how = Qt.DropAction.CopyAction, mime, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    QApplication.sendEvent(form.pictures, QDragEnterEvent(QPoint(5, 5), *how))
    QApplication.sendEvent(form.pictures, QDropEvent(QPointF(5, 5), *how))
    house.qtbot.waitUntil(lambda: len(at_first(house)) == 1)
    image = QImage(60, 40, QImage.Format.Format_RGB32)
    image.fill(0x336699)
    QApplication.clipboard().setImage(image)
    house.press(form.pictures.paste)
    house.qtbot.waitUntil(lambda: len(at_first(house)) == 2 and not form.pictures.bringing.running)
    form.pictures.take_in([picture])  # the same once more changes nothing
    house.qtbot.waitUntil(lambda: not form.pictures.bringing.running)
    assert len(at_first(house)) == 2


def test_a_table_and_a_picture_let_go_over_the_page_both_find_their_place(house, form, money, picture):
    house.drop(money, [picture])
    house.qtbot.waitUntil(lambda: len(at_first(house)) == 1)
    assert house.record.photographs == house.desk.library.load(house.record.id).record.photographs
    assert len(house.record.comparables) == 6


def test_a_file_that_is_no_picture_is_refused_at_the_comparable_and_not_over_the_page(house, form, tmp_path):
    (tmp_path / "none.jpg").write_bytes(b"no picture")
    form.pictures.take_in([tmp_path / "none.jpg"])
    house.qtbot.waitUntil(lambda: form.pictures.trouble.words != "")
    assert "none.jpg" in form.pictures.trouble.words
    assert house.told == []


def test_a_photograph_that_is_kept_here_is_picked_and_stays_with_its_machine(house, form):
    before = house.record.photographs
    house.press(form.pictures.pick)
    house.settle()
    chosen = form.pictures.offered.row.keys[0]
    house.press(chosen)
    house.settle()
    (kept,) = at_first(house)
    assert kept.sha256 == before[0].sha256
    assert (kept.item, kept.shot, kept.marks) == ("", "", ())
    assert house.record.photographs == before


def test_the_key_that_hides_closes_a_picture_that_is_open_large(house, form, money, picture):
    brought(house, form, picture)
    dialog = thumbs(form)[0].open_large()
    house.qtbot.waitUntil(lambda: QApplication.activeWindow() is dialog)
    assert not dialog.closely.isVisible()
    closed = []
    dialog.finished.connect(closed.append)
    house.qtbot.keyClick(dialog, Qt.Key.Key_F9)
    house.settle()
    assert closed
    assert money.blank.isVisible()
    house.key(Qt.Key.Key_F9)


def test_nothing_of_it_is_on_a_copy_for_others(house, form, picture, tmp_path):
    bare = house.record
    brought(house, form, picture)
    desk, (kept,) = house.desk, at_first(house)
    store, profile = desk.library.photographs, desk.profile
    for make in (sellers_copy, dating_pack, picture_pack):
        assert as_text(make(profile, desk.record, store, AT)) == as_text(make(profile, bare, store, AT))
    assert shots(profile, desk.record) == shots(profile, bare)
    assert attached(desk.record) == attached(bare)
    made = pack_to_share(desk.library, desk.record.id, tmp_path / "shared.zip")
    inside = zipfile.ZipFile(made.path)
    data = b"".join(inside.read(name) for name in inside.namelist())
    for word in (NAME, kept.sha256, "other-machine"):
        assert word.encode() not in data
        assert not any(word in name for name in inside.namelist())
    assert sum("photographs/" in name for name in inside.namelist()) == len({p.sha256 for p in bare.photographs})


def test_the_owners_file_shows_it_and_a_whole_bag_carries_it(house, form, picture, tmp_path):
    brought(house, form, picture)
    desk, (kept,) = house.desk, at_first(house)
    place = Place(desk.library.photographs, desk.library.frozen)
    sheet = owners_file(desk.profile, desk.record, place, AT)
    (block,) = [b for b in sheet.blocks if getattr(b, "title", "") == "Pictures of the comparables"]
    assert block.pictures[0].jpeg
    assert "club sale" in block.pictures[0].caption
    made = pack(desk.library, desk.record.id, tmp_path / "whole.zip")
    with Library.open(tmp_path / "other", lambda: AT) as other:
        take_in(made.path, other)
        assert other.load(desk.record.id).record.comparables[0].pictures == (kept,)
        assert isinstance(other.photographs.path(kept.sha256), Path)


def test_a_photograph_of_another_machine_of_the_library_is_picked(house, form):
    desk, mine = house.desk, house.record
    other = mine.model_copy(update={"id": "AB12CD34", "photographs": mine.photographs[3:5], "comparables": ()})
    desk.library.create(other, desk.folder)
    house.press(form.pictures.pick)
    house.settle()
    offered = form.pictures.offered
    house.press(offered.machine)
    row = next(row for row in offered.machine.list.rows if row.property("option") == other.id)
    house.press(row)
    house.settle()
    assert len(offered.row.keys) == 2
    house.press(offered.row.keys[1])
    house.settle()
    assert [p.sha256 for p in at_first(house)] == [other.photographs[1].sha256]
    assert desk.library.load(other.id).record == other


def test_what_comes_for_a_comparable_that_is_gone_is_said(house, form, picture):
    form.pictures.take_in([picture])
    assert house.desk.do(drop_comparable(house.record, form.key))
    house.qtbot.waitUntil(lambda: not form.pictures.bringing.running)
    house.qtbot.waitUntil(lambda: "no longer open" in form.pictures.trouble.words)
    assert house.told == []
