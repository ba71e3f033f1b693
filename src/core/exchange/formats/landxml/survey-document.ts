import type { AboutPart } from "../../about.ts";
import { featuresAChunk, type HandOverJob } from "../../format.ts";
import type { Layer, LayerFeature } from "../../layers/layer.ts";
import { xmlAttributes } from "../../xml.ts";
import { alignment, stationHeights } from "./alignment.ts";
import { columnsFeature, coordGeom } from "./geometry-elements.ts";
import { type SurveyNumbers, surveyNumbers } from "./survey-numbers.ts";

/** A whole file, piece by piece. Source: LandXML 1.2 (LandXML.org, 2008), from memory and by the trial that FORMATS.md tells of. */
export function* surveyDocument(job: HandOverJob, about: readonly AboutPart[]): Generator<string> {
  const { layers, names } = job;
  const numbers = surveyNumbers(job);
  yield opening(job, about);
  for (const layer of layers) {
    if (layer.kind === "route") continue;
    if (layer.shape === "point") yield* points(layer, job, numbers);
    else yield* shapes(layer, job, numbers);
  }
  yield* alignments(layers, (feature) => names.of(feature), numbers);
  yield "</LandXML>\n";
}

function opening({ plan, system, writtenAt }: HandOverJob, about: readonly AboutPart[]): string {
  const { name } = plan.project;
  const told = about.map(({ head, lines }) => `${head}: ${lines.join("; ")}`).join(" / ");
  const stated = {
    name: system.name,
    desc: system.definition,
    epsgCode: system.code,
  };
  return [
    '<?xml version="1.0" encoding="UTF-8"?>\n',
    `<LandXML${xmlAttributes({
      xmlns: "http://www.landxml.org/schema/LandXML-1.2",
      "xmlns:xsi": "http://www.w3.org/2001/XMLSchema-instance",
      "xsi:schemaLocation":
        "http://www.landxml.org/schema/LandXML-1.2 http://www.landxml.org/schema/LandXML-1.2/LandXML-1.2.xsd",
      version: "1.2",
      date: writtenAt.slice(0, 10),
      time: writtenAt.slice(11, 19),
      readOnly: "false",
    })}>\n`,
    `<Units>${unitsElement(system.unit)}</Units>\n`,
    `<CoordinateSystem${xmlAttributes(stated)}/>\n`,
    `<Project${xmlAttributes({ name: (name ?? "") === "" ? "Vineyard" : name, desc: told })}/>\n`,
    '<Application name="Tautrow"/>\n',
  ].join("");
}

/** Metric or imperial; the foot and the US survey foot are two values of it. */
function unitsElement(unit: HandOverJob["system"]["unit"]): string {
  const angles = 'angularUnit="decimal degrees" directionUnit="decimal degrees"';
  if (unit === "ft" || unit === "us-ft") {
    const foot = unit === "ft" ? "foot" : "USSurveyFoot";
    return `<Imperial areaUnit="squareFoot" linearUnit="${foot}" volumeUnit="cubicFeet" temperatureUnit="fahrenheit" pressureUnit="inHG" ${angles}/>`;
  }
  return `<Metric areaUnit="squareMeter" linearUnit="meter" volumeUnit="cubicMeter" temperatureUnit="celsius" pressureUnit="HPA" ${angles}/>`;
}

/** Points refer to a Feature with their columns, as a point itself holds nothing but its place. */
function* points(layer: Layer, { names }: HandOverJob, numbers: SurveyNumbers): Generator<string> {
  if (layer.count === 0) return;
  yield `<CgPoints${xmlAttributes({ name: layer.kind })}>\n`;
  yield* inChunks(layer, (feature) => {
    const { geometry, id, parts } = feature;
    if (geometry.shape !== "point") return "";
    const attributes = { name: names.of(feature), code: parts.kind, featureRef: id };
    const place = numbers.text(numbers.point(geometry.place));
    return `<CgPoint${xmlAttributes(attributes)}>${place}</CgPoint>\n`;
  });
  yield* inChunks(
    layer,
    (feature) => `${columnsFeature(layer.columns, feature, { name: feature.id, code: "columns" })}\n`,
  );
  yield "</CgPoints>\n";
}

/** Areas as Parcels, each ring a CoordGeom of its own that says which it is; lines as PlanFeatures. */
function* shapes(layer: Layer, { names }: HandOverJob, numbers: SurveyNumbers): Generator<string> {
  if (layer.count === 0) return;
  const [all, each] = layer.shape === "area" ? ["Parcels", "Parcel"] : ["PlanFeatures", "PlanFeature"];
  yield `<${all}${xmlAttributes({ name: layer.kind })}>\n`;
  yield* inChunks(layer, (feature) => {
    const columns = columnsFeature(layer.columns, feature, { code: "columns" });
    return `<${each}${xmlAttributes({ name: names.of(feature) })}>${geometryOf(feature, numbers)}${columns}</${each}>\n`;
  });
  yield `</${all}>\n`;
}

function geometryOf({ geometry }: LayerFeature, numbers: SurveyNumbers): string {
  switch (geometry.shape) {
    case "point":
      return "";
    case "line":
      return coordGeom(geometry.places, false, {}, numbers);
    case "area":
      return geometry.polygons
        .flatMap((rings, p) =>
          rings.map((ring, r) => {
            const desc = r === 0 ? "outline" : "hole";
            return coordGeom(ring, true, { name: `${p + 1}.${r + 1}`, desc }, numbers);
          }),
        )
        .join("");
    default:
      return geometry satisfies never;
  }
}

/** The branches of the main line with the stations of each; stations alone make a way through their places. */
function* alignments(
  layers: readonly Layer[],
  nameOf: (feature: LayerFeature) => string,
  numbers: SurveyNumbers,
): Generator<string> {
  const route = layers.find(({ kind }) => kind === "route");
  const stationsLayer = layers.find(({ kind }) => kind === "stations");
  const stations = stationsLayer === undefined ? [] : stationHeights(stationsLayer);
  const branches = [...new Set(stations.map(({ branch }) => branch))];
  const ways = [...(route?.features() ?? [])];
  if (ways.length === 0 && branches.length === 0) return;
  yield '<Alignments name="route">\n';
  if (route !== undefined) {
    const lengthAt = route.columns.findIndex(({ name }) => name === "length_m");
    for (const of of ways) {
      const length_m = Number(of.values[lengthAt] ?? 0);
      const own = stations.filter(({ branch }) => branch === of.parts.row);
      const places = of.geometry.shape === "line" ? of.geometry.places : [];
      yield alignment({ name: nameOf(of), places, length_m, stations: own, feature: { of, layer: route } }, numbers);
    }
  } else {
    for (const branch of branches) {
      const own = stations.filter((station) => station.branch === branch);
      const length_m = (own.at(-1)?.station_m ?? 0) - (own[0]?.station_m ?? 0);
      const places = own.map(({ place }) => place);
      if (places.length < 2) continue;
      yield alignment({ name: `main-line-${branch}`, places, length_m, stations: own, feature: null }, numbers);
    }
  }
  yield "</Alignments>\n";
}

function* inChunks(layer: Layer, written: (feature: LayerFeature) => string): Generator<string> {
  let chunk = "";
  let count = 0;
  for (const feature of layer.features()) {
    chunk += written(feature);
    if (++count % featuresAChunk !== 0) continue;
    yield chunk;
    chunk = "";
  }
  yield chunk;
}
