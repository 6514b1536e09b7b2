"""A small catalogue and a rig and a change that fit it."""

from axlewright.rig.field import Field


def field(path, kind, example, **more):
    return Field(
        path=path, kind=kind, asks=f"What is {path}?", how="Measure it.", example=example, **more
    )


CATALOGUE = (
    field("held_by.arms", "word", "three arms", choices=("four arms", "three arms", "leaves")),
    field("tyre.sidewall", "tyre", "255/85R16", required=True),
    field("hub_height.left", "length", "395 mm", low=0.2, high=0.8, required=True),
    field("hub_height.right", "length", "395 mm", low=0.2, high=0.8, required=True),
    field("tube.girth.left", "length", "239 mm", low=0.12, high=0.55, required=True),
    field("tube.girth.right", "length", "239 mm", low=0.12, high=0.55, required=True),
    field("tube.wall", "length", "6 mm", low=0.0015, high=0.03),
    field("wheel.offset", "offset", "ET 0 mm", low=-0.15, high=0.15),
    field("wheel.width", "length", "8 in", low=0.1, high=0.45),
    field("weight.axle", "weight", "1150 kg", low=2e3, high=6e4, required=True),
    field("engine.torque", "torque", "360 N m", low=40.0, high=3e3),
    field("gear.ratio", "ratio", "4.10", low=2.0, high=9.0),
    field("wheel.studs", "count", "6", low=4.0, high=12.0),
    field("drive.unlocking_hubs", "yes", "yes", axle="front", required=True),
    field("steering.tie_rod", "length", "32 mm", low=0.01, high=0.08, axle="front"),
    field("steering.drag_link", "length", "32 mm", low=0.01, high=0.08, axle="front"),
    field("steering.arm", "length", "170 mm", low=0.05, high=0.4, axle="front"),
    field("alignment.toe", "toe", "3 mm at 890 mm", low=-0.1, high=0.1, axle="front"),
    field("track_bar.on_axle", "word", "right", choices=("left", "right")),
    field("use.from_help", "distance", "60 km", low=0.0, high=5e6),
    field("rig.remark", "text", "a grey one"),
)

RIG = """\
axlewright = 1
[rig]
name = "Heron"
axle = "front"
remark = "the one with the rack"
[tyre]
sidewall = "37x12.50R17LT 124Q"
[hub_height]
left = "432 mm"
right = "16 7/8 in"
[tube]
girth.left = "about 9 7/16 in"
girth.right = "239 mm ± 2"
wall = "5-8 mm"
[wheel]
offset = "backspacing 4 1/2 in"
width = "7 in"
studs = 6
[weight]
axle = "1510 kg"
[gear]
ratio = 4.56
[drive]
unlocking_hubs = true
[steering]
tie_rod = "don't know"
[track_bar]
on_axle = "Right"
[[condition]]
part = "track-bar bracket"
what = "mended"
where = "right"
date = 2026-05-03
note = "welded in camp"
[[condition]]
part = "left tube"
what = "never looked at"
"""

CHANGE = """\
axlewright_change = 1
name = "more tyre"
[[step]]
set = "tyre.sidewall"
to = "255/85R16"
[[step]]
add = "engine.torque"
to = "250 ft-lb"
[[step]]
remove = "wheel.offset"
"""
