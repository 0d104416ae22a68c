// Reads DXF patterns by two more readers, dxf-parser and dxf, and compares layers, units and areas.
//
// usage: node second_reader.mjs FILE_OR_FOLDER... [--expect areas.json] [--quiet]
//
// areas.json is as for dxf_judge.py. Prints what each reader found, one line for each polyline and
// circle; ends 0 where both readers agree with what is expected, 1 where not, 2 for wrong usage.

import fs from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { Helper } from "dxf";
import DxfParser from "dxf-parser";

const SAME_SHARE = 1e-6;
const MILLIMETRES = 4;

// Both packages are CommonJS; only one of them says so the way that gives its class directly.
const Parser = DxfParser.default ?? DxfParser;

/** Signed area of a closed polyline with bulges: shoelace plus circular segments. */
export function polylineArea(vertices) {
  let area = 0;
  vertices.forEach((from, index) => {
    const to = vertices[(index + 1) % vertices.length];
    area += (from.x * to.y - to.x * from.y) / 2;
    if (from.bulge) {
      const angle = Math.abs(4 * Math.atan(from.bulge));
      const radius = Math.hypot(to.x - from.x, to.y - from.y) / (2 * Math.sin(angle / 2));
      area += (Math.sign(from.bulge) * radius ** 2 * (angle - Math.sin(angle))) / 2;
    }
  });
  return area;
}

/** A shape that both readers can be brought to: layer, signed area, or null for open lines. */
function shape(entity, closed, radius) {
  if (entity.type === "CIRCLE") {
    return { layer: entity.layer, kind: "circle", area: Math.PI * radius ** 2 };
  }
  if (closed && entity.vertices) {
    return { layer: entity.layer, kind: "polyline", area: polylineArea(entity.vertices) };
  }
  return null;
}

/** The readers by name, each from text to the same description of a drawing. */
export const readers = {
  "dxf-parser": (text) => {
    const drawing = new Parser().parseSync(text);
    return {
      units: drawing.header.$INSUNITS,
      layers: Object.keys(drawing.tables.layer.layers),
      shapes: drawing.entities.map((e) => shape(e, e.shape, e.radius)).filter(Boolean),
    };
  },
  dxf: (text) => {
    const drawing = new Helper(text).parsed;
    return {
      units: drawing.header.insUnits,
      layers: Object.keys(drawing.tables.layers),
      shapes: drawing.entities.map((e) => shape(e, e.closed, e.r)).filter(Boolean),
    };
  },
};

function areasByLayer(shapes) {
  const areas = {};
  for (const { layer, area } of shapes) {
    (areas[layer] ??= []).push(Math.abs(area));
  }
  return areas;
}

function netArea(shapes) {
  return shapes
    .filter(({ layer }) => layer.startsWith("profile-"))
    .reduce((sum, { area }) => sum + area, 0);
}

function agree(found, wanted) {
  const ascending = (a, b) => a - b;
  const [here, there] = [[...found].sort(ascending), [...wanted].sort(ascending)];
  return (
    here.length === there.length &&
    here.every((value, i) => Math.abs(value - there[i]) <= SAME_SHARE * Math.abs(there[i]))
  );
}

/** What is wrong with a drawing as one reader describes it. */
export function faultsOf(drawing, expected) {
  const faults = [];
  if (drawing.units !== MILLIMETRES) {
    faults.push(`units are ${drawing.units}`);
  }
  for (const { layer } of drawing.shapes) {
    if (layer === "0" || !drawing.layers.includes(layer)) {
      faults.push(`layer ${layer} is not declared, or is layer 0`);
    }
  }
  const areas = areasByLayer(drawing.shapes);
  for (const layer of new Set([...Object.keys(areas), ...Object.keys(expected?.areas ?? {})])) {
    if (expected?.areas && !agree(areas[layer] ?? [], expected.areas[layer] ?? [])) {
      faults.push(`areas on ${layer} are ${areas[layer]}, expected ${expected.areas[layer]}`);
    }
  }
  if (expected?.net_area !== undefined && !agree([netArea(drawing.shapes)], [expected.net_area])) {
    faults.push(`net area is ${netArea(drawing.shapes)}, expected ${expected.net_area}`);
  }
  return faults;
}

function filesOf(paths) {
  return paths.flatMap((given) =>
    fs.statSync(given).isDirectory()
      ? fs
          .readdirSync(given, { recursive: true })
          .filter((name) => name.endsWith(".dxf"))
          .sort()
          .map((name) => path.join(given, name))
      : [given],
  );
}

/** Judges one file by every reader; prints as it goes. Gives the number of faults. */
function judge(file, expectations, quiet) {
  const name = path.basename(file);
  const text = fs.readFileSync(file, "latin1");
  let count = 0;
  for (const [reader, read] of Object.entries(readers)) {
    const drawing = read(text);
    if (!quiet) {
      const layers = drawing.layers.join(" ");
      console.log(`${name} by ${reader}: units ${drawing.units}, layers ${layers}`);
      drawing.shapes.forEach((s) => console.log(`  ${s.layer} ${s.kind} ${s.area}`));
    }
    const faults = faultsOf(drawing, expectations?.[name]);
    if (expectations && !expectations[name]) {
      faults.push("nothing is expected of this file");
    }
    faults.forEach((fault) => console.log(`${file}: ${reader}: ${fault}`));
    count += faults.length;
  }
  return count;
}

function main(options) {
  const paths = [];
  let expectations;
  let quiet = false;
  while (options.length > 0) {
    const option = options.shift();
    if (option === "--expect") {
      expectations = JSON.parse(fs.readFileSync(options.shift(), "utf8"));
    } else if (option === "--quiet") {
      quiet = true;
    } else {
      paths.push(option);
    }
  }
  const files = filesOf(paths);
  if (files.length === 0) {
    console.error("usage: second_reader.mjs FILE_OR_FOLDER... [--expect areas.json] [--quiet]");
    return 2;
  }
  const bad = files.filter((file) => judge(file, expectations, quiet) > 0).length;
  console.log(`${files.length} files read by two readers, ${bad} with faults`);
  return bad > 0 ? 1 : 0;
}

if (import.meta.url === pathToFileURL(process.argv[1]).href) {
  process.exitCode = main(process.argv.slice(2));
}
