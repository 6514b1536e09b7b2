"""Every page of the bay, and the axles that are needed to see each at its fullest."""

# What answers, but is no page: parts, files and streams.
NO_PAGES = {
    "/axle/{slug}/pieces",
    "/axle/{slug}/events",
    "/axle/{slug}/rig.toml",
    "/axle/{slug}/try/now",
    "/axle/{slug}/answer.json",
    "/axle/{slug}/take.html",
    "/axle/{slug}/paper/report.pdf",
    "/axle/{slug}/paper/sheet.pdf",
    "/axle/{slug}/paper/take.pdf",
}
PAGES = {
    "axles": "/",
    "your-axle-begun": "/axle/{crake}",
    "your-axle": "/axle/{heron}",
    "your-axle-stopped": "/axle/{plover}",
    "answer": "/axle/{heron}/answer",
    "answer-not-yet": "/axle/{crake}/answer",
    "answer-stopped": "/axle/{stork}/answer",
    "why": "/axle/{heron}/why/1",
    "try": "/axle/{heron}/try",
    "try-a-change": "/axle/{heron}/try?tube.wall=8.0&weight.axle=1700",
    "paper": "/axle/{heron}/paper",
    "words": "/words",
    "on-a-phone": "/pair",
    "not-there": "/no-such-page",
}


def furnish(page):
    """Begin the axles that the pages show; gives the slug of each."""
    made = {}
    page.goto("/")
    page.get_by_role("button", name="Heron").click()
    page.wait_for_url("**/axle/**")
    made["heron"] = _slug(page)
    _keep_a_change(page, made["heron"])
    page.goto("/")
    page.get_by_role("button", name="Stork").click()
    page.wait_for_url("**/axle/**")
    made["stork"] = _slug(page)
    _list_a_crack(page, "end forging")
    made["crake"] = _begun(page, "Crake", "rear")
    page.locator("#q-3 > summary").click()
    field = page.locator("#in-hub-height-left")
    field.fill("395 cm")
    field.press("Enter")
    page.locator(".fault").wait_for()
    made["plover"] = _begun(page, "Plover", "front")
    _list_a_crack(page, "knuckle")
    return made


def _begun(page, name, axle):
    page.goto("/")
    page.get_by_label("What do you call this rig?").fill(name)
    page.get_by_role("radio", name=axle, exact=True).check()
    page.get_by_role("button", name="Begin").click()
    page.wait_for_url("**/axle/**")
    return _slug(page)


def _slug(page):
    return page.url.rpartition("/")[2]


def _list_a_crack(page, part):
    page.locator("#q-12").evaluate("it => it.open = true")
    page.get_by_label("Which part?").fill(part)
    page.get_by_label("What was found, or done?").select_option("cracked")
    page.get_by_role("button", name="List it").click()
    page.locator(".stop").wait_for()


def _keep_a_change(page, slug):
    page.goto(f"/axle/{slug}/try?tube.wall=8.0&weight.axle=1700")
    page.get_by_label("Keep this change as").fill("thicker wall, roof tent")
    page.get_by_role("button", name="Keep it").click()
    page.locator("#kept table").wait_for()
