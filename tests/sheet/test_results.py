"""Points, condition and what was said, as they stand on the seller's copy."""

from inspector.judgement.judge import judge
from inspector.profile.model import Profile
from inspector.record.model import Choices
from inspector.sheet import blocks as b
from inspector.sheet.pdf import as_pdf
from inspector.sheet.text import as_text
from tests.sheet import made, read

SCHEME = {
    "name": "Points of the Marsh Riders", "sources": ["register"],
    "heading": [{"id": "tank", "name": "Tank", "points": 10, "most_lost": 4}, {"id": "wheels", "name": "Wheels",
                "points": 20, "most_lost": 5}, {"id": "rest", "name": "The rest", "points": 70}],
    "threshold": [{"points": 20, "word": "worth a second look"}],
}  # fmt: skip
HEADINGS = {"fuel-tank": "tank", "front-wheel": "wheels", "front-brake": "wheels"}


def scored() -> Profile:
    plain = made.profile().model_dump(by_alias=True) | {"points": SCHEME}
    for station in plain["station"]:
        for item in station["item"]:
            item["heading"] = HEADINGS.get(item["id"])
    return Profile.model_validate(plain)


def chosen():
    return made.record(choices=Choices(points=True))


def titles(sheet):
    return [one.title for one in sheet.blocks if isinstance(one, b.ListBlock | b.ScoreBlock)]


def test_points_stand_on_the_sheet_where_they_are_counted_and_only_there():
    assert "Points" in titles(made.sheet(chosen(), scored()))
    assert "Points" not in titles(made.sheet(made.record(), scored()))
    assert "Points" not in titles(made.sheet(chosen()))


def test_every_loss_of_points_is_named_with_its_reason():
    text = as_text(made.sheet(chosen(), scored()))
    points = judge(scored(), chosen()).points
    assert f"{points.total} of 100 could fall to {points.lowest}" in text
    assert "−4 Tank: Fuel tank: fail." in text
    assert "−5 Wheels: Front wheel: fail." in text
    assert "May still lose: The rest: no item of this profile stands under it (−70)." in text
    assert "The word of a threshold is given only for that lowest total." in text


def test_the_word_of_a_threshold_stands_only_for_the_lowest_total():
    (block,) = (one for one in made.sheet(chosen(), scored()).blocks if isinstance(one, b.PointsBlock))
    assert judge(scored(), chosen()).points.lowest == 21
    assert (block.note, block.rows[0].small) == ("Points of the Marsh Riders", "worth a second look")


def test_the_condition_stands_apart_item_by_item():
    sheet = made.sheet()
    (block,) = (one for one in sheet.blocks if isinstance(one, b.ConditionBlock))
    assert [str(row.said) for row in block.rows] == ["Front wheel: damaged."]
    assert "Condition\nKept apart from how much is right." in as_text(sheet)


def test_what_was_said_is_told_as_unverified_with_who_and_when():
    said = [{"id": "s", "text": "It always ran.", "by": "seller", "at": "2025-05-17T10:50"}]
    text = as_text(made.sheet(made.record(statements=said)))
    assert "Unverified: “It always ran.” (R. Quill, told).\n    17 May 2025, 10:50" in text
    assert "Nothing said is noted." in as_text(made.sheet(made.record(statements=())))


def test_they_come_after_how_much_is_right_and_before_the_claim():
    order = titles(made.sheet(chosen(), scored()))
    places = [order.index(name) for name in ("How much is right", "Points", "Condition", "The claim", "What was said")]
    assert places == sorted(places)


def test_they_can_be_read_back_from_the_paper():
    text = read.flat(as_pdf(made.sheet(chosen(), scored())))
    for words in ("−4 Tank: Fuel tank: fail.", "Front wheel: damaged.", "Unverified: “The engine was rebuilt"):
        assert words in text
