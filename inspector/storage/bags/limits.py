"""How much a bag from elsewhere may ask of this computer."""

MOST_ENTRIES = 20_000
MOST_DIRECTORY = 16 << 20  # bytes of a zip's own list of its files
MOST_TOTAL = 64 << 30  # bytes unpacked
MOST_NAME = 1024  # bytes of a path in a bag
MOST_PART = 240  # bytes of one part of a path: 255 on most systems, with room for what a program adds
MOST_TAG = 16 << 20  # bytes of a list or note of the bag itself
MOST_RECORD = 16 << 20  # bytes of a record; read as data it takes some twenty times as much memory
MOST_HISTORY = 128 << 20  # bytes of its history
MOST_VALUES = 300_000  # in a record or an edit; each takes far more memory as data than as text
MOST_WORK = 50_000_000  # entries gone through to follow the history, which takes some seconds
MOST_PROFILE, MOST_PROFILE_FILES = 256 << 20, 2_000
MOST_FAULTS = 1_000  # told of one bag
MOST_RATIO = 200  # unpacked to packed; text packs to a fifth, a trap to a thousandth
SMALL = 1 << 20  # bytes below which no ratio matters
CHUNK = 1 << 20
