"""Pages of every kind of sheet on both papers, with few and very many photographs and a very long note."""

import re
from functools import lru_cache

import pytest

from inspector.handover import PLAIN
from inspector.judgement.judge import judge
from inspector.judgement.money import money
from inspector.record.claim import Claim, Person
from inspector.record.finding import Question
from inspector.record.words import Role, Seen
from inspector.sheet.compose import blank_sheet
from inspector.sheet.dating import dating_sheet
from inspector.sheet.pdf import as_pdf
from inspector.sheet.pictures_pack import pictures_sheet
from inspector.sheet.text import FIRST, as_text
from tests.sheet import demo, made, purse, read
from tests.sheet.test_pdf import assert_inside

HIGH = {"A4": 297.0, "Letter": 279.4}  # ISO 216; ANSI/ASME Y14.1
COUNTS = (5, 40, 200)
LONG = made.words(5, 2000)
SHOTS = ("view-left", "view-right", "view-front", "view-rear", "view-engine")


def dating(record, pictures):
    profile = made.profile()
    return dating_sheet(profile, record, judge(profile, record), pictures, made.MADE_AT, 1)


def insurer(record, pictures):
    """The pack in which every photograph is of one of the views."""
    shown = tuple(p.model_copy(update={"shot": SHOTS[n % 5]}) for n, p in enumerate(record.photographs))
    profile, record = made.profile(), record.model_copy(update={"photographs": shown})
    return pictures_sheet(profile, record, pictures, money(profile, record).worth, PLAIN, made.MADE_AT, 1)


KINDS = {
    "seller": lambda record, pictures: made.sheet(record, pictures=pictures),
    "owner": lambda record, pictures: purse.owner(record, pictures=pictures, outline=made.LEFT),
    "dating": dating,
    "insurer": insurer,
}


@lru_cache
def composed(kind, count):
    """That sheet of a record with so many photographs and a note of 2,000 words."""
    findings = tuple(f.model_copy(update={"note": " ".join(LONG)}) if f.item == "fuel-tank" else f
                     for f in made.FINDINGS)  # fmt: skip
    record = purse.filled(made.record(count, findings=findings))
    return KINDS[kind](record, many(record))


def many(record):
    """A small picture for each photograph; the end of a JPEG may carry padding, so that all differ."""
    one = made.jpeg(1, (300, 225))
    return {p.id: one[:-2] + n.to_bytes(2, "big") + one[-2:] for n, p in enumerate(record.photographs)}


def words(text):
    """Every word and number but the grades of sources, which are drawn as strokes."""
    return set(re.findall(r"\w+", re.sub(r"\((no grade|grade \d)\)", "", text)))


def assert_no_lone_title(sheet, data):
    """No page ends with the title of a part, nor with the name of a finding."""
    titles = {getattr(block, "title", "") for block in sheet.blocks} - {""}
    entries = (entry for block in sheet.blocks for entry in getattr(block, "entries", ()))
    titles |= {entry.name for entry in entries if hasattr(entry, "name")}
    for page in read.pages(data):
        assert read.lines(page, sheet.stamp[-1])[-1] not in titles, page


def assert_captions_stand_with_their_photographs(data):
    """As many captions on each page as pictures."""
    for page in read.reader(data).pages:
        objects = page["/Resources"].get("/XObject", {})
        pictures = [one for name in objects if (one := objects[name].get_object())["/Subtype"] == "/Image"]
        assert len(pictures) == len(re.findall(r"photograph \d+;\s+caption", page.extract_text()))


@pytest.mark.parametrize("paper", HIGH)
@pytest.mark.parametrize("count", COUNTS)
@pytest.mark.parametrize("kind", KINDS)
def test_nothing_is_clipped_parted_or_lost(kind, count, paper):
    sheet = composed(kind, count)
    data = as_pdf(sheet, paper)
    text = read.flat(data)
    assert_inside(data, HIGH[paper])
    assert len(read.images(data)) == count
    assert words(as_text(sheet)) <= words(text)
    assert (set(LONG) <= words(text)) is (kind in ("seller", "owner"))  # packs tell no notes
    assert_no_lone_title(sheet, data)
    assert_captions_stand_with_their_photographs(data)


HOSTILE = "Łańcuch, κινητήρας, вилка 😀 אבג \u202edrow\u202c \x07\x1b[31m <b>&amp;</b> {who} %s " + "Unbroken" * 90


@pytest.mark.parametrize("kind", KINDS)
def test_no_text_whatever_clips_or_stops_a_sheet(kind):
    people = tuple(Person(id=r.value, name=HOSTILE[:480], role=r, interest=HOSTILE) for r in Role)
    findings = tuple(f.model_copy(update={"note": HOSTILE, "reply": HOSTILE, "next_step": HOSTILE})
                     for f in made.FINDINGS[:6])  # fmt: skip
    shown = tuple(p.model_copy(update={"caption": HOSTILE[:480]}) for p in made.photographs(4))
    record = made.record(
        4, findings=findings, people=people, photographs=shown, questions=(Question(id="q", text=HOSTILE),),
        claim=Claim(model=HOSTILE[:480], advertised=HOSTILE, conditions=HOSTILE[:480], date="1953"),
        statements=({"id": "s", "text": HOSTILE, "by": HOSTILE[:400]},),
    )  # fmt: skip
    data = as_pdf(KINDS[kind](purse.filled(record, purpose=HOSTILE[:480]), many(record)), "Letter")
    assert_inside(data, HIGH["Letter"])
    assert len(read.images(data)) == 4
    text = read.flat(data)
    assert "Łańcuch, κινητήρας, вилка [grinning face] [U+05D0][U+05D1][U+05D2] [U+202E]drow[U+202C]" in text
    assert "[U+0007][U+001B][31m <b>&amp;</b> {who} %s" in text
    assert "Unbroken" * 90 in "".join(text.split()) or kind in ("dating", "insurer")  # these tell short lines only


@pytest.mark.parametrize("paper", HIGH)
@pytest.mark.parametrize("form", ["short", "full"])
def test_a_walk_sheet_is_whole_on_either_paper(form, paper):
    sheet = blank_sheet(demo.machine()[0], 1953, made.MADE_AT, form)
    data = as_pdf(sheet, paper)
    assert_inside(data, HIGH[paper])
    told = as_text(sheet).replace("____", "").replace(FIRST, "")  # lines to write on, and a dot
    assert words(told) <= words(read.flat(data))
    assert_no_lone_title(sheet, data)


@pytest.mark.parametrize("paper", HIGH)
@pytest.mark.parametrize("kind", ["seller", "owner"])
def test_the_first_page_tells_the_whole_story(kind, paper):
    profile, record = demo.machine()
    sheet = demo.sheet() if kind == "seller" else purse.owner(purse.filled(record), profile, {})
    first = " ".join(read.pages(as_pdf(sheet, paper))[0].split())
    for said in ("Claimed: 1953 model.", "Safety: 8 findings", "Not examined, and bearing on safety: Steering head.",
                 "Seen 87 %", "6H 15[83]42", "6HE 15842", "G 21140", "Years: 1953 alone.",
                 "Open questions"):  # fmt: skip
        assert said in first, said
    assert re.search(r"Correct, of what was seen \d+ may end at \d+ to \d+", first)
    assert ("Money, in GBP" in first) is (kind == "owner")


@pytest.mark.parametrize("paper", HIGH)
@pytest.mark.parametrize("kind", ["seller", "owner"])
def test_every_cannot_be_seen_and_every_safety_finding_of_the_demo_is_on_it(kind, paper):
    profile, record = demo.machine()
    judged = judge(profile, record)
    sheet = demo.sheet() if kind == "seller" else purse.owner(purse.filled(record), profile, {})
    text = read.flat(as_pdf(sheet, paper))
    hidden = [f for f in record.findings if f.seen is Seen.CANNOT_BE_SEEN]
    assert len(hidden) >= 3
    told = text[text.index("Cannot be seen: ") : text.index("Nothing here is counted as right.")]
    assert [f.item for f in hidden if profile.item_by_id[f.item].name not in told] == []
    assert [f.note for f in hidden if f.note.rstrip(".") not in told] == []
    blind = [r.id for r in record.readings if "cannot see" in map(str, r.stamping.values())]
    assert text.count("could not be seen:") >= len(blind) > 0
    assert len(judged.safety.findings) >= 8
    assert [str(one.sentence) for one in judged.safety.findings if str(one.sentence) not in text] == []
    assert [name for name in judged.safety.not_seen if str(name) not in text] == []
