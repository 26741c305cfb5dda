"""The fixed word lists of a profile. Each value is the word as it is shown and written in TOML."""

from __future__ import annotations

from enum import StrEnum


class SourceKind(StrEnum):
    """What kind of thing says so."""

    FACTORY_LIST = "factory list"
    MANUAL = "manual"
    CLUB_REGISTER = "club register"
    SPECIALIST = "specialist"
    OBSERVED = "observed original"
    PRESS = "press"
    GENERAL = "general"
    MEMORY = "memory"


GRADES: dict[SourceKind, int] = {
    SourceKind.FACTORY_LIST: 3,
    SourceKind.MANUAL: 3,
    SourceKind.CLUB_REGISTER: 2,
    SourceKind.SPECIALIST: 2,
    SourceKind.OBSERVED: 2,
    SourceKind.PRESS: 1,
    SourceKind.GENERAL: 1,
    SourceKind.MEMORY: 0,
}


class Assembly(StrEnum):
    """Parts that leave the machine, and change hands, together."""

    FRAME = "frame"
    ENGINE = "engine"
    GEARBOX = "gearbox"
    FRONT_END = "front end"
    REAR_END = "rear end"
    WHEELS = "wheels and brakes"
    TINWARE = "tinware"
    ELECTRICS = "electrics"
    CONTROLS = "controls"
    FINISH = "finish"
    FASTENERS = "fasteners"


class Safety(StrEnum):
    """The safety system an item belongs to."""

    BRAKE = "brake"
    STEERING = "steering"
    WHEEL = "wheel"
    TYRE = "tyre"
    FUEL = "fuel"
    FRAME = "frame"
    CONTROL = "control"


class Origin(StrEnum):
    """Where a form of a part came from."""

    FACTORY = "factory"
    OPTION = "factory option"
    DEALER = "dealer fit"
    SERVICE = "service replacement"
    PATTERN = "pattern part"
    OTHER_MODEL = "other model"
    OTHER_MAKER = "other maker"


class View(StrEnum):
    """An outline drawing on which an item has its spot."""

    LEFT = "left"
    RIGHT = "right"
    FRONT = "front"
    REAR = "rear"
    TOP = "top"


class RelationKind(StrEnum):
    """How two numbered places of one machine stand to each other as built."""

    SAME = "same number"
    SAME_SERIAL = "same serial, other prefix"
    CLOSE = "close"
    NEVER_EQUAL = "never equal"
    NONE = "no relation"
    UNKNOWN = "unknown"


class SegmentKind(StrEnum):
    """One stretch of a number."""

    LITERAL = "literal"
    TABLE = "table"
    DIGITS = "digits"


class Gives(StrEnum):
    """What a code of a segment's table says."""

    MODEL = "model"
    MODEL_YEAR = "model year"
    BUILD_YEAR = "year of build"
    MONTH = "month of build"
    WEEK = "week of build"
    DAY = "day of build"
    MARKET = "market"
    OTHER = "other"


class Unit(StrEnum):
    """Unit of a measure."""

    MM = "mm"
    INCH = "in"
    DEGREE = "degree"
    TOOTH = "teeth"
    TPI = "threads per inch"
    VOLT = "V"


class PartKind(StrEnum):
    """What a remedy puts on the machine."""

    ORIGINAL = "original"
    USED = "used"
    PATTERN = "pattern part"
    REPAIR = "repair"
    LEAVE = "leave"


class Need(StrEnum):
    """Why a remedy would be done."""

    SAFETY = "safety"
    CLAIM = "claim"
    TASTE = "taste"
