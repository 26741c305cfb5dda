"""How this computer's place writes amounts, currencies and days, and how what is typed is read."""

from decimal import Decimal
from functools import lru_cache

from PySide6.QtCore import QLocale

from inspector.amounts import SPACE, Amounts
from inspector.judgement.day_words import day_words
from inspector.record import csv_cells as cells
from inspector.record.refusing import EditRefused
from inspector.texts import say, tr
from inspector.window.look.fields import LineField

MINUSES = "-\u2212\u2013"


def amounts_of(locale: QLocale) -> Amounts:
    """Amounts as that place writes them."""
    group = locale.groupSeparator()
    return Amounts(SPACE if group.isspace() else group, locale.decimalPoint())


@lru_cache
def currency_name(code: str) -> str:
    """The currency by its name in the language of this computer; its three letters where no place names it."""
    own, every = QLocale(), QLocale.Country.AnyCountry
    language = QLocale.Language.English if own.language() == QLocale.Language.C else own.language()
    for place in QLocale.matchingLocales(language, QLocale.Script.AnyScript, every):
        if place.currencySymbol(QLocale.CurrencySymbolFormat.CurrencyIsoCode) == code:
            name = place.currencySymbol(QLocale.CurrencySymbolFormat.CurrencyDisplayName)
            return f"{name} ({code})" if name else code
    return code


def figure(text: str, *, thousands: bool = True) -> Decimal | None:
    """What is written as a Decimal, None where nothing is; a minus is read, for whoever keeps it to refuse.

    One sign with three figures behind it parts thousands where ``thousands`` is True. Raises EditRefused.
    """
    plain = cells.plain(text)
    if not plain:
        return None
    minus = plain[0] in MINUSES
    number = cells.number(plain[1:].strip() if minus else plain, thousands=thousands)
    if number is None or len(plain) > cells.MOST_FIGURES:
        raise EditRefused(say('"{text}" is not a number. Write figures only, such as 7400. Nothing was changed.',
                              text=text.strip()[:40]))  # fmt: skip
    if thousands and int(number.as_tuple().exponent) < -2:
        # As 7,4000, where a sign that parts thousands was written before a further figure.
        raise EditRefused(say('"{text}" has more than two decimals, or a sign in the wrong place. Nothing was changed.',
                              text=text.strip()[:40]))  # fmt: skip
    return -number if minus else number


def write(field: LineField, value: Decimal | None, amounts: Amounts, *, thousands: bool = True) -> None:
    """The field holds the figure, written as here; while it is being written in, it stays as the hand wrote it."""
    if value is not None and field.control.hasFocus():
        try:
            same = figure(field.value(), thousands=thousands) == value
        except EditRefused:
            same = False
        if same:
            field.set_value(field.value())
            return
    field.set_value("" if value is None else amounts.exact(value))


def when(text: str) -> str:
    """A day, month or year as people write it; what is none as it stands."""
    return tr(day_words(text))
