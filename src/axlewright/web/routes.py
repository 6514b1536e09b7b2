"""Where each page of the bay stands."""

from typing import Final

from starlette.routing import BaseRoute

from axlewright.web.pages import (
    align,
    answer,
    archive,
    axle,
    axles,
    been,
    bent,
    carry,
    deciding,
    ends,
    hit,
    live,
    looks,
    measure,
    moves,
    ordering,
    pair,
    paper,
    shook,
    swap,
    trying,
    words,
)

ROUTES: Final[tuple[BaseRoute, ...]] = (
    *axles.ROUTES,
    *axle.ROUTES,
    *answer.ROUTES,
    *trying.ROUTES,
    *looks.ROUTES,
    *hit.ROUTES,
    *been.ROUTES,
    *archive.ROUTES,
    *measure.ROUTES,
    *bent.ROUTES,
    *shook.ROUTES,
    *paper.ROUTES,
    *moves.ROUTES,
    *deciding.ROUTES,
    *align.ROUTES,
    *ends.ROUTES,
    *carry.ROUTES,
    *live.ROUTES,
    *pair.ROUTES,
    *ordering.ROUTES,
    *swap.ROUTES,
    *words.ROUTES,
)
