"""The page Sheet offers the seller's copy and both forms of the walk sheet, and keeps what it shows."""

import io

import pytest
from pypdf import PdfReader

from inspector.record.verbs import set_claim
from inspector.window.job import Job
from tests.window.walked import SIZES, fill


@pytest.fixture
def sheet(house):
    house.build()
    fill(house)
    house.page("sheet")
    return house.window.pages["sheet"]


def choose(qtbot, house, sheet, which):
    """The text of each page of the chosen sheet."""
    before = sheet.pdf
    house.press(sheet.copy.key(which))
    qtbot.waitUntil(lambda: bool(sheet.pdf) and sheet.pdf is not before and sheet._job is None, timeout=20_000)
    return [page.extract_text() for page in PdfReader(io.BytesIO(sheet.pdf)).pages]


def test_the_sellers_copy_is_offered_first(sheet, qtbot):
    qtbot.waitUntil(lambda: bool(sheet.pdf), timeout=20_000)
    assert "seller’s copy" in PdfReader(io.BytesIO(sheet.pdf)).pages[0].extract_text()


@pytest.mark.parametrize("scale", [1.0, 1.75])
@pytest.mark.parametrize("size", SIZES, ids=["wide", "tall"])
def test_saving_signing_and_what_is_shown_are_in_sight_without_scrolling(house, size, scale):
    house.build(size=size, scale=scale)
    fill(house)
    house.page("sheet")
    house.settle()
    sheet = house.window.pages["sheet"]
    for widget in (sheet.state, sheet.save, sheet.sign):
        at = widget.mapTo(sheet, widget.rect().topLeft())
        assert sheet.rect().contains(widget.rect().translated(at))
        assert widget.visibleRegion().boundingRect() == widget.rect()
    assert sheet.copy.key("seller").visibleRegion().boundingRect() == sheet.copy.key("seller").rect()


def test_one_copy_is_never_kept_under_the_name_of_another(sheet, house, qtbot, tmp_path, monkeypatch):
    choose(qtbot, house, sheet, "owner")
    sheet.save_to(tmp_path / "owner.pdf")
    assert sheet.saved is not None
    with monkeypatch.context() as slow:
        slow.setattr(Job, "start", lambda job, pool: None)
        house.press(sheet.copy.key("seller"))
    sheet.save_to(tmp_path / "seller.pdf")  # the answer to a dialog that was open all along
    assert house.told[-1] == "The sheet is still being made. Try again in a moment."
    assert not (tmp_path / "seller.pdf").exists()
    assert sheet.saved is None
    sheet.open_outside()
    assert house.told[-1] == "Save the sheet first; then it can be opened and printed."


def test_the_walk_sheet_comes_short_and_in_full(sheet, house, qtbot):
    short = choose(qtbot, house, sheet, "walk-short")
    assert len(short) <= 4
    assert "Walk sheet, short form" in short[0]
    assert sheet.file_name().startswith("brackwater-heron-600-walk-short-")
    full = choose(qtbot, house, sheet, "walk-full")
    assert len(full) > 2 * len(short)
    assert "Walk sheet, full form" in full[0]
    assert sheet.state.words.startswith(f"{len(full)} pages.")


def test_going_back_gives_the_sellers_copy_again(sheet, house, qtbot):
    choose(qtbot, house, sheet, "walk-short")
    assert "seller’s copy" in choose(qtbot, house, sheet, "seller")[0]


def test_the_place_is_on_the_sellers_copy_only_where_that_is_chosen(sheet, house, qtbot):
    place = "Yard behind the mill"
    sheet.desk.do(set_claim("place", place))
    assert place not in " ".join(choose(qtbot, house, sheet, "seller")[0].split())
    before = sheet.pdf
    house.press(sheet.place)
    qtbot.waitUntil(lambda: sheet.pdf is not before and sheet._job is None, timeout=20_000)
    assert place in " ".join(PdfReader(io.BytesIO(sheet.pdf)).pages[0].extract_text().split())
    assert sheet.place.held == "kept"
    choose(qtbot, house, sheet, "owner")
    assert not sheet.place.isVisible()


def test_the_owners_file_and_the_packs_are_offered(sheet, house, qtbot):
    owner = choose(qtbot, house, sheet, "owner")
    assert "Owner’s file, private" in owner[0]
    assert "History of changes" in "".join(owner)
    assert "For an application to date a machine" in choose(qtbot, house, sheet, "dating")[0]
    assert "Photographs for an insurer" in choose(qtbot, house, sheet, "pictures")[0]


def test_what_names_amounts_gives_way_when_money_is_hidden(sheet, house, qtbot):
    choose(qtbot, house, sheet, "owner")
    sheet.desk.private.hide()
    assert sheet.copy.held() == ["seller"]
    qtbot.waitUntil(lambda: bool(sheet.pdf) and sheet._job is None, timeout=20_000)
    assert "seller’s copy" in PdfReader(io.BytesIO(sheet.pdf)).pages[0].extract_text()
    house.press(sheet.copy.key("owner"))
    qtbot.waitUntil(lambda: bool(sheet.pdf) and sheet._job is None, timeout=20_000)
    assert sheet.copy.held() == ["seller"]
