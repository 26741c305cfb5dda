"""Records have short names that can be read aloud, and the library has its place."""

from pathlib import Path

from inspector.storage.codes import ALPHABET, new_record_id
from inspector.storage.paths import NAME, data_folder


def test_a_record_id_has_eight_characters_none_of_which_is_taken_for_another():
    made = {new_record_id() for _ in range(2000)}
    assert len(made) == 2000
    assert {len(name) for name in made} == {8}
    assert set("".join(made)) == set(ALPHABET)
    assert (len(set(ALPHABET)), set(ALPHABET) & set("ILOU")) == (32, set())


def test_the_library_is_where_it_is_said_to_be(monkeypatch, tmp_path):
    monkeypatch.setenv("INSPECTOR_DATA", str(tmp_path))
    assert data_folder() == tmp_path
    monkeypatch.setenv("INSPECTOR_DATA", "~/machines")
    assert data_folder() == Path.home() / "machines"


def test_the_library_is_else_where_the_system_keeps_data(monkeypatch, own_folders):
    monkeypatch.setenv("INSPECTOR_DATA", "  ")
    folder = data_folder()
    assert folder.name == NAME
    assert own_folders in folder.parents
    assert not folder.exists()
