"""Words for a pass phrase: short, unlike one another, easy to say across a yard."""

from typing import Final

WORDS: Final[tuple[str, ...]] = tuple(
    """
    acorn adobe alder amber anchor antler apron arbor atlas attic autumn awning
    badger balsa banjo barley barrow basin basket beacon beaver bellow birch bison
    bobbin bonnet boulder bracken bramble brandy bridge bronze bucket buffalo burlap butter
    cabin cactus camel candle canoe canvas carbon carrot castle cedar cellar chalk
    cherry chimney cider cinder clover cobalt cobble comet copper coral corner cotton
    coyote cradle crane crater cricket crystal curlew cymbal
    dahlia daisy dapple delta desert diesel dingo dolphin donkey dragon drum dune
    eagle easel echo eland elder ember emerald engine ermine estuary
    fable falcon fathom feather fennel ferry fiddle finch fjord flannel flint forest
    fossil fountain foxglove freckle
    gable galley garden garnet gazelle geyser ginger glacier goblet gopher gorse granite
    gravel grotto guitar gully
    hamlet hammock harbour harvest hazel heather helmet hermit heron hickory hollow honey
    hornet hurdle husky
    ibex igloo indigo inlet island ivory
    jackal jacket jaguar jasmine jetty jigsaw jungle juniper
    kayak kennel kernel kestrel kettle kiln kitten kiwi
    ladder lagoon lantern larch lava lemon lentil leopard lichen lilac linen lizard
    lobster locket lotus lumber lupin lynx
    magnet magpie mallet mango maple marble marsh meadow melon mercury meteor mitten
    mongoose moss muffin mustard
    napkin nectar nettle nickel noodle nutmeg
    oasis oatmeal ocean olive onion opal orchard osprey otter oyster
    paddle palm panther parsley pasture pebble pelican pepper pewter pigeon pillow pine
    plateau plum pocket pollen poplar prairie pumpkin puzzle python
    quarry quartz quilt quince quiver
    rabbit radish raven ribbon ripple river rocket rowan rubber russet
    saddle saffron salmon sandal satin sequoia shadow shovel silver sparrow spruce squirrel
    summit sunset
    tangerine teapot thicket thistle thunder timber topaz trellis tulip tundra turnip turtle
    umbrella urchin valley velvet violet viper walnut walrus willow winter yarrow zephyr
    """.split()  # noqa: SIM905  (283 lines would say no more)
)
