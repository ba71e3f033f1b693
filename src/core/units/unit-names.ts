import * as f from "./factors.ts";
import type { QuantityKind } from "./kind.ts";

export interface Unit {
  readonly factor: f.Factor;
  /** Units that may follow in one quantity, as inches follow feet. */
  readonly parts: readonly string[];
}

type Names = readonly (readonly [names: string, factor: f.Factor, parts?: string])[];

/** Spellings (lower case, dots dropped, `|` between them), factor to the kind's SI unit, and what may follow as a part of it. */
const lengths: Names = [
  ["m|metre|metres|meter|meters", f.one, "cm|mm"],
  ["mm|millimetre|millimetres|millimeter|millimeters", f.thousandth],
  ["cm|centimetre|centimetres|centimeter|centimeters", f.hundredth, "mm"],
  ["km|kilometre|kilometres|kilometer|kilometers", f.thousand],
  ["ft|foot|feet|'", f.foot_m, 'in|inch|inches|"'],
  ['in|inch|inches|"', f.inch_m],
  ["yd|yard|yards", f.yard_m],
  ["mi|mile|miles", f.mile_m],
  [
    "usft|us-ft|us ft|ftus|us survey foot|us survey feet|us survey ft|survey foot|survey feet|survey ft",
    f.surveyFoot_m,
  ],
];

const named: Readonly<Record<QuantityKind, Names>> = {
  length: lengths,
  diameter: lengths.map(([names, factor, parts]) => [names, f.inMillimetres(factor), parts ?? ""]),
  area: [
    ["m2|sq m|square metre|square metres|square meter|square meters", f.one],
    ["ha|hectare|hectares", f.hectare_m2],
    ["km2|sq km|square kilometre|square kilometres", { times: 1_000_000, over: 1 }],
    ["acre|acres|ac", f.acre_m2],
    ["ft2|sq ft|sqft|square foot|square feet", f.squareFoot_m2],
    ["yd2|sq yd|square yard|square yards", f.squareYard_m2],
  ],
  angle: [
    ["°|deg|degree|degrees", f.one, "'|min|arcmin|\"|sec|arcsec"],
    ["'|arcmin", f.arcMinute_deg, '"|sec|arcsec'],
    ['"|arcsec', f.arcSecond_deg],
    ["min", f.arcMinute_deg, '"|sec|arcsec'],
    ["sec", f.arcSecond_deg],
    ["rad|radian|radians", f.radian_deg],
    ["gon|gons|grad|grads", f.gon_deg],
  ],
  flow: [
    ["l/h|l/hr|l/hour|lph|litre/hour|litres/hour|liter/hour|liters/hour", f.one],
    ["l/min|lpm|litres/minute|liters/minute", f.litrePerMinute_lph],
    ["l/s|l/sec|lps|litres/second|liters/second", f.litrePerSecond_lph],
    ["l/day|l/d|litres/day|liters/day", f.slowedBy(f.one, 24)],
    ["ml/min", { times: 60, over: 1000 }],
    ["m3/h|m3/hr|m3/hour", f.thousand],
    ["gal/h|gal/hr|gal/hour|gph|us gal/h|us gal/hr|us gph|gallon/hour|gallons/hour", f.gallon_l],
    ["gal/min|gpm|us gal/min|us gpm|gallons/minute", f.gallonPerMinute_lph],
    ["gal/day|gpd|gallons/day", f.slowedBy(f.gallon_l, 24)],
    ["imp gal/h|imp gal/hr|imperial gal/h", f.imperialGallon_l],
    ["imp gal/min|imp gpm|imperial gal/min", f.imperialGallonPerMinute_lph],
  ],
  volume: [
    ["l|litre|litres|liter|liters", f.one],
    ["ml|millilitre|millilitres|milliliter|milliliters", f.thousandth],
    ["hl|hectolitre|hectolitres|hectoliter|hectoliters", { times: 100, over: 1 }],
    ["m3|cubic metre|cubic metres|cubic meter|cubic meters", f.thousand],
    ["gal|us gal|us gallon|us gallons|gallon|gallons", f.gallon_l],
    ["fl oz|floz|fluid ounce|fluid ounces", f.fluidOunce_l],
    ["imp gal|imperial gal|imperial gallon|imperial gallons", f.imperialGallon_l],
    ["ft3|cu ft|cubic foot|cubic feet", f.cubicFoot_l],
  ],
  mass: [
    ["kg|kilogram|kilograms|kilogramme|kilogrammes", f.one],
    ["g|gram|grams|gramme|grammes", f.thousandth],
    ["t|tonne|tonnes|metric ton|metric tons", f.thousand],
    ["lb|lbs|pound|pounds", f.pound_kg, "oz|ounce|ounces"],
    ["oz|ounce|ounces", f.ounce_kg],
    ["short ton|short tons|us ton|us tons", f.shortTon_kg],
  ],
  ratio: [["%|percent|per cent|pct", f.hundredth]],
  pressure: [
    ["kpa|kilopascal|kilopascals", f.one],
    ["pa|pascal|pascals", f.thousandth],
    ["mpa|megapascal|megapascals", f.thousand],
    ["bar|bars", f.bar_kpa],
    ["mbar|hpa", { times: 1, over: 10 }],
    ["psi|lb/in2|lbf/in2", f.psi_kpa],
    ["psf|lb/ft2|lbf/ft2", f.psf_kpa],
    ["m|m head|m of water|m water|mh2o|m h2o", f.metreHead_kpa],
    ["ft|ft head|ft of water|ft water|fth2o|ft h2o", f.footHead_kpa],
  ],
  time: [
    ["h|hr|hrs|hour|hours", f.one, "min|minute|minutes"],
    ["min|minute|minutes", f.minute_h, "s|sec|second|seconds"],
    ["s|sec|second|seconds", f.second_h],
    ["d|day|days", f.day_h, "h|hour|hours"],
    ["week|weeks", f.week_h],
  ],
  force: [
    ["n|newton|newtons", f.one],
    ["kn|kilonewton|kilonewtons", f.thousand],
    ["dan", { times: 10, over: 1 }],
    ["lbf|lb|lbs|pound|pounds|pound-force|pounds-force|lb-f", f.poundForce_n],
    ["kgf|kg|kp", f.kilogramForce_n],
  ],
  temperature: [
    ["°c|c|deg c|degc|celsius|degrees celsius|degrees c", f.one],
    ["°f|f|deg f|degf|fahrenheit|degrees fahrenheit|degrees f", f.fahrenheit_c],
    ["k|kelvin", f.kelvin_c],
  ],
  speed: [
    ["m/s|metre/second|metres/second", f.one],
    ["ft/s|fps|foot/second|feet/second", f.foot_m],
  ],
  depth: [
    ["mm|millimetre|millimetres|millimeter|millimeters", f.one],
    ["cm|centimetre|centimetres|centimeter|centimeters", { times: 10, over: 1 }],
    ['in|inch|inches|"', f.inMillimetres(f.inch_m)],
  ],
  earth: [
    ["m3|cubic metre|cubic metres|cubic meter|cubic meters", f.one],
    ["l|litre|litres|liter|liters", f.thousandth],
    ["yd3|cu yd|cubic yard|cubic yards", f.cubicYard_m3],
    ["ft3|cu ft|cubic foot|cubic feet", f.cubicFoot_m3],
  ],
};

function unitsOf(names: Names): ReadonlyMap<string, Unit> {
  const units = new Map<string, Unit>();
  for (const [spellings, factor, parts] of names) {
    const unit: Unit = { factor, parts: parts ? parts.split("|") : [] };
    for (const spelling of spellings.split("|")) units.set(spelling, unit);
  }
  return units;
}

const units: Readonly<Record<QuantityKind, ReadonlyMap<string, Unit>>> = {
  length: unitsOf(named.length),
  diameter: unitsOf(named.diameter),
  area: unitsOf(named.area),
  force: unitsOf(named.force),
  temperature: unitsOf(named.temperature),
  angle: unitsOf(named.angle),
  flow: unitsOf(named.flow),
  volume: unitsOf(named.volume),
  mass: unitsOf(named.mass),
  ratio: unitsOf(named.ratio),
  pressure: unitsOf(named.pressure),
  time: unitsOf(named.time),
  earth: unitsOf(named.earth),
  speed: unitsOf(named.speed),
  depth: unitsOf(named.depth),
};

/** The unit of a kind with this spelling, or null. */
export function unitNamed(kind: QuantityKind, spelling: string): Unit | null {
  return units[kind].get(spelling) ?? null;
}

/** The longest spelling of a kind that the text begins with and that ends there as a word, or null. */
export function unitAtStart(kind: QuantityKind, text: string): string | null {
  let found: string | null = null;
  for (const spelling of units[kind].keys()) {
    if (found !== null && found.length >= spelling.length) continue;
    if (text.startsWith(spelling) && endsAsWord(spelling, text.charAt(spelling.length))) found = spelling;
  }
  return found;
}

/** A unit of letters goes on with letters, one that ends in a digit ("m2") with digits; marks such as ' and % end by themselves. */
function endsAsWord(spelling: string, next: string): boolean {
  const last = spelling.charAt(spelling.length - 1);
  if (/[a-z]/.test(last)) return !/[a-z²³/]/.test(next);
  return !/\d/.test(last) || !/[\da-z]/.test(next);
}

/** One spelling for each unit of a kind, for a sentence that says what would be understood. */
export function spellingsOf(kind: QuantityKind): readonly string[] {
  return named[kind].flatMap(([names]) => {
    const first = names.split("|")[0];
    return first === undefined ? [] : [first];
  });
}
