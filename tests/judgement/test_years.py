"""What all parts say together about the model year, in the sentences that people read."""

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.judgement.judge import judge, to_json
from inspector.judgement.year_words import assemblies_words, count_word, listed, years_words
from inspector.profile.words import Assembly
from inspector.record.words import NumberState
from tests.judgement.dated import CODED, NUMBERED, all_fitted, decoded, fitted, form, machine, part, read, years_of
from tests.judgement.make import found, item, record

NINE = ("frame", "engine", "gearbox", "front end", "rear end", "wheels and brakes", "tinware", "electrics", "controls")
NEVER = ("authentic", "genuine", "original numbers", "matching numbers", "certified", "not stolen", "safe to ride",
         "market value", "mismatch", "fraud", "fake")  # fmt: skip


def nine_assemblies():
    rest = (part(f"part-{n}", 1951, 1953 + n % 2, a) for n, a in enumerate(NINE) if a not in ("frame", "tinware"))
    return machine(part("lug", 1953, 1954), part("fuel-tank", 1955, 1958, "tinware"), *rest)


def test_the_whole_is_said_in_one_sentence():
    made = nine_assemblies()
    answer = years_of(made, *all_fitted(made))
    assert str(answer.sentence) == (
        "Years: 1953 alone. Odd one out: fuel tank, 1955–58. Nine assemblies, eight allow 1953."
    )


@pytest.mark.parametrize(
    ("parts", "sentence"),
    [
        (
            [("a", 1951, 1953, "frame"), ("b", 1953, 1954, "engine")],
            "Years: 1953 alone. Two assemblies, all allow 1953.",
        ),
        ([("a", 1951, 1954, "frame")], "Years: 1951–54. One assembly shows a year, and it allows 1951–54."),
        ([], "Years: nothing shows one firmly yet."),
    ],
)
def test_the_sentence_where_nothing_is_odd(parts, sentence):
    made = machine(item("spare"), *(part(*one) for one in parts))
    assert str(years_of(made, *(fitted(one[0]) for one in parts)).sentence) == sentence


def test_the_youngest_part_is_the_earliest_the_machine_can_be_if_its_parts_belong_to_it():
    made = nine_assemblies()
    answer = years_of(made, *all_fitted(made))
    assert answer.youngest.id == "fuel-tank"
    assert str(answer.youngest_sentence) == (
        "Youngest part: fuel tank, 1955–58. If it belongs to the machine, "
        "the machine as it stands is of 1955 at the earliest."
    )
    assert "Assumed: the parts found on the machine belong to it." in [str(r) for r in answer.reasons]
    nothing = years_of(made)
    assert (nothing.youngest, nothing.youngest_sentence) == (None, None)


@pytest.mark.parametrize(
    ("year", "words"),
    [
        (1953, "With the fewest parts set aside, the others allow the claimed 1953."),
        (1955, "With the fewest parts set aside, the others do not allow the claimed 1955."),
    ],
)
def test_the_claimed_year_is_set_beside_what_is_left(year, words):
    made = nine_assemblies()
    answer = years_of(made, *all_fitted(made), year=year)
    assert answer.claimed == year
    assert str(answer.claim_sentence) == words
    one = years_of(made, fitted("lug"), year=year)
    assert str(one.claim_sentence) == (
        "The one firmly dated part allows the claimed 1953."
        if year == 1953
        else "The one firmly dated part does not allow the claimed 1955."
    )
    assert str(one.reasons[0]) == "The one firmly dated part allows these years."
    two = years_of(made, fitted("lug"), fitted("part-1"), year=year)
    assert str(two.claim_sentence) == (
        "All firmly dated parts allow the claimed 1953."
        if year == 1953
        else "The firmly dated parts do not allow the claimed 1955 together."
    )
    assert str(two.reasons[0]) == "Every one of the two firmly dated parts allows these years."
    assert years_of(made, *all_fitted(made), year=None).claim_sentence is None


def test_a_number_and_the_parts_narrow_together():
    made = machine(part("lug", 1952, 1955), place=[NUMBERED, CODED], season_starts=1)
    answer = years_of(made, fitted("lug"), readings=(read("frame", "15700"), read("rim", "083")))
    assert answer.together.years == (1953,)
    assert [p.id for p in answer.parts] == ["lug", "number:frame", "number:rim"]
    assert answer.sources == ("list",)


def test_a_condition_is_among_the_reasons():
    made = machine(part("lug", 1952, 1955), place=[NUMBERED])
    answer = years_of(made, fitted("lug"), readings=(read("frame", "15[47]00"),))
    assert answer.together.years == (1952, 1953)
    assert "Frame number: 1952 if figure 3 is 4; 1953 if figure 3 is 7." in [str(r) for r in answer.reasons]


SERIAL = {"id": "late", "name": "late form", "serials": [{"place": "frame", "from": 15700}]}


def running_of(typed, serials=None, how="from metal by me", **more):
    late = form(1952, 1954, **{**SERIAL, "serials": serials or SERIAL["serials"], **more})
    made = machine(item("lamp", variant=[late]), place=[NUMBERED])
    readings = (read("frame", typed, how=how),) if typed else ()
    (sentence,) = years_of(made, fitted("lamp", "late"), readings=readings).running
    return str(sentence)


@pytest.mark.parametrize(
    ("typed", "end"),
    [
        ("15842", "15842 as read is one of these."),
        ("15642", "15642 as read is not one of these."),
        ("15[68]42", "15[68]42 is one of these if figure 3 is 8, else not."),
        ("15?42", "15?42 is one of these if figure 3 is 7, 8 or 9, else not."),
        ("15??2", "15??2 is one of these if figure 3 is 7, 8 or 9, else not."),
        ("15???", "Whether 15??? is one of these depends on figures 3, 4 and 5 of the frame number."),
        ("158?2", "158?2 as read is one of these."),
        ("156??", "156?? as read is not one of these."),
        ("99999", "No serial can be read out of 99999, so it is not compared."),
        ("", "The frame number was not read on the machine, so it is not compared."),
    ],
)
def test_a_form_that_changed_by_serial_is_set_beside_the_number(typed, end):
    assert running_of(typed) == f"Lamp, late form: fitted from frame number 15\N{NO-BREAK SPACE}700. {end}"


@pytest.mark.parametrize(("typed", "which"), [("15699", "not "), ("15700", ""), ("15842", ""), ("15843", "not ")])
def test_first_and_last_number_of_a_change_belong_to_it(typed, which):
    words = running_of(typed, serials=[{"place": "frame", "from": 15700, "to": 15842}])
    assert words.endswith(f"{typed} as read is {which}one of these.")


def test_a_number_outside_the_serials_of_a_form_is_told_with_what_its_note_says_of_them():
    note = "About 15700; a later batch had it again."
    assert running_of("15642", note=note).endswith(f"15642 as read is not one of these. {note}")
    assert running_of("15842", note=note).endswith("15842 as read is one of these.")


def test_a_number_of_a_year_without_the_form_is_not_compared_by_serial():
    words = running_of("15842", years={"from": 1950, "to": 1951})
    assert words.endswith("15842 is of 1953, when this form was not in use: its serial is not compared.")


def test_a_figure_that_decides_the_season_decides_whether_the_form_goes_with_it():
    words = running_of("15[47]50", serials=[{"place": "frame", "to": 15800}], years={"from": 1953, "to": 1954})
    assert words.endswith("15[47]50 is one of these if figure 3 is 7, else not.")


def test_a_number_that_was_told_is_not_compared():
    assert "was not read on the machine" in running_of("15842", how="told")


def test_stretches_of_serials_are_taken_together():
    spans = [{"place": "frame", "to": 15599}, {"place": "frame", "from": 15600, "to": 15900}]
    assert running_of("15???", [*spans, {"place": "frame", "from": 15850}]).endswith("15??? as read is one of these.")
    assert "up to frame number 15\N{NO-BREAK SPACE}599 and from frame number 15\N{NO-BREAK SPACE}600 to" in running_of(
        "15700", spans
    )


@pytest.mark.parametrize(
    ("years", "words"),
    [
        ((1953,), "1953"),
        ((1955, 1956, 1957, 1958), "1955–58"),
        ((1952, 1954, 1955, 1956), "1952, 1954–56"),
        ((1899, 1900, 1901), "1899–1901"),
        ((1908, 1909), "1908–09"),
        ((), ""),
    ],
)
def test_years_read_as_runs(years, words):
    assert years_words(years) == words


def test_counts_and_lists_read_as_people_say_them():
    assert [str(count_word(n)) for n in (0, 1, 12, 13)] == ["none", "one", "twelve", "13"]
    assert str(count_word(9, first=True)) == "Nine"
    assert str(listed(["a", "b", "c"])) == "a, b and c"
    assert str(listed(["a"])) == "a"
    assert str(assemblies_words([Assembly.FRONT_END, Assembly.WHEELS], first=True)) == "Front end and wheels"


findings = st.lists(
    st.tuples(
        st.integers(0, 5),
        st.sampled_from(["built", "late", "copy", ""]),
        st.lists(st.sampled_from(["right for the era", "not identified", "wrong year"]), max_size=1),
        st.lists(st.sampled_from(["shape", "told", "paper"]), max_size=2),
        st.sampled_from(["inspector", "ben"]),
    ),
    max_size=10,
    unique_by=lambda one: (one[0], one[4]),
)
typed = st.lists(
    st.tuples(st.sampled_from(["frame", "rim"]), st.text("0158?", min_size=0, max_size=5)), max_size=3, unique=True
)


def law_machine():
    copy = {"id": "copy", "name": "copy", "origin": "pattern part"}
    late = form(1955, 1958, **SERIAL)
    items = (item(f"i{n}", assembly=a, variant=[form(1951, 1952 + n), late, copy]) for n, a in enumerate(NINE[:6]))
    return machine(*items, place=[NUMBERED, CODED])


LAWFUL = law_machine()


def drawn_record(drawn, numbers):
    told = tuple(
        found(f"i{n}", "pass", by=by, fitted=variant, why=tuple(why), evidence=tuple(evidence))
        for n, variant, why, evidence, by in drawn
    )
    readings = tuple(
        read(place, text, id=f"r{n}", **({} if text else {"state": NumberState.BLANK}))
        for n, (place, text) in enumerate(numbers)
    )
    return record(*told, readings=readings)


@settings(max_examples=60)
@given(findings, typed)
def test_whatever_was_found_no_sentence_promises_what_cannot_be_known(drawn, numbers):
    made = to_json(judge(LAWFUL, drawn_record(drawn, numbers)))
    words = json.dumps([made["years"], made["dates"]], ensure_ascii=False).lower()
    assert [word for word in NEVER if word in words] == []


@settings(max_examples=60)
@given(findings, typed, st.randoms(use_true_random=False))
def test_the_order_in_which_findings_were_entered_changes_nothing(drawn, numbers, random):
    shuffled = list(drawn)
    random.shuffle(shuffled)
    one, other = (to_json(judge(LAWFUL, drawn_record(d, numbers)))["years"] for d in (drawn, shuffled))
    assert one == other


@settings(max_examples=60)
@given(findings, typed)
def test_every_firm_part_has_years_and_sources_and_every_silent_one_a_reason_and_no_years(drawn, numbers):
    given = drawn_record(drawn, numbers)
    for one in years_of(LAWFUL, *given.findings, readings=given.readings).parts:
        assert str(one.reason)
        assert one.years == tuple(sorted(one.years))
        if one.firm:
            assert one.years
            assert one.sources
            assert one.grade >= 1
        if one.strength == "silent":
            assert one.years == ()


def test_the_judgement_holds_years_dates_and_decoded_numbers():
    made = machine(part("lug", 1952, 1955), place=[NUMBERED, CODED])
    given = record(fitted("lug"), readings=(read("frame", "15700"), read("rim", "083")))
    answer = judge(made, given)
    assert answer.decoded == decoded(made, given)
    assert answer.years.together.years == (1953,)
    assert [d.place for d in answer.dates] == ["rim"]
