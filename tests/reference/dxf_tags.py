"""A DXF file as plain tags, read without any library, and what must hold of them."""

import math
import re
from dataclasses import dataclass

LAYERS = re.compile(r"profile-outer|profile-inner|scribe|label|sheet-edge|(recess|bore)-\d+_\d\d")
ENTITIES = {"LWPOLYLINE", "POLYLINE", "VERTEX", "SEQEND", "LINE", "ARC", "CIRCLE", "TEXT"}
MILLIMETRES = "4"
METRIC = "1"
SECTIONS_AC1015 = ["HEADER", "CLASSES", "TABLES", "BLOCKS", "ENTITIES", "OBJECTS"]
LONGEST_NAME = 31  # of R12


@dataclass
class Record:
    """An object: the tags from one code 0 to the next."""

    section: str
    kind: str
    tags: list

    def all(self, code):
        return [value for key, value in self.tags if key == code]

    def first(self, code):
        return next(iter(self.all(code)), None)

    @property
    def handle(self):
        return self.first(105 if self.kind == "DIMSTYLE" and self.first(105) else 5)


def read_tags(data):
    """The tags of a file's bytes. Raises ValueError where there are none."""
    lines = data.decode("ascii").split("\r\n")
    if lines[-1] != "" or len(lines) % 2 != 1:
        raise ValueError("no even number of lines that end in CR LF")
    return [(int(lines[i]), lines[i + 1]) for i in range(0, len(lines) - 1, 2)]


def records_of(tags):
    """The objects of all sections, the header's variables left out."""
    records, section = [], None
    for index, (code, value) in enumerate(tags):
        if code == 0 and value == "SECTION":
            section = tags[index + 1][1]
        if code == 0:
            records.append(Record(section, value, []))
            if value == "ENDSEC":
                section = None
        elif records:
            records[-1].tags.append((code, value))
    return records


def header_of(tags):
    """The header's variables by name, each with the values of its tags."""
    header, name = {}, None
    for code, value in tags:
        if code == 9:
            name = value
            header[name] = []
        elif code == 0:
            name = None
        elif name:
            header[name].append(value)
    return header


def is_real(code):
    return 10 <= code <= 59 or 140 <= code <= 149 or 210 <= code <= 239


def number_faults(tags):
    for code, value in tags:
        if is_real(code):
            try:
                finite = math.isfinite(float(value))
            except ValueError:
                finite = False
            if not finite:
                yield f"number: group {code} is {value!r}"


def header_faults(header, records):
    version = header.get("$ACADVER", [None])[0]
    if version not in ("AC1009", "AC1015"):
        yield f"version: {version}"
    if header.get("$INSUNITS") != [MILLIMETRES]:
        yield f"units: $INSUNITS is {header.get('$INSUNITS')}"
    if header.get("$MEASUREMENT") != [METRIC]:
        yield f"units: $MEASUREMENT is {header.get('$MEASUREMENT')}"
    sections = [record.first(2) for record in records if record.kind == "SECTION"]
    if version == "AC1015" and sections != SECTIONS_AC1015:
        yield f"sections: {sections}"
    if records[-1].kind != "EOF":
        yield "end: no EOF"


def handle_faults(header, records):
    """Handles of AC1015: there, unique, owners known, the next one above them all."""
    objects = [r for r in records if r.kind not in
               ("SECTION", "ENDSEC", "ENDTAB", "EOF")]
    seen = set()
    for record in objects:
        if record.handle is None:
            yield f"handle: {record.kind} has none"
        elif record.handle in seen:
            yield f"handle: {record.handle} stands twice"
        seen.add(record.handle)
    for record in objects:
        owner = record.first(330)
        if owner is None or (owner != "0" and owner not in seen):
            yield f"owner: {record.kind} {record.handle} belongs to {owner}, which is not there"
    seed = header.get("$HANDSEED", ["0"])[0]
    most = max(int(handle, 16) for handle in seen if handle)
    if int(seed, 16) <= most:
        yield f"handle: $HANDSEED {seed} is not above {most:X}"


def repetition_faults(records):
    """Outside entities and dictionaries each group but subclass markers stands once."""
    for record in records:
        if record.section in ("TABLES", "BLOCKS"):
            codes = [code for code, _ in record.tags if code != 100]
            for code in sorted({code for code in codes if codes.count(code) > 1}):
                yield f"repetition: group {code} of {record.kind} {record.handle}"


def layer_faults(records):
    declared = [r.first(2) for r in records if r.kind == "LAYER"]
    for name in declared:
        if name != "0" and not (LAYERS.fullmatch(name) and len(name) <= LONGEST_NAME):
            yield f"layer: {name} is no operation"
    if len(set(declared)) != len(declared):
        yield "layer: one is declared twice"
    used = {r.first(8) for r in records if r.section == "ENTITIES" and r.first(8)}
    for name in sorted(used):
        if name == "0":
            yield "layer: something stands on layer 0"
        elif name not in declared:
            yield f"layer: {name} is used and not declared"


def entity_faults(records):
    open_polyline = None
    for record in records:
        if record.section != "ENTITIES" or record.kind in ("SECTION", "ENDSEC"):
            continue
        if record.kind not in ENTITIES:
            yield f"entity: {record.kind}"
        if record.first(8) is None:
            yield f"layer: {record.kind} has none"
        if record.kind == "LWPOLYLINE":
            count = len(record.all(10))
            if record.first(90) != str(count) or count != len(record.all(20)):
                yield f"vertices: {count} stand there, {record.first(90)} are counted"
        if (record.kind == "VERTEX") != (open_polyline is not None) and record.kind != "SEQEND":
            yield f"vertices: {record.kind} out of place"
        if record.kind == "POLYLINE":
            open_polyline = record
        elif record.kind == "SEQEND":
            open_polyline = None
        if any(record.all(code) for code in (38, 39, 210, 220, 230)):
            yield f"plane: {record.kind} has an elevation, thickness or extrusion"
        if any(float(z) != 0 for code in (30, 31) for z in record.all(code)):
            yield f"plane: {record.kind} stands off it"


def structure_faults(data):
    """Everything that is wrong with the form of a file; its geometry is another matter."""
    try:
        tags = read_tags(data)
    except (ValueError, UnicodeDecodeError) as error:
        return [f"tags: {error}"]
    records, header = records_of(tags), header_of(tags)
    faults = list(number_faults(tags))
    if faults:
        return faults
    faults += header_faults(header, records)
    if header.get("$ACADVER") == ["AC1015"]:
        faults += handle_faults(header, records)
    faults += repetition_faults(records)
    return faults + list(layer_faults(records)) + list(entity_faults(records))
