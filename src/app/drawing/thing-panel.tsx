import "./panel.css";
import { Fragment } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { areaWithinAccount, wayLengthAccount } from "../../core/drawing/accounts.ts";
import { type DrawnPath, type DrawnThing, drawnThing, thingLabel } from "../../core/drawing/drawn.ts";
import { measurePath } from "../../core/drawing/measure.ts";
import { courseBetween, placeAt } from "../../core/drawing/place.ts";
import type { LonLat } from "../../core/plane/coordinate.ts";
import type { Project } from "../../core/project/project.ts";
import { formatQuantity } from "../../core/units.ts";
import { Figure } from "../figure/figure.tsx";
import { useStore } from "../store-context.ts";
import { insertCorner, moveCorner, removeCorner } from "./corner-edits.ts";
import { CornerTable } from "./corner-table.tsx";
import { frameNear } from "./drawing-frame.ts";
import { select } from "./select.ts";
import { SidePanel } from "./side-panel.tsx";
import { SideTable } from "./side-table.tsx";
import { SketchTable } from "./sketch-table.tsx";
import { removePath, removeThing } from "./thing-edits.ts";
import { ThingFields } from "./thing-fields.tsx";

/** All of a selected thing, to be read and typed: its name and distances, corners, sides; while drawing, the corners so far. */
export function ThingPanel() {
  const store = useStore();
  const { drawing } = store;
  const project = store.shownPlan.value?.project;
  const key = drawing.selected.value;
  if (drawing.tool.value) return <SketchTable tool={drawing.tool.value} />;
  const thing = project && key !== null ? drawnThing(project, key) : null;
  return project && thing ? <Selected key={thing.key} project={project} thing={thing} /> : null;
}

function Selected({ project, thing }: { readonly project: Project; readonly thing: DrawnThing }) {
  const store = useStore();
  const { drawing } = store;
  const section = useRef<HTMLElement>(null);
  useEffect(() => {
    section.current?.scrollIntoView({ block: "nearest" });
    // Where the keyboard was is gone with the drawing that is finished.
    if (document.activeElement === document.body) section.current?.focus({ preventScroll: true });
  }, []);
  const side = drawing.side.value;
  const sidePath = thing.paths.find(({ path }) => path === side?.path);
  return (
    <section class="thing-panel" ref={section} tabIndex={-1} aria-label="Selected">
      <header>
        <h2>{thingLabel(thing)}</h2>
        <button type="button" class="quiet-button" onClick={() => select(store, null)}>
          Close
        </button>
      </header>
      <Size thing={thing} />
      {drawing.trouble.value && (
        <p class="field-refusal" role="alert">
          {drawing.trouble.value}
        </p>
      )}
      {side && sidePath && <SidePanel project={project} thing={thing} path={sidePath} edge={side.edge} />}
      <ThingFields thing={thing} />
      {thing.paths.map((path) => (
        <PathPart key={path.path} project={project} thing={thing} path={path} />
      ))}
      <p class="panel-buttons">
        <button
          type="button"
          onClick={() => {
            removeThing(store, thing.key);
            document.querySelector<HTMLElement>(".draw-buttons button")?.focus();
          }}
        >
          Take it away
        </button>
      </p>
    </section>
  );
}

/** How long, how far around, how large. */
function Size({ thing }: { readonly thing: DrawnThing }) {
  const store = useStore();
  const units = store.units.value;
  const sizes = thing.paths.flatMap(({ path, corners, closed, isHole }) => {
    const first = corners[0];
    const frame = first && corners.length > 1 && !isHole ? frameNear(store, first) : null;
    return frame ? [{ path, corners, closed, frame, ...measurePath(frame, corners, closed) }] : [];
  });
  if (sizes.length === 0) return null;
  return (
    <p class="aside">
      {sizes.map(({ path, corners, closed, frame, length_m, area_m2 }, i) => (
        <Fragment key={path}>
          {i > 0 && "; "}
          {area_m2 !== null && (
            <>
              <Figure
                value={formatQuantity("area", area_m2, units)}
                label="within the outline, holes not taken off"
                account={() => areaWithinAccount(frame, corners)}
              />
              ,{" "}
            </>
          )}
          <Figure
            value={formatQuantity("length", length_m, units)}
            label={area_m2 === null ? "long" : "around"}
            account={() => wayLengthAccount(frame, corners, closed)}
          />{" "}
          {area_m2 === null ? "long" : "around"}
        </Fragment>
      ))}
    </p>
  );
}

interface PathPartProps {
  readonly project: Project;
  readonly thing: DrawnThing;
  readonly path: DrawnPath;
}

/** The tables of one outline, hole or line. */
function PathPart({ project, thing, path }: PathPartProps) {
  const store = useStore();
  const ref = { key: thing.key, path: path.path };
  const name = pathName(thing, path);
  const middle = (from: LonLat, to: LonLat): LonLat => {
    const frame = frameNear(store, from);
    if (!frame) return from;
    const { length_m, bearing_deg } = courseBetween(frame, from, to);
    return placeAt(frame, from, { length_m: length_m / 2, bearing_deg });
  };
  const isSpot = path.corners.length === 1;
  return (
    <>
      <CornerTable
        corners={path.corners}
        closed={path.closed}
        caption={isSpot ? "Its place" : `Corners${name === "" ? "" : ` of ${name}`}`}
        onMove={(corner, to) => moveCorner(store, { ...ref, corner }, to)}
        {...(isSpot
          ? {}
          : {
              onInsert: (edge: number, from: LonLat, to: LonLat) =>
                insertCorner(store, { ...ref, edge }, middle(from, to)),
              onRemove: (corner: number) => removeCorner(store, { ...ref, corner }),
            })}
      />
      {thing.role === "parcel" && path.closed && <SideTable project={project} thing={thing} path={path} />}
      {thing.paths.length > 1 && (
        <p class="panel-buttons">
          <button type="button" class="quiet-button" onClick={() => removePath(store, thing.key, path.path, name)}>
            Take {name} out
          </button>
        </p>
      )}
    </>
  );
}

/** "hole 2", "outline 1"; empty when there is only one path. */
function pathName({ paths }: DrawnThing, path: DrawnPath): string {
  if (paths.length < 2) return "";
  const alike = paths.filter(({ isHole }) => isHole === path.isHole);
  const kind = path.isHole ? "hole" : path.closed ? "outline" : "part";
  return alike.length === 1 ? `the ${kind}` : `${kind} ${alike.indexOf(path) + 1}`;
}
