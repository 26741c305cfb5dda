"""The time by this computer's clock, which nobody witnesses."""

from datetime import datetime


def now() -> str:
    """This computer's time with its offset, to the second, as ISO 8601."""
    return datetime.now().astimezone().isoformat(timespec="seconds")
