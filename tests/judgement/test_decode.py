"""Numbers of invented rules: what each form of rule and reading gives."""

import pytest

from inspector.judgement.decode import Outcome, decode, decode_again, decode_reading
from inspector.profile.numbers import Place
from inspector.record.reading import Figure, Reading, figures_of
from tests.judgement.dated import NUMBERED, machine
from tests.judgement.make import item, profile

SERIAL = {"id": "serial", "kind": "digits", "width": 5}
LEAD = {"id": "lead", "kind": "literal", "text": "6H"}
MONTHS = {"id": "month", "kind": "table", "gives": "month of build",
          "codes": [{"code": c, "month": n} for n, c in enumerate("ABCDEGHJKNPX", start=1)]}  # fmt: skip
YEARS = {"id": "year", "kind": "table", "gives": "model year",
         "codes": [{"code": c, "model_year": 1950 + n} for n, c in enumerate("ABCD")]}  # fmt: skip


def rule(*segments, **more):
    return {"id": "r", "title": "Rule", "segment": list(segments), "sources": ["list"], **more}


def block(first, last=None, year=None, **more):
    return {"from": first, **({"to": last} if last is not None else {}), "model_year": year, **more}


def place(*rules, **more):
    data = {"id": "p", "name": "P", "where": "there", "assembly": "frame", "rule": list(rules)}
    return Place.model_validate({**data, **more})


def read(typed, *rules, year=None, machine=None, **more):
    return decode(machine or profile(), place(*rules, **more), figures_of(typed), year)


PLAIN = rule(LEAD, SERIAL, serial="serial", range=[
    block(10001, 11570, 1950), block(11601, 13400, 1951, built_from="1950-08", built_to="1951-07"),
    block(13401, 15000, 1952, sources=["book"]),
])  # fmt: skip


def test_a_clear_number_is_in_one_block_with_its_source_and_grade():
    decoded = read("6h 12000", PLAIN)
    (hit,) = decoded.hits
    assert (hit.years, hit.built, hit.sources, hit.grade) == ((1951,), (("1950-08", "1951-07"),), ("list",), 3)
    assert (hit.first_serial, hit.last_serial, hit.serials, hit.row) == (12000, 12000, 1, 1)
    assert [(field.segment, field.text, field.counts) for field in hit.fields] == [
        ("lead", "6H", False),
        ("serial", "12000", True),
    ]
    assert decoded.typed == "6h 12000"
    assert decoded.outcome is Outcome.DECODED


def test_a_doubtful_figure_gives_a_hit_for_each_answer_with_its_condition():
    decoded = read("6H 1[13]500", PLAIN)
    assert [(hit.years, hit.if_figures) for hit in decoded.hits] == [((1950,), ((4, "1"),)), ((1952,), ((4, "3"),))]
    assert decoded.serials == 2


def test_alternatives_that_lead_to_one_answer_are_no_condition():
    (hit,) = read("6H 1200[19]", PLAIN).hits
    assert (hit.if_figures, hit.serials) == ((), 2)


def test_unreadable_figures_are_no_condition_and_say_how_many_numbers_remain():
    decoded = read("6H ?????", PLAIN)
    assert [hit.if_figures for hit in decoded.hits] == [(), (), ()]
    assert [hit.serials for hit in decoded.hits] == [1570, 1800, 1600]
    assert (decoded.serials, decoded.years) == (4970, (1950, 1951, 1952))


def test_an_alternative_that_cannot_stand_there_is_left_out_with_its_condition():
    (hit,) = read("6H 1[2I]000", PLAIN).hits
    assert hit.if_figures == ((4, "2"),)


def test_a_number_typed_without_or_with_other_separators_is_the_same():
    assert read("6H-1.2/000", PLAIN).hits[0].years == read("6H12000", PLAIN).hits[0].years


def test_a_model_code_before_or_after_and_codes_of_several_lengths():
    model = {"id": "model", "kind": "table", "gives": "model", "optional": True,
             "codes": [{"code": c} for c in ("T120", "T120R", "T12")]}  # fmt: skip
    made = rule(model, {**LEAD, "text": "DU"}, SERIAL, serial="serial", range=[block(101, 5824, 1953)],
                orders=[["model", "lead", "serial"], ["lead", "serial", "model"]])  # fmt: skip
    for typed, models in (("T120RDU00500", ("T120R",)), ("DU00500 T12", ("T12",)), ("DU00500", ())):
        (hit,) = read(typed, made).hits
        assert hit.models == models
    assert len(read("T120[RC] DU00500", made).hits) == 1
    assert read("T12? DU00500", made).hits[0].models == ("T120",)


def test_a_fixed_width_keeps_numbers_with_and_without_a_zero_apart():
    """marques.md, family D: a five-figure number in the 90000s is a prototype, one of six figures is not."""
    early = {**rule({**LEAD, "text": "Z1F"}, SERIAL, serial="serial", range=[block(90001, 90099, 1952)]), "id": "early"}
    six = {**SERIAL, "width": 6}
    late = {**rule({**LEAD, "text": "Z1F"}, six, serial="serial", range=[block(1, 99999, 1953)]), "id": "late"}
    assert [hit.rule for hit in read("Z1F-90001", early, late).hits] == ["early"]
    assert [hit.rule for hit in read("Z1F-090001", early, late).hits] == ["late"]


OPEN = {"id": "serial", "kind": "digits", "min_width": 3, "max_width": 5}


@pytest.mark.parametrize(("typed", "found"), [("D101", 1), ("D0101", 0), ("D00101", 0), ("D?101", 1), ("D099", 1)])
def test_an_open_width_has_zeros_in_front_only_up_to_its_least_width(typed, found):
    made = rule({**LEAD, "text": "D"}, OPEN, serial="serial", range=[block(1, 20314, 1953)])
    assert len(read(typed, made).hits) == found
    assert all(hit.first_serial != 101 for hit in read("D?101", made).hits)


def test_letters_before_and_behind_a_serial_choose_the_block():
    """marques.md, A3: 25001 without letters is another count than 25001NA, and 0101 another than 101."""
    zero = {"id": "zero", "kind": "literal", "text": "0", "optional": True}
    behind = {"id": "behind", "kind": "table", "codes": [{"code": "N"}, {"code": "NA"}], "optional": True}
    made = rule(zero, OPEN, behind, serial="serial", range=[
        block(1001, 16085, 1950, suffix="N"), block(15809, 29505, 1952, suffix="NA"),
        block(25001, 32302, 1953), block(101, 944, 1954, prefix="0"),
    ])  # fmt: skip
    for typed, years in (("15900N", (1950,)), ("15900NA", (1952,)), ("25001", (1953,)), ("25001NA", (1952,)),
                         ("0101", (1954,)), ("101", ()), ("15900", ()), ("25001N?", (1952,)),
                         ("1590?N", (1950,)), ("15900?", (1950,))):  # fmt: skip
        assert read(typed, made).years == years, typed


def test_a_block_without_letters_leaves_open_codes_that_are_no_letters_of_another():
    lead = {"id": "lead", "kind": "table", "codes": [{"code": "A"}, {"code": "B"}]}
    made = rule(lead, OPEN, serial="serial", range=[block(100, 199, 1950, prefix="A"), block(100, 199, 1951)])
    assert read("?150", made).years == (1950, 1951)
    assert read("B150", made).years == (1951,)
    assert read("A150", made).years == (1950,)
    assert [hit.serials for hit in read("?150", made).hits] == [1, 1]
    assert [(hit.years, hit.if_figures) for hit in read("[AB]150", made).hits] == [
        ((1950,), ((1, "A"),)),
        ((1951,), ((1, "B"),)),
    ]


def test_a_block_that_wraps_runs_to_the_highest_serial_and_on_from_zero():
    made = rule({**LEAD, "text": "F"}, {**SERIAL, "width": 3}, serial="serial",
                range=[block(1, 640, 1950), block(641, 310, 1951, wraps=True)])  # fmt: skip
    assert read("F999", made).years == (1951,)
    assert read("F310", made).years == (1950, 1951)
    assert read("F640", made).years == (1950,)
    assert read("F???", made).serials == 1000


def test_in_an_open_width_a_wrap_is_at_the_highest_number_of_as_many_figures():
    """marques.md, C: the count passed 99999 and went on to 2718."""
    made = rule({**LEAD, "text": "T"}, {**OPEN, "max_width": 6}, serial="serial",
                range=[block(99720, 2718, 1955, wraps=True)])  # fmt: skip
    assert read("T99999", made).years == read("T2718", made).years == (1955,)
    assert read("T100000", made).hits == ()


def test_a_block_known_by_its_start_runs_to_the_next_of_the_same_list_and_says_so():
    made = rule({**LEAD, "text": "Z"}, SERIAL, serial="serial", range=[
        block(1, None, 1953), block(20001, None, 1954), block(15000, None, 1955, sources=["book"]),
    ])  # fmt: skip
    first, last = read("Z19999", made), read("Z20001", made)
    assert [(hit.years, hit.next_start, hit.open_end) for hit in first.hits] == [
        ((1953,), 20001, False),
        ((1955,), None, True),
    ]
    assert last.hits[0].open_end
    assert any("run to the next start, 20001" in str(reason) for reason in first.reasons)
    assert any("where it ends is not known" in str(reason) for reason in last.reasons)


def test_sources_that_disagree_are_both_kept_and_named():
    """marques.md, A4: one list ends 1968 at 85903, another runs on to 90282."""
    made = rule({**LEAD, "text": "DU"}, SERIAL, serial="serial", range=[
        block(66246, 85903, 1951), block(85904, 90282, 1952), block(66246, 90282, 1951, sources=["book"]),
    ])  # fmt: skip
    agreed, apart = read("DU70000", made), read("DU86000", made)
    assert agreed.disagreement is None
    assert [hit.sources for hit in apart.hits] == [("list",), ("book",)]
    assert str(apart.disagreement) == ("The sources disagree: 1951 by Invented register; 1952 by Invented parts list.")
    assert (apart.serials, apart.years) == (1, (1951, 1952))


def test_a_source_whose_list_leaves_the_number_out_is_named():
    """marques.md, A3: one list ends 1954 at 56697, and 1955 begins at 56700 in both."""
    made = rule(SERIAL, serial="serial", range=[
        block(44135, 56699, 1954), block(44135, 56697, 1954, sources=["book"]),
        block(56700, 70929, 1955, sources=["list", "book"]),
    ])  # fmt: skip
    assert [str(reason) for reason in read("56698", made).reasons] == ["Invented register leaves 56698 and 56699 out."]
    assert read("56697", made).reasons == read("56700", made).reasons == ()


def test_blocks_of_one_list_that_overlap_are_told_as_that():
    made = rule(SERIAL, serial="serial", range=[block(13500, 15780, 1952), block(15420, 18040, 1953)])
    decoded = read("15500", made)
    assert (decoded.years, decoded.disagreement, decoded.serials) == ((1952, 1953), None, 1)
    assert [str(reason) for reason in decoded.reasons] == ["Blocks of one list overlap here: both are kept."]


def test_markets_that_share_a_count_do_not_disagree():
    made = rule(SERIAL, serial="serial", range=[
        block(10000, 20000, 1951, market="US", model="F"), block(15000, 25000, 1952, market="UK", sources=["book"]),
    ])  # fmt: skip
    decoded = read("16000", made)
    assert [(hit.markets, hit.models) for hit in decoded.hits] == [(("US",), ("F",)), (("UK",), ())]
    assert decoded.disagreement is None


def test_a_row_that_was_worked_out_says_so():
    decoded = read("10500", rule(SERIAL, serial="serial", range=[block(10001, 13556, 1955, inferred=True)]))
    assert decoded.hits[0].inferred
    assert "worked out" in str(decoded.reasons[0])


def test_a_block_of_several_years_gives_them_all():
    made = rule(SERIAL, serial="serial", range=[{"from": 10001, "to": 20000, "years": {"from": 1952, "to": 1954}}])
    assert read("15000", made).years == (1952, 1953, 1954)


def test_years_follow_from_the_months_of_building_by_the_season():
    made = rule(SERIAL, serial="serial",
                range=[{"from": 10001, "to": 20000, "built_from": "1952-06", "built_to": "1952-10"}])  # fmt: skip
    decoded = read("15000", made, machine=profile(season_starts=9))
    assert decoded.years == (1952, 1953)
    assert any("follow from the months of building" in str(reason) for reason in decoded.reasons)


CODE = rule(MONTHS, YEARS, SERIAL, serial="serial", never_used="FILMOQRSTUVWYZ", month_before_season=True)
SEASON = profile(season_starts=8)


@pytest.mark.parametrize(
    ("typed", "built"),
    [
        ("AD00500", (("1953-01", "1953-01"),)),
        ("HD00500", (("1953-07", "1953-07"),)),
        ("JD00500", (("1952-08", "1952-08"),)),  # August lies in the year before the model year
        ("XD00500", (("1952-12", "1952-12"),)),
        ("?D00500", (("1952-08", "1953-07"),)),
    ],
)
def test_the_first_months_of_a_season_lie_in_the_year_before(typed, built):
    (hit,) = read(typed, CODE, machine=SEASON).hits
    assert (hit.years, hit.built) == ((1953,), built)


def test_a_month_that_begins_and_ends_a_season_can_be_in_either_year():
    """marques.md, A6: from model year 1976 the July letter may mean the July at the start of the season."""
    double = {**CODE, "double_months": [7], "double_months_from": 1953}
    assert read("HD00500", double, machine=SEASON).hits[0].built == (("1952-07", "1952-07"), ("1953-07", "1953-07"))
    assert read("HC00500", double, machine=SEASON).hits[0].built == (("1952-07", "1952-07"),)


def test_without_a_season_the_months_are_of_the_year_that_the_code_names():
    assert read("KD00500", {**CODE, "month_before_season": False}).hits[0].built == (("1953-09", "1953-09"),)


def test_two_doubtful_letters_are_told_apart_and_two_unreadable_ones_are_not_multiplied():
    decoded = read("[KN][CD]00500", CODE, machine=SEASON)
    assert [hit.if_figures for hit in decoded.hits] == [((1, one), (2, two)) for one in "KN" for two in "CD"]
    (hit,) = read("??00500", CODE, machine=SEASON).hits
    assert (hit.serials, hit.years, hit.built) == (48, (1950, 1951, 1952, 1953), (("1949-08", "1953-07"),))


def test_a_letter_that_is_never_used_is_no_code_even_where_the_table_has_it():
    table = {**MONTHS, "codes": [*MONTHS["codes"], {"code": "F", "month": 6}]}
    assert read("FC00500", {**CODE, "segment": [table, YEARS, SERIAL]}, machine=SEASON).hits == ()


def test_code_and_block_that_contradict_each_other_are_no_hit():
    made = rule(YEARS, SERIAL, serial="serial", range=[block(10000, 20000, 1950), block(20001, 30000, 1951)])
    assert read("A15000", made).years == (1950,)
    assert read("B15000", made).outcome is Outcome.OUTSIDE
    assert read("?15000", made).years == (1950,)
    assert read("?15000", made).serials == 1


def figures(name, gives, width, plus=()):
    return {"id": name, "kind": "digits", "gives": gives, "width": width, "plus": list(plus)}


def test_a_number_that_carries_its_year_gives_it():
    """marques2.md, K: C71 59 12345 is 1959; CB72-1xxxx has the year's last figure in front."""
    long = rule({**LEAD, "text": "C71"}, figures("year", "model year", 2, [1900]), SERIAL, serial="serial")
    short = rule({**LEAD, "text": "CB72"}, figures("year", "model year", 1, [1960]), {**SERIAL, "width": 4},
                 serial="serial", years={"from": 1960, "to": 1964})  # fmt: skip
    assert read("C71 59 12345", long).years == (1959,)
    assert read("CB72-11123", short).years == (1961,)
    assert read("CB72-91123", short).hits == ()
    assert read("CB72-?1123", short).years == (1960, 1961, 1962, 1963, 1964)
    assert read("CB72-[13]1123", short).hits[1].if_figures == ((6, "3"),)


def test_a_date_code_of_year_figure_and_month_has_a_possibility_for_each_decade():
    """marques2.md, 7.2: on the swinging arm 5 05 is May 1975."""
    made = rule(figures("year", "year of build", 1, [1970, 1980]), figures("month", "month of build", 2))
    (hit,) = read("5 05", made, dates_part=True).hits
    assert hit.built == (("1975-05", "1975-05"), ("1985-05", "1985-05"))
    assert (hit.years, hit.first_serial) == ((), None)
    assert read("5 13", made, dates_part=True).hits == ()
    assert read("5 ?5", made, dates_part=True).serials == 1


def test_years_of_an_era_are_counted_from_its_beginning():
    """marques2.md, 10.5: year of Showa + 1925; 4.3.44 is 4 March 1969."""
    made = rule(figures("day", "day of build", 1), figures("month", "month of build", 1),
                figures("year", "year of build", 2, [1925]))  # fmt: skip
    assert read("4.3.44", made, dates_part=True).hits[0].built == (("1969-03", "1969-03"),)


def test_a_week_gives_the_months_that_it_touches():
    """ISO 8601: week 5 of 1952 runs from 28 January to 3 February; 1952 has 52 weeks."""
    made = rule(figures("week", "week of build", 2), figures("year", "year of build", 2, [1900]))
    assert read("05 52", made, dates_part=True).hits[0].built == (("1952-01", "1952-02"),)
    assert read("53 52", made, dates_part=True).hits[0].built == ()


def test_a_build_year_alone_is_the_whole_year_and_two_seasons():
    made = rule(figures("year", "year of build", 2, [1900]), SERIAL, serial="serial")
    (hit,) = read("5212345", made, machine=SEASON).hits
    assert (hit.built, hit.years) == ((("1952-01", "1952-12"),), (1952, 1953))


def test_two_codes_with_the_same_letters_are_two_possibilities():
    table = {**YEARS, "codes": [{"code": "2", "model_year": 1952}, {"code": "2", "model_year": 1962}]}
    assert read("2", rule(table)).years == (1952, 1962)


def test_a_year_asked_for_leaves_out_what_it_does_not_allow_and_says_how_much():
    decoded = read("6H 1[13]500", PLAIN, year=1952)
    assert [hit.years for hit in decoded.hits] == [(1952,)]
    assert str(decoded.reasons[0]) == "Left out, as of other years: 1."
    other = read("6H 12000", PLAIN, year=1950)
    assert other.outcome is Outcome.OUTSIDE
    assert str(other.nearest.sentence) == "read by this rule it is of 1951, not of 1950"


def test_a_figure_taken_as_probable_is_named():
    assert [str(reason) for reason in read("6H [1]2000", PLAIN).reasons] == ["Figure 3 is taken as 1; it is not clear."]


def test_no_figures_no_rule_and_no_such_place_are_answers():
    assert read("", PLAIN).outcome is Outcome.NOTHING
    assert read("-", PLAIN).outcome is Outcome.NOTHING
    assert read("123").outcome is Outcome.NO_RULE
    strange = Reading(id="1", place="nowhere", figures=figures_of("12"))
    assert decode_reading(profile(), strange).outcome is Outcome.NO_RULE
    assert decode_reading(profile(), Reading(id="1", place="frame")).outcome is Outcome.NOTHING


def test_tables_that_could_be_divided_in_very_many_ways_still_answer():
    wide = [{"id": f"d{n}", "kind": "digits", "min_width": 1, "max_width": 6, "optional": True} for n in range(8)]
    decoded = read("?" * 24, rule(*wide, SERIAL, serial="serial"))
    assert decoded.hits
    assert any("ways" in str(reason) for reason in decoded.reasons)


def test_very_many_doubtful_codes_are_told_together():
    table = {"kind": "table", "codes": [{"code": sign} for sign in "ABCDEFGH"]}
    made = rule(*({**table, "id": f"t{n}"} for n in range(5)), SERIAL, serial="serial")
    decoded = read("[ABCDEFGH]" * 5 + "12345", made)
    assert 1 <= len(decoded.hits) <= 256
    assert decoded.serials == 8**5


def test_a_clear_question_mark_is_not_an_unreadable_figure_though_both_are_typed_alike():
    made = machine(item("lamp"), place=[NUMBERED])
    place = made.place_by_id["frame"]
    unread, signed = figures_of("1550?"), (*figures_of("1550"), Figure(could_be=("?",)))
    assert decode_again(made, place, unread).outcome is Outcome.DECODED
    assert decode_again(made, place, signed).outcome is Outcome.OUTSIDE
