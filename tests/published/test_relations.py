"""Published pairs of frame and engine numbers, put against the rule that their sources give.

- Fours of 1969: pairs known from the factory, "most within 100 and generally up to about 200"; engines lower than the
  frame occur; the pair 1256/665 is claimed as undisturbed (owners' register forum, cb750sandcastonly.com, topics
  2332, 1685 and its reply 11956).
- A later machine of that line, registered April 1972: frame 11192xx, engine 11189xx (kita-dream.sakura.ne.jp, the
  last two figures not printed).
- A four of 1975-77: last frame and engine of each market's range (a parts list by market); a fixed "within 200"
  would call late machines unusual.
- A 900 four of 1973: frame 187xx with engine 189xx (blog.kcg.ne.jp/kawasakiz, p. 1543).
- Loop-frame twin of 1967: equality is the question; frame 1204 with engine 1337 is a published example
  (thisoldtractor.com; Motorcycle Classics Nov/Dec 2017).
- A 1970 twin with a kit: one T more on the engine than on the frame (Triumph owners' club, T120RT profile).
- BSA before the 1969 season: equal numbers are rare (bsaownersclub.co.uk/machine-id); engine XB32-101 with frame
  XB31-101 is given as right for 1946 (an older page).
"""

import pytest

from inspector.judgement.relations import Stand
from inspector.profile.words import RelationKind
from tests.judgement.test_relations import one, related

CLOSE, NEVER, SAME = RelationKind.CLOSE, RelationKind.NEVER_EQUAL, RelationKind.SAME
PAIRS = [(7, 90), (9, 97), (9, 98), (28, 132), (123, 247), (175, 263), (180, 302)]
# Last frame and engine numbers of the first model, by market.
ENDS = {
    "USA": (1038492, 1038563, 71), "England": (1073399, 1069245, -4154), "Germany": (1073209, 1068984, -4225),
    "Europe direct": (1072669, 1068486, -4183), "France": (1071669, 1067426, -4243),
    "Australia": (1084404, 1080210, -4194), "Sweden": (1033142, 1033298, 156),
}  # fmt: skip


@pytest.mark.parametrize(("frame", "engine"), PAIRS)
def test_pairs_known_from_the_factory_are_close_as_usual(frame, engine):
    found = one(related(CLOSE, usual_gap=200), f"CB750-{1000000 + frame}", f"CB750E-{1000000 + engine}")
    assert (found.stand, found.gap, found.raises) == (Stand.CLOSE, engine - frame, False)


def test_a_pair_further_apart_is_an_unusual_gap_and_no_verdict():
    found = one(related(CLOSE, usual_gap=200), "CB750-1001256", "CB750E-1000665")
    assert (found.stand, found.gap) == (Stand.UNUSUAL, -591)
    assert str(found.sentence) == "unusual gap: 591 apart, where up to 200 is usual"
    assert "no limit" in str(found.detail)


def test_a_pair_printed_without_its_last_figures_can_be_either():
    found = one(related(CLOSE, usual_gap=300), "CB750-11192??", "CB750E-11189??")
    assert (found.stand, found.gap) == (Stand.AGREE_IF, None)  # 201 to 399 apart
    assert "With what is open the gap is −399 to −201." in str(found.detail)
    assert one(related(CLOSE, usual_gap=400), "CB750-11192??", "CB750E-11189??").stand is Stand.CLOSE
    assert one(related(CLOSE, usual_gap=200), "CB750-11192??", "CB750E-11189??").stand is Stand.UNUSUAL


@pytest.mark.parametrize(("frame", "engine", "gap"), ENDS.values(), ids=ENDS)
def test_the_gap_at_the_end_of_each_markets_run_is_the_published_one(frame, engine, gap):
    assert engine - frame == gap
    points = [[1000006, 0], [frame, gap]]
    found = one(related(CLOSE, usual_gap=200, gap_points=points), f"CB400F-{frame}", f"CB400FE-{engine}")
    assert (found.stand, found.gap, found.expected_gap) == (Stand.CLOSE, gap, gap)


@pytest.mark.parametrize("market", ["England", "Germany", "Europe direct", "France", "Australia"])
def test_a_fixed_gap_would_call_late_machines_unusual(market):
    frame, engine, _ = ENDS[market]
    found = one(related(CLOSE, usual_gap=200), f"CB400F-{frame}", f"CB400FE-{engine}")
    assert found.stand is Stand.UNUSUAL


def test_a_gap_of_two_hundred_and_ten_is_close_only_where_that_is_usual():
    frame, engine = "Z1F-18700", "Z1E18910"  # the last two figures are made up, their difference is published
    assert one(related(CLOSE, usual_gap=250), frame, engine).stand is Stand.CLOSE
    assert one(related(CLOSE, usual_gap=200), frame, engine).stand is Stand.UNUSUAL


def test_where_equality_is_the_question_a_difference_is_as_built():
    differing, equal = one(related(NEVER), "1204", "1337"), one(related(NEVER), "1204", "1204")
    assert (differing.stand, differing.raises) == (Stand.DIFFER, False)
    assert (equal.stand, equal.raises) == (Stand.AGREE, True)


def test_a_published_pair_with_equal_serials_where_equality_is_rare_is_asked_about_and_not_failed():
    found = one(related(NEVER), "XB31-101", "XB32-101")
    assert (found.stand, found.raises) == (Stand.AGREE, True)
    assert "Equal figures can be chance" in str(found.detail)


def test_one_t_more_on_the_engine_is_told_as_that():
    found = one(related(SAME), "CD54321 T120R", "CD54321 T120RT", year=1953)
    assert str(found.sentence).endswith("the engine number has T120RT, the frame number T120R")
