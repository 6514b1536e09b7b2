"""Every page of the bay, and the axles that are needed to see each at its fullest."""

# What answers, but is no page: parts, files and streams.
NO_PAGES = {
    "/axle/{slug}/pieces",
    "/axle/{slug}/events",
    "/axle/{slug}/rig.toml",
}
PAGES = {
    "axles": "/",
    "your-axle-begun": "/axle/{crake}",
    "your-axle": "/axle/{heron}",
    "your-axle-stopped": "/axle/{plover}",
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
    made["crake"] = _begun(page, "Crake", "rear")
    page.locator("#q-3 > summary").click()
    field = page.locator("#in-hub-height-left")
    field.fill("395 cm")
    field.press("Enter")
    page.locator(".fault").wait_for()
    made["plover"] = _begun(page, "Plover", "front")
    page.locator("#q-12 > summary").click()
    page.get_by_label("Which part?").fill("knuckle")
    page.get_by_label("What was found, or done?").select_option("cracked")
    page.get_by_role("button", name="List it").click()
    page.locator(".stop").wait_for()
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
