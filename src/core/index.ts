/** The public surface of the core: everything a door may use. Nothing but re-exports. */
export type { Account, AccountInput, AccountKind } from "./account.ts";
export type { FoundThing } from "./drawing/found-thing.ts";
export { joinedPoints } from "./drawing/joined-points.ts";
export { isWorkedOut, likelyRoles, possibleRoles } from "./drawing/likely-roles.ts";
export { type TakenThing, type WithFound, withFound } from "./drawing/take-found.ts";
export { type Advice, adviceOf } from "./drip/advice.ts";
export type { Drip } from "./drip/drip.ts";
export { headBudget } from "./drip/head-budget.ts";
export { recommendedEvenness } from "./drip/recommended-evenness.ts";
export { momentInWords, monthNames } from "./drip/season/months.ts";
export { type TotalHead, totalHead } from "./drip/total-head.ts";
export { waterRows } from "./drip/water-rows.ts";
export {
  type DocumentKind,
  documentKinds,
  type HandOverChoice,
  type Thing,
  usualChoice,
} from "./exchange/choice.ts";
export {
  type ComparisonJson,
  comparisonJson,
  comparisonJsonVersion,
} from "./exchange/comparison-json.ts";
export type { Chunk, Format, FormatChoice, OutFile } from "./exchange/format.ts";
export { formats } from "./exchange/formats.ts";
export { type HandOver, handingOver, handOver } from "./exchange/hand-over.ts";
export { type Layer, type LayerFeature, type LayerKind, layerKinds } from "./exchange/layers/layer.ts";
export { type List, type ListKind, listKinds } from "./exchange/lists/list.ts";
export { listOf } from "./exchange/lists/lists.ts";
export {
  type BlockJson,
  emptyPlanJson,
  type FindingJson,
  findingJson,
  type PlanJson,
  planJson,
  planJsonVersion,
  type RowJson,
  type TotalsJson,
} from "./exchange/plan-json.ts";
export { rowLabel } from "./exchange/positions.ts";
export { priceListCsv, priceListJson, pricesSetting, readPriceList } from "./exchange/price-list.ts";
export { type SweepJson, sweepJson, sweepJsonVersion } from "./exchange/sweep-json.ts";
export { type BranchPlaces, branchPlaces } from "./exchange/trench-places.ts";
export { type Finding, hasError, type Phrase, type Quantity, type Severity } from "./finding.ts";
export { type Contour, contourInterval_m, contours } from "./ground/contours.ts";
export { type Elevation, type HeightAt, heightReader } from "./ground/elevation.ts";
export type { BlockGround, Cause, Ground } from "./ground/ground.ts";
export type { PlaneBox } from "./ground/plane-box.ts";
export type { PlantingAreaOf } from "./ground/planting-area.ts";
export { type Shade, shade } from "./ground/shade.ts";
export { pressureOf_kpa } from "./hydraulics/pressure-head.ts";
export { createLeanPlanner, type Planner } from "./lean-planner.ts";
export type { Mainline } from "./mainline/water-end.ts";
export { perVineAndArea } from "./materials/cost.ts";
export type { MaterialCost, MaterialLine, Pack } from "./materials/material-line.ts";
export type { Materials } from "./materials/materials.ts";
export type { Outcome } from "./outcome.ts";
export type { Plan } from "./plan.ts";
export { type LonLat, lonLat, type PlanePoint, planePoint } from "./plane/coordinate.ts";
export { createFrame, type Frame, frameReach_m } from "./plane/frame.ts";
export { type Overlay, type PlantingParts, plantingArea } from "./plane/overlay.ts";
export { createPlanner } from "./planner.ts";
export { withFeature, withFrameOrigin, withoutFeature, withSetting, withSettings } from "./project/edits.ts";
export { endAssemblyNames } from "./project/end-assembly-names.ts";
export { heightBox } from "./project/height-box.ts";
export { type GridHeights, heightGridFeature } from "./project/height-grid-feature.ts";
export { parseProject } from "./project/parse.ts";
export { type Block, type Json, type JsonObject, type Project, type Role, roles } from "./project/project.ts";
export { serializeProject } from "./project/serialize.ts";
export type { BlockRows, Positions, Row, Rows, Sweep, SweepPoint } from "./rows/rows.ts";
export type { ChartOptions } from "./sheets/chart-page.ts";
export { type FirstRunSheet, firstRunSheet } from "./sheets/first-run.ts";
export { lateralChartSvg } from "./sheets/lateral-chart-svg.ts";
export { lineChartSvg } from "./sheets/line-chart-svg.ts";
export { type RowSide, rowSide, type SidePost, type SideStake, type Upright } from "./sheets/row-side.ts";
export { rowSideSvg, type SideSvgOptions } from "./sheets/row-side-svg.ts";
export { seasonChartSvg } from "./sheets/season-chart-svg.ts";
export type { SideDimension } from "./sheets/side-dimensions.ts";
export type { SideEnd, SideLine } from "./sheets/side-ends.ts";
export type { SideGround } from "./sheets/side-ground.ts";
export type { SideZoom } from "./sheets/side-scale.ts";
export type { SideWire } from "./sheets/side-wires.ts";
export { supplyChartSvg } from "./sheets/supply-chart-svg.ts";
export { type DrawnPlace, type Pond, type TrenchProfile, trenchProfile } from "./sheets/trench-profile.ts";
export { type TrenchSvgOptions, trenchProfileSvg } from "./sheets/trench-profile-svg.ts";
export { type TrenchRaise, type TrenchZoom, trenchRaises } from "./sheets/trench-scale.ts";
export type { BlockLoads, EndLoads, TrellisLoads, WireLoads } from "./trellis/loads.ts";
export type { PartCount } from "./trellis/part.ts";
export type { BlockTrellis, Trellis, WireLengths, WireTotal } from "./trellis/trellis.ts";
export { pipeName } from "./trench/pipe-words.ts";
export type { Branch, Earth, Profile, Trench, TrenchPart } from "./trench/trench.ts";
export type { TrenchMark } from "./trench/trench-marks.ts";
export type { TrenchStation } from "./trench/trench-stations.ts";
export {
  formatQuantity,
  gaugeDiameter_mm,
  gaugeOfDiameter,
  inUnit,
  type ParsedQuantity,
  parseQuantity,
  type QuantityKind,
  text,
  type UnitSystem,
  unitSystems,
  wireGauges,
} from "./units.ts";
export { validatePlan } from "./validate-plan.ts";
export { type ComparedLine, type ComparedTotal, type Comparison, comparePlans } from "./variants.ts";
export type { WhatIf } from "./what-if.ts";
export { whatIfs } from "./what-ifs.ts";
