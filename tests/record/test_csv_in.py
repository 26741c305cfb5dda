"""Comparables from a pasted table, and lines that cannot be taken, each named with what to do."""

from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.record.csv_in import read_comparables
from inspector.record.edits import apply
from inspector.record.verbs_money import add_comparables
from inspector.record.words import NumbersAgree, PriceKind
from tests.record.steps import blank

D = Decimal
TODAY = "2025-06-01"


def read(text, **more):
    return read_comparables(text, **{"today": TODAY, **more})


def sentences(told):
    return [str(error.sentence) for error in told.errors]


HEADED = """date,kind,price,currency,place,condition,numbers,score,like,title,source,fees,excluded
2025-03-01,sold,9900,GBP,York,4,yes,82.5,5,Heron 600,club sale,in,
2025-05,asked,"12,600",GBP,,,,,,Heron 600,dealer,out,asks too much
"""


def test_every_column_is_read():
    first, second = read(HEADED).rows
    assert (first.id, first.kind, first.price, first.currency) == ("c1", PriceKind.SOLD, D(9900), "GBP")
    assert (first.date, first.place, first.condition, first.numbers) == ("2025-03-01", "York", 4, NumbersAgree.YES)
    assert (first.score, first.how_like, first.title, first.source) == (D("82.5"), 5, "Heron 600", "club sale")
    assert (first.fees_in, first.excluded_because) == (True, "")
    assert (second.price, second.date, second.how_like, second.fees_in) == (D(12600), "2025-05", 3, False)
    assert (second.condition, second.score, second.excluded_because) == (None, None, "asks too much")


@pytest.mark.parametrize("sign", [",", ";", "\t"])
def test_comma_semicolon_and_tab_part_the_cells(sign):
    text = sign.join(["Price", "Kind", "Title"]) + "\n" + sign.join(["9900", "sold", "Heron"])
    (row,) = read(text).rows
    assert (row.price, row.kind, row.title) == (D(9900), PriceKind.SOLD, "Heron")


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_any_line_end_and_empty_lines_will_do(end):
    told = read(end.join(["\ufeffprice;kind", "", "100;sold", " ; ", "200;bid", ""]))
    assert [row.price for row in told.rows] == [100, 200]
    assert told.errors == ()


@pytest.mark.parametrize(
    ("typed", "price"),
    [
        ("7400", "7400"), ("7 400", "7400"), ("7\u00a0400", "7400"), ("7\u202f400", "7400"), ("7'400", "7400"),
        ("7.400", "7400"), ('"7,400"', "7400"), ("7.400,50", "7400.50"), ('"7,400.50"', "7400.50"),
        ("7400,5", "7400.5"), ("7400.50", "7400.50"), ("1.234.567", "1234567"), ("£7,400", "7400"), ("7400 €", "7400"),
        ("GBP 7400", "7400"), ("7400 GBP", "7400"), ("7400,-", "7400"), ("７４００", "7400"),
    ],
)  # fmt: skip
def test_a_price_is_read_as_people_write_it(typed, price):
    told = read(f"price;kind\n{typed};sold")
    assert sentences(told) == []
    assert told.rows[0].price == D(price)


@pytest.mark.parametrize(
    ("typed", "currency"),
    [("£7,400", "GBP"), ("7400 €", "EUR"), ("CHF 7'400", "CHF"), ("7400 usd", "USD"), ("7400", "")],
)
def test_the_currency_beside_a_price_is_kept(typed, currency):
    assert read(f"price;kind\n{typed};sold").rows[0].currency == currency


@pytest.mark.parametrize(
    ("cell", "says"),
    [
        ("-500", 'Line 2: The price "-500" is below nought.'), ("−500", 'Line 2: The price "−500" is below nought.'),
        ("(500)", "below nought"), ("", "Line 2: There is no price."), ("0", "Line 2: The price is nought."),
        ("7O00", "cannot be read. Write only figures"), ("nan", "cannot be read"), ("inf", "cannot be read"),
        ("1e5", "cannot be read"), ("99999999999", "cannot be read"), ("7,,400", "cannot be read"),
        ("12.34.5", "cannot be read"), ("9" * 5000, "cannot be read"), ("$500", "says not which dollar"),
        ("٧٤٠٠", "cannot be read"),
    ],
)  # fmt: skip
def test_odd_figures_and_prices_below_nought_are_named_with_what_to_do(cell, says):
    told = read(f"price;kind\n{cell};sold\n100;sold")
    assert [row.price for row in told.rows] == [100]
    assert says in sentences(told)[0]
    assert told.errors[0].text == f"{cell};sold"


@pytest.mark.parametrize(
    ("cell", "says"),
    [
        ("05/06/2025", "can be read two ways"), ("31.02.2024", "is not a day"), ("soon", "is not a day"),
        ("2025-13", "is not a day"), ("0025", "is not a day"), ("1066", "is not a day"), ("9999-01-01", "is not a day"),
        ("2025-06-02", "lies in the future"), ("2026", "lies in the future"),
    ],
)  # fmt: skip
def test_absurd_dates_are_named(cell, says):
    told = read(f"price;kind;date\n100;sold;{cell}")
    assert told.rows == ()
    assert sentences(told)[0].startswith("Line 2: ")
    assert says in sentences(told)[0]


@pytest.mark.parametrize(
    ("cell", "date"),
    [("2025-05-17", "2025-05-17"), ("17.5.2025", "2025-05-17"), ("17/05/2025", "2025-05-17"),
     ("05/17/2025", "2025-05-17"),
     ("17 May 2025", "2025-05-17"), ("May 17, 2025", "2025-05-17"), ("March 2025", "2025-03"), ("3/2025", "2025-03"),
     ("2024", "2024"), ("", ""), ("5/5/2025", "2025-05-05")],
)  # fmt: skip
def test_dates_are_kept_as_fine_as_they_were_written(cell, date):
    told = read(f'price;kind;date\n100;sold;"{cell}"')
    assert sentences(told) == []
    assert told.rows[0].date == date


@pytest.mark.parametrize(
    ("heading", "cell", "says"),
    [
        ("currency", "groats", 'The currency "groats"'), ("condition", "6", "from 1 to 5"),
        ("like", "0", "from 1 to 5"),
        ("score", "101", "from 0 to 100"), ("score", "-1", "from 0 to 100"), ("fees", "maybe", '"maybe"'),
        ("numbers", "partly", "yes, no or unknown"), ("kind", "lent", "asked, bid or sold"),
    ],
)  # fmt: skip
def test_a_cell_that_cannot_be_taken_names_its_line_and_how_to_mend_it(heading, cell, says):
    table = {"price": "100", "kind": "sold", heading: cell}
    (sentence,) = sentences(read(";".join(table) + "\n" + ";".join(table.values())))
    assert sentence.startswith("Line 2: ")
    assert says.casefold() in sentence.casefold()


def test_fees_may_be_a_percentage_on_top():
    told = read("price;kind;fees\n100;sold;15 %\n100;sold;12,5\n100;sold;in").rows
    assert [(row.fees_in, row.premium_percent) for row in told] == [(False, 15), (False, D("12.5")), (True, None)]


def test_two_currencies_in_one_line_are_refused():
    (sentence,) = sentences(read("price;kind;currency\n£100;sold;EUR"))
    assert "in GBP and the currency column says EUR" in sentence
    assert read("price;kind;currency\n$100;sold;USD").rows[0].currency == "USD"


def test_columns_that_are_not_known_are_kept_in_the_note():
    told = read("price;kind;tyres;note\n100;sold;new;seen by me")
    assert told.rows[0].note == "seen by me; tyres: new"
    assert "tyres" in str(told.notes[0])


def test_without_headings_the_columns_are_found_by_what_stands_in_them():
    text = "sold\t9 900\tGBP\tMarch 2025\tHeron 600\tClub sale\nasked\t12.500\tEUR\tMay 2025\tHeron 500\tDealer\n"
    told = read(text)
    assert [(r.kind.value, r.price, r.currency, r.date, r.title, r.place) for r in told.rows] == [
        ("sold", 9900, "GBP", "2025-03", "Heron 600", "Club sale"),
        ("asked", 12500, "EUR", "2025-05", "Heron 500", "Dealer"),
    ]
    assert "columns were taken as: kind, price, currency, date, title, place" in str(told.notes[0])


@pytest.mark.parametrize("headings", ["", "kind,price\n", "kind,price,title\n"])
def test_a_comma_inside_a_price_is_asked_about_and_never_cuts_it(headings):
    told = read(headings + "sold,9900\nasked,8,400\nsold,7700\n")
    assert [row.price for row in told.rows] == [9900, 7700]
    assert "quotation marks" in sentences(told)[0]


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "nothing to read"), (" \n\n", "nothing to read"), ("price;kind\n", "no lines below"),
        ("price\n100", "No column says whether"), ("hello\nworld", "No column is a price"),
        ("kind;title\nsold;x", "No column is a price"), ("price;kind\n" + "1;sold\n" * 5001, "more than 5000 lines"),
        ('price;kind\n"' + "9" * 200_000 + '";sold', "cannot be taken apart"),
    ],
)  # fmt: skip
def test_what_is_no_table_is_one_clear_sentence(text, says):
    told = read(text)
    assert told.rows == ()
    assert len(told.errors) == 1
    assert says in sentences(told)[0]


def test_the_line_is_that_of_the_paste_though_a_cell_runs_over_several():
    told = read('price;kind;title\n100;sold;"two\nlines"\n-5;sold;x')
    assert told.rows[0].title == "two lines"
    assert [(e.line, e.text) for e in told.errors] == [(4, "-5;sold;x")]


def test_ids_that_are_taken_are_not_given_again_and_the_rows_can_be_entered_as_one_step():
    told = read("price;kind\n1;sold\n2;sold", taken={"c1", "c3"})
    assert [row.id for row in told.rows] == ["c2", "c4"]
    step = add_comparables(told.rows)
    done = apply(blank(), step)
    assert done.record.comparables == told.rows
    assert apply(done.record, done.inverse).record == blank()


def test_eight_lines_two_of_them_wrong_give_six_and_name_two():
    lines = [f"sold;{9000 + 100 * n};2025-0{n + 1}" for n in range(5)]
    told = read("\n".join(["kind;price;date", *lines, "sold;-1;2025-01", "bid;8000;2025-02", "sold;8100;2031"]))
    assert len(told.rows) == 6
    assert [e.line for e in told.errors] == [7, 9]


@settings(max_examples=300, deadline=None)
@given(st.text(alphabet=st.sampled_from('a1,;\t\n"\r 0.-£$€sold\x00'), max_size=60))
def test_whatever_is_pasted_nothing_breaks_and_what_is_taken_is_above_nought(text):
    told = read(text)
    assert all(row.price > 0 for row in told.rows)
    assert all(str(e.sentence) for e in told.errors)


@settings(max_examples=200, deadline=None)
@given(st.lists(st.text(max_size=12), min_size=2, max_size=8))
def test_whatever_stands_in_the_cells_nothing_breaks(cells):
    told = read("price;kind;date;score;fees;currency;like;numbers\n" + ";".join(cells))
    assert len(told.rows) + len(told.errors) <= 13


def test_a_dollar_sign_in_a_column_of_pounds_is_asked_about():
    read = read_comparables("kind;price;currency\nsold;$ 9000;GBP\nsold;$ 9000;USD\n")
    assert [row.currency for row in read.rows] == ["USD"]
    assert "The price is in $ and the currency column says GBP. Leave one." in str(read.errors[0].sentence)


def test_a_column_of_pictures_is_kept_as_it_stands():
    read = read_comparables("kind;price;picture\nsold;9000;https://example.org/heron.jpg\n")
    assert (read.rows[0].photograph, read.rows[0].note) == ("https://example.org/heron.jpg", "")
