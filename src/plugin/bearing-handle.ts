import type { Map as MapLibreMap } from "maplibre-gl";
import type { BlockGround } from "../core/ground/ground.ts";
import { lonLat } from "../core/plane/coordinate.ts";
import { angleTo, blockReach_m, handleBearing, nearerEnd, planeDirection, turned } from "./handle-geometry.ts";
import { nearLongitude, type Placing } from "./placing.ts";
import type { PlanStrings } from "./strings.ts";

/** How the bearing moves: many "moving" while a pointer holds the handle, one "settled" at the end and after a key. */
export interface BearingChange {
  readonly block: string;
  /** True degrees, a tenth of a degree, in [0, 180). */
  readonly bearing_deg: number;
  readonly phase: "moving" | "settled";
  readonly by: "pointer" | "key";
}

/** What the handle turns. */
export interface HandleSubject {
  readonly ground: BlockGround;
  readonly name: string;
  readonly bearing_deg: number;
  readonly placing: Placing;
}

const beyond_px = 34;
const least_px = 64;
const margin_px = 40;

/** A knob on a line through the block's middle, along the rows: dragged by mouse or touch, turned by keys. */
export class BearingHandle {
  readonly element: HTMLElement;
  readonly knob: HTMLElement;
  readonly #map: MapLibreMap;
  readonly #strings: PlanStrings;
  readonly #onChange: (change: BearingChange) => void;
  readonly #line = document.createElement("div");
  readonly #label = document.createElement("span");
  #subject: HandleSubject | null = null;
  #angle_deg = 0;
  #reach_m = 0;
  #pointer: number | null = null;
  #grip_deg = 0;
  #box = { left: 0, top: 0, width: 0, height: 0 };
  #waiting: { x: number; y: number } | null = null;
  #frame = 0;

  constructor(map: MapLibreMap, strings: PlanStrings, onChange: (change: BearingChange) => void) {
    this.#map = map;
    this.#strings = strings;
    this.#onChange = onChange;
    this.element = document.createElement("div");
    this.element.className = "tautrow-handle";
    this.element.hidden = true;
    this.#line.className = "tautrow-handle-line";
    this.knob = document.createElement("div");
    this.knob.className = "tautrow-handle-knob";
    this.knob.tabIndex = 0;
    this.knob.title = strings.handleHint;
    this.knob.setAttribute("role", "slider");
    this.knob.setAttribute("aria-valuemin", "0");
    this.knob.setAttribute("aria-valuemax", "180");
    this.#label.className = "tautrow-handle-label";
    this.#label.setAttribute("aria-hidden", "true");
    this.element.append(this.#line, this.knob, this.#label);
    this.knob.addEventListener("pointerdown", this.#press);
    this.knob.addEventListener("pointermove", this.#move);
    this.knob.addEventListener("pointerup", this.#release);
    this.knob.addEventListener("pointercancel", this.#release);
    this.knob.addEventListener("keydown", this.#key);
    map.on("move", this.#place);
    map.on("resize", this.#resize);
    this.#measure();
  }

  /** True while a pointer holds the handle. */
  get isHeld(): boolean {
    return this.#pointer !== null;
  }

  /** Puts the handle on a block, or hides it. */
  show(subject: HandleSubject | null): void {
    const sameGround = subject?.ground === this.#subject?.ground;
    this.#subject = subject;
    this.element.hidden = subject === null;
    if (!subject) return;
    if (!sameGround) this.#reach_m = blockReach_m(subject.ground);
    this.#angle_deg = nearerEnd(subject.bearing_deg, this.#angle_deg);
    this.knob.setAttribute("aria-label", this.#strings.handle(subject.name));
    this.knob.setAttribute("aria-valuenow", String(handleBearing(subject.bearing_deg)));
    this.knob.setAttribute("aria-valuetext", this.#strings.bearing(subject.bearing_deg));
    this.#label.textContent = this.#strings.bearing(subject.bearing_deg);
    this.#place();
  }

  /** Takes the handle off the map for good. */
  remove(): void {
    cancelAnimationFrame(this.#frame);
    this.#map.off("move", this.#place);
    this.#map.off("resize", this.#resize);
    this.element.remove();
  }

  readonly #resize = (): void => {
    this.#measure();
    this.#place();
  };

  /** Asked for once, not in every frame: each time the browser would have to lay out the page first. */
  #measure(): void {
    const { left, top, width, height } = this.#map.getContainer().getBoundingClientRect();
    this.#box = { left, top, width, height };
  }

  readonly #place = (): void => {
    const subject = this.#subject;
    if (!subject) return;
    const { ground, placing } = subject;
    const [x, y] = ground.centre;
    const [dx, dy] = planeDirection(ground, this.#angle_deg);
    const step_m = Math.max(1, this.#reach_m);
    const middle = this.#map.project(placing.lngLat(x, y));
    const ahead = this.#map.project(placing.lngLat(x + dx * step_m, y + dy * step_m));
    const [px, py] = [ahead.x - middle.x, ahead.y - middle.y];
    const size = Math.hypot(px, py) || 1;
    const room = this.#room(middle, px / size, py / size);
    const reach_px = Math.max(least_px, Math.min(size + beyond_px, room));
    const turn_deg = (Math.atan2(py, px) * 180) / Math.PI;
    this.#line.style.width = `${2 * reach_px}px`;
    this.#line.style.transform = `translate(${middle.x - reach_px}px, ${middle.y}px) rotate(${turn_deg}deg)`;
    const knob = { x: middle.x + (px / size) * reach_px, y: middle.y + (py / size) * reach_px };
    this.knob.style.transform = `translate(${knob.x}px, ${knob.y}px) translate(-50%, -50%) rotate(${turn_deg}deg)`;
    this.#label.style.transform = `translate(${knob.x}px, ${knob.y}px) translate(-50%, ${py > 0 ? "-190%" : "90%"})`;
  };

  /** How far the knob may go from the middle so that it stays in view. */
  #room(middle: { x: number; y: number }, dx: number, dy: number): number {
    const { width, height } = this.#box;
    const along = (at: number, direction: number, size: number): number => {
      if (Math.abs(direction) < 1e-6) return Number.POSITIVE_INFINITY;
      return ((direction > 0 ? size - margin_px : margin_px) - at) / direction;
    };
    return Math.min(along(middle.x, dx, width), along(middle.y, dy, height));
  }

  readonly #press = (event: PointerEvent): void => {
    const subject = this.#subject;
    if (!subject || event.button !== 0) return;
    event.preventDefault();
    this.#measure();
    this.knob.focus({ preventScroll: true });
    this.knob.setPointerCapture(event.pointerId);
    this.#pointer = event.pointerId;
    this.#grip_deg = this.#pointerAngle(subject, event.clientX, event.clientY) - this.#angle_deg;
    this.element.classList.add("is-held");
  };

  readonly #move = (event: PointerEvent): void => {
    if (event.pointerId !== this.#pointer) return;
    this.#waiting = { x: event.clientX, y: event.clientY };
    if (this.#frame === 0) this.#frame = requestAnimationFrame(this.#follow);
  };

  /** At most once a frame: the newest place of the pointer wins. */
  readonly #follow = (): void => {
    this.#frame = 0;
    const [subject, waiting] = [this.#subject, this.#waiting];
    this.#waiting = null;
    if (!subject || !waiting) return;
    this.#turn(subject, this.#pointerAngle(subject, waiting.x, waiting.y) - this.#grip_deg, "moving", "pointer");
  };

  readonly #release = (event: PointerEvent): void => {
    if (event.pointerId !== this.#pointer) return;
    if (this.#frame !== 0) {
      cancelAnimationFrame(this.#frame);
      this.#follow();
    }
    this.#pointer = null;
    this.element.classList.remove("is-held");
    if (this.#subject) this.#turn(this.#subject, this.#angle_deg, "settled", "pointer");
  };

  readonly #key = (event: KeyboardEvent): void => {
    const steps: Readonly<Record<string, number>> = {
      ArrowRight: 1,
      ArrowUp: 1,
      ArrowLeft: -1,
      ArrowDown: -1,
      PageUp: 10,
      PageDown: -10,
    };
    const step = steps[event.key];
    if (step === undefined || !this.#subject) return;
    event.preventDefault();
    this.#turn(this.#subject, this.#angle_deg + (event.shiftKey ? step / 10 : step), "settled", "key");
  };

  #turn(subject: HandleSubject, angle_deg: number, phase: BearingChange["phase"], by: BearingChange["by"]): void {
    this.#angle_deg = turned(angle_deg, 360);
    this.#onChange({ block: subject.ground.block, bearing_deg: handleBearing(this.#angle_deg), phase, by });
  }

  #pointerAngle(subject: HandleSubject, clientX: number, clientY: number): number {
    const { lng, lat } = this.#map.unproject([clientX - this.#box.left, clientY - this.#box.top]);
    const origin = subject.placing.frame.origin;
    const at = subject.placing.frame.toPlane(lonLat(nearLongitude(lng, origin[0]), lat));
    return angleTo(subject.ground, at[0], at[1]);
  }
}
