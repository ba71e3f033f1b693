import { describe, expect, it } from "vitest";
import { axesAt } from "../../src/core/plane/axes.ts";
import { rowPieces } from "../../src/core/rows/row-pieces.ts";
import { eachPiece, posedRings, turnedGroundOf } from "../bench/checks/laid-out.ts";
import { fivePoses, type Point, toRingSet } from "../support/parcels.ts";

/** The rule for rows on edges moves an end by a micrometre at most. */
const tolerance_m = 2e-6;

type Ring = readonly Point[];
type Interval = readonly [from_m: number, to_m: number];

/** Rows run along x, the first at `top`, each next one `spacing` lower; expected pieces worked out by hand. */
interface NastyCase {
  readonly name: string;
  readonly outlines: readonly (readonly Ring[])[];
  readonly top: number;
  readonly spacing: number;
  readonly rows: readonly (readonly Interval[])[];
}

function rectangle(x1: number, y1: number, x2: number, y2: number): Ring {
  return [
    [x1, y1],
    [x2, y1],
    [x2, y2],
    [x1, y2],
  ];
}

const cases: readonly NastyCase[] = [
  {
    name: "rows on both long sides of a rectangle",
    outlines: [[rectangle(0, 0, 50, 20)]],
    top: 20,
    spacing: 2,
    rows: Array.from({ length: 11 }, () => [[0, 50]] as const),
  },
  {
    name: "a row that touches the tip of a triangle, and one along its base",
    outlines: [
      [
        [
          [0, 0],
          [10, 0],
          [5, 10],
        ],
      ],
    ],
    top: 10,
    spacing: 5,
    rows: [[], [[2.5, 7.5]], [[0, 10]]],
  },
  {
    name: "a row through two corners on its way",
    outlines: [
      [
        [
          [0, 0],
          [5, -5],
          [10, 0],
          [5, 5],
        ],
      ],
    ],
    top: 0,
    spacing: 1,
    rows: [[[0, 10]]],
  },
  {
    name: "a notch whose tip touches a row from above",
    outlines: [
      [
        [
          [0, 0],
          [10, 0],
          [10, 10],
          [5, 4],
          [0, 10],
        ],
      ],
    ],
    top: 7,
    spacing: 3,
    rows: [
      [
        [0, 2.5],
        [7.5, 10],
      ],
      [[0, 10]],
      [[0, 10]],
    ],
  },
  {
    name: "a row along the tread of a step",
    outlines: [
      [
        [
          [0, 0],
          [20, 0],
          [20, 10],
          [10, 10],
          [10, 20],
          [0, 20],
        ],
      ],
    ],
    top: 20,
    spacing: 10,
    rows: [[[0, 10]], [[0, 20]], [[0, 20]]],
  },
  {
    name: "a spike out and back along a row",
    outlines: [
      [
        [
          [0, 0],
          [50, 0],
          [50, 5],
          [70, 5],
          [50, 5],
          [50, 10],
          [0, 10],
        ],
      ],
    ],
    top: 10,
    spacing: 5,
    rows: [[[0, 50]], [[0, 50]], [[0, 50]]],
  },
  {
    name: "a spike into the land along a row",
    outlines: [
      [
        [
          [0, 0],
          [50, 0],
          [50, 5],
          [30, 5],
          [50, 5],
          [50, 10],
          [0, 10],
        ],
      ],
    ],
    top: 5,
    spacing: 5,
    rows: [[[0, 50]], [[0, 50]]],
  },
  {
    name: "needless corners on the sides, at the heights of rows",
    outlines: [
      [
        [
          [0, 0],
          [50, 0],
          [50, 2],
          [50, 4],
          [50, 6],
          [0, 6],
          [0, 4],
          [0, 2],
        ],
      ],
    ],
    top: 6,
    spacing: 2,
    rows: Array.from({ length: 4 }, () => [[0, 50]] as const),
  },
  {
    name: "needless corners on an edge that a row runs along",
    outlines: [
      [
        [
          [0, 0],
          [50, 0],
          [50, 6],
          [33, 6],
          [21, 6],
          [20.5, 6],
          [0, 6],
        ],
      ],
    ],
    top: 6,
    spacing: 3,
    rows: Array.from({ length: 3 }, () => [[0, 50]] as const),
  },
  {
    name: "a row in a neck one millimetre wide",
    outlines: [
      [
        [
          [0, 0],
          [10, 0],
          [10, 4.9995],
          [20, 4.9995],
          [20, 0],
          [30, 0],
          [30, 10],
          [20, 10],
          [20, 5.0005],
          [10, 5.0005],
          [10, 10],
          [0, 10],
        ],
      ],
    ],
    top: 6,
    spacing: 1,
    rows: [
      [
        [0, 10],
        [20, 30],
      ],
      [[0, 30]],
    ],
  },
  {
    name: "a neck of a tenth of a micrometre counts as closed",
    outlines: [
      [
        [
          [0, 0],
          [10, 0],
          [10, 5 - 5e-8],
          [20, 5 - 5e-8],
          [20, 0],
          [30, 0],
          [30, 10],
          [20, 10],
          [20, 5 + 5e-8],
          [10, 5 + 5e-8],
          [10, 10],
          [0, 10],
        ],
      ],
    ],
    top: 5,
    spacing: 1,
    rows: [
      [
        [0, 10],
        [20, 30],
      ],
    ],
  },
  {
    name: "two parts that share an edge across the rows",
    outlines: [[rectangle(0, 0, 10, 10)], [rectangle(10, 0, 20, 10)]],
    top: 10,
    spacing: 2.5,
    rows: Array.from({ length: 5 }, () => [[0, 20]] as const),
  },
  {
    name: "two parts that share an edge along a row",
    outlines: [[rectangle(0, 0, 10, 10)], [rectangle(2, 10, 14, 20)]],
    top: 15,
    spacing: 5,
    rows: [[[2, 14]], [[0, 14]], [[0, 10]], [[0, 10]]],
  },
  {
    name: "two parts that touch at a corner",
    outlines: [[rectangle(0, 0, 10, 10)], [rectangle(10, 10, 20, 20)]],
    top: 15,
    spacing: 5,
    rows: [[[10, 20]], [[0, 20]], [[0, 10]]],
  },
  {
    name: "two parts that overlap",
    outlines: [[rectangle(0, 0, 12, 10)], [rectangle(8, 0, 20, 10)]],
    top: 10,
    spacing: 5,
    rows: Array.from({ length: 3 }, () => [[0, 20]] as const),
  },
  {
    name: "a hole with two sides on rows",
    outlines: [[rectangle(0, 0, 30, 30), [...rectangle(10, 10, 20, 20)].reverse()]],
    top: 20,
    spacing: 5,
    rows: [
      [[0, 30]],
      [
        [0, 10],
        [20, 30],
      ],
      [[0, 30]],
    ],
  },
  {
    name: "a hole that touches the outline at a corner",
    outlines: [
      [
        rectangle(0, 0, 30, 20),
        [
          [0, 10],
          [5, 15],
          [10, 10],
          [5, 5],
        ],
      ],
    ],
    top: 15,
    spacing: 5,
    rows: [[[0, 30]], [[10, 30]], [[0, 30]]],
  },
  {
    name: "teeth whose tips touch a row",
    outlines: [
      [
        [
          [0, 0],
          [20, 0],
          [20, 10],
          [15, 5],
          [10, 10],
          [5, 5],
          [0, 10],
        ],
      ],
    ],
    top: 7.5,
    spacing: 2.5,
    rows: [
      [
        [0, 2.5],
        [7.5, 12.5],
        [17.5, 20],
      ],
      [[0, 20]],
    ],
  },
  {
    name: "a needle with its point on the row",
    outlines: [
      [
        [
          [0, 0],
          [100, -0.5],
          [100, 0.5],
        ],
      ],
    ],
    top: 0,
    spacing: 1,
    rows: [[[0, 100]]],
  },
  {
    name: "an edge that leaves a row by less than a micrometre",
    outlines: [
      [
        [
          [0, 0],
          [50, 0],
          [50, 10 + 4e-7],
          [0, 10 - 4e-7],
        ],
      ],
    ],
    top: 10,
    spacing: 5,
    rows: Array.from({ length: 3 }, () => [[0, 50]] as const),
  },
  {
    name: "a ring drawn the other way round",
    outlines: [[[...rectangle(0, 0, 50, 20)].reverse()]],
    top: 20,
    spacing: 10,
    rows: Array.from({ length: 3 }, () => [[0, 50]] as const),
  },
  {
    name: "a row through the crossing of a ring that crosses itself (even-odd)",
    outlines: [
      [
        [
          [0, 0],
          [10, 10],
          [10, 0],
          [0, 10],
        ],
      ],
    ],
    top: 7.5,
    spacing: 2.5,
    rows: [
      [
        [0, 2.5],
        [7.5, 10],
      ],
      [[0, 10]],
      [
        [0, 2.5],
        [7.5, 10],
      ],
    ],
  },
];

describe.each(cases.map((nasty) => [nasty.name, nasty] as const))("%s", (_, { outlines, top, spacing, rows }) => {
  it.each(fivePoses.map((pose) => [pose.turn_deg, pose] as const))(
    "gives the pieces worked out by hand, turned by %d degrees",
    (_turn, pose) => {
      // At bearing 90 rows run along x, and lines are counted southward.
      const axes = axesAt([pose.x_m, pose.y_m], 90 - pose.turn_deg);
      const ground = turnedGroundOf(
        outlines.map((rings) => posedRings(toRingSet(rings), pose)),
        axes,
      );
      const lines = { first_m: -top, spacing_m: spacing, count: rows.length };
      const { pieces } = rowPieces(ground, lines, { headland_m: 0, anchorOut_m: 0, usualGap_m: 0 });
      const found: Interval[][] = rows.map(() => []);
      eachPiece(pieces, (line, from_m, to_m) => found[line]?.push([from_m, to_m]));
      expect(found.map((row) => row.length)).toEqual(rows.map((row) => row.length));
      const expected = rows.flat(2);
      found.flat(2).forEach((end_m, i) => {
        expect(Math.abs(end_m - (expected[i] ?? Number.NaN))).toBeLessThanOrEqual(tolerance_m);
      });
    },
  );
});
