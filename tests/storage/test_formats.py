"""What was written in an older format is read as it was meant."""

import json

import pytest
from pydantic import ValidationError

from inspector.record.edits import Part
from inspector.storage import formats
from inspector.storage.formats import Migration, record_of, step_of, text_of
from inspector.storage.library import Library
from tests.record.steps import blank
from tests.storage.shelf import ID, Clock, filled, said, sql


def renamed(body):
    """An invented older format called the statements sayings."""
    return {("statements" if key == "sayings" else key): value for key, value in body.items()}


def renamed_step(body):
    puts = [{**p, "part": "statements" if p["part"] == "sayings" else p["part"]} for p in body["puts"]]
    return {**body, "puts": puts}


FROM_0 = {0: Migration(record=renamed, step=renamed_step)}


def old_record():
    body = json.loads(text_of(blank()))
    body["sayings"] = [{"id": "old", "text": "rebuilt"}]
    del body["statements"]
    return json.dumps({**body, "format": 0})


def test_an_older_record_is_brought_forward():
    record = record_of(old_record(), 0, FROM_0)
    assert [(s.id, s.text) for s in record.statements] == [("old", "rebuilt")]
    assert record.format == 1


def test_an_older_step_is_brought_forward():
    step = said("one")
    text = text_of(step).replace('"statements"', '"sayings"')
    assert step_of(text, 0, FROM_0) == step
    assert step.puts[0].part is Part.STATEMENTS


def test_a_library_of_an_older_format_is_replayed_and_undone(tmp_path, monkeypatch):
    clock = Clock()
    folder = filled(tmp_path, clock)
    with Library.open(folder, clock) as library:
        before = library.load(ID)
    sql(
        folder,
        "DROP TRIGGER edits_stay",
        "DELETE FROM snapshots WHERE seq > 0",
        "UPDATE snapshots SET format = 0,"
        " body = replace(replace(body, '\"format\":1', '\"format\":0'), '\"statements\"', '\"sayings\"')",
        "UPDATE edits SET format = 0, step = replace(step, '\"statements\"', '\"sayings\"'),"
        " inverse = replace(inverse, '\"statements\"', '\"sayings\"')",
    )
    monkeypatch.setattr(formats, "MIGRATIONS", FROM_0)
    with Library.open(folder, clock) as library:
        assert library.load(ID) == before


def test_a_record_of_this_format_with_something_unknown_is_refused():
    body = {**json.loads(text_of(blank())), "colour": "red"}
    with pytest.raises(ValidationError, match="colour"):
        record_of(json.dumps(body), 1)


def test_a_record_of_a_newer_format_loses_only_what_is_unknown():
    body = json.loads(text_of(blank()))
    body |= {"format": 2, "colour": "red"}
    body["people"][0]["age"] = 7
    assert record_of(json.dumps(body), 2) == blank()
    assert step_of(json.dumps({**json.loads(text_of(said("one"))), "mood": "good"}), 2) == said("one")


def test_a_record_of_a_newer_format_that_means_something_else_is_refused():
    with pytest.raises(ValidationError):
        record_of(json.dumps({**json.loads(text_of(blank())), "people": "none"}), 2)
