"""The drawn sheet, read back by other programs."""

import re

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from inspector.record.claim import Claim
from inspector.record.finding import Finding
from inspector.record.money import Adjustment, Comparable, Money, Remedy, Signature
from inspector.record.words import Adjusts, Mark, PriceKind
from inspector.sheet.pdf import as_pdf
from tests.sheet import made, read

MM = read.MM
NEVER = ("authentic", "genuine", "original numbers", "certified", "not stolen", "safe to ride", "market value")


@pytest.fixture(scope="module")
def data():
    return as_pdf(made.sheet())


def noted(text, **more):
    """A record with one finding that carries this note."""
    finding = Finding(item="fuel-tank", by="inspector", mark=Mark.FAIL, note=text)
    return made.record(0, findings=(finding,), readings=(), **more)


def test_every_finding_and_every_item_not_examined_can_be_read_back(data):
    text = read.flat(data)
    for finding in made.FINDINGS:
        assert " ".join(finding.note.split()) in text
    for item in made.profile().items():
        assert item.name in text
    for word in ("Cannot be seen:", "Not seen:", "Not checked:", "Not fitted to this version:", "no evidence recorded"):
        assert word in text


def test_polish_greek_and_cyrillic_come_back_to_the_letter(data):
    assert "Ołówek, κινητήρας, двигатель: written as told & <kept>." in read.flat(data)


def test_only_embedded_fonts_are_listed(data):
    fonts = read.fonts(data)
    assert len(fonts) == 2
    assert all(fonts.values()), fonts
    assert all("SourceSansPro" in name for name in fonts)


@pytest.mark.parametrize(("paper", "size"), [("A4", (210, 297)), ("Letter", (215.9, 279.4))])
def test_each_paper_has_its_size_and_every_page_its_number(paper, size):
    # ISO 216: A4 is 210 mm by 297 mm; ANSI/ASME Y14.1: letter is 8.5 in by 11 in.
    data = as_pdf(made.sheet(), paper)
    pages = read.pages(data)
    for number, (text, page) in enumerate(zip(pages, read.reader(data).pages, strict=True), 1):
        assert f"page {number} of {len(pages)}" in text
        assert "Record 3, version 1" in text
        assert (float(page.mediabox.width) / MM, float(page.mediabox.height) / MM) == pytest.approx(size, abs=0.1)


def test_an_unknown_paper_is_refused():
    with pytest.raises(ValueError, match="A4, Letter"):
        as_pdf(made.sheet(), "A3")


def assert_inside(data, high=297.0):
    """No text lies outside the margins, nor over the foot."""
    for page, left, foot, right, top in read.boxes(data):
        assert left >= 17.5 * MM, (page, left)
        assert right <= 192.8 * MM, (page, right)
        assert foot >= 5 * MM
        assert top <= (high - 12) * MM


def test_no_text_is_clipped(data):
    assert_inside(data)


def test_a_long_unbroken_word_stays_inside_and_whole():
    long = "Q" * 3000
    data = as_pdf(made.sheet(noted(long, claim=Claim(model="W" * 480))))
    assert_inside(data)
    assert read.flat(data).count("Q") >= 3000


def test_a_note_of_two_thousand_words_flows_over_pages_whole():
    words = made.words(3, 2000)
    data = as_pdf(made.sheet(noted(" ".join(words))))
    foot = re.compile(r"Says what was seen on this day.*?(?=Findings|$)", flags=re.DOTALL)
    text = " ".join(foot.sub(" ", page) for page in read.pages(data))
    found = re.findall(r"\b(?:hub|rim|bolt|lug)\d+\b", text)
    assert found == words
    assert_inside(data)


@pytest.mark.parametrize("count", [0, 5, 40])
def test_every_photograph_is_embedded_as_it_is(count):
    record = made.record(count)
    store = made.store(record)
    images = read.images(as_pdf(made.sheet(record, pictures=store)))
    assert len(images) == count
    assert all(image["/Filter"] in ("/DCTDecode", ["/DCTDecode"]) for image in images)
    scans = {jpeg[jpeg.index(b"\xff\xda") :] for jpeg in store.values()}
    assert {image._data[image._data.index(b"\xff\xda") :].rstrip(b"\r\n") for image in images} == scans


def test_metadata_of_a_photograph_does_not_come_along():
    from PIL import Image

    exif = Image.Exif()
    exif[0x010F] = "Maker of the camera"
    pictures = {f"p{n}": made.jpeg(n, exif=exif, comment=b"a private word") for n in range(1, 6)}
    assert all(b"Maker of the camera" in jpeg for jpeg in pictures.values())
    data = as_pdf(made.sheet(pictures=pictures))
    assert len(read.images(data)) == 5
    assert b"Maker of the camera" not in data
    assert b"a private word" not in data


def test_no_money_is_anywhere_in_the_file():
    purse = {
        "claim": Claim(model="Heron", asking_price="777001 crowns"),
        "comparables": (Comparable(id="c", kind=PriceKind.SOLD, price=777002, currency="EUR", place="777003"),),
        "adjustments": (Adjustment(id="777004", comparable="c", what=Adjusts.TIME, amount=777005, reason="777006"),),
        "money": Money(budget=777007, target=777001, purpose="777002"),
        "remedies": (Remedy(item="fuel-tank", cost="777008"),),
    }
    data = as_pdf(made.sheet(made.record(0, **purse)))
    assert "777" not in read.flat(data)
    assert "777" not in str(read.reader(data).metadata)
    assert not re.search(rb"77700[1-8]", read.streams(data))
    assert "77700" not in read.streams(data).decode("utf-16-be", "ignore")


def test_the_sheet_says_no_never_word(data):
    plain = read.flat(data).casefold()
    assert [word for word in NEVER if word in plain] == []


def test_the_file_names_itself_its_language_and_its_time(data):
    document = read.reader(data)
    assert document.metadata.title == "Brackwater Heron 600: Inspection sheet, seller’s copy"
    assert document.metadata.author == "A. Teasel"
    assert document.metadata["/CreationDate"] == "D:20250517112000+01'00'"
    assert document.trailer["/Root"]["/Lang"] == "en"


def test_the_contents_lead_to_each_finding(data):
    def titles(outline):
        for entry in outline:
            yield from titles(entry) if isinstance(entry, list) else [entry.title]

    found = list(titles(read.reader(data).outline))
    assert "1 fail: Front wheel" in found
    assert {"Numbers as read", "Not examined", "Findings", "Signed"} <= set(found)


def test_a_number_on_the_outline_leads_to_its_finding(data):
    links = [a.get_object() for a in read.reader(data).pages[0]["/Annots"]]
    assert len(links) == 5
    assert all(link["/Subtype"] == "/Link" for link in links)


def test_the_same_sheet_gives_the_same_bytes(data):
    assert as_pdf(made.sheet()) == data


def test_a_finding_is_never_parted_from_what_it_heads():
    for length in range(0, 700, 70):
        record = made.record(0, findings=(*noted(" ".join(made.words(1, length))).findings, *made.FINDINGS[2:4]))
        for page in read.pages(as_pdf(made.sheet(record, outline=None))):
            lines = read.lines(page, "17 May 2025, 11:20")
            for name in ("Fuel tank", "Carburettor", "Front brake"):
                if name in lines:
                    assert "Expected" in lines[lines.index(name) :]
            assert not lines[-1].endswith("as for a 1953 model")


def test_an_outline_that_cannot_be_read_leaves_the_counts():
    for outline in ("", "<svg", "<!DOCTYPE x><svg viewBox='0 0 1 1'/>", "<svg viewBox='0 0 9'/>"):
        assert "21 items, of which" in read.flat(as_pdf(made.sheet(made.record(0), outline=outline)))


def test_a_drawn_signature_takes_the_place_of_the_empty_line():
    strokes = (((0, 0), (40, 30), (90, 5)), ((3, 3),))
    signed = (Signature(id="1", person="inspector", at=made.MADE_AT, strokes=strokes),)
    text = read.flat(as_pdf(made.sheet(made.record(0, signatures=signed))))
    assert "A. Teasel, inspector 17 May 2025, 11:20" in text
    assert "R. Quill, seller not yet signed" in text


def test_what_the_font_cannot_show_is_named():
    text = read.flat(as_pdf(made.sheet(noted("fine 😀 and \u05d0 and \x07 end"))))
    assert "fine [grinning face] and [U+05D0] and [U+0007] end" in text


ODD = st.one_of(
    st.text(max_size=300),
    st.text(alphabet=st.characters(categories=("Cc", "Cf", "Co", "Cn", "Mn", "Zl", "Zp", "Zs")), max_size=60),
    st.text(alphabet="אבגدهون😀🏍️e\u0301<&>{}%\\\n\t\u200f\u202e", max_size=120),
    st.integers(1, 4000).map(lambda n: "x" * n),
)


@settings(max_examples=20, deadline=None, suppress_health_check=list(HealthCheck))
@given(ODD, ODD, ODD)
def test_no_text_whatever_stops_a_sheet(note, name, who):
    claim = Claim(model=name[:500], advertised=note, place=who[:500])
    record = noted(note, claim=claim, statements=[{"id": "s", "text": note, "by": who[:500]}])
    data = as_pdf(made.sheet(record, outline=made.BRIEF), "Letter")
    assert data.startswith(b"%PDF")
    assert f"page 1 of {len(read.pages(data))}" in read.flat(data)


def test_thousands_of_short_lines_all_stand():
    few, many = ("a\n" * count + "last" for count in (200, 2000))
    data = as_pdf(made.sheet(noted(many)))
    assert read.flat(data).count("a a a") > 500
    assert "last" in read.flat(data)
    assert len(read.pages(data)) > 5 * len(read.pages(as_pdf(made.sheet(noted(few)))))


def test_a_very_long_id_stays_on_the_page():
    data = as_pdf(made.sheet(made.record(0, id="R" * 120)))
    assert_inside(data)
    assert "R" * 120 in "".join(read.pages(data)[0].split())
