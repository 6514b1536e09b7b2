"""What is said on one device, pushed to the others that look at the same axle."""

import asyncio
from collections.abc import AsyncIterator
from typing import Final

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response, StreamingResponse
from starlette.routing import BaseRoute, Route

from axlewright.web.page import bay_of
from axlewright.web.pages.axle import slug_of

LOOK_EVERY: Final = 0.7  # s
BREATH_EVERY: Final = 20  # looks between two comments, so that a dead line is noticed


async def events(request: Request) -> Response:
    """Numbers of entries as they come, as server-sent events."""
    slug = slug_of(request)
    await run_in_threadpool(bay_of(request).draft, slug)  # 404 where there is no such axle
    if request.method == "HEAD":
        return Response(media_type="text/event-stream")
    return StreamingResponse(
        _numbers(request, slug),
        media_type="text/event-stream",
        headers={"Cache-Control": "no-store", "X-Accel-Buffering": "no"},
    )


async def _numbers(request: Request, slug: str) -> AsyncIterator[str]:
    bay = bay_of(request)
    seen, looks = -1, 0
    yield "retry: 1000\n\n"
    while not request.app.state.closing:
        last = await run_in_threadpool(bay.last_entry, slug)
        if last != seen:
            seen = last
            yield f"event: entry\ndata: {last}\n\n"
        elif looks % BREATH_EVERY == 0:
            yield ": still here\n\n"
        looks += 1
        await asyncio.sleep(LOOK_EVERY)


ROUTES: Final[tuple[BaseRoute, ...]] = (Route("/axle/{slug}/events", events),)
