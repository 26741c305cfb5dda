"""A length from a photograph as a reading of a measure, in its unit and with what it may be wrong by."""

import pytest

from inspector.judgement.lengths import instrument_of, photograph_instrument
from inspector.profile.words import Unit
from inspector.window.bench.kept import reading_of
from tests.window.bench import scenes


class Rim:
    """A measure as far as a reading needs it."""

    id, name = "rim", "Rim"

    def __init__(self, unit):
        self.unit = unit


@pytest.mark.parametrize(("unit", "shown"), [(Unit.MM, "50.8"), (Unit.INCH, "2.000")])
def test_a_reading_in_the_unit_of_the_measure(unit, shown):
    """2 inches are 50.8 mm exactly; a limit e has the standard uncertainty e / root 3 (JCGM 100:2008, 4.3.7)."""
    reading = reading_of(Rim(unit), 50.8, 0.25)
    assert reading.readings == (shown,)
    instrument = instrument_of(reading.instrument, unit)
    by = 25.4 if unit is Unit.INCH else 1.0
    assert float(instrument.error) * by / 3**0.5 == pytest.approx(0.25, rel=0.05)
    assert "photograph, within" in str(instrument.name)


def test_an_instrument_without_error_is_refused():
    with pytest.raises(ValueError, match="never wrong"):
        photograph_instrument("0", Unit.MM)


def test_a_photograph_is_an_instrument_and_other_words_are_none():
    assert instrument_of(photograph_instrument("0.4", Unit.MM), Unit.MM).error == pytest.approx(0.4)
    assert instrument_of("photograph ± much", Unit.MM) is None


def test_a_lost_original_is_said_on_the_bench(made, tmp_path):
    photo = made.bring(scenes.pad(tmp_path / "pad.jpg", 150), place="frame")
    kept = made.house.desk.library.photographs
    kept.path(made.house.record.photographs[0].sha256).unlink()
    made.open(photo)
    assert "is not in the store" in made.bench.original.words
    assert "is not where it was kept" in made.canvas._words
    for way in ("mark", "measure", "figures", "beside"):
        made.way(way)
    assert not made.canvas.copy.there


def test_a_kept_file_that_was_changed_is_said_on_the_bench(made, tmp_path):
    photo = made.bring(scenes.pad(tmp_path / "pad.jpg", 150), place="frame")
    path = made.house.desk.library.photographs.path(made.house.record.photographs[0].sha256)
    path.chmod(0o600)
    path.write_bytes(path.read_bytes() + b"one more")
    made.open(photo)
    assert "is not as it was taken in" in made.bench.original.words
