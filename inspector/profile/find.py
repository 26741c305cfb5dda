"""Profiles on disk: where there are some, and a new one to begin with."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable
from pathlib import Path

from inspector.profile.read import NAME

_ID = re.compile(r"[a-z0-9][a-z0-9._-]{0,79}")


def find_profiles(roots: Iterable[Path]) -> tuple[Path, ...]:
    """The folders that hold a profile: each root itself and those right below it, by name."""
    found: dict[Path, None] = {}
    for root in roots:
        for folder in (root, *_below(root)):
            if (folder / NAME).is_file():
                found[folder] = None
    return tuple(found)


def _below(root: Path) -> list[Path]:
    try:
        return sorted(folder for folder in root.iterdir() if folder.is_dir())
    except OSError:
        return []


def new_profile(folder: Path, id: str, title: str) -> Path:
    """Writes a small valid profile to begin with and gives its path.

    Raises ValueError for an id or title that a profile cannot have, FileExistsError when there is
    a profile already, OSError when the folder cannot be written.
    """
    if not _ID.fullmatch(id):
        raise ValueError(f'"{id}" cannot be an id: use small letters, figures, dot, dash and underscore.')
    title = " ".join(title.split())
    if not 0 < len(title) <= 4000:
        raise ValueError("A profile needs a title of at most 4000 letters.")
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / NAME
    text = _STARTER.replace("@ID@", id).replace("@TITLE@", json.dumps(title, ensure_ascii=False))
    with path.open("x", encoding="utf-8", newline="\n") as file:
        file.write(text)
    return path


_STARTER = """\
# A profile: what is documented about one model family. Lines that start with # are notes.
# Every dated fact names its sources. Where nobody says so, leave it out: a gap is no fault.
format = 1
id = "@ID@"
version = "0.1"
title = @TITLE@
maker = "Maker, to be written"
models = []
model_years = [1960, 1960]      # first and last model year, both included
season_starts = 9               # month; above 6 it lies in the year before the model year
open_questions = ["What did the maker's own lists say?"]

[[author]]
name = "Author, to be written"

# Who says so. Kinds: factory list, manual, club register, specialist, observed original,
# press, general, memory. Memory is shown as having no source.
[[source]]
id = "parts-list"
kind = "factory list"
title = "Parts list, to be named with its number and date"

# Where a number is stamped. Without a rule it is written down and not explained.
[[place]]
id = "engine"
name = "Engine number"
where = "To be written: which case half, which side, how far from what"
assembly = "engine"

# Stations are where one stands on the walk round; each holds items in the order of the walk.
[[station]]
id = "numbers"
name = "Numbers"
view = "left"

[[station.item]]
id = "engine-number"
name = "Engine number"
question = "What is stamped, figure by figure?"
how = "Lamp from one side, then from the other. Wipe with a cloth only, and ask first."
assembly = "engine"
place = "engine"
identity = true

[[station]]
id = "left"
name = "Left side"
view = "left"

[[station.item]]
id = "carburettor"
name = "Carburettor"
question = "Which make and type is fitted?"
how = "Read the letters cast on the body."
assembly = "engine"

# One form of the part. Add another [[station.item.variant]] for each other form.
# [[station.item.variant]]
# id = "first"
# name = "First form"
# tell = "how to tell it from the others"
# years = { from = 1960, to = 1960 }
# sources = ["parts-list"]
# at = "page 12"
"""
