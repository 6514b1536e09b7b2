"""Where each page of the bay stands."""

from typing import Final

from starlette.routing import BaseRoute

from axlewright.web.pages import axle, axles, live, pair, words

ROUTES: Final[tuple[BaseRoute, ...]] = (
    *axles.ROUTES,
    *axle.ROUTES,
    *live.ROUTES,
    *pair.ROUTES,
    *words.ROUTES,
)
