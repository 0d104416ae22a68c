// Proves that each reader's answer is held against what is expected.
// usage: GOOD_FILE=board.dxf node --test second_reader_test.mjs   (the reviewed board)

import assert from "node:assert/strict";
import fs from "node:fs";
import test from "node:test";
import { faultsOf, polylineArea, readers } from "./second_reader.mjs";

const good = fs.readFileSync(process.env.GOOD_FILE, "latin1");
const slot = 34 * 6 + 9 * Math.PI;
const plate = 120 * 40 - (4 - Math.PI) * 25;
const expected = {
  net_area: plate - slot,
  areas: {
    "profile-outer": [plate],
    "profile-inner": [slot],
    "recess-2_50": [800],
    "bore-12_00": [Math.PI * 1.75 ** 2],
  },
};

test("a ring's sector has its area", () => {
  const bulge = Math.tan(Math.PI / 8);
  const sector = [
    { x: 2, y: 0 },
    { x: 3, y: 0, bulge },
    { x: 0, y: 3 },
    { x: 0, y: 2, bulge: -bulge },
  ];
  assert.ok(Math.abs(polylineArea(sector) - (Math.PI * (9 - 4)) / 4) < 1e-12);
});

for (const [name, read] of Object.entries(readers)) {
  test(`${name} agrees with the board`, () => {
    assert.deepEqual(faultsOf(read(good), expected), []);
  });

  const broken = {
    inches: good.replace("$INSUNITS\r\n 70\r\n4", "$INSUNITS\r\n 70\r\n1"),
    "a vertex moved": good.replace("110.0\r\n 20\r\n14.0", "110.0\r\n 20\r\n14.01"),
    "a bulge turned": good.replace("42\r\n-1.0", "42\r\n1.0"),
    "an open outline": good.replace(/ 70\r\n1\r\n 10\r\n10\.0/, " 70\r\n0\r\n 10\r\n10.0"),
    "layer 0": good.replace("8\r\nrecess-2_50", "8\r\n0"),
  };
  for (const [defect, text] of Object.entries(broken)) {
    test(`${name} shows ${defect}`, () => {
      assert.notEqual(text, good);
      assert.notDeepEqual(faultsOf(read(text), expected), []);
    });
  }
}
