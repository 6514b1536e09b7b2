"""What a reader has picked: units and light, kept in a cookie and nowhere else."""

from dataclasses import dataclass
from typing import Final, Literal, TypeAlias, get_args

from starlette.requests import Request

Units: TypeAlias = Literal["metric", "us", "mixed"]
Theme: TypeAlias = Literal["device", "light", "dark"]

COOKIE: Final = "bay_settings"
YEAR: Final = 365 * 24 * 3600  # s
UNIT_WORDS: Final[dict[Units, str]] = {
    "metric": "metric",
    "us": "US customary",
    "mixed": "mixed, as a shop speaks",
}
THEME_WORDS: Final[dict[Theme, str]] = {
    "device": "as the device has it",
    "light": "paper",
    "dark": "night",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """Units to read in, and which of the two themes."""

    units: Units = "metric"
    theme: Theme = "device"

    def cookie(self) -> str:
        """The settings as the cookie holds them."""
        return f"{self.units}.{self.theme}"


def read_settings(units: str, theme: str) -> Settings:
    """Settings out of two words; a word that is none of the choices stands for the first."""
    return Settings(
        units=next((each for each in get_args(Units) if each == units), "metric"),
        theme=next((each for each in get_args(Theme) if each == theme), "device"),
    )


def settings_of(request: Request) -> Settings:
    """What the reader of a page has picked."""
    units, _, theme = request.cookies.get(COOKIE, "").partition(".")
    return read_settings(units, theme)
