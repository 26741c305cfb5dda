"""The owner's file: the first page tells all in short, what follows tells all of it."""

import re

import pytest

from inspector.sheet.pdf import as_pdf
from inspector.sheet.text import as_text
from tests.sheet import demo, made, purse, read
from tests.sheet.test_pdf import NEVER

HIGH = {"A4": 297.0, "Letter": 279.4}  # ISO 216; ANSI/ASME Y14.1


@pytest.fixture(scope="module")
def sheet():
    return purse.owner(purse.filled(made.record(5)))


@pytest.fixture(scope="module")
def data(sheet):
    return as_pdf(sheet)


@pytest.fixture(scope="module")
def whole():
    profile, record = demo.machine()
    return purse.owner(purse.filled(record), profile, {})


@pytest.mark.parametrize("paper", HIGH)
def test_the_first_page_of_the_demo_tells_all_of_it_in_short(whole, paper):
    first = " ".join(read.pages(as_pdf(whole, paper))[0].split())
    for said in ("Claimed: 1953 model.", "Safety: 8 findings", "Seen 87 %", "Correct, of what was seen", "may end at",
                 "6H 15[83]42", "Years: 1953 alone.", "Money, in GBP", "Open questions"):  # fmt: skip
        assert said in first, said
    assert re.search(r"Correct, of what was seen \d+ may end at \d+ to \d+", first)


def test_every_word_of_it_can_be_read_back(sheet, data):
    found = set(re.findall(r"\w+", read.flat(data)))
    told = re.sub(r"\((no grade|grade \d)\)", "", as_text(sheet))  # drawn as strokes
    assert set(re.findall(r"\w+", told)) - found == set()


def test_the_money_is_told_to_the_last_line(data):
    text = read.flat(data)
    for said in ("The deal", "Price asked 7 400", "All in, put right", "What it costs to put right",
                 "Plan, in the order of work", "Comparables counted", "Comparables not counted", "fresher paint",
                 "−300", "Left out: Parts only.", "For buying to keep; kind of value: between two people.",
                 "On 17 May 2025, in the name of A. Teasel.", "As entered by you: target 6 700."):  # fmt: skip
        assert said in text, said


def test_a_worth_without_its_purpose_is_not_printed_as_a_value():
    record = purse.filled(made.record(0), purpose="", in_the_name_of="")
    told = read.flat(as_pdf(purse.owner(record)))
    assert "Not printed as a value." in told
    assert "Enter the purpose: for what is it valued?" in told
    assert "Enter in whose name it is said." in told
    assert "as it stands, for" not in told
    assert ", from 3" not in told
    assert "What rests on a worth is left out" in told


def test_history_and_sources_stand_last(data):
    text = read.flat(data)
    assert "17 May 2025, 10:05 A. Teasel Front wheel: Mark fail" in text
    assert "17 May 2025, 10:07 A. Teasel Fuel tank: Note (2 times)" in text
    assert "undone: Fuel tank: Note" in text
    assert "List of sources" in text
    assert "Heron register Club register." in text


def test_every_part_of_the_evidence_of_the_year_is_told(whole):
    text = as_text(whole)
    _, record = demo.machine()
    assert "Evidence of the year" in text
    assert "Weight of each year, in decibans" in text
    for year in range(1950, 1959):
        assert f"  {year}" in text.split("\nWeight of each year, in decibans")[1]
    assert record.id in text


def test_the_contents_name_the_page_on_which_each_part_begins(data):
    document = read.reader(data)
    links = [a.get_object() for page in document.pages for a in page.get("/Annots", ())]
    pages = {page.indirect_reference.idnum for page in document.pages}
    titles = {entry.title: document.get_destination_page_number(entry) + 1 for entry in flat_outline(document.outline)}
    text = " ".join(document.pages[0].extract_text().split() + document.pages[1].extract_text().split())
    assert len(links) > 20
    assert all(link["/Dest"][0].idnum in pages for link in links)
    for title in ("The deal", "History of changes", "List of sources", "Findings"):
        assert re.search(rf"{title} {titles[title]}\b", text), (title, titles[title])


def flat_outline(entries):
    for entry in entries:
        yield from flat_outline(entry) if isinstance(entry, list) else [entry]


def test_it_names_itself_its_language_its_page_and_its_version(data):
    document = read.reader(data)
    assert document.metadata.title == "Brackwater Heron 600: Owner’s file, private"
    assert document.trailer["/Root"]["/Lang"] == "en"
    for number, page in enumerate(read.pages(data), 1):
        assert f"page {number} of {len(document.pages)}" in page
        assert "Record 3, version 1" in page


def test_it_says_no_never_word(data):
    assert [word for word in NEVER if word in read.flat(data).casefold()] == []
