"""What is handed to those who date a machine and to an insurer: no more than they need, and what is missing by name."""

import pytest

from inspector.handover import PLAIN
from inspector.judgement.components import components
from inspector.judgement.judge import judge
from inspector.judgement.money import money
from inspector.judgement.shots import VIEWS, shows_view
from inspector.judgement.views import asked_views
from inspector.profile.find import find_profiles
from inspector.profile.read import read_profile
from inspector.record.finding import Photograph
from inspector.resource import sample_profiles
from inspector.sheet.dating import dating_sheet
from inspector.sheet.pdf import as_pdf
from inspector.sheet.pictures_pack import pictures_sheet
from inspector.sheet.text import as_text
from tests.sheet import demo, made, purse, read
from tests.sheet.test_pdf import NEVER


def dating(record, profile=None, pictures=None):
    profile = profile or made.profile()
    return dating_sheet(profile, record, judge(profile, record), pictures or {}, made.MADE_AT, 1)


def insurer(record, profile=None, pictures=None):
    profile = profile or made.profile()
    worth = money(profile, record).worth
    return pictures_sheet(profile, record, pictures or {}, worth, PLAIN, made.MADE_AT, 1)


def test_the_youngest_major_component_comes_from_the_findings():
    profile, record = demo.machine()
    found = components(judge(profile, record).years)
    assert [one.assembly.value for one in found.youngest] == ["wheels and brakes"]
    assert found.youngest[0].not_before == 1956
    text = as_text(dating(record, profile))
    assert "Youngest major component by what was found: wheels and brakes, of 1956 at the earliest" in text
    assert "no authority is bound by it" in text


def test_without_the_later_wheel_another_component_is_the_youngest():
    profile, record = demo.machine()
    later = {"rear-rim", "rear-brake"}
    kept = tuple(f for f in record.findings if f.item not in later)
    assert len(kept) < len(record.findings)
    found = components(judge(profile, record.model_copy(update={"findings": kept})).years)
    assert [one.assembly.value for one in found.youngest] == ["gearbox"]
    assert found.youngest[0].not_before == 1955


def test_where_nothing_shows_a_year_no_component_is_called_the_youngest():
    record = made.record(0, findings=(), readings=())
    found = components(judge(made.profile(), record).years)
    assert found.youngest == ()
    assert "No major component shows a year firmly" in as_text(dating(record))


def test_a_component_that_shows_nothing_may_be_younger():
    barrel = tuple(f for f in made.FINDINGS if f.item == "barrel")
    found = components(judge(made.profile(), made.record(0, findings=barrel, readings=())).years)
    assert [one.assembly.value for one in found.youngest] == ["engine"]
    assert str(found.reasons[0]) == (
        "Nothing dates these firmly, and they may be younger: frame, gearbox, forks, wheels and brakes."
    )


@pytest.mark.parametrize("make", [dating, insurer])
def test_no_pack_says_where_the_machine_stands_or_what_was_asked(make):
    record = purse.filled(made.record(3))
    record = record.model_copy(update={"claim": record.claim.model_copy(update={"asking_price": "7777 crowns"})})
    data = as_pdf(make(record))
    text = read.flat(data)
    for private in ("Thornwick", "7777", "7 400", "6 700", "club sale"):
        assert private not in text
    assert [word for word in NEVER if word in text.casefold()] == []


def test_an_insurer_sees_a_worth_only_with_its_purpose_day_and_name():
    told = as_text(insurer(purse.filled(made.record(0))))
    assert "Worth as it stands, in GBP" in told
    assert "For buying to keep; kind of value: between two people." in told
    assert "On 17 May 2025, in the name of A. Teasel." in told
    for lacking in ("purpose", "kind_of_value", "effective_date", "in_the_name_of"):
        assert "Worth" not in as_text(insurer(purse.filled(made.record(0), **{lacking: ""})))


def test_the_views_that_are_missing_are_named():
    profile, record = demo.machine()
    told = as_text(insurer(record, profile))
    (missing,) = (line for line in told.splitlines() if line.strip().startswith("Missing:"))
    for view in ("Right side", "Front", "Rear", "Engine"):
        assert view in missing
    assert "Left side" not in missing
    assert "Number: Frame number" not in missing


def picture(key, **more):
    return Photograph(id=key, sha256="0" * 64, name="a.jpg", media="image/jpeg", width=4, height=3, size=9, **more)


@pytest.mark.parametrize("folder", find_profiles([sample_profiles()]), ids=lambda folder: folder.name)
def test_every_profile_that_ships_asks_for_four_sides_and_the_engine(folder):
    profile = read_profile(folder).profile
    shots = [shot.id for shot in profile.shots]
    for key, _ in VIEWS:
        (own,) = (shot for shot in shots if shows_view(shot, key))
        record = made.record(0, photographs=(picture("whole", shot=own),), readings=())
        shown = {str(view.name): view.photographs for view in asked_views(profile, record)}
        assert [ids for ids in shown.values() if ids] == [("whole",)]
    names = list(shown)
    assert names[:5] == ["Left side, square on", "Right side, square on", "Front, square on", "Rear, square on",
                         "Engine, square on from both sides"]  # fmt: skip


def test_a_part_of_the_front_is_no_view_of_the_front():
    shot = {"id": "front-brake", "name": "Front brake", "item": "front-brake"}
    profile = made.profile(shot=[shot, {"id": "front", "name": "Front"}])
    record = made.record(0, photographs=(picture("brake", shot="front-brake"),), readings=())
    told = as_text(insurer(record, profile))
    assert "Missing: Left side, square on; Right side, square on; Front, square on; Rear, square on; Engine" in told


def test_each_photograph_of_the_pack_is_dated():
    shown = tuple(p.model_copy(update={"taken_at": "2025-05-17T10:30:00", "shot": "view-front", "item": ""})
                  for p in made.photographs(1))  # fmt: skip
    told = as_text(insurer(made.record(0, photographs=shown), pictures={"p1": made.jpeg()}))
    assert "taken 17 May 2025, 10:30 by the camera’s clock" in told
    assert "owner: not yet signed" in told
