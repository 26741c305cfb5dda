"""Where the library is kept unless somebody says otherwise."""

from __future__ import annotations

import os
from pathlib import Path

GIVEN = "INSPECTOR_DATA"
NAME = "vintage-motorcycle-inspector"
PROFILES = "profiles"  # below the folder of a library: those that its records used


def data_folder() -> Path:
    """The folder named by INSPECTOR_DATA, or the system's folder for the data of this program; not made here."""
    given = os.environ.get(GIVEN, "").strip()
    if given:
        return Path(given).expanduser()
    from platformdirs import user_data_path

    return user_data_path(NAME, appauthor=False)
