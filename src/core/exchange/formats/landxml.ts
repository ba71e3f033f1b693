import { aboutParts, countOf } from "../about.ts";
import { type Format, type HandOverJob, type OutFile, stemOf } from "../format.ts";
import { layerKinds } from "../layers/layer.ts";
import { surveyDocument } from "./landxml/survey-document.ts";

/**
 * LandXML 1.2: points as CgPoints, areas as Parcels, lines as PlanFeatures, the main line as Alignments with the profiles of ground and pipe.
 * Northing comes before easting, as the standard has it; columns stand in Features.
 */
export const landXml: Format = {
  name: "landxml",
  word: "LandXML",
  title: "LandXML 1.2",
  usedFor: "machine control and survey offices",
  extension: "xml",
  mediaType: "application/xml",
  holds: layerKinds,
  usual: ["marks", "route", "stations"],
  choices: ["system", "unit", "naming", "heights"],
  naming: { one: "{id}", several: "{id}" },
  nameLength: null,
  letters: "any",
  statesItself: true,
  places: "chosen, no degrees",
  write: (job) => ({ files: job.layers.length === 0 ? [] : [surveyFile(job)], findings: [] }),
};

function surveyFile(job: HandOverJob): OutFile {
  const stem = stemOf(job.layers);
  const name = `${stem}.xml`;
  const about = aboutParts(job, landXml, {
    stem,
    files: [[name, job.layers.map(countOf).join(", ")]],
    columns: [],
    notes: ["Stations of profiles count along the alignment by the numbers of the file."],
  });
  return { name, mediaType: landXml.mediaType, content: { kind: "chunks", chunks: () => surveyDocument(job, about) } };
}
