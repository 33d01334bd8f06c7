/** The shape of the fabrication file, strict: a field that the program writes and this does not know is a failure. */
import * as v from 'valibot';

const number = v.pipe(v.number(), v.finite());
const vector = v.strictTuple([number, number, number]);
const text = v.string();
const unit = v.pipe(number, v.minValue(0), v.maxValue(90));
const turn = v.pipe(number, v.minValue(-180), v.maxValue(180));

const cut = v.strictObject({
  against: text,
  includedAngle: unit,
  offSquare: unit,
  clocking: turn,
  axisOffset: number,
  sawDiameter: number,
  sawDepth: v.nullable(number),
  onBend: v.boolean(),
});

const end = v.strictObject({
  node: v.nullable(text),
  place: v.exactOptional(vector),
  fit: v.picklist(['cope', 'plate', 'foot', 'mitre', 'square']),
  direction: vector,
  reference: vector,
  cuts: v.array(cut),
  butted: v.array(text),
  plateNormal: v.nullable(vector),
  foot: v.exactOptional(text),
  allowance: number,
  profile: v.pipe(v.array(v.nullable(number)), v.minLength(360), v.maxLength(360)),
  tip: v.nullable(number),
  throat: v.nullable(number),
  notching: v.nullable(
    v.strictObject({
      notcher: v.nullable(text),
      leans: v.picklist(['over-tube', 'past-end', 'unsaid']),
      gap: number,
      notches: v.array(
        v.strictObject({
          way: v.picklist(['nothing', 'wrap', 'one-pass', 'flip', 'cut-off-first', 'either']),
          why: v.nullable(v.picklist(['bend', 'thin', 'swing', 'offset', 'saw', 'reach', 'gap'])),
          saw: v.nullable(number),
          set: v.nullable(number),
          centre: v.nullable(number),
          depth: v.nullable(number),
        }),
      ),
    }),
  ),
});

const bend = v.strictObject({
  angle: v.pipe(number, v.gtValue(0), v.maxValue(180)),
  rotation: turn,
  radius: number,
  arc: number,
  start: number,
  end: number,
  pullTo: number,
  pullToIs: v.picklist(['law', 'first-pull', 'estimate']),
  machineAngle: v.nullable(number),
  machineAngleFrom: v.nullable(v.picklist(['pulls', 'one-angle', 'estimate'])),
  machineAngleWithin: v.nullable(number),
  clampMark: number,
});

const tube = v.strictObject({
  id: text,
  revision: text,
  number: v.pipe(number, v.integer(), v.minValue(1)),
  name: text,
  role: text,
  section: text,
  die: v.nullable(text),
  twinOf: v.nullable(text),
  stands: v.exactOptional(v.picklist(['built', 'cut'])),
  of: v.exactOptional(text),
  piece: v.exactOptional(v.strictTuple([number, number])),
  corners: v.pipe(v.array(vector), v.minLength(2)),
  straights: v.pipe(v.array(number), v.minLength(1)),
  bends: v.array(bend),
  developedLength: number,
  sharpCornerLength: number,
  blankLength: number,
  cutLength: number,
  mass: number,
  ends: v.strictTuple([end, end]),
});

const foot = v.strictObject({
  tube: text,
  end: v.picklist(['A', 'B']),
  foot: text,
  corners: v.pipe(v.array(vector), v.minLength(4), v.maxLength(4)),
  kink: v.exactOptional(v.strictTuple([vector, vector])),
  along: vector,
  across: vector,
  normal: vector,
  outline: v.nullable(v.strictObject({ centre: vector, half: v.strictTuple([number, number]), longAxis: vector })),
  contactArea: number,
  coveredArea: number,
  mass: number,
});

const gusset = v.strictObject({
  id: text,
  name: text,
  node: text,
  kind: v.picklist(['flat', 'bent']),
  thickness: number,
  between: v.strictTuple([leg(), leg()]),
  angle: v.pipe(number, v.minValue(20), v.maxValue(160)),
  corner: vector,
  freeEdge: v.strictTuple([vector, vector]),
  normal: vector,
  size: v.strictTuple([number, number]),
  area: number,
  mass: number,
});

function leg() {
  return v.strictObject({ bar: text, towards: v.picklist(['A', 'B']), leg: number });
}

const clearance = v.strictObject({
  envelope: text,
  tube: text,
  distance: number,
  gap: number,
  ok: v.boolean(),
  at: vector,
  onEnvelope: vector,
});

const gap = v.strictObject({
  tubes: v.strictTuple([text, text]),
  distance: v.pipe(number, v.maxValue(25)),
  at: vector,
  on: v.strictTuple([vector, vector]),
});

const trimGap = v.strictObject({
  point: v.exactOptional(text),
  bodyLine: v.exactOptional(text),
  tube: text,
  distance: number,
  wanted: v.nullable(v.pipe(number, v.minValue(0), v.maxValue(500))),
  at: vector,
  onTrim: vector,
});

const fromZero = v.pipe(number, v.minValue(0));
const which = v.picklist(['A', 'B']);
const ofCar = { point: v.exactOptional(text), bodyLine: v.exactOptional(text), envelope: v.exactOptional(text) };

const fitting = v.strictObject({
  torchRoom: fromZero,
  lowerBy: fromZero,
  decidedBy: v.nullable(v.pipe(fromZero, v.integer())),
  boxesGive: v.nullable(fromZero),
  joints: v.array(
    v.strictObject({
      node: v.nullable(text),
      tube: text,
      end: which,
      at: vector,
      top: number,
      over: v.exactOptional(v.strictObject({ ...ofCar, aside: fromZero })),
      air: v.nullable(number),
      short: v.nullable(fromZero),
    }),
  ),
  ends: v.array(v.strictObject({ tube: text, end: which, gives: fromZero, into: fromZero })),
  inTheWay: v.array(v.strictObject({ ...ofCar, tube: text, deep: fromZero })),
  door: v.nullable(v.strictObject({ way: fromZero, between: v.nullable(v.strictTuple([text, text])) })),
  slits: v.array(v.strictObject({ tube: text, outOfFlat: fromZero, width: v.nullable(fromZero), thickness: fromZero })),
});

const held = { tube: text, mark: vector, centre: vector };
const edge = v.strictObject({ kind: v.literal('edge'), ...held, end: which, side: v.picklist(['line', 'opposite']) });
const corner = v.strictObject({
  kind: v.literal('corner'),
  ...held,
  end: which,
  corner: v.pipe(number, v.integer(), v.minValue(0), v.maxValue(3)),
});
const place = v.variant('kind', [
  edge,
  corner,
  v.strictObject({
    kind: v.literal('top'),
    ...held,
    face: v.picklist(['front', 'rear', 'left', 'right', 'upper', 'lower']),
  }),
  v.strictObject({ kind: v.literal('spot'), ...held, end: which }),
]);
const taped = { to: place, tape: fromZero, centres: fromZero };
const tape = v.strictObject(taped);
const bayCorner = v.strictObject({
  on: text,
  meets: v.nullable(text),
  bend: v.nullable(v.pipe(number, v.integer(), v.minValue(1))),
  centre: vector,
  mark: vector,
});
const both = v.strictTuple([fromZero, fromZero]);

const tackUp = v.strictObject({
  first: v.nullable(
    v.strictObject({
      tube: text,
      lean: v.pipe(fromZero, v.maxValue(90)),
      towards: v.nullable(v.picklist(['front', 'rear', 'left', 'right'])),
      plane: v.boolean(),
      feet: v.nullable(v.strictObject({ from: corner, ...taped })),
    }),
  ),
  ends: v.array(
    v.strictObject({
      tube: text,
      end: which,
      from: edge,
      tapes: v.strictTuple([tape, tape, tape]),
      spread: fromZero,
    }),
  ),
  bays: v.array(
    v.strictObject({
      sides: v.array(text),
      corners: v.strictTuple([bayCorner, bayCorner, bayCorner, bayCorner]),
      outwards: vector,
      tapes: both,
      centres: both,
      symmetric: v.boolean(),
    }),
  ),
});

const share = v.pipe(fromZero, v.maxValue(1));
const bendOf = { kind: v.literal('bend'), bar: text, bend: v.pipe(number, v.integer(), v.minValue(1)) };

const covariance = v.strictTuple([vector, vector, vector]);
const survey = v.strictObject({
  points: v.array(
    v.strictObject({
      id: text,
      position: vector,
      sigma: v.strictTuple([v.nullable(fromZero), v.nullable(fromZero), v.nullable(fromZero)]),
      covariance,
    }),
  ),
  residuals: v.array(v.strictObject({ index: number, residual: number, standardised: number, share })),
  s0: fromZero,
  redundancy: fromZero,
  suspects: v.array(v.strictObject({ index: number, fits: number, deviation: fromZero, or: v.array(number) })),
  loose: v.array(v.strictObject({ point: text, direction: vector })),
  stands: v.exactOptional(v.strictObject({ turns: v.strictTuple([turn, turn, turn]), zero: vector })),
});

const forecast = v.strictObject({
  accuracy: v.strictObject({ point: fromZero, cut: fromZero, angle: fromZero, rotation: fromZero, mark: fromZero }),
  joints: v.array(
    v.strictObject({
      tube: text,
      end: which,
      node: v.nullable(text),
      fit: v.picklist(['cope', 'plate', 'foot', 'mitre', 'butt']),
      to: v.array(text),
      at: vector,
      gap: fromZero,
      onCar: v.boolean(),
      feeds: v.array(
        v.strictObject({
          of: v.variant('kind', [
            v.strictObject({ kind: v.literal('point'), point: text, axis: v.picklist(['x', 'y', 'z']) }),
            v.strictObject(bendOf),
            v.strictObject({ kind: v.literal('cut'), tube: text, end: which }),
          ]),
          share,
        }),
      ),
      cures: v.array(
        v.variant('kind', [
          v.strictObject({ kind: v.literal('measure'), point: text, gap: fromZero }),
          v.strictObject({ kind: v.literal('long'), by: fromZero, gap: fromZero }),
          v.strictObject({ kind: v.literal('on-car'), first: v.array(text), gap: fromZero }),
          v.strictObject({ kind: v.literal('as-built'), bar: text, gap: fromZero }),
        ]),
      ),
    }),
  ),
});

const verdict = v.strictObject({
  sheet: text,
  article: text,
  kind: text,
  of: text,
  verdict: v.picklist(['met', 'not-met', 'not-checked']),
  value: v.nullable(number),
  limit: v.nullable(number),
  margin: v.nullable(number),
  concerns: v.array(text),
  mark: v.picklist(['read', 'quoted', 'memory', 'own']),
  because: text,
});

const stock = v.strictObject({
  plan: v.array(
    v.strictObject({
      stick: text,
      cuts: v.array(
        v.union([
          v.strictObject({ tube: text, length: fromZero }),
          v.strictObject({ spare: fromZero, length: fromZero }),
        ]),
      ),
      left: fromZero,
    }),
  ),
  cost: fromZero,
  leastCost: fromZero,
  unplaced: v.array(text),
});

const finding = v.strictObject({
  id: text,
  severity: v.picklist(['error', 'warning', 'note']),
  tube: v.exactOptional(text),
  end: v.exactOptional(v.picklist(['A', 'B'])),
  bend: v.exactOptional(v.pipe(number, v.integer(), v.minValue(1))),
  node: v.exactOptional(text),
  envelope: v.exactOptional(text),
  gusset: v.exactOptional(text),
  other: v.exactOptional(text),
  point: v.exactOptional(text),
  bodyLine: v.exactOptional(text),
  message: text,
  source: text,
  at: vector,
});

export const fabricationSchema = v.strictObject({
  format: v.literal('cagewright/fabrication'),
  version: v.literal(1),
  job: text,
  tubes: v.array(tube),
  feet: v.array(foot),
  gussets: v.array(gusset),
  clearances: v.array(clearance),
  gaps: v.array(gap),
  trimGaps: v.array(trimGap),
  survey: v.exactOptional(survey),
  rules: v.exactOptional(v.array(verdict)),
  stock: v.exactOptional(stock),
  fitting,
  tackUp,
  forecast: v.exactOptional(forecast),
  findings: v.array(finding),
});
