"""The fixed word lists of a record. Each value is the word as it is shown and stored."""

from __future__ import annotations

from enum import StrEnum


class Mark(StrEnum):
    """What the person decided about an item."""

    PASS = "pass"
    DOUBT = "doubt"
    FAIL = "fail"


class Seen(StrEnum):
    """Whether an item was looked at. Five different things that print and count differently."""

    EXAMINED = "examined"
    NOT_CHECKED = "not checked"
    NOT_SEEN = "not seen"
    CANNOT_BE_SEEN = "cannot be seen"
    NOT_FITTED = "not fitted to this version"


class Sureness(StrEnum):
    """How sure the person is of a conclusion."""

    SURE = "sure"
    LIKELY = "likely"
    POSSIBLE = "possible"


class Conclusion(StrEnum):
    """What was concluded at an item; several can hold at once."""

    RIGHT_YEAR = "right for the year"
    RIGHT_ERA = "right for the era"
    YEAR_NOT_SHOWN = "right type but year not shown"
    WRONG_YEAR = "wrong year"
    OTHER_MODEL = "other model"
    OTHER_MAKER = "other maker"
    PATTERN = "pattern part"
    MODIFIED = "modified"
    ADAPTED = "wrong part adapted"
    WRONG_SIDE = "wrong side or end"
    MISSING = "missing"
    ADDED = "added"
    OPTION = "factory option either way"
    DEALER = "dealer or period fit"
    NOT_IDENTIFIED = "not identified"
    NEEDS_BOOK = "needs a book"


class Evidence(StrEnum):
    """How it shows."""

    STAMPED = "number stamped"
    CAST = "number cast"
    DATE_CODE = "date code"
    MAKERS_MARK = "maker's mark"
    SHAPE = "shape"
    MATERIAL = "material"
    MEASUREMENT = "measurement"
    FINISH = "finish"
    WEAR = "wear"
    TOOL_MARK = "tool or weld mark"
    ABSENCE = "absence"
    FUNCTION = "function"
    PAPER = "paper"
    TOLD = "told"
    MEMORY = "memory"
    BOOK = "book with page"


class Condition(StrEnum):
    """The state of a part, whatever its year."""

    SOUND = "sound"
    WORN = "worn"
    DAMAGED = "damaged"
    REPAIRED = "repaired"
    NOT_WORKING = "not working"


class HowRead(StrEnum):
    """How a number was read; as long as nobody said it, it was not read from the metal."""

    METAL = "from metal by me"
    PHOTOGRAPH = "from a photograph"
    PAPER = "from paper"
    TOLD = "told"
    NOT_SAID = "not said how"


class NumberState(StrEnum):
    """What was found where a number should be."""

    READ = "read"
    BLANK = "no number there"
    COVERED = "cannot be seen"
    GROUND = "ground or filed away"
    NOT_LOOKED = "not looked for"


class Clarity(StrEnum):
    """How well one figure was seen."""

    CLEAR = "clear"
    PROBABLE = "probable"
    UNREADABLE = "unreadable"


class StampSight(StrEnum):
    """Whether one feature of a stamping was seen."""

    SEE = "see"
    DO_NOT_SEE = "do not see"
    CANNOT_SEE = "cannot see"
    NOT_LOOKED = "not looked"


class PaperState(StrEnum):
    """What lay on the table."""

    ORIGINAL = "original"
    COPY = "copy"
    TOLD = "told"
    UNSAID = "not said whether original or copy"


class Role(StrEnum):
    """What a person is to the inspection."""

    INSPECTOR = "inspector"
    SELLER = "seller"
    BUYER = "buyer"
    OWNER = "owner"
    WITNESS = "witness"


class PatternPolicy(StrEnum):
    """How pattern parts count in the score; the user's choice, none is the right one."""

    PENALISED = "penalised"
    NEUTRAL = "neutral"
    ACCEPTED = "accepted"


class PriceKind(StrEnum):
    """What a comparable's price is."""

    ASKED = "asked"
    BID = "bid"
    SOLD = "sold"


class NumbersAgree(StrEnum):
    """What was said of a comparable's numbers."""

    YES = "yes"
    NO = "no"
    UNKNOWN = "unknown"


class Adjusts(StrEnum):
    """What an adjustment of a comparable allows for."""

    TIME = "time"
    CONDITION = "condition"
    CORRECTNESS = "correctness"
    NUMBERS = "numbers"
    EQUIPMENT = "equipment"
    OTHER = "other"


class Light(StrEnum):
    """Where the light came from in a photograph of a number."""

    LEFT = "from the left"
    RIGHT = "from the right"
    ABOVE = "from above"
    BELOW = "from below"
    ALONG = "along the surface"
    DAYLIGHT = "daylight, no lamp"


class Cleaning(StrEnum):
    """Whether the place was cleaned before the photograph of its number."""

    NOT = "not cleaned"
    BEFORE = "before cleaning"
    AFTER = "after cleaning"


class Drawn(StrEnum):
    """What is drawn into copies of a photograph, never into the kept file."""

    ARROW = "arrow"
    RING = "ring"
    WORDS = "words"


class Covered(StrEnum):
    """What a box hides on a sharing copy."""

    NUMBER = "number"
    PLATE = "plate"
    FACE = "face"
    NAME = "name"
    OTHER = "something else"
