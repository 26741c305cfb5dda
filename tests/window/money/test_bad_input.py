"""What cannot be kept is said in one clear sentence, what was written stays, and nothing that was kept is lost."""

import pytest

from tests.window.money.hands import figures_at, fill, go

NOT_A_NUMBER = "is not a number. Write figures only"
NOT_A_DAY = "is not a day, month or year from 1880 to 2100"


def sentences(text):
    """How many sentences a note is of, the closing one left out."""
    return text.replace("Nothing was changed.", "").strip().rstrip(".").count(". ") + 1


def refused(house, field, text, words, most=2):
    """The field says so in at most so many sentences, and still holds what was written."""
    house.type(field, text)
    assert words in field.note.words
    assert sentences(field.note.words) <= most
    assert field.value() == text


@pytest.mark.parametrize(
    ("name", "text", "words"),
    [
        ("price_asked", "-5", "Price asked cannot be -5: enter at least 0."),
        ("price_asked", "lots", NOT_A_NUMBER),
        ("price_asked", "1e9", NOT_A_NUMBER),
        ("price_asked", "999999999999", "enter at most 100,000,000"),
        ("premium_percent", "150 %", "enter at most 100"),
        ("contingency_percent", "-1", "enter at least 0"),
        ("percent_a_year", "-150", "enter at least −100"),
        ("percent_a_point", "88", "enter at most 20"),
        ("labour_rate", "7,4000", "more than two decimals"),
    ],
)
def test_a_figure_that_cannot_be_kept(house, money, name, text, words):
    fill(house)
    before = house.record.money
    refused(house, go(house, "figures").fields[name], text, words)
    assert house.record.money == before


def test_a_percentage_may_be_written_with_its_sign(house, money):
    house.type(go(house, "figures").fields["premium_percent"], "12.5 %")
    assert str(house.record.money.premium_percent) == "12.5"


@pytest.mark.parametrize(
    ("text", "words"),
    [("2025-02-30", NOT_A_DAY), ("9999-01-01", NOT_A_DAY), ("1066", NOT_A_DAY), ("soon", NOT_A_DAY),
     ("05/06/2025", "can be read two ways")],
)  # fmt: skip
def test_a_day_that_is_none(house, money, text, words):
    fill(house)
    refused(house, go(house, "figures").words["effective_date"], text, words)
    assert house.record.money.effective_date == "2025-05-17"
    refused(house, go(house, "comparables").form.words["date"], text, words)
    assert house.record.comparables[0].date == "2025-03-08"


def test_a_day_to_come_is_no_day_of_a_price(house, money):
    fill(house)
    refused(house, go(house, "comparables").form.words["date"], "2031-01-01", "lies in the future")


@pytest.mark.parametrize("text", ["pounds", "USDX", "12"])
def test_a_currency_that_is_none(house, money, text):
    fill(house)
    words = "Write three letters, such as GBP or EUR."
    view = go(house, "figures")
    refused(house, view.currency, text, words)
    for field, written in zip(view.rates.fields[0], (text, "0.8", "2025"), strict=True):
        house.type(field, written)
    assert words in view.rates.note.words
    assert (house.record.money.currency, house.record.money.rates) == ("", ())
    refused(house, go(house, "comparables").form.currency, text, words)


def test_a_currency_is_read_small_and_by_its_sign(house, money):
    fill(house)
    field = go(house, "comparables").form.currency
    for written, code in (("eur", "EUR"), ("£", "GBP")):
        house.type(field, written)
        assert house.record.comparables[0].currency == code


def test_another_currency_told_says_that_nothing_was_converted_and_leaves_prices_in_their_own(house, money):
    fill(house)
    table = "kind;price;title\nsold;9000;Heron 600\n"
    go(house, "comparables").table.enter(table)
    assert house.record.comparables[-1].currency == "GBP"
    view = go(house, "figures")
    house.type(view.currency, "EUR")
    assert "none was converted" in view.currency.note.words
    assert "No rate for GBP" in go(house, "comparables").list.rows[house.record.comparables[-1].id].second


@pytest.mark.parametrize(
    ("three", "words"),
    [(("20", "10", "30"), "must rise from low over likely to high, not 20, 10, 30"), (("a", "2", "3"), NOT_A_NUMBER),
     (("-1", "2", "3"), "enter at least 0"), (("5", "", ""), "write low, likely and high")],
)  # fmt: skip
@pytest.mark.parametrize("which", ["parts", "hours"])
def test_low_likely_and_high_that_do_not_rise(house, money, three, words, which):
    card = figures_at(house, "rear-tyre")
    fields = getattr(card.form, which)
    for field, text in zip(fields, three, strict=True):
        house.type(field, text)
    assert words in card.form.trouble.words
    assert [field.value() for field in fields] == list(three)
    assert not any(r.figures and getattr(r.figures, which)[2] == 3 for r in house.record.remedies)


def test_hours_of_nought_are_no_labour_and_none_are_not_estimated(house, money):
    card = figures_at(house, "rear-tyre")
    for field in card.form.hours:
        house.type(field, "0")
    assert card.hours.words == "No labour."
    for field in card.form.hours:
        house.type(field, "")
    assert card.hours.words == "Labour not estimated."
    assert "New tyre, tube and band" in " ".join(money.views["remedies"].costs.missing.told)


def test_a_price_level_that_does_not_rise(house, money):
    view = go(house, "figures")
    for field, text in zip(view.level, ("20", "10", "30"), strict=True):
        house.type(field, text)
    assert "The price level must rise from low over likely to high, not 20, 10, 30" in view.level_note.words
    assert [field.value() for field in view.level] == ["20", "10", "30"]


@pytest.mark.parametrize(
    ("text", "words"), [("lots", NOT_A_NUMBER), ("-5", "enter at least 0"), ("1e9", NOT_A_NUMBER)]
)
def test_a_budget_of_nonsense(house, money, text, words):
    fill(house)
    refused(house, go(house, "plan").budget, text, words)
    assert house.record.money.budget == 1207


def test_a_rate_or_index_of_nought_is_asked_to_be_more(house, money):
    view = go(house, "figures")
    for field, text in zip(view.rates.fields[0], ("EUR", "0", "2025"), strict=True):
        house.type(field, text)
    assert "cannot be 0: enter more than 0" in view.rates.note.words
    for field, text in zip(view.index.fields[0], ("19", "5"), strict=True):
        house.type(field, text)
    assert "Year cannot be 19: enter at least 1880" in view.index.note.words


def test_an_adjustment_that_cannot_be_kept_and_a_reason_alone(house, money):
    fill(house)
    amount, why = go(house, "comparables").form.adjusting.lines["condition"]
    refused(house, amount, "-200 %", "enter at least −100")
    refused(house, amount, "5 percent", NOT_A_NUMBER)
    house.type(amount, "")
    house.type(why, "fresher paint")
    assert "a reason alone is not kept" in amount.note.words
    assert why.value() == "fresher paint"
    house.type(amount, "-5 %")
    assert amount.note.words == ""
    assert house.record.adjustments[0].reason == "fresher paint"


def test_without_a_comparable_each_view_says_what_to_enter(house, money):
    deal = go(house, "deal")
    assert deal.lacking.told == ["No comparable is entered: enter what other machines fetched."]
    assert not deal.chart.isVisible()
    figures = go(house, "figures")
    assert figures.print.off
    assert "No comparable is entered" in " ".join(figures.print_words.told)
    assert "Enter comparables" in go(house, "plan").how.key("pays").reason
