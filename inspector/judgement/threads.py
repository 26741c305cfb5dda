"""Which thread it can be, from diameter and pitch as measured; near twins are kept, never chosen between."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from inspector.judgement.thread_tables import INCH, THREADS, Thread
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable

WEAR = Fraction(35, 100)  # mm below nominal at which a bolt's crest is still found; common practice, no source
OVER = Fraction(5, 100)  # mm above nominal: plating and dirt; common practice, no source


@dataclass(frozen=True, slots=True)
class ThreadAnswer:
    """The threads that diameter and pitch allow, best fit first, and what is said of them."""

    threads: tuple[Thread, ...]
    sentence: Say
    reasons: tuple[Say, ...]


def identify(
    diameter: Fraction, pitch: Fraction, *, diameter_error: Fraction = Fraction(5, 100), pitch_error: Fraction,
    among: Iterable[Thread] = THREADS,
) -> ThreadAnswer:  # fmt: skip
    """Every thread that a male thread of that outer diameter and pitch can be; all in mm.

    The errors are the most that instrument and hand may be wrong. A crest is found up to ``WEAR`` below and ``OVER``
    above nominal. The flank angle is not measured, so threads that differ in it alone stay together.
    """
    fits = [t for t in among if _near(t, diameter, diameter_error) and abs(t.pitch - pitch) <= pitch_error]
    fits.sort(key=lambda t: (abs(t.pitch - pitch), abs(t.diameter - diameter), t.name))
    return ThreadAnswer(tuple(fits), _sentence(fits), tuple(_reasons(fits, diameter, pitch, pitch_error)))


def from_tpi(tpi: Fraction, error: Fraction = Fraction(1, 2)) -> tuple[Fraction, Fraction]:
    """Pitch in mm and its greatest error, from threads counted on an inch to within ``error``.

    Raises ValueError where the count is not above its error.
    """
    if tpi <= error:
        raise ValueError("count more threads than the count may be wrong by")
    pitch = INCH / tpi
    return pitch, max(INCH / (tpi - error) - pitch, pitch - INCH / (tpi + error))


def _near(thread: Thread, diameter: Fraction, error: Fraction) -> bool:
    return thread.diameter - WEAR - error <= diameter <= thread.diameter + OVER + error


def _sentence(fits: list[Thread]) -> Say:
    if not fits:
        return say("No thread of the tables fits; measure again, or it is worn, recut or of another standard.")
    if len(fits) == 1:
        return say("It fits {thread} and no other thread of the tables.", thread=fits[0].name)
    *first, last = (t.name for t in fits)
    return say("Cannot separate {first} and {last} at this accuracy.", first=", ".join(first), last=last)


def _reasons(fits: list[Thread], diameter: Fraction, pitch: Fraction, error: Fraction) -> Iterable[Say]:
    yield say(
        "Outer diameter {d:.2f} mm, pitch {p:.3f} mm, give or take {e:.3f} mm.",
        d=float(diameter), p=float(pitch), e=float(error),
    )  # fmt: skip
    for thread in fits:
        tpi = say(" ({tpi} threads to the inch)", tpi=thread.tpi) if thread.tpi else ""
        yield say(
            "{name}: {d:.2f} mm, pitch {p:.3f} mm{tpi}, {angle:g} degrees.",
            name=thread.name, d=float(thread.diameter), p=float(thread.pitch), tpi=tpi, angle=float(thread.angle),
        )  # fmt: skip
        if thread.spanner:
            yield say("Spanner as the pattern has it: {spanner}.", spanner=thread.spanner)
    if len({t.pitch for t in fits}) < len(fits) or _twins(fits):
        yield say("Some differ only in the flank angle or a little in pitch: try a nut known for what it is, by hand.")


def _twins(fits: list[Thread]) -> bool:
    return any(abs(a.pitch - b.pitch) < Fraction(5, 100) for a in fits for b in fits if a is not b)
