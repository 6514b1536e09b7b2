"""The bay: the same actions and views as pages in a browser, on the desk and on the phone."""

from axlewright.web.app import bay_app
from axlewright.web.serving import serve_bay

__all__ = ["bay_app", "serve_bay"]
