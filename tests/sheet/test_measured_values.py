"""What was measured stands at its finding on the seller's copy and in the owner's file: value, spread, doubt, fit."""

from math import sqrt

import pytest
from scipy.stats import norm

from inspector.record.finding import Measured, PhotoMeasure
from inspector.record.material import Beneath, Magnet, Material, Sound
from inspector.record.words import Mark
from inspector.sheet import blocks as b
from inspector.sheet.measured_values import MeasuredBlock
from inspector.sheet.pdf import as_pdf
from inspector.sheet.text import as_text
from tests.sheet import made, purse, read

READINGS = ("7.02", "7.05", "7.04")
LENGTH = PhotoMeasure(
    id="m1", what="length", reference="id-1", corners=((0, 0),) * 4, points=((0, 0), (1, 1)), value=31.24, low=30.9,
    high=31.58, uncertainty=0.17, unit="mm",
    note="31.2 mm; 95 %: 30.9 to 31.6 mm (about 1 15/64 in)\nReference: bank card.",
)  # fmt: skip
SILENT = LENGTH.model_copy(update={"id": "m2", "note": ""})


def record(mark=Mark.DOUBT, measured=None, photos=()):
    """The made machine with other measures at the front brake, and these measurements in its photographs."""
    measured = measured or (Measured(measure="width", readings=READINGS, unit="in", instrument="calliper"),)
    findings = tuple(
        f.model_copy(update={"measured": measured, "mark": mark}) if f.item == "front-brake" else f
        for f in made.FINDINGS
    )
    shown = made.photographs(5)
    kept = dict(photos)
    shown = tuple(p.model_copy(update={"measures": kept.get(p.id, ())}) for p in shown)
    return made.record(findings=findings, photographs=shown)


def rows_of(of, name):
    (block,) = [one for one in made.sheet(of).blocks if isinstance(one, b.FindingsBlock)]
    (entry,) = [entry for entry in block.entries if entry.name == name]
    return [row for voice in entry.voices for row in voice.rows if row.label == "Measured"]


def both(of):
    return made.sheet(of), purse.owner(purse.filled(of))


def test_readings_mean_spread_and_instrument_stand_at_the_finding_with_what_they_fit():
    (row,) = rows_of(record(), "Front brake")
    assert str(row.said) == (
        "Width: 7.02, 7.05, 7.04 in by calliper, 0.05 mm, mean 7.04 in, spread 0.03 in, fits the published value."
    )


def test_below_them_stands_how_well_they_are_known_and_with_which_probability_they_conform():
    # Rounding to the coarser step, here the hundredth typed: JCGM 100:2008, F.2.2.1. Conformance: JCGM 106:2012, 7.4.
    u = sqrt(0.01**2 / 12 + (0.03 / 2) ** 2 / 3)
    p = norm.cdf(7.05, 7.11 - 0.22 / 3, u) - norm.cdf(6.95, 7.11 - 0.22 / 3, u)
    (row,) = rows_of(record(), "Front brake")
    assert f"standard uncertainty {u:.2g} in" in row.small
    assert f"6.95 to 7.05 in: it conforms with a probability of {p:.2f}." in row.small


def test_a_probability_is_never_told_as_certain():
    (row,) = rows_of(record(measured=(Measured(measure="width", readings=("7.000",), unit="in"),)), "Front brake")
    assert "a probability of more than 0.99." in row.small
    assert "1.00" not in row.small
    assert row.small.startswith("One reading; read to 0.001 in: standard uncertainty 0.00029 in. Against the published")


def test_no_figure_is_finer_than_the_tape():
    """A reading in inches by a tape of 1 mm: 1/25.4 in is 0.04 in, so two figures behind the point at most."""
    (row,) = rows_of(record(measured=(Measured(measure="width", readings=("178", "179"), unit="mm",
                                               instrument="tape"),)), "Front brake")  # fmt: skip
    assert "178, 179 mm by tape, 1 mm, mean 7.03 in, spread 0.04 in" in str(row.said)
    assert "spread 0.04 in; read to 0.039 in" in row.small


@pytest.mark.parametrize("reading", ["seven", ""])
def test_what_is_no_length_is_told_as_it_was_typed(reading):
    (row,) = rows_of(record(measured=(Measured(measure="width", readings=(reading,), unit="in"),)), "Front brake")
    assert str(row.said) == ("Width: seven in." if reading else "Width: not read.")


def test_what_passed_tells_its_measure_in_its_line():
    text = as_text(made.sheet(record(Mark.PASS)))
    assert "Width: 7.02, 7.05, 7.04 in by calliper, 0.05 mm, mean 7.04 in, spread 0.03 in, fits" in text


def test_a_length_in_a_photograph_stands_at_the_finding_with_its_interval_and_its_reference():
    for sheet in both(record(photos={"p1": (LENGTH, SILENT)}.items())):
        (block,) = [one for one in sheet.blocks if isinstance(one, b.FindingsBlock)]
        (entry,) = [entry for entry in block.entries if entry.name == "Front wheel"]
        told, silent = [row for voice in entry.voices for row in voice.rows if row.label == "Measured"]
        assert str(told.said).startswith("Length in photograph 1: 31.2 mm; 95 %: 30.9 to 31.6 mm")
        assert told.small == "Reference: bank card."
        assert str(silent.said) == "Length in photograph 1: 31.2 mm; 95 %: 30.9 to 31.6 mm."
        assert entry.voices[0].said


def test_one_in_a_photograph_of_nothing_told_in_full_stands_in_a_block_of_its_own():
    for sheet in both(record(photos={"p4": (LENGTH,)}.items())):
        (block,) = [one for one in sheet.blocks if isinstance(one, MeasuredBlock)]
        assert [str(row.said)[:40] for row in block.rows] == ["Length in photograph 4: 31.2 mm; 95 %: 3"]
    assert not any(isinstance(one, MeasuredBlock) for sheet in both(record()) for one in sheet.blocks)


def test_all_of_it_is_drawn():
    for sheet in both(record(photos={"p1": (LENGTH,), "p4": (LENGTH,)}.items())):
        drawn = read.flat(as_pdf(sheet))
        for words in ("mean 7.04 in, spread 0.03 in", "it conforms with a probability of",
                      "Length in photograph 1: 31.2 mm; 95 %: 30.9 to 31.6 mm", "Measured in photographs",
                      "Length in photograph 4"):  # fmt: skip
            assert words in drawn, words


LOOKS = Material(magnet=Magnet.STICKS, sound=Sound.METAL, beneath=Beneath.CANNOT)


def looked(mark):
    findings = tuple(
        f.model_copy(update={"material": LOOKS, "mark": mark}) if f.item == "front-brake" else f for f in made.FINDINGS
    )
    return made.record(findings=findings)


def test_magnet_tap_and_underside_stand_at_the_finding_with_what_they_do_not_say():
    told = "Magnet sticks; sounds of metal; underside cannot be seen."
    for sheet in both(looked(Mark.DOUBT)):
        (block,) = [one for one in sheet.blocks if isinstance(one, b.FindingsBlock)]
        (entry,) = [entry for entry in block.entries if entry.name == "Front brake"]
        (row,) = [row for row in entry.voices[0].rows if row.label == "Material"]
        assert str(row.said) == told
        assert "does not tell whether it is original" in row.small
        assert told in read.flat(as_pdf(sheet))
    assert "magnet sticks; sounds of metal; underside cannot be seen" in as_text(made.sheet(looked(Mark.PASS)))
