"""Walks a careful buyer through the inspection of an old motorcycle."""

__version__ = "0.1.0"
