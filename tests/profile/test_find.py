"""Profiles found on disk, a new one to begin with, and the schema for editors."""

import json
import tomllib

import pytest

from inspector.profile.find import find_profiles, new_profile
from inspector.profile.read import read_profile
from inspector.profile.schema import schema_text, write_schema
from inspector.resource import resource
from tests.profile.samples import GOOD


def test_profiles_are_found_in_the_roots_and_right_below_them(tmp_path):
    for name in ("b", "a", "c/deep"):
        folder = tmp_path / "many" / name
        folder.mkdir(parents=True)
        (folder / "profile.toml").write_text(GOOD)
    one = tmp_path / "many" / "a"
    roots = [tmp_path / "none", tmp_path / "many", one]
    assert find_profiles(roots) == (one, tmp_path / "many" / "b")


@pytest.mark.parametrize("title", ["Tern 350", 'The "Big" \\ one', "Größe 5 Ł"])
def test_a_new_profile_is_valid_and_carries_its_names(tmp_path, title):
    path = new_profile(tmp_path / "new", "tern-350", title)
    got = read_profile(path)
    assert got.problems == ()
    assert got.profile is not None
    assert (got.profile.id, got.profile.title) == ("tern-350", title)
    assert got.text.count("#") > 8


def test_a_new_profile_never_overwrites(tmp_path):
    path = new_profile(tmp_path, "tern", "Tern")
    path.write_text("mine")
    with pytest.raises(FileExistsError):
        new_profile(tmp_path, "tern", "Tern")
    assert path.read_text() == "mine"


@pytest.mark.parametrize(("name", "title"), [("", "x"), ("A b", "x"), ("../x", "x"), ("a", " \n"), ("a", "x" * 5000)])
def test_a_name_that_cannot_be_is_refused_before_anything_is_written(tmp_path, name, title):
    with pytest.raises(ValueError, match=r"id|title"):
        new_profile(tmp_path / "new", name, title)
    assert not (tmp_path / "new").exists()


def test_the_schema_that_ships_is_what_the_code_gives(tmp_path):
    write_schema(tmp_path / "schema.json")
    assert (tmp_path / "schema.json").read_text("utf-8") == schema_text()
    assert resource("profile.schema.json").read_text("utf-8") == schema_text()


def test_the_schema_names_the_keys_that_the_file_uses():
    schema = json.loads(schema_text())
    assert set(tomllib.loads(GOOD)) <= set(schema["properties"])
    assert schema["additionalProperties"] is False
    assert "from" in schema["$defs"]["Span"]["properties"]
