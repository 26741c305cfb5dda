"""What measures suggest, over a whole record."""

import json

import pytest

from inspector.judgement.judge import judge, to_json
from inspector.judgement.measured import measured_lines
from inspector.record.finding import Measured
from inspector.record.words import Mark
from tests.judgement.make import STATIONS, found, item, profile, record

FORMS = [
    {"id": "thin", "name": "Thin tube", "tell": "a", "years": {"from": 1950, "to": 1952}},
    {"id": "thick", "name": "Thick tube", "tell": "b", "years": {"from": 1953, "to": 1958}},
    {"id": "wide", "name": "Wide tube", "tell": "c", "years": {"from": 1953, "to": 1958}},
]
DIAMETER = {
    "id": "od", "name": "Diameter", "unit": "mm",
    "nominal": [{"variant": "thin", "value": 31.75, "minus": 0.1, "plus": 0.1},
                {"variant": "thick", "value": 34.93, "minus": 0.1, "plus": 0.1}],
}  # fmt: skip
BEND = {
    "id": "bend", "name": "Straightness", "unit": "mm", "screen_only": True,
    "nominal": [{"value": 0, "plus": 0.5}],
}  # fmt: skip


def tubes(*forms, measures=(DIAMETER, BEND)):
    front = {"id": "fork", "name": "Fork", "item": [item("tube", variant=list(forms), measure=list(measures))]}
    return profile(station=[*STATIONS, front])


def lines(*readings, forms=FORMS[:2], measure="od", year=1953, instrument="calliper", measures=(DIAMETER, BEND)):
    taken = Measured(measure=measure, readings=readings, unit="mm", instrument=instrument)
    return measured_lines(tubes(*forms, measures=measures), record(found("tube", measured=(taken,)), year=year))


def test_a_measure_that_names_one_form_says_which_and_proposes_a_mark():
    (line,) = lines("31.75", "31.80")
    assert str(line.short) == "31.78 mm, fits “Thin tube”"  # 31.775: to the even figure
    assert (line.variant, line.mark, line.spread) == ("thin", Mark.FAIL, "0.05")
    assert str(line.proposal) == "Proposed by the measure: fail. You decide."


def test_one_reading_has_no_spread():
    assert lines("34.95")[0].spread == ""
    assert lines("34.95")[0].mark is Mark.PASS


def test_a_form_without_a_published_value_is_not_ruled_out():
    (line,) = lines("31.75", forms=FORMS)
    assert line.mark is Mark.DOUBT
    assert "No value is published for Wide tube: it is not ruled out." in [str(r) for r in line.reasons]


def test_a_value_for_the_whole_year_leaves_no_form_open():
    published = {**DIAMETER, "nominal": [*DIAMETER["nominal"], {"value": 36}]}
    (line,) = lines("31.75", forms=FORMS, measures=(published,))
    assert line.mark is Mark.FAIL


def test_what_cannot_be_separated_names_no_form():
    (line,) = lines("33", instrument="tape", forms=FORMS[:2], measures=(wide_of(DIAMETER),))
    assert line.variant == ""
    assert "cannot separate" in str(line.short)


def wide_of(measure):
    return {**measure, "nominal": [{**n, "minus": 2, "plus": 2} for n in measure["nominal"]]}


@pytest.mark.parametrize(
    ("reading", "words"), [("0.2", "within"), ("0.5", "at the edge of"), ("2.00", "outside")]
)  # fmt: skip
def test_a_screen_stands_to_its_limits_and_proposes_nothing(reading, words):
    (line,) = lines(reading, measure="bend")
    assert words in str(line.short)
    assert (line.mark, line.proposal, line.variant) == (None, None, "")
    assert "no verdict" in str(line.reasons[-1])
    assert not any("conforms" in str(reason) for reason in line.reasons)


def test_a_screen_without_limits_says_so():
    (line,) = lines("2", measure="bend", measures=({**BEND, "nominal": []},))
    assert str(line.short) == "2 mm, the profile gives no value"


def test_a_reading_that_is_no_length_says_so_and_stops_nothing():
    (line,) = lines("thirty")
    assert str(line.sentence).startswith("Diameter: “thirty” is not a measure.")
    assert line.mark is None


def test_without_reading_or_measure_there_is_no_line():
    assert lines() == ()
    assert lines("5", measure="nothing") == ()


def test_two_people_keep_their_own_readings():
    taken = [Measured(measure="od", readings=(text,), unit="mm") for text in ("31.75", "34.93")]
    two = found("tube", measured=(taken[0],)), found("tube", by="ben", measured=(taken[1],))
    for findings in (two, two[::-1]):  # whoever was first
        lines = measured_lines(tubes(*FORMS[:2]), record(*findings))
        assert [(line.by, line.variant) for line in lines] == [("ben", "thick"), ("inspector", "thin")]


def test_the_judgement_carries_what_was_measured_in_plain_words():
    taken = Measured(measure="od", readings=("31.75",), unit="mm", instrument="calliper")
    told = to_json(judge(tubes(*FORMS[:2]), record(found("tube", measured=(taken,)))))
    (line,) = json.loads(json.dumps(told))["measured"]
    assert (line["short"], line["mark"]) == ("31.75 mm, fits “Thin tube”", "fail")


def test_another_reading_another_year_and_another_person_are_worked_out_anew():
    known = tubes(*FORMS[:2])

    def judged(reading, year, by="inspector"):
        taken = Measured(measure="od", readings=(reading,), unit="mm", instrument="calliper")
        return measured_lines(known, record(found("tube", by=by, measured=(taken,)), year=year))[0]

    assert judged("31.75", 1953).mark is Mark.FAIL
    assert judged("31.75", 1951).mark is Mark.PASS
    assert judged("34.93", 1953).mark is Mark.PASS
    assert judged("31.75", 1953).mark is Mark.FAIL
    assert judged("31.75", 1953, by="ben").by == "ben"
