"""The walk sheet to fill in on paper, short and in full."""

import pytest

from inspector.judgement.route import first_ten
from inspector.record.claim import Claim
from inspector.resource import sample_profiles
from inspector.sheet.compose import blank_sheet
from inspector.sheet.pdf import as_pdf
from inspector.sheet.text import as_text
from inspector.sheet.walk_blocks import TableBlock
from tests.sheet import made, read
from tests.sheet.test_pdf import assert_inside

SHIPPED = sorted(folder for folder in sample_profiles().iterdir() if (folder / "profile.toml").is_file())

FORMS = ("short", "full")


def blank(year=1953, profile=None, form="full"):
    return blank_sheet(profile or made.profile(), year, made.MADE_AT, form)


def shipped(name="brackwater-heron"):
    from inspector.profile.read import read_profile

    return read_profile(sample_profiles() / name).profile


def tables(sheet):
    return [block for block in sheet.blocks if isinstance(block, TableBlock)]


def test_every_item_of_the_year_has_its_question_expectation_way_to_look_and_room():
    text = as_text(blank())
    for item in made.profile().items():
        assert (item.question in text) is (item.id != "side-stand")
    assert text.count("Mark: ____  Note: ____") == 20
    assert "Expected: Front brake, early form, seam under, two bolts" in text
    assert "factory list, Parts list 1953, page 62 (grade 3)" in text
    assert "Look: By eye and by hand." in text
    assert "Width (edge to edge); should be 7 in, from 6.95 to 7.05: ____" in text


def test_without_a_year_every_item_stands():
    text = as_text(blank(None))
    assert all(item.question in text for item in made.profile().items())
    assert "Expected for every model year." in text


def test_cautions_stand_at_the_place_of_use():
    text = as_text(blank())
    assert text.index("Left side\nAsk before touching.") < text.index("1 Front wheel")
    assert "Frame; headstock, left; Never file it." in text
    assert "No ride before a qualified person has passed brakes" in text


def test_nothing_is_proposed_and_nothing_is_filled_in():
    data = as_pdf(blank())
    assert "Proposed" not in read.flat(data)
    assert read.images(data) == []


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_it_can_be_printed(paper, form):
    data = as_pdf(blank(form=form), paper)
    text = read.flat(data)
    assert all(read.fonts(data).values())
    assert all(item.name in text for item in made.profile().items() if item.id != "side-stand")
    assert f"page 1 of {len(read.pages(data))}" in text
    assert_inside(data, 297 if paper == "A4" else 279.4)


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("folder", SHIPPED, ids=lambda folder: folder.name)
def test_every_profile_that_ships_makes_one(folder, form):
    profile = shipped(folder.name)
    data = as_pdf(blank(profile.model_years[0], profile, form))
    assert profile.title.split()[0] in read.flat(data)
    assert_inside(data)


def test_the_short_form_is_made_unless_the_full_one_is_asked_for():
    assert blank_sheet(made.profile(), 1953, made.MADE_AT) == blank(form="short")


def test_the_short_form_has_one_line_for_every_item_of_the_year_in_walking_order():
    first, second = tables(blank(form="short"))
    lines = (*first.items, *second.items)
    assert [line.name for line in lines] == [item[1] for item in made.ITEMS if item[0] != "side-stand"]
    assert [line.number for line in lines] == list(range(1, 21))
    assert (first.title, first.heads) == ("Left side", ("expected, 1953", "mark", "in a word"))
    assert as_text(blank(form="short")).count(" ____ ____") == 20


def test_the_short_form_says_what_is_expected_of_the_year_in_few_words():
    line = next(line for line in tables(blank(form="short"))[0].items if line.name == "Front brake")
    assert line.expected == "Front brake, early form; Width: 7\u00a0±\u00a00.05\u00a0in"


def test_where_no_form_is_described_the_short_form_asks_the_question():
    profile = shipped("triumph-unit-650")
    lines = {line.name: line.expected for table in tables(blank(1966, profile, "short")) for line in table.items}
    assert lines["Front spokes"] == "Is any spoke loose, bent or missing?"


def test_the_items_of_the_first_ten_minutes_are_marked():
    profile = shipped()
    record = made.record(claim=Claim(model_year=1953), findings=())
    first = {profile.item_by_id[i].name for i in first_ten(profile, record)}
    marked = {line.name for table in tables(blank(1953, profile, "short")) for line in table.items if line.first}
    assert marked == first
    assert "• 3 Frame number" in read.flat(as_pdf(blank(1953, profile, "short")))


def test_cautions_of_the_short_form_stand_at_their_place():
    text = as_text(blank(form="short"))
    assert text.index("The stand of this model slips on grass.") < text.index("Left side\nAsk before touching.")
    assert text.index("Left side\nAsk before touching.") < text.index("1 Front wheel")
    assert "Ask before touching." in text[text.index("1 Front wheel") : text.index("2 Fuel tank")]
    assert "Frame: Headstock, left. Never file it. ____" in text
    assert "No ride before a qualified person has passed brakes" in text


def test_the_short_form_has_numbers_before_stations_and_lines_to_claim_and_sign():
    text = as_text(blank(form="short"))
    order = [text.index(word) for word in ("Advertised as ____", "\nNumbers\n", "Left side", "inspector, date ____")]
    assert order == sorted(order)


def test_sixty_items_take_four_pages_at_most():
    profile = shipped()
    data = as_pdf(blank(1953, profile, "short"))
    assert len(read.pages(data)) <= 4
    assert len(read.pages(as_pdf(blank(1953, profile, "short"), "Letter"))) <= 5
    text = read.flat(data)
    assert [line.caution for table in tables(blank(1953, profile, "short")) for line in table.items
            if line.caution not in text] == []  # fmt: skip


def test_a_table_that_goes_on_is_headed_again():
    pages = read.pages(as_pdf(blank(1953, shipped(), "short")))
    assert all("in a word" in page for page in pages)
    assert any("continued expected, 1953 mark in a word" in " ".join(page.split()) for page in pages)
