"""Sheets of what nobody would choose: too long, too many, without spaces, in other letters, or with nothing found."""

import pytest

from inspector.profile.model import Profile
from inspector.record.claim import Claim, Person
from inspector.record.finding import Finding, Photograph, Question
from inspector.record.model import Choices
from inspector.record.words import Condition, Mark, Role, Seen
from inspector.sheet.compose import blank_sheet
from inspector.sheet.pdf import as_pdf
from tests.sheet import made, read
from tests.sheet.test_pdf import assert_inside

HIGH = {"A4": 297.0, "Letter": 279.4}  # ISO 216; ANSI/ASME Y14.1
LETTERS = "Łańcuch napędowy źle napięty; κινητήρας με ρωγμή; передняя вилка течёт"
UNBROKEN = "Unbroken" * 60


def many(count, name="Item number {n} of many", **more) -> Profile:
    """A profile with so many items in ten stations."""
    items = [made.item(f"i{n}", name.format(n=n), "engine", "fuel" if n % 5 == 0 else None, n * 9 % 2200, 500)
             for n in range(count)]  # fmt: skip
    share = -(-count // 10)
    stations = [{"id": f"s{n}", "name": f"Station {n}", "item": items[n * share : (n + 1) * share]} for n in range(10)]
    return made.profile(station=[s for s in stations if s["item"]], **more)


def every(profile, **more):
    """A finding at every item, all marks and all ways of not seeing among them."""
    marks = (Mark.PASS, Mark.DOUBT, Mark.PASS, Mark.FAIL, None)
    return tuple(
        Finding(item=item.id, by="inspector", mark=mark, seen=Seen.EXAMINED if mark else Seen.CANNOT_BE_SEEN,
                conditions=(Condition.WORN,), **more)
        for n, item in enumerate(profile.items())
        for mark in (marks[n % 5],)
    )  # fmt: skip


def assert_whole(data, paper):
    pages = read.pages(data)
    for number, page in enumerate(pages, 1):
        assert f"page {number} of {len(pages)}" in page
        assert "Says what was seen on this day." in page
    assert_inside(data, HIGH[paper])


@pytest.mark.parametrize("paper", HIGH)
def test_two_hundred_items_all_stand(paper):
    profile = many(200)
    data = as_pdf(made.sheet(made.record(0, findings=every(profile)), profile), paper)
    assert_whole(data, paper)
    text = read.flat(data)
    assert [item.name for item in profile.items() if item.name not in text] == []


def test_a_walk_of_two_hundred_items_has_a_line_for_each():
    paper = "Letter"
    profile = many(200)
    data = as_pdf(blank_sheet(profile, 1953, made.MADE_AT), paper)
    assert_whole(data, paper)
    text = read.flat(data)
    assert [n for n in range(200) if f"{n + 1} Item number {n} of many" not in text] == []


@pytest.mark.parametrize("paper", HIGH)
def test_words_without_spaces_are_broken_and_stay_whole(paper):
    profile = many(6, UNBROKEN + "{n}", title="Titleless" * 30)
    people = tuple(Person(id=r.value, name="Nameless" * 20, role=r, interest=UNBROKEN) for r in Role)
    record = made.record(
        0, findings=every(profile, note=UNBROKEN, next_step=UNBROKEN, reply=UNBROKEN), people=people,
        claim=Claim(model="Machine" * 40, place=UNBROKEN[:400], advertised=UNBROKEN), readings=(),
        questions=(Question(id="q", text=UNBROKEN),), statements=({"id": "s", "text": UNBROKEN},),
    )  # fmt: skip
    for data in (as_pdf(made.sheet(record, profile), paper), *walks(profile, paper)):
        assert_whole(data, paper)
        assert "".join(read.pages(data)).replace("\n", "").count("Unbroken" * 4) >= 6


def walks(profile, paper):
    for form in ("short", "full"):
        yield as_pdf(blank_sheet(profile, 1953, made.MADE_AT, form), paper)


def test_other_letters_come_back_from_every_part():
    paper = "Letter"
    profile = many(12, LETTERS + " {n}")
    record = made.record(
        2, findings=every(profile, note=LETTERS), claim=Claim(model=LETTERS), statements=({"id": "s", "text": LETTERS},)
    )
    for data in (as_pdf(made.sheet(record, profile), paper), *walks(profile, paper)):
        assert_whole(data, paper)
        assert read.flat(data).count(LETTERS) >= 12


@pytest.mark.parametrize(("item", "paper"), [("fuel-tank", "A4"), ("saddle", "A4"), ("", "Letter")])
def test_sixty_photographs_all_stand(item, paper):
    record = made.record(0, photographs=made.photographs(60, (item,)))
    data = as_pdf(made.sheet(record), paper)
    assert_whole(data, paper)
    assert len(read.images(data)) == 60
    text = read.flat(data)
    assert [n for n in range(1, 61) if f"caption number {n}" not in text] == []


def test_tall_wide_and_tiny_photographs_keep_inside():
    sizes = ((4000, 40), (40, 4000), (1, 1), (900, 1600))
    shown = tuple(
        Photograph(id=f"p{n}", sha256=f"{n:064x}", name="x.jpg", media="image/jpeg", width=w, height=h, size=9,
                   item=item, caption=UNBROKEN)
        for n, ((w, h), item) in enumerate((size, item) for size in sizes for item in ("fuel-tank", ""))
    )  # fmt: skip
    store = {p.id: made.jpeg(1, (p.width, p.height)) for p in shown}
    data = as_pdf(made.sheet(made.record(0, photographs=shown), pictures=store))
    assert_whole(data, "A4")
    assert len(read.images(data)) == len(shown)


def test_very_long_notes_at_every_item_flow_on():
    paper = "Letter"
    words = made.words(7, 700)
    found = every(made.profile(), note=" ".join(words))[:6]
    data = as_pdf(made.sheet(made.record(1, findings=found)), paper)
    assert_whole(data, paper)
    text = read.flat(data)
    assert [word for word in words if text.count(word) < len(found)] == []


def test_where_nothing_was_found_the_sheet_says_so():
    paper = "Letter"
    record = made.record(
        0, findings=(), readings=(), papers=(), statements=(), people=(), questions=(), inquiries=(), claim=Claim(),
        choices=Choices(points=True),
    )  # fmt: skip
    data = as_pdf(made.sheet(record), paper)
    assert_whole(data, paper)
    text = read.flat(data)
    for said in ("No doubt and no fail is recorded.", "Nothing is marked pass.", "nothing seen yet", "not read:",
                 "No condition recorded.", "Nothing said is noted.", "not yet signed"):  # fmt: skip
        assert said in text
