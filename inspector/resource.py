"""Where the files that ship with the program are, wherever the program runs from."""

import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent


class ResourceMissing(FileNotFoundError):
    """A file that ships with the program is not where it ships."""


def _homes() -> list[Path]:
    """The folders that may hold `resources` and `sample_profiles`, most particular first."""
    frozen = getattr(sys, "_MEIPASS", None)
    bundled = [Path(frozen), Path(frozen, "inspector", "_data")] if frozen else []
    return [*bundled, HERE / "_data", HERE.parent]


def _find(*parts: str) -> Path:
    for home in _homes():
        path = home.joinpath(*parts)
        if path.exists():
            return path
    tried = ", ".join(str(home) for home in _homes())
    raise ResourceMissing(
        f"{'/'.join(parts)} is missing from this installation (looked in {tried}): install the program again."
    )


def resource(*parts: str) -> Path:
    """Gives the existing path of a file or folder below resources/, or raises ResourceMissing."""
    return _find("resources", *parts)


def outline(view: str) -> Path | None:
    """Gives the outline drawing of that view that ships, or None where there is none."""
    try:
        return resource("outlines", f"{view}.svg")
    except ResourceMissing:
        return None


def sample_profiles() -> Path:
    """Gives the existing folder of the profiles that ship, or raises ResourceMissing."""
    return _find("sample_profiles")
