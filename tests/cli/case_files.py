"""Cases to try the program with: the pilot boat's, and changed copies of it."""

import copy
import json

from program import ROOT

PILOT_BOAT = ROOT / "examples" / "pilot-boat" / "case.json"

ABSENT = object()


def pilot_boat():
    return json.loads(PILOT_BOAT.read_text(encoding="utf-8"))


def changed(changes, case=None):
    """A copy of a case, the pilot boat's where none is given, with values put at JSON pointers.

    Objects on the way are made where they are missing; ABSENT takes a value out."""
    out = copy.deepcopy(pilot_boat() if case is None else case)
    for pointer, value in changes.items():
        *way, last = pointer.strip("/").split("/")
        node = out
        for step in way:
            node = node[int(step)] if isinstance(node, list) else node.setdefault(step, {})
        key = int(last) if isinstance(node, list) else last
        if value is ABSENT:
            del node[key]
        else:
            node[key] = copy.deepcopy(value)
    return out


def failing():
    """A case that fails: the panes are too thick for their grooves."""
    return changed({"/frame/groove/width": 3.2})


RECTANGLE = {"/plan": {"shape": "rectangle", "width": 520, "depth": 240}}
EXTRUDED = {"/panes/0/sheet": "extruded-acrylic"}
INCHES = {
    "/units": "in",
    "/plan": {"shape": "bow-front", "width": "20 1/2 in", "depth": 9.5,
              "front": {"radius": "16 9/16\""}},
    "/frame/clear_height": "1 ft 3 in",
    "/frame/base": {"thickness": "3/4 in", "margin": "15/16 in"},
    "/frame/top": {"thickness": 1, "margin": "15/16 in"},
    "/frame/post/width": "1 5/8\"",
    "/frame/post/depth": "1 5/8\"",
    "/frame/groove": {"width": "3/16 in", "depth": {"base": "1/4 in", "top": "1/2 in",
                                                   "post": "19/32 in"}},
    "/panes": [{"side": side, "sheet": "cast-acrylic", "thickness": "1/8 in"}
               for side in ("front", "left", "right", "back")],
    "/fit": {"end_clearance": "1/8 in", "top_clearance": "3/16 in", "least_engagement": "1/8 in"},
    "/form": {"skin": {"thickness": "1/8 in"}, "cover": {"thickness": "1/32 in"}, "overrun": 2.5,
              "ribs": {"thickness": "3/4 in", "depth": 3, "max_spacing": "7 in"}},
    "/oven": ABSENT,
    "/stock": ABSENT,
    "/cutter": {"diameter": "1/8 in", "spacing": "5/16 in"},
}
# A ship model in the case, and what the material costs.
HELD = {
    "/contents": {"mass": "12 kg", "height": 150, "x": 30, "y": 100},
    "/prices": {"currency": "EUR", "waste": "20 %",
                "materials": [{"material": "cherry", "price": "2400 /m3"},
                              {"material": "cast-acrylic", "thickness": 3, "price": "93 /sheet"},
                              {"material": "plywood", "price": "31 /m2"}],
                "hardware": [{"name": "brass screw 4 x 40", "count": 16, "price": "0.15 /each"}]},
}


def hold(section, kind, loading):
    return {"/frame/post/section": section, "/frame/post/hold": kind, "/frame/loading": loading}


# By name; each is a case that can be made, whether or not its checks pass.
VARIANTS = {
    "pilot boat": {},
    "front by rise": {"/plan/front": {"rise": 90}},
    "front by sweep": {"/plan/front": {"sweep": 75}},
    "front by length": {"/plan/front": {"length": 560}},
    "shallow front": {"/plan/front": {"rise": 4}},
    "half-round front": {"/plan/front": {"radius": 260}},
    "rise over half the width": {"/plan/front": {"rise": 300}},
    "more than half a turn": {"/plan/front": {"sweep": 250}},
    "inches": INCHES,
    "rectangle": RECTANGLE,
    "open back": {"/panes": pilot_boat()["panes"][:3]},
    "front alone": {"/panes": pilot_boat()["panes"][:1]},
    "extruded, along the length": EXTRUDED | {"/panes/0/along": "length"},
    "extruded, along the height": EXTRUDED | {"/panes/0/along": "height"},
    "trim after": {"/blank": {"method": "trim-after", "trim": 12}},
    "as cut": {"/panes/0/blank": {"length": 551, "width": 399.5}},
    "size of its own": {"/panes/0/size": {"length": 541, "height": 392}},
    "measured sheet": {
        "/panes/0/sheet": "batch-7",
        "/sheets": {"batch-7": {"like": "cast-acrylic",
                                "shrink": {"along": "1.3 %", "across": "1.45 %",
                                           "spread": {"along": "0.2 %", "across": "0.1 %"}},
                                "springback": {"radius": "2 %", "spread": "0.5 %"}}}},
    "no oven": {"/oven": ABSENT},
    "square posts": hold("square", "groove", "slide-in"),
    "round posts": hold("round", "groove", "slide-in"),
    "fitted posts, beaded": hold("fitted", "rabbet", "beaded"),
    "square posts, beaded": hold("square", "rabbet", "beaded"),
    "round posts, beaded": hold("round", "rabbet", "beaded"),
    "lift and drop": hold("fitted", "rabbet", "lift-and-drop"),
    "rectangle, lift and drop": RECTANGLE | hold("square", "rabbet", "lift-and-drop"),
    "rectangle, round posts, beaded": RECTANGLE | hold("round", "rabbet", "beaded"),
    "thin cutter": {"/cutter/diameter": 1},
    "deep fitted posts": {"/frame/post/depth": 60, "/frame/base/margin": 40,
                          "/frame/top/margin": 40},
    # Grooves that run on past the corner point, so that their arc turns more than the front's.
    "half-round front, thin posts": {
        "/plan/front": {"radius": 260},
        "/frame/post": {"width": 14, "section": "fitted", "hold": "rabbet"},
        "/frame/groove/depth/post": 6, "/fit/end_clearance": 1},
    # Recesses whose outlines all but touch in the corners.
    "beads in a small case": {
        "/plan/width": 174.1, "/plan/front": {"rise": 86.8759},
        "/frame/post": {"width": 58.03, "section": "square", "hold": "groove"},
        "/frame/groove": {"width": 7.5, "depth": {"base": 3, "top": 2.9, "post": 3.68}},
        "/frame/loading": "beaded", "/cutter/diameter": 4},
    "shelf on rails all round": RECTANGLE | {
        "/shelves": [{"height": 120, "material": "float-glass", "thickness": 6, "load": "2 kg",
                      "support": "rails"}]},
    "shelves on pins and rails": {
        "/shelves": [{"height": 120, "material": "plywood", "thickness": 12, "load": "5 lb"},
                     {"height": "10 in", "material": "cherry", "thickness": 12, "load": "3 kg",
                      "support": "rails", "clearance": 4}]},
    "round posts, beaded, a shelf on rails": hold("round", "rabbet", "beaded") | {
        "/shelves": [{"height": 200, "material": "cast-acrylic", "thickness": 20, "load": "12 oz",
                      "support": "rails"}]},
    "low window": {"/frame/clear_height": 1},
    "held and priced": HELD,
    "held, at half height": {"/contents": {"mass": "26 lb"}},
    "tall and fixed": {"/plan/depth": 130, "/plan/front": {"rise": 20},
                       "/frame/clear_height": 1500, "/stand": {"fixed": "wall"}},
    "tall and free": {"/plan/depth": 130, "/plan/front": {"rise": 20},
                      "/frame/clear_height": 1500},
    "failing": {"/frame/groove/width": 3.2},
}
