"""The clear text of ISO 10303-21 read into records, strictly by its grammar (edition 2).

Written from the standard's tables, so that files are not judged by the library that wrote them.
"""

import re
from dataclasses import dataclass, field


class Part21Error(Exception):
    """The text breaks the grammar."""


@dataclass(frozen=True)
class Ref:
    """An instance name, `#12`."""

    number: int


@dataclass(frozen=True)
class Enum:
    """An enumeration or logical value, `.T.`."""

    word: str


@dataclass(frozen=True)
class Typed:
    """A typed parameter, `LENGTH_MEASURE(1.)`."""

    keyword: str
    value: object


OMITTED = Enum("$")
DERIVED = Enum("*")


@dataclass
class Record:
    """A simple record has one part, a complex one several, each a keyword with its parameters."""

    number: int
    parts: list = field(default_factory=list)

    @property
    def keyword(self):
        return self.parts[0][0] if len(self.parts) == 1 else ""

    @property
    def values(self):
        return self.parts[0][1]

    def part(self, keyword):
        """The parameters of one part of a complex record, or None."""
        return next((values for word, values in self.parts if word == keyword), None)


@dataclass
class File:
    header: list
    records: dict


TOKEN = re.compile(
    r"""(?P<space>[ \r\n]+|/\*.*?\*/)
      |(?P<string>'(?:[^']|'')*')
      |(?P<real>[+-]?[0-9]+\.[0-9]*(?:E[+-]?[0-9]+)?)
      |(?P<integer>[+-]?[0-9]+)
      |(?P<name>\#[0-9]+)
      |(?P<enum>\.[A-Z_][A-Z0-9_]*\.)
      |(?P<binary>"[0-3][0-9A-F]*")
      |(?P<keyword>!?[A-Z_][A-Z0-9_]*(?:-[A-Z0-9_]+)*)
      |(?P<mark>[(),;=$*])""",
    re.VERBOSE | re.DOTALL,
)

# Within a string: '' and \\, \S\c, \PA\, \X\hh, \X2\hhhh...\X0\, \X4\hhhhhhhh...\X0\.
STRING_PIECE = re.compile(
    r"""''|\\\\|\\S\\[ -~]|\\P[A-I]\\|\\X\\[0-9A-F]{2}
      |\\X2\\(?P<x2>(?:[0-9A-F]{4})+)\\X0\\
      |\\X4\\(?P<x4>(?:[0-9A-F]{8})+)\\X0\\
      |(?P<plain>[ -&(-\[\]-~])""",
    re.VERBOSE,
)


def decoded_string(token, line):
    """The content of a string token with its escapes resolved."""
    content = token[1:-1].replace("\r", "").replace("\n", "")
    out, at = [], 0
    while at < len(content):
        piece = STRING_PIECE.match(content, at)
        if not piece:
            raise Part21Error(f"line {line}: bad escape or character in string {token[:60]!r}")
        if piece["x2"]:
            out.append(bytes.fromhex(piece["x2"]).decode("utf-16-be"))
        elif piece["x4"]:
            out.append(bytes.fromhex(piece["x4"]).decode("utf-32-be"))
        else:
            out.append({"''": "'", "\\\\": "\\"}.get(piece[0], piece[0]))
        at = piece.end()
    return "".join(out)


def tokens(text):
    """All tokens as (kind, text, line), white space and comments left out."""
    at, line = 0, 1
    while at < len(text):
        found = TOKEN.match(text, at)
        if not found:
            raise Part21Error(f"line {line}: no token begins with {text[at:at + 20]!r}")
        if found.lastgroup != "space":
            yield found.lastgroup, found[0], line
        line += found[0].count("\n")
        at = found.end()


class Parser:
    def __init__(self, text):
        stray = re.search(r"[^ -~\r\n]", text)
        if stray:
            raise Part21Error(f"character {stray[0]!r} is outside the basic alphabet")
        self.tokens = list(tokens(text))
        self.at = 0

    def peek(self):
        return self.tokens[self.at] if self.at < len(self.tokens) else ("end", "", 0)

    def take(self, wanted=None):
        kind, text, line = self.peek()
        if kind == "end" or (wanted is not None and text != wanted):
            raise Part21Error(f"line {line}: {wanted or 'more'!r} wanted, {text!r} found")
        self.at += 1
        return kind, text, line

    def take_kind(self, wanted):
        kind, text, line = self.take()
        if kind != wanted:
            raise Part21Error(f"line {line}: {wanted} wanted, {text!r} found")
        return text

    def parameter(self):
        kind, text, line = self.take()
        if kind == "string":
            return decoded_string(text, line)
        if kind == "real":
            return float(text)
        if kind == "integer":
            return int(text)
        if kind == "name":
            return Ref(int(text[1:]))
        if kind == "enum":
            return Enum(text[1:-1])
        if kind == "binary":
            return text
        if text == "$":
            return OMITTED
        if text == "*":
            return DERIVED
        if text == "(":
            self.at -= 1
            return self.parameters()
        if kind == "keyword":
            values = self.parameters()
            if len(values) != 1:
                raise Part21Error(f"line {line}: typed parameter {text} with {len(values)} values")
            return Typed(text, values[0])
        raise Part21Error(f"line {line}: a parameter wanted, {text!r} found")

    def parameters(self):
        self.take("(")
        values = []
        if self.peek()[1] != ")":
            values.append(self.parameter())
            while self.peek()[1] == ",":
                self.take(",")
                values.append(self.parameter())
        self.take(")")
        return values

    def simple(self):
        return self.take_kind("keyword"), self.parameters()

    def record(self):
        number = int(self.take_kind("name")[1:])
        self.take("=")
        record = Record(number)
        if self.peek()[1] == "(":
            self.take("(")
            while self.peek()[1] != ")":
                record.parts.append(self.simple())
            self.take(")")
        else:
            record.parts.append(self.simple())
        self.take(";")
        return record

    def header(self):
        self.take("HEADER")
        self.take(";")
        entities = []
        while self.peek()[1] != "ENDSEC":
            entities.append(self.simple())
            self.take(";")
        self.take("ENDSEC")
        self.take(";")
        return entities

    def data(self):
        self.take("DATA")
        self.take(";")
        records = {}
        while self.peek()[1] != "ENDSEC":
            line = self.peek()[2]
            record = self.record()
            if record.number in records:
                raise Part21Error(f"line {line}: #{record.number} stands twice")
            if record.number == 0:
                raise Part21Error(f"line {line}: #0 is no instance name")
            records[record.number] = record
        self.take("ENDSEC")
        self.take(";")
        return records

    def file(self):
        self.take("ISO-10303-21")
        self.take(";")
        header = self.header()
        records = self.data()
        self.take("END-ISO-10303-21")
        self.take(";")
        if self.peek()[0] != "end":
            raise Part21Error(f"line {self.peek()[2]}: text after the end")
        return File(header, records)


def parse(text):
    """@raises Part21Error"""
    return Parser(text).file()


def references(value):
    """All instance numbers in a parameter, however deep."""
    if isinstance(value, Ref):
        yield value.number
    elif isinstance(value, Typed):
        yield from references(value.value)
    elif isinstance(value, (list, tuple)):
        for item in value:
            yield from references(item)
