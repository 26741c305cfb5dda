"""A watched folder gives a file once, and only when it is whole."""

from inspector.photo.watch import Print, Watch, listed
from inspector.texts import Say


def names(paths):
    return [path.name for path in paths]


def test_a_file_is_given_once_it_is_alike_at_two_looks(tmp_path):
    watch = Watch(tmp_path)
    assert watch.look({"a.jpg": Print(10, 1)}) == ()
    assert watch.waiting
    assert watch.look({"a.jpg": Print(20, 2)}) == ()
    assert names(watch.look({"a.jpg": Print(20, 2)})) == ["a.jpg"]
    assert not watch.waiting
    assert watch.look({"a.jpg": Print(20, 2)}) == ()


def test_an_empty_file_waits(tmp_path):
    watch = Watch(tmp_path)
    for _ in range(3):
        assert watch.look({"a.jpg": Print(0, 1)}) == ()
    assert watch.waiting


def test_a_file_written_anew_is_given_anew(tmp_path):
    watch = Watch(tmp_path)
    for _ in range(2):
        watch.look({"a.jpg": Print(20, 2)})
    assert watch.look({"a.jpg": Print(30, 9)}) == ()
    assert names(watch.look({"a.jpg": Print(30, 9)})) == ["a.jpg"]


def test_a_file_that_went_and_came_again_unchanged_is_not_given_twice(tmp_path):
    watch = Watch(tmp_path)
    for found in ({"a.jpg": Print(20, 2)},) * 2:
        watch.look(found)
    assert watch.look({}) == ()
    for _ in range(3):
        assert watch.look({"a.jpg": Print(20, 2)}) == ()


def test_only_pictures_are_listed_and_nothing_is_changed(tmp_path):
    for name in ("one.JPG", "two.heic", "list.txt", ".hidden.jpg", "film.mp4"):
        (tmp_path / name).write_bytes(b"12345")
    before = {p.name: p.stat().st_mtime_ns for p in tmp_path.iterdir()}
    found = listed(tmp_path)
    assert set(found) == {"one.JPG", "two.heic"}
    assert found["one.JPG"].size == 5
    assert {p.name: p.stat().st_mtime_ns for p in tmp_path.iterdir()} == before


def test_a_folder_that_is_gone_is_one_sentence(tmp_path):
    found = listed(tmp_path / "card")
    assert isinstance(found, Say)
    assert "cannot be looked into" in str(found)
