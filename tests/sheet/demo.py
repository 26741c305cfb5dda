"""The demo machine as a profile and a record, to make sheets of what a whole inspection says."""

from functools import lru_cache
from pathlib import Path
from tempfile import TemporaryDirectory

from inspector.demo import put_demo
from inspector.judgement.judge import judge
from inspector.profile.read import read_profile
from inspector.record.reading import Reading, figures_of
from inspector.sheet.compose import seller_sheet
from inspector.storage.library import Library
from tests.sheet import made


@lru_cache(maxsize=1)
def machine():
    """The profile and the record of the demo machine, nothing noted about money."""
    with TemporaryDirectory() as folder, Library.open(Path(folder), lambda: made.MADE_AT) as library:
        loaded = library.load(put_demo(library, money=False))
        return read_profile(loaded.profile_folder).profile, loaded.record


def read_as(**numbers):
    """The demo machine with these readings only: place and number as typed."""
    _, record = machine()
    readings = tuple(
        Reading(id=place, place=place, figures=figures_of(typed), by="inspector") for place, typed in numbers.items()
    )
    return record.model_copy(update={"readings": readings})


def sheet(record=None, profile=None):
    """The seller's copy of the demo machine, or of another record, without photographs."""
    own, whole = machine()
    profile, record = profile or own, record or whole
    return seller_sheet(profile, record, judge(profile, record), {}, None, made.MADE_AT, 1)


def block(of, kind):
    """The block of that kind; of several the last, which tells in full what the first page tells in short."""
    *_, found = (one for one in of.blocks if isinstance(one, kind))
    return found
