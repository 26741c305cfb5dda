"""Several photographs are worked on at once; the answers come in order, and a stop leaves nothing half done."""

import pytest

from inspector.photo.intake import Taken, arriving, intake, take
from inspector.photo.refusal import Cancelled, Refusal
from tests.photo.pictures import camera_jpeg, shown
from tests.photo.test_intake import Shelf

THREADS = (1, 2, 5)


def card(count):
    """Photographs that differ, every fourth of them broken."""
    return [(f"{n}.jpg", b"a list of parts" if n % 4 == 3 else camera_jpeg(size=(64 + n, 48))) for n in range(count)]


@pytest.mark.parametrize("threads", THREADS)
def test_the_answers_come_in_the_order_of_the_sources(threads):
    found = list(arriving(card(13), Shelf(), threads=threads))
    assert [one.name for one in found] == [f"{n}.jpg" for n in range(13)]
    assert [isinstance(one, Refusal) for one in found] == [n % 4 == 3 for n in range(13)]
    assert found == intake(card(13), Shelf())


@pytest.mark.parametrize("threads", THREADS)
def test_what_was_begun_when_it_is_stopped_is_told_and_no_more_is_kept(threads):
    def report(done, total, name):
        if done == 6:
            raise Cancelled

    shelf = Shelf()
    found = list(arriving(card(40), shelf, report, threads=threads))
    assert [one.name for one in found] == [f"{n}.jpg" for n in range(6)]
    assert {one.sha256 for one in found if isinstance(one, Taken)} == set(shelf.kept)


@pytest.mark.parametrize("threads", THREADS)
def test_progress_is_told_before_each_and_once_at_the_end(threads):
    told = []
    list(arriving(card(5), Shelf(), lambda *now: told.append(now), threads=threads))
    assert told == [*((n, 5, f"{n}.jpg") for n in range(5)), (5, 5, "")]


def test_who_takes_no_more_answers_has_what_was_begun_kept_and_nothing_else():
    shelf = Shelf()
    answers = arriving(card(40), shelf, threads=2)
    next(answers)
    answers.close()
    assert 1 <= len(shelf.kept) < 10


def test_copies_are_as_large_as_was_asked():
    shelf = Shelf()
    take(("a.jpg", camera_jpeg(size=(640, 480))), shelf, 320)
    (copy,) = shelf.copies.values()
    assert max(shown(copy).size) == 320


def test_nothing_to_take_in_is_told_as_done():
    told = []
    assert list(arriving([], Shelf(), lambda *now: told.append(now), threads=2)) == []
    assert told == [(0, 0, "")]
