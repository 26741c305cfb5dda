"""Walks a careful buyer through the inspection of an old motorcycle."""

import os

# Looking for plug-ins of pydantic reads the metadata of every installed package; the program uses none.
os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")

__version__ = "0.1.0"
