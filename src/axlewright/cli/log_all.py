"""Every command of `axlewright log`, in one place."""

from axlewright.cli import log_carry, log_more
from axlewright.cli.log import app

__all__ = ["app", "log_carry", "log_more"]
