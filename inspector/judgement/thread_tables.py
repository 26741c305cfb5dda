"""Screw threads by their standards: nominal diameter, pitch, and the spanner that fits.

Sources, as read: Whitworth (BS 84) from a table at studylib.net/doc/18133655; British Standard Fine from
en.wikipedia.org/wiki/British_Standard_Fine and tradeclassicbikes.co.uk/page17.htm; cycle thread (BS 811) from the
latter and mechanicalengineeringlearn.blogspot.com (2011/01); UNC and UNF (ASME B1.1) from
monsterbolts.com/pages/us-tpi, number 10's diameter from jrcengineering.com (thread pitch and screw types); British
Association (BS 93) from classicfasteners.com.au and a copy of the standard's text; metric (ISO 261) from a chart at
mlc.org.uk. Whitworth hexagons from dummett.net. Rows on which those tables disagree are left out: 1 inch cycle,
9/32 BSF, the 1-14 that some print as UNF; and number sizes whose diameter no table seen gives.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from inspector.texts import say

INCH = Fraction(254, 10)
TABLES = say(
    "Whitworth (BS 84), British Standard Fine, cycle (BS 811), BA (BS 93), UNC and UNF (ASME B1.1), metric (ISO 261), "
    "as printed at studylib.net, en.wikipedia.org, tradeclassicbikes.co.uk, monsterbolts.com, classicfasteners.com.au "
    "and mlc.org.uk, Whitworth spanners at dummett.net. Rows on which they disagree are left out."
)


@dataclass(frozen=True, slots=True)
class Thread:
    """One thread: its family, its size as it is called, diameter and pitch in mm, and flank angle in degrees."""

    family: str
    size: str
    diameter: Fraction
    pitch: Fraction
    angle: Fraction
    tpi: Fraction | None = None
    spanner: str = ""

    @property
    def name(self) -> str:
        """As a mechanic says it: ``1/4 BSF``, ``2 BA``, ``M6``."""
        return f"{self.size} {self.family}" if self.family not in ("metric coarse", "metric fine") else self.size


_WHITWORTH_HEXAGONS = {  # across flats in inches, by Whitworth bolt size
    "1/8": ".344", "3/16": ".445", "1/4": ".525", "5/16": ".600", "3/8": ".710", "7/16": ".820", "1/2": ".920",
    "9/16": "1.010", "5/8": "1.100", "11/16": "1.200", "3/4": "1.300",
}  # fmt: skip
_NEXT = {"1/4": "3/16", "5/16": "1/4", "3/8": "5/16", "7/16": "3/8", "1/2": "7/16", "9/16": "1/2", "5/8": "9/16",
         "11/16": "5/8", "3/4": "11/16", "7/8": "3/4"}  # fmt: skip

_INCH_ROWS = {
    "BSW": (Fraction(55), {"1/8": 40, "3/16": 24, "1/4": 20, "5/16": 18, "3/8": 16, "7/16": 14, "1/2": 12, "9/16": 12,
                           "5/8": 11, "3/4": 10, "7/8": 9, "1": 8}),
    "BSF": (Fraction(55), {"3/16": 32, "7/32": 28, "1/4": 26, "5/16": 22, "3/8": 20, "7/16": 18, "1/2": 16, "9/16": 16,
                           "5/8": 14, "11/16": 14, "3/4": 12, "7/8": 11, "1": 10}),
    "cycle": (Fraction(60), {"1/8": 40, "5/32": 32, "3/16": 32, "7/32": 26, "1/4": 26, "9/32": 26, "5/16": 26,
                             "3/8": 26, "7/16": 26, "1/2": 26, "9/16": 26, "5/8": 26, "11/16": 26, "3/4": 26}),
    "cycle 20 tpi": (Fraction(60), {"7/16": 20, "1/2": 20, "9/16": 20, "5/8": 20, "11/16": 20, "3/4": 20}),
    "UNC": (Fraction(60), {"1/4": 20, "5/16": 18, "3/8": 16, "7/16": 14, "1/2": 13, "9/16": 12, "5/8": 11, "3/4": 10,
                           "7/8": 9, "1": 8}),
    "UNF": (Fraction(60), {"1/4": 28, "5/16": 24, "3/8": 24, "7/16": 20, "1/2": 20, "9/16": 18, "5/8": 18, "3/4": 16,
                           "7/8": 14, "1": 12}),
}  # fmt: skip
_NUMBERED = {10: (Fraction("0.190"), 24, 32)}  # gauge number: diameter in inches, UNC and UNF threads per inch
_BA = {  # number: diameter and pitch in mm
    0: ("6.00", "1.00"), 1: ("5.30", "0.90"), 2: ("4.70", "0.81"), 3: ("4.10", "0.73"), 4: ("3.60", "0.66"),
    5: ("3.20", "0.59"), 6: ("2.80", "0.53"), 7: ("2.50", "0.48"), 8: ("2.20", "0.43"), 10: ("1.70", "0.35"),
    12: ("1.30", "0.28"),
}  # fmt: skip
_COARSE = {
    "3": "0.5", "3.5": "0.6", "4": "0.7", "5": "0.8", "6": "1", "8": "1.25", "10": "1.5", "12": "1.75", "14": "2",
    "16": "2", "18": "2.5", "20": "2.5", "22": "2.5", "24": "3",
}  # fmt: skip
_FINE = {"8": ("1", "0.75"), "10": ("1.25", "1"), "12": ("1.5", "1.25"), "14": ("1.5",), "16": ("1.5",),
         "18": ("2", "1.5"), "20": ("2", "1.5"), "24": ("2",)}  # fmt: skip


def _spanner(family: str, size: str) -> str:
    """The hexagon across flats where the table has it; BSF and cycle take the next smaller Whitworth size."""
    whitworth = size if family == "BSW" else _NEXT.get(size, "")
    flats = _WHITWORTH_HEXAGONS.get(whitworth) if family in ("BSW", "BSF", "cycle", "cycle 20 tpi") else None
    return f"{whitworth} Whitworth, {flats} in across flats" if flats else ""


def _inch_threads() -> list[Thread]:
    return [
        Thread(family, f"{size} in" if size == "1" else size, Fraction(size) * INCH, INCH / tpi, angle, Fraction(tpi),
               _spanner(family, size))
        for family, (angle, rows) in _INCH_ROWS.items()
        for size, tpi in rows.items()
    ]  # fmt: skip


def _numbered_threads() -> list[Thread]:
    return [
        Thread(family, f"#{number}", diameter * INCH, INCH / tpi, Fraction(60), Fraction(tpi))
        for number, (diameter, *both) in _NUMBERED.items()
        for family, tpi in zip(("UNC", "UNF"), both, strict=True)
    ]


def _metric_threads() -> list[Thread]:
    coarse = [Thread("metric coarse", f"M{d}", Fraction(d), Fraction(p), Fraction(60)) for d, p in _COARSE.items()]
    fine = [
        Thread("metric fine", f"M{d} x {p}", Fraction(d), Fraction(p), Fraction(60))
        for d, ps in _FINE.items()
        for p in ps
    ]
    return coarse + fine


def _ba_threads() -> list[Thread]:
    return [Thread("BA", str(n), Fraction(d), Fraction(p), Fraction("47.5")) for n, (d, p) in _BA.items()]


THREADS: tuple[Thread, ...] = (*_inch_threads(), *_numbered_threads(), *_ba_threads(), *_metric_threads())
