"""The cells of a pasted table of prices: each read as people write it, or one sentence that says how to mend it."""

from __future__ import annotations

import re
import unicodedata
from decimal import Decimal

from inspector.record.days import day_of, two_ways
from inspector.record.words import NumbersAgree, PriceKind
from inspector.texts import Say, say

KINDS = {
    PriceKind.ASKED: ("asked", "asking", "ask", "asking price", "offered", "for sale", "advertised"),
    PriceKind.BID: ("bid", "highest bid", "high bid", "not sold", "unsold", "bid not sold", "bid, not sold"),
    PriceKind.SOLD: ("sold", "sale", "paid", "hammer", "hammer price", "bought"),
}
KIND_OF = {word: kind for kind, words in KINDS.items() for word in words}
YES = frozenset({"yes", "y", "true", "1", "in", "incl", "incl.", "included", "inclusive", "with", "match", "matching"})
NO = frozenset({"no", "n", "false", "0", "out", "excl", "excl.", "excluded", "exclusive", "without", "not matching"})
UNKNOWN = frozenset({"", "?", "unknown", "not known", "-", "–"})
SIGNS = {"£": "GBP", "€": "EUR"}
FIGURES = re.compile(r"[0-9]+([.,][0-9]+)*")
CODE = re.compile(r"[A-Z]{3}")
MOST = Decimal(100_000_000)
MOST_FIGURES = 20


class Unread(ValueError):
    """A cell that cannot be taken; ``sentence`` says what stands there and how to mend it."""

    def __init__(self, sentence: Say) -> None:
        super().__init__(str(sentence))
        self.sentence = sentence


def plain(text: str) -> str:
    """The cell without spaces around it, wide figures and spaces made plain."""
    return " ".join(unicodedata.normalize("NFKC", text).replace("\u2212", "-").split())


def word(text: str) -> str:
    """The cell for comparing with words."""
    return plain(text).casefold()


def price(text: str) -> tuple[Decimal, str]:
    """A price, and the currency that stands with it ("" without one). Raises Unread."""
    left, currency = _without_currency(plain(text))
    if not left:
        raise Unread(say("There is no price. Write the figure that was asked, bid or paid."))
    if left.startswith(("-", "(")):
        raise Unread(say('The price "{text}" is below nought. Write it without the minus.', text=text.strip()))
    amount = number(left, thousands=True)
    if amount is None or len(left) > MOST_FIGURES or amount > MOST:
        raise Unread(say('The price "{text}" cannot be read. Write only figures, such as 7400.', text=text.strip()))
    if amount == 0:
        raise Unread(say("The price is nought. Write what was asked, bid or paid, or leave the line out."))
    return amount, currency


def number(text: str, *, thousands: bool) -> Decimal | None:
    """A number with decimal point or comma; None where it is none.

    Where points and commas both stand, the last is the decimal one. One alone with three figures behind it parts
    thousands where ``thousands`` is True.
    """
    joined = re.sub(r"(?<=[0-9])[ '’](?=[0-9]{3})", "", text).removesuffix(",-").removesuffix(".-")
    if not FIGURES.fullmatch(joined):
        return None
    marks = [c for c in joined if c in ".,"]
    if not marks:
        return Decimal(joined)
    last = marks[-1]
    whole, _, after = joined.rpartition(last)
    parts_thousands = len(after) == 3 and thousands and len(set(marks)) == 1
    if marks.count(last) > 1 or parts_thousands:
        # The same sign twice can only part thousands.
        return Decimal(re.sub("[.,]", "", joined)) if _grouped(joined) else None
    return Decimal(re.sub("[.,]", "", whole) + "." + after)


def currency(text: str) -> str:
    """A currency code, "" for an empty cell. Raises Unread."""
    found = plain(text)
    found = SIGNS.get(found, found.upper())
    if found and not CODE.fullmatch(found):
        raise Unread(say('The currency "{text}" is not known. Write three letters, such as GBP or EUR.', text=found))
    return found


def date(text: str, today: str) -> str:
    """A date as ISO 8601, "" for an empty cell. Raises Unread where it is none, two-fold, or after today."""
    found = plain(text)
    if not found:
        return ""
    if two_ways(found):
        raise Unread(say('The date "{text}" can be read two ways. Write it as 2025-06-05.', text=found))
    day = day_of(found)
    if day is None:
        raise Unread(say('The date "{text}" is not a day, month or year. Write it as 2025-06-05.', text=found))
    if today and day.written > today[: len(day.written)]:
        raise Unread(say('The date "{text}" lies in the future. Write the day of the price.', text=found))
    return day.written


def kind(text: str) -> PriceKind:
    """Asked, bid or sold. Raises Unread."""
    found = KIND_OF.get(word(text))
    if found is None:
        raise Unread(say('"{text}" says not whether it was asked, bid or sold. Write one of these.', text=text.strip()))
    return found


def grade(text: str, name: Say) -> int | None:
    """A whole number from 1 to 5, None for an empty cell. Raises Unread."""
    found = plain(text)
    if found in UNKNOWN:
        return None
    if found not in {"1", "2", "3", "4", "5"}:
        raise Unread(say('The {name} "{text}" is not a whole number from 1 to 5.', name=name, text=found))
    return int(found)


def score(text: str) -> Decimal | None:
    """A score from 0 to 100, None for an empty cell. Raises Unread."""
    found = plain(text).removesuffix("%").strip()
    if found in UNKNOWN:
        return None
    value = number(found, thousands=False)
    if value is None or value > 100:
        raise Unread(say('The score "{text}" is not a number from 0 to 100.', text=text.strip()))
    return value


def fees(text: str) -> tuple[bool, Decimal | None]:
    """Whether the buyer's fees are in the price, or in percent where they come on top. Raises Unread."""
    found = word(text)
    if found in YES:
        return True, None
    if found in NO or found in UNKNOWN:
        return False, None
    value = number(found.removesuffix("%").strip(), thousands=False)
    if value is None or value > 100:
        raise Unread(say('The fees "{text}" are neither "in" nor "out" nor a percentage.', text=text.strip()))
    return False, value


def agree(text: str) -> NumbersAgree:
    """Whether the numbers were said to agree. Raises Unread."""
    found = word(text)
    if found in UNKNOWN:
        return NumbersAgree.UNKNOWN
    if found in YES or found in NO:
        return NumbersAgree.YES if found in YES else NumbersAgree.NO
    raise Unread(say('Whether the numbers agree is "{text}". Write yes, no or unknown.', text=text.strip()))


def _without_currency(text: str) -> tuple[str, str]:
    for sign, code in SIGNS.items():
        if sign in text:
            return text.replace(sign, "").strip(), code
    if "$" in text:
        # More than one country has a dollar; the currency column has to say which.
        return text.replace("$", "").strip(), "$"
    found = re.match(r"^([A-Za-z]{3})\s*(.+)$", text) or re.match(r"^(.+?)\s*([A-Za-z]{3})$", text)
    if found is None:
        return text, ""
    code, rest = (found[1], found[2]) if found[1].isalpha() else (found[2], found[1])
    return rest.strip(), code.upper()


def _grouped(text: str) -> bool:
    return re.fullmatch(r"[0-9]{1,3}([.,][0-9]{3})+", text) is not None
