"""Areas set off, held against the buffers of shapely, another maker's geometry.

usage: offset_judge.py FILE
FILE is what offset_samples writes: areas with their arcs flattened to 1e-3 mm, the distance, and
what this project makes of them, flattened alike.
"""

import json
import sys

from shapely.geometry import MultiPolygon, Polygon

FLATTENING = 1e-3  # mm, of the file
QUARTER_SEGMENTS = 180  # chords of a buffer's quarter circle: off it by under 2e-3 mm at 20 mm
STRIP = 3 * FLATTENING  # mm: operand, buffer and result are flattened, each on its own


def area_of(regions):
    """The regions as one shape."""
    return MultiPolygon([(outer, holes) for outer, holes in regions])


def judge(sample):
    """What is wrong with one sample, or None."""
    expected = area_of(sample["areas"]).buffer(0).buffer(sample["by"], QUARTER_SEGMENTS)
    result = area_of(sample["result"]).buffer(0)
    difference = expected.symmetric_difference(result).area
    allowed = STRIP * (expected.length + result.length) + STRIP**2
    if difference > allowed:
        return (f"seed {sample['seed']}, by {sample['by']}: differs by {difference:.4f} mm²,"
                f" allowed {allowed:.4f}")
    return None


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        samples = json.load(file)
    # A judge that passes everything is none: the unchanged area must be refused.
    blind = dict(samples[0], result=samples[0]["areas"])
    if judge(blind) is None:
        sys.exit("the judge does not see that nothing was set off")
    faults = [fault for fault in map(judge, samples) if fault]
    if faults:
        sys.exit("\n".join(faults))
    print(f"{len(samples)} areas set off as shapely does")


if __name__ == "__main__":
    main()
