"""Many photographs at once: one answer each, in order, and a bad one stops no other."""

import hashlib
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

import pytest

from inspector.photo.intake import Taken, intake, name_of, take
from inspector.photo.refusal import Cancelled, NotKept, Refusal
from inspector.texts import say, tr
from tests.photo.pictures import MODEL, camera_jpeg, plain, saved, shown


@dataclass(frozen=True)
class Receipt:
    sha256: str
    already: bool


class Shelf:
    """A keeper in memory, with room for so many."""

    def __init__(self, room=99):
        self.kept, self.copies, self.room = {}, {}, room

    def keep(self, source, copy=None):
        sha256 = hashlib.sha256(source).hexdigest()
        already = sha256 in self.kept
        if not already and len(self.kept) >= self.room:
            raise NotKept(say("There is no room left."))
        self.kept[sha256], self.copies[sha256] = source, copy
        return Receipt(sha256, already)


@pytest.fixture
def card(tmp_path):
    """A folder as a camera leaves it, with one file that is none."""
    (tmp_path / "1.jpg").write_bytes(camera_jpeg(size=(64, 48), orientation=6))
    (tmp_path / "2.jpg").write_text("a list of parts")
    (tmp_path / "3.png").write_bytes(saved(plain(), "PNG"))
    return [tmp_path / name for name in ("1.jpg", "2.jpg", "3.png", "4.jpg")]


def test_each_source_has_its_answer_in_order(card):
    first, second, third, fourth = intake(card, Shelf())
    assert first == Taken(
        sha256=hashlib.sha256(card[0].read_bytes()).hexdigest(),
        name="1.jpg",
        media="image/jpeg",
        width=48,
        height=64,
        taken_at=datetime.fromisoformat("2024-05-06T10:11:12"),
        offset="+02:00",
        camera=MODEL,
        has_place=True,
        size=card[0].stat().st_size,
        already=False,
    )
    assert isinstance(second, Refusal)
    assert tr(second.why).startswith("2.jpg is not a photograph")
    assert (third.name, third.media, third.has_place) == ("3.png", "image/png", False)
    assert isinstance(fourth, Refusal)
    assert tr(fourth.why).startswith("4.jpg is not there")


def test_the_very_bytes_are_kept_and_a_print_copy_with_them(card):
    shelf = Shelf()
    (taken, *_) = intake(card, shelf)
    assert shelf.kept[taken.sha256] == card[0].read_bytes()
    copy = shelf.copies[taken.sha256]
    assert shown(copy).size == (taken.width, taken.height)
    assert b"GPS" not in copy


def test_bytes_with_a_name_are_taken_like_a_file():
    data = camera_jpeg()
    (taken,) = intake([("pasted", data)], Shelf())
    assert (taken.name, taken.sha256) == ("pasted", hashlib.sha256(data).hexdigest())


def test_the_same_photograph_twice_is_kept_once(card):
    shelf = Shelf()
    first, second = intake([card[0], ("again.jpg", card[0].read_bytes())], shelf)
    assert (first.already, second.already) == (False, True)
    assert first.sha256 == second.sha256
    assert len(shelf.kept) == 1


def test_notes_come_along():
    (taken,) = intake([("front.png", camera_jpeg())], Shelf())
    assert [tr(n) for n in taken.notes] == ["front.png is a JPEG picture, whatever its ending says."]


def test_progress_is_told_before_each_and_at_the_end(card):
    told = []
    intake(card[:2], Shelf(), lambda *words: told.append(words))
    assert told == [(0, 2, "1.jpg"), (1, 2, "2.jpg"), (2, 2, "")]


def test_nothing_to_take_is_done_at_once():
    told = []
    assert intake([], Shelf(), lambda *words: told.append(words)) == []
    assert told == [(0, 0, "")]


@pytest.mark.parametrize("stop_at", [0, 1, 2, 4])
def test_stopping_keeps_and_gives_back_what_was_done(card, stop_at):
    shelf = Shelf()

    def report(done, total, name):
        if done == stop_at:
            raise Cancelled

    results = intake(card, shelf, report)
    assert [r.name for r in results] == ["1.jpg", "2.jpg", "3.png", "4.jpg"][:stop_at]
    assert len(shelf.kept) == len([r for r in results if isinstance(r, Taken)])


def test_any_other_error_of_the_caller_is_not_swallowed(card):
    def report(done, total, name):
        raise KeyError(name)

    with pytest.raises(KeyError):
        intake(card, Shelf(), report)


def test_a_full_shelf_is_an_answer_and_loses_nothing(card):
    shelf = Shelf(room=1)
    first, _, third, _ = intake(card, shelf)
    assert isinstance(first, Taken)
    assert third == Refusal("3.png", say("There is no room left."))
    assert list(shelf.kept) == [first.sha256]


def test_what_cannot_be_decoded_is_not_kept():
    whole = saved(plain(), "PNG")
    at = whole.index(b"IDAT") + 4
    shelf = Shelf()
    damaged = take(("front.png", whole[:at] + b"\0" * 20 + whole[at + 20 :]), shelf)
    assert "is damaged" in tr(damaged.why)
    assert shelf.kept == {}


def test_a_source_is_read_only_once(card, monkeypatch):
    opened, open_ = [], Path.open
    monkeypatch.setattr(Path, "open", lambda self, *a, **k: opened.append(self) or open_(self, *a, **k))
    intake(card[:1], Shelf())
    assert opened == card[:1]


@pytest.mark.parametrize(
    ("source", "name"),
    [(Path("a/b.jpg"), "b.jpg"), (("", b""), "photograph"), (Path("/"), "/"), (("x", b""), "x")],
)
def test_every_source_has_a_name(source, name):
    assert name_of(source) == name
