import pytest

from inspector.judgement.proposal import expected_lines, propose
from tests.judgement.make import item, profile

PROFILE = profile()
CARBURETTOR = PROFILE.item_by_id["carburettor"]


@pytest.mark.parametrize(
    ("form", "year", "mark", "conclusion"),
    [
        ("twin", 1953, "pass", "right for the year"),
        ("single", 1953, "pass", "factory option either way"),
        ("late", 1953, "fail", "wrong year"),
        ("single", 1954, "fail", "wrong year"),
        ("late", 1955, "pass", "right for the year"),
        ("spare", 1953, "doubt", "right for the era"),
        ("spare", 1950, "doubt", "wrong year"),
        ("copy", 1953, "doubt", "pattern part"),
        ("copy", None, "doubt", "pattern part"),
        ("sister", 1953, "fail", "other model"),
        ("foreign", 1953, "fail", "other maker"),
        ("dealer", 1953, "doubt", "dealer or period fit"),
        ("argued", 1953, "doubt", "right type but year not shown"),
        ("twin", None, "doubt", "right type but year not shown"),
        ("changed", 1953, "pass", "right for the year"),
    ],
)
def test_a_fitted_form_proposes_and_the_person_decides(form, year, mark, conclusion):
    proposal = propose(PROFILE, CARBURETTOR, form, year)
    assert (proposal.mark, proposal.conclusion) == (mark, conclusion)
    assert str(proposal.sentence) == f"Proposed: {mark}, {conclusion}. You decide."


def test_a_wrong_year_names_the_years():
    assert str(propose(PROFILE, CARBURETTOR, "late", 1953).reason) == "Used 1955–1958, not in 1953."


def test_a_running_change_says_which_number_to_compare():
    reason = str(propose(PROFILE, CARBURETTOR, "changed", 1953).reason)
    assert reason.endswith("It changed within the years: from frame 15\N{NO-BREAK SPACE}900; compare the number.")


def test_a_proposal_names_its_sources_or_says_that_there_is_none_or_only_memory():
    assert [s.title for s in propose(PROFILE, CARBURETTOR, "twin", 1953).sources] == ["Invented parts list"]
    assert str(propose(PROFILE, CARBURETTOR, "spare", 1953).reason).endswith("The profile names no source for it.")
    remembered = profile(
        source=[{"id": i, "kind": "memory", "title": "Somebody's memory"} for i in ("list", "book")]
    )  # fmt: skip
    assert str(propose(remembered, CARBURETTOR, "twin", 1953).reason).endswith("Its only source is memory.")


def test_a_form_without_years_is_a_doubt_and_why_is_left_to_the_person():
    proposal = propose(PROFILE, CARBURETTOR, "undated", 1953)
    assert (proposal.mark, proposal.conclusion) == ("doubt", None)
    assert str(proposal.sentence) == "Proposed: doubt. You decide."


def test_a_disputed_form_says_how_the_sources_disagree():
    reason = str(propose(PROFILE, CARBURETTOR, "argued", 1953).reason)
    assert reason == "The sources disagree on its years: 1952–1953. The list says 1952, the register 1953."


def test_an_unknown_form_or_item_proposes_nothing():
    assert propose(PROFILE, CARBURETTOR, "nothing", 1953) is None
    assert propose(PROFILE, "nowhere", "twin", 1953) is None
    assert expected_lines(PROFILE, "nowhere", 1953) == ()


def test_an_item_may_be_named_by_its_id():
    assert propose(PROFILE, "carburettor", "twin", 1953) == propose(PROFILE, CARBURETTOR, "twin", 1953)


def test_expected_forms_come_standard_first_with_sources_and_disputes():
    lines = expected_lines(PROFILE, CARBURETTOR, 1953)
    assert [line.variant for line in lines] == ["twin", "argued", "changed", "single"]
    assert [(s.grade, s.kind, s.place) for s in lines[0].sources] == [(3, "factory list", "p. 12")]
    assert [s.grade for s in lines[1].sources] == [3, 2]
    assert (lines[1].disputed, lines[1].note) == (True, "The list says 1952, the register 1953.")
    assert lines[0].detail is None
    assert str(lines[3].detail) == "factory option either way"


def test_a_running_change_and_a_share_stand_in_the_detail():
    detail = next(line.detail for line in expected_lines(PROFILE, CARBURETTOR, 1953) if line.variant == "changed")
    assert str(detail) == "1 in choke; from frame 15\N{NO-BREAK SPACE}900; on about 30 % of them"


def test_without_a_year_every_form_that_left_the_factory_is_listed():
    listed = {line.variant for line in expected_lines(PROFILE, CARBURETTOR, None)}
    assert listed == {"twin", "single", "late", "argued", "changed"}


def forms(*variants):
    return profile(station=[{"id": "all", "name": "All", "item": [item("fork", variant=list(variants))]}])


OTHER = {"id": "long", "name": "long", "years": {"from": 1950, "to": 1953}, "sources": ["list"],
         "other_years": [{"years": {"from": 1950, "to": 1954}, "sources": ["book"]}]}  # fmt: skip


@pytest.mark.parametrize(
    ("year", "mark", "reason"),
    [
        (1953, "pass", "Used 1950–1953 or 1950–1954; 1953 is one of these."),
        (1954, "doubt", "The sources disagree on its years: 1950–1953 or 1950–1954."),
        (1955, "fail", "Used 1950–1953 or 1950–1954, not in 1955."),
    ],
)
def test_years_by_another_source_count_whether_or_not_the_form_is_called_disputed(year, mark, reason):
    for disputed in (False, True):
        proposal = propose(forms({**OTHER, "disputed": disputed}), "fork", "long", year)
        assert (proposal.mark, str(proposal.reason)) == (mark, reason)


def test_a_form_whose_years_differ_by_source_is_expected_as_one_on_which_sources_disagree():
    assert [line.disputed for line in expected_lines(forms(OTHER), "fork", 1953)] == [True]


def test_a_form_for_some_markets_asks_where_the_machine_was_sold():
    """Common practice, no source: a part of another market is a question, not a fault."""
    made = forms({"id": "export", "name": "export", "years": {}, "sources": ["list"], "markets": ["US", "Canada"]})
    assert str(propose(made, "fork", "export", 1953).reason).endswith(
        "It was for US or Canada: compare where the machine was sold."
    )
