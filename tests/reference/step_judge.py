#!/usr/bin/env python3
"""Judges STEP files (AP214) by the standard alone: grammar, references, products, colours, units,
topology, and volumes against the validation properties.

usage: step_judge.py FILE...      exits 1 and says why where a file is faulty
"""

import re
import sys

from brep_volume import ShapeFault, Solid
from part21 import Enum, Part21Error, Typed, parse, references

# Coordinates are written with 13 digits; half of the last of 1 m is 5e-10 of a sheet 1 mm thick.
VOLUME_DIGITS = 1e-9
# What writers call a product that was given no name.
NAMELESS = re.compile(r"|NONE|.*STEP translator.*")


class Judgement:
    def __init__(self, file):
        self.file = file
        self.records = file.records
        self.faults = []

    def fault(self, message):
        self.faults.append(message)

    def get(self, ref):
        return self.records[ref.number]

    def all(self, keyword):
        return [r for r in self.records.values() if r.keyword == keyword]

    def run(self):
        self.header()
        self.complex_records()
        if self.dangling():
            return self.faults  # nothing further can be looked up
        for check in (self.schema, self.products, self.instances, self.units, self.colours,
                      self.solids):
            check()
        return self.faults

    def header(self):
        wanted = [("FILE_DESCRIPTION", 2), ("FILE_NAME", 7), ("FILE_SCHEMA", 1)]
        found = [(keyword, len(values)) for keyword, values in self.file.header]
        if found != wanted:
            self.fault(f"header is {found}, not {wanted}")
            return
        (_, description), (_, name), (_, schema) = self.file.header
        if description[1] not in ("1", "2;1", "2;2"):
            self.fault(f"implementation level {description[1]!r}")
        if not re.fullmatch(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d([+-]\d\d:\d\d|Z)?", str(name[1])):
            self.fault(f"time stamp {name[1]!r} is not ISO 8601")
        if not re.fullmatch(r"AUTOMOTIVE_DESIGN( \{ ?1 0 10303 214( \d+)+ ?\})?", schema[0][0]):
            self.fault(f"schema {schema[0][0]!r} is not AP214")

    def complex_records(self):
        for record in self.records.values():
            words = [keyword for keyword, _ in record.parts]
            if words != sorted(set(words)):
                self.fault(f"#{record.number}: parts {words} are not in alphabetical order")

    def dangling(self):
        before = len(self.faults)
        for record in self.records.values():
            for _, values in record.parts:
                for number in references(values):
                    if number not in self.records:
                        self.fault(f"#{record.number} refers to #{number}, which is not there")
        return len(self.faults) > before

    def schema(self):
        for protocol in self.all("APPLICATION_PROTOCOL_DEFINITION"):
            if protocol.values[1] != "automotive_design":
                self.fault(f"#{protocol.number} speaks of {protocol.values[1]!r}")

    def unique(self, keyword):
        seen = {}
        for record in self.all(keyword):
            number = seen.setdefault(record.values[0], record.number)
            if number != record.number:
                self.fault(f"#{record.number} and #{number} are both {keyword} "
                           f"{record.values[0]!r}")

    def products(self):
        self.unique("PRODUCT")
        if not self.all("PRODUCT"):
            self.fault("there is no product")
        for product in self.all("PRODUCT"):
            for value in product.values[:2]:
                if NAMELESS.fullmatch(value):
                    self.fault(f"product #{product.number} has no name: {value!r}")

    def instances(self):
        """Instances form one tree over all products, and each is placed."""
        usages = self.all("NEXT_ASSEMBLY_USAGE_OCCURRENCE")
        self.unique("NEXT_ASSEMBLY_USAGE_OCCURRENCE")
        parents = {}
        for usage in usages:
            parent, child = usage.values[3].number, usage.values[4].number
            parents.setdefault(child, set()).add(parent)
        roots = [d.number for d in self.all("PRODUCT_DEFINITION") if d.number not in parents]
        if len(roots) != 1:
            self.fault(f"{len(roots)} products are roots")
        for child in parents:
            self.expect_acyclic(child, parents)
        shapes = {d.number: d.values[2].number for d in self.all("PRODUCT_DEFINITION_SHAPE")}
        placed = [shapes.get(r.values[1].number)
                  for r in self.all("CONTEXT_DEPENDENT_SHAPE_REPRESENTATION")]
        for usage in usages:
            if placed.count(usage.number) != 1:
                self.fault(f"instance #{usage.number} is placed {placed.count(usage.number)} times")

    def expect_acyclic(self, start, parents):
        above, seen = set(parents.get(start, ())), set()
        while above:
            if start in above:
                self.fault(f"product definition #{start} is part of itself")
                return
            seen |= above
            above = {p for a in above for p in parents.get(a, ())} - seen

    def units(self):
        for record in self.records.values():
            assigned = record.part("GLOBAL_UNIT_ASSIGNED_CONTEXT")
            if len(record.parts) > 1 and assigned:
                found = sorted(self.unit_text(self.get(ref)) for ref in assigned[0])
                if found != ["LENGTH_UNIT MILLI METRE", "PLANE_ANGLE_UNIT RADIAN",
                             "SOLID_ANGLE_UNIT STERADIAN"]:
                    self.fault(f"context #{record.number} has units {found}")

    @staticmethod
    def unit_text(record):
        kind = next((word for word, _ in record.parts
                     if word.endswith("_UNIT") and word not in ("NAMED_UNIT", "SI_UNIT")), "?")
        words = [v.word for v in record.part("SI_UNIT") or [] if isinstance(v, Enum)]
        return " ".join([kind] + [word for word in words if word != "$"])

    def colours(self):
        coloured = set()
        for item in self.all("STYLED_ITEM"):
            if self.reaches_colour(item):
                coloured.add(item.values[2].number)
        for brep in self.all("MANIFOLD_SOLID_BREP"):
            if brep.number not in coloured:
                self.fault(f"solid #{brep.number} has no colour")

    def reaches_colour(self, item):
        waiting, seen = list(references(item.values[1])), set()
        while waiting:
            number = waiting.pop()
            if number in seen:
                continue
            seen.add(number)
            record = self.records[number]
            if record.keyword == "COLOUR_RGB":
                return all(0 <= level <= 1 for level in record.values[1:4])
            if record.keyword == "DRAUGHTING_PRE_DEFINED_COLOUR":
                return True
            for _, values in record.parts:
                waiting += references(values)
        return False

    def solids(self):
        volumes = {}
        for brep in self.all("MANIFOLD_SOLID_BREP"):
            try:
                solid = Solid(self.get, brep)
                solid.check_edges()
                volumes[brep.number] = solid.volume()
            except ShapeFault as fault:
                self.fault(f"solid #{brep.number}: {fault}")
            except (AttributeError, TypeError, ValueError, IndexError) as fault:
                self.fault(f"solid #{brep.number}: a record is not of its keyword's form: {fault}")
        if not self.all("MANIFOLD_SOLID_BREP"):
            self.fault("there is no solid")
        properties = self.volume_properties()
        for representation in self.all("SHAPE_DEFINITION_REPRESENTATION"):
            items = self.get(representation.values[1]).values[1]
            found = [volumes[ref.number] for ref in items if ref.number in volumes]
            if found:
                shape = self.get(representation.values[0])
                self.compare_volume(shape.values[2].number, sum(found), properties)

    def volume_properties(self):
        """Volume by product definition, as the file states it."""
        stated = {}
        for link in self.all("PROPERTY_DEFINITION_REPRESENTATION"):
            definition, representation = (self.get(ref) for ref in link.values)
            if definition.values[0] != "geometric validation property":
                continue
            for ref in representation.values[1]:
                item = self.get(ref)
                measure = item.values[1] if len(item.values) > 1 else None
                if isinstance(measure, Typed) and measure.keyword == "VOLUME_MEASURE":
                    owner = self.get(definition.values[2])
                    if owner.keyword == "PRODUCT_DEFINITION_SHAPE":
                        owner = self.get(owner.values[2])
                    stated[owner.number] = measure.value
        return stated

    def compare_volume(self, definition, volume, properties):
        stated = properties.get(definition)
        if stated is None:
            self.fault(f"product definition #{definition} states no volume")
        elif not abs(stated - volume) <= VOLUME_DIGITS * abs(stated):
            self.fault(f"product definition #{definition}: {volume!r} mm3 within its faces, "
                       f"{stated!r} stated")


def judge(text):
    """All faults of a file's text, as sentences."""
    try:
        return Judgement(parse(text)).run()
    except Part21Error as fault:
        return [str(fault)]
    except (AttributeError, TypeError, ValueError, IndexError, KeyError) as fault:
        return [f"a record is not of the form that its keyword has: {fault!r}"]


def main(paths):
    if not paths:
        print(__doc__, file=sys.stderr)
        return 2
    bad = False
    for path in paths:
        with open(path, encoding="latin-1", newline="") as file:
            faults = judge(file.read())
        for fault in faults:
            print(f"{path}: {fault}")
        bad = bad or bool(faults)
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
