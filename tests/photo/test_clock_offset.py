"""One photograph of a clock tells how far the camera's clock is off."""

from datetime import datetime

import pytest

from inspector.photo.clock_offset import clock_shows, offset_seconds, offset_told

CAMERA = datetime.fromisoformat("2026-05-09T13:30:10")


def at(text):
    return datetime.fromisoformat(text)


@pytest.mark.parametrize(
    ("typed", "shows"),
    [
        ("14:32", "2026-05-09T14:32:00"),
        (" 14.32 ", "2026-05-09T14:32:00"),
        ("14:32:05", "2026-05-09T14:32:05"),
        ("2:32 pm", "2026-05-09T14:32:00"),
        ("2:32 P.M.", "2026-05-09T14:32:00"),
        ("12:05 pm", "2026-05-09T12:05:00"),
        ("2019-01-01 00:00", "2019-01-01T00:00:00"),
        ("2026-05-10T01:02:03", "2026-05-10T01:02:03"),
        ("0:10", "2026-05-10T00:10:00"),
        ("1:00", "2026-05-10T01:00:00"),
        ("1:40", "2026-05-09T01:40:00"),
    ],
)
def test_what_a_clock_shows_is_read_as_typed_on_the_nearest_day(typed, shows):
    assert clock_shows(typed, CAMERA) == at(shows)


@pytest.mark.parametrize("typed", ["", "half past two", "25:00", "12:60", "14", "13:00 pm", "2026-02-30 1:00", "1:2"])
def test_what_is_no_time_is_none(typed):
    assert clock_shows(typed, CAMERA) is None


@pytest.mark.parametrize(
    ("shows", "seconds", "words"),
    [
        ("2026-05-09T13:30:10", 0, "The camera's clock agrees with the clock in the photograph."),
        ("2026-05-09T14:32:10", 3720, "The camera's clock is 1 hour 2 minutes behind the clock in the photograph."),
        ("2026-05-09T13:29:09", -61, "The camera's clock is 1 minute 1 second ahead of the clock in the photograph."),
        ("2026-05-09T13:28:10", -120, "The camera's clock is 2 minutes ahead of the clock in the photograph."),
        ("2026-05-12T16:30:10", 270_000, "The camera's clock is 3 days 3 hours behind the clock in the photograph."),
        ("2026-05-10T13:30:11", 86_401, "The camera's clock is 1 day 1 second behind the clock in the photograph."),
    ],
)
def test_the_offset_is_told_in_words(shows, seconds, words):
    assert offset_seconds(CAMERA, at(shows)) == seconds
    assert str(offset_told(seconds)) == words
