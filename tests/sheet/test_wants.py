"""The wants list and the opinion of worth: what they say on paper, in a table, and when they say nothing."""

import csv
from decimal import Decimal
from io import BytesIO, StringIO

import pytest
from pypdf import PdfReader

from inspector.amounts import Amounts
from inspector.judgement.cost import costs
from inspector.judgement.wants import wants
from inspector.judgement.worth import worth
from inspector.record import verbs_money as verbs
from inspector.record.csv_in import read_comparables
from inspector.record.edits import apply
from inspector.sheet.pdf import as_pdf
from inspector.sheet.text import as_text
from inspector.sheet.wants import wants_csv, wants_sheet
from inspector.sheet.worth import NotPrintable, worth_sheet
from tests.sheet import demo, made

PLAIN = Amounts(",")
# Invented: no such sale was held.
TABLE = """kind,price,currency,date,place,score,like,title
sold,9937,GBP,2025-03-08,club sale,88,5,Heron 600 of 1953
sold,8969,GBP,2024-11-20,private,75,4,Heron 600 of 1955
asked,13919,GBP,2025-05-04,dealer,90,3,Heron 650
"""
REQUIRED = {
    "purpose": "buying to keep", "kind_of_value": "between two people", "effective_date": "2025-05-17",
    "in_the_name_of": "Ida Berg (invented)",
}  # fmt: skip


def looked_for():
    profile, record = demo.machine()
    return wants(profile, record, costs(profile, record))


def wants_text(found):
    profile, record = demo.machine()
    return as_text(wants_sheet(profile, record, found, "GBP", made.MADE_AT, PLAIN))


def valued(**settings):
    """The demo machine with comparables and these settings; gives profile, record and worth."""
    profile, record = demo.machine()
    for field, value in settings.items():
        record = apply(record, verbs.set_money(field, value)).record
    record = apply(record, verbs.add_comparables(read_comparables(TABLE).rows)).record
    return profile, record, worth(profile, record, costs(profile, record))


def test_each_part_is_told_with_how_to_tell_it_what_not_to_buy_and_a_price():
    text = wants_text(looked_for())
    tank = text[text.index("Find a two-bolt tank") :].split("\n\n")[0]
    assert "two bolts on the centre line" in tank.lower()
    assert "four bolts in pairs, welded lip along both sides" in tank
    assert "380 to 850, likely 560 GBP" in tank
    assert "prices of May 2025" in tank
    assert "Private" in text


def test_an_empty_list_says_so():
    assert "No part is to be bought" in wants_text(())


def test_the_table_has_a_line_for_each_part_and_plain_figures():
    rows = list(csv.DictReader(StringIO(wants_csv(looked_for(), "GBP"))))
    assert [row["looking for"] for row in rows] == [want.looking_for for want in looked_for()]
    tank = next(row for row in rows if row["looking for"].startswith("Find a two-bolt"))
    assert (tank["low"], tank["likely"], tank["high"], tank["currency"]) == ("380.00", "560.00", "850.00", "GBP")
    assert Decimal(tank["likely"]) == 560


@pytest.mark.parametrize("text", ["=1+1", "+44", "-5", "@SUM(A1)", "\t=1"])
def test_no_cell_is_taken_for_a_formula(text):
    from dataclasses import replace

    want = replace(looked_for()[0], looking_for=text)
    (row,) = csv.DictReader(StringIO(wants_csv((want,), "GBP")))
    assert row["looking for"] == "'" + text


def test_the_same_list_is_the_same_paper_to_the_byte():
    profile, record = demo.machine()
    sheet = wants_sheet(profile, record, looked_for(), "GBP", made.MADE_AT, PLAIN)
    assert as_pdf(sheet) == as_pdf(sheet)
    assert len(PdfReader(BytesIO(as_pdf(sheet, "Letter"))).pages) >= 1


@pytest.mark.parametrize("lacking", REQUIRED)
def test_a_worth_is_not_printed_without_purpose_kind_day_and_name(lacking):
    given = {name: value for name, value in REQUIRED.items() if name != lacking}
    profile, record, found = valued(**given)
    with pytest.raises(NotPrintable) as refused:
        worth_sheet(profile, record, found, made.MADE_AT, PLAIN)
    assert str(refused.value).startswith("Enter ")


def test_a_worth_says_for_what_when_and_by_whom_and_lists_what_was_not_counted():
    profile, record, found = valued(**REQUIRED, percent_a_year="3")
    text = as_text(worth_sheet(profile, record, found, made.MADE_AT, PLAIN))
    for words in (*(v for k, v in REQUIRED.items() if k != "effective_date"), "17 May 2025", "9,937 GBP"):
        assert words in text
    assert "time: " in text
    assert text.index("Comparables not counted") < text.index("13,919 GBP") < text.index("An asking price, not a sale")
