"""A visitor without a browser: asks the application in process, as a browser would ask it."""

import re
import warnings
from urllib.parse import urlencode

with warnings.catch_warnings():
    warnings.simplefilter("ignore")  # the client's own notice about the library it stands on
    from starlette.testclient import TestClient

from axlewright.web import bay_app

PHONE = "192.0.2.7"  # set aside for examples: RFC 5737
TOKEN = re.compile(r'<meta name="token" content="([^"]+)"')
BASE = "http://127.0.0.1:8321"
FORM = {"Content-Type": "application/x-www-form-urlencoded"}


class Visitor:
    """One browser before one bay."""

    def __init__(self, bay, *, client="127.0.0.1", base=BASE, **asked):
        self.app = bay_app(bay, **asked)
        self.base = base
        self.client = TestClient(self.app, base, client=(client, 50000), follow_redirects=False)
        self.client.headers["Origin"] = base
        self.token = ""

    def get(self, path, **more):
        answer = self.client.get(path, **more)
        if found := TOKEN.search(answer.text):
            self.token = found[1]
        return answer

    def post(self, path, fields=None, *, token=None, **more):
        if not self.token:
            self.get("/words")
        if not self.token:
            self.get("/pair")
        said = {"token": self.token if token is None else token, **(fields or {})}
        if "files" in more:
            return self.client.post(path, data=said, **more)
        return self.client.post(
            path, content=urlencode(said), headers={**FORM, **more.pop("headers", {})}, **more
        )

    def say(self, slug, path, text, **more):
        return self.post(f"/axle/{slug}/say", {"path": path, "text": text, **more})
