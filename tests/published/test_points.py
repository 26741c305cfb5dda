"""A points scheme's worked figures.

Sources: a national antique motorcycle club's judging page of May 2000 (100 points; 25 headings of 4; quarter-point
steps; 85, 90 and 95), and a thread "100 point bikes" in that club's public forum (three highly visible headings may
lose six each: 3 x 6 = 18 lost leaves 82, below 85; a quarter point lost leaves 99.75, which is not 100).
"""

from decimal import Decimal

import pytest

from inspector.judgement.points import full, threshold, total
from inspector.profile.items import PointsScheme

VISIBLE = ("frame", "engine", "paint")
SCHEME = PointsScheme.model_validate(
    {
        "name": "Twenty-five headings",
        "step": "0.25",
        "heading": [
            *({"id": h, "name": h, "points": 4, "most_lost": 6} for h in VISIBLE),
            *({"id": f"h{n}", "name": f"h{n}", "points": 4} for n in range(4, 26)),
        ],
        "threshold": [{"points": p, "word": str(p)} for p in (85, 90, 95)],
    }
)


def test_twenty_five_headings_of_four_are_a_hundred():
    assert len(SCHEME.headings) == 25
    assert full(SCHEME.headings) == 100
    assert total(SCHEME.headings, {}) == 100


def test_three_visible_headings_lost_leave_82_which_is_below_85():
    left = total(SCHEME.headings, dict.fromkeys(VISIBLE, Decimal(6)))
    assert left == 82
    assert threshold(SCHEME, left) == ""


def test_a_quarter_lost_is_not_a_hundred():
    left = total(SCHEME.headings, {"h4": Decimal("0.25")}, SCHEME.step)
    assert left == Decimal("99.75")
    assert left != 100


@pytest.mark.parametrize(
    ("lost", "word"), [("5", "95"), ("5.25", "90"), ("10", "90"), ("10.25", "85"), ("15", "85"), ("15.25", "")]
)
def test_the_thresholds_stand_at_85_90_and_95(lost, word):
    rest, losses = Decimal(lost), {}
    for heading in SCHEME.headings[3:]:
        losses[heading.id] = min(rest, heading.points)
        rest -= losses[heading.id]
    assert threshold(SCHEME, total(SCHEME.headings, losses, SCHEME.step)) == word


def test_an_ordinary_heading_loses_no_more_than_its_four():
    assert total(SCHEME.headings, {"h4": Decimal(6)}) == 96
