import { type ReadonlySignal, signal } from "@preact/signals";
import { text, type UnitSystem } from "../../core/units.ts";
import { gpxHeights } from "../../readers/gpx-heights.ts";
import type { VerticalUnit } from "../../readers/vertical-unit.ts";
import type { AboutHeights, HeightAnswer, HeightQuestion, HeightWorker, StartHeightWorker } from "./height-messages.ts";
import type { HeightFeature } from "./take-heights.ts";

/** How far a height file has come. */
export type ReadingState =
  | { readonly kind: "none" }
  | { readonly kind: "looking"; readonly file: File }
  | { readonly kind: "asked"; readonly file: File; readonly about: AboutHeights; readonly system: string | null }
  | { readonly kind: "reading"; readonly file: File; readonly share_ratio: number }
  | { readonly kind: "refused"; readonly file: File; readonly sentences: readonly string[] }
  | { readonly kind: "taken"; readonly file: File; readonly sentences: readonly string[] };

/** Where heights are wanted, and the units to speak in. */
type WantedGround = Pick<HeightQuestion, "corners" | "units">;

const broken = "The part of the page that reads height files could not be loaded. Try again when the network is there.";

/** One height file at a time, from being chosen to being taken into the project, read by a worker that is ended when it is stopped. */
export class HeightReading {
  readonly #startWorker: StartHeightWorker;
  readonly #take: (file: File, grid: HeightFeature) => readonly string[];
  readonly #state = signal<ReadingState>({ kind: "none" });
  #worker: HeightWorker | null = null;
  #number = 0;
  #system: string | null = null;

  /** `take` puts heights into the project and says why not, or gives an empty list. */
  constructor(startWorker: StartHeightWorker, take: (file: File, grid: HeightFeature) => readonly string[]) {
    this.#startWorker = startWorker;
    this.#take = take;
  }

  get state(): ReadonlySignal<ReadingState> {
    return this.#state;
  }

  /** Asks what the file is; with the coordinate system when that was not known. */
  look(file: File, ground: WantedGround, system: string | null = null): void {
    this.#state.value = { kind: "looking", file };
    this.#system = system;
    this.#ask({ file, ...ground, system, unit: null });
  }

  /** Takes in the heights of a track, which are metres: nothing is asked. */
  async takeTrack(file: File, units: UnitSystem): Promise<void> {
    const track = gpxHeights(await file.text(), "track", file.name);
    const sentences = track.ok
      ? this.#take(file, track.value)
      : track.findings.map(({ message, remedy }) => `${text(message, units)} ${text(remedy, units)}`);
    this.#state.value = { kind: sentences.length > 0 ? "refused" : "taken", file, sentences };
  }

  /** Reads the heights around the parcels, of the file that was looked at. */
  read(file: File, ground: WantedGround, unit: VerticalUnit): void {
    this.#state.value = { kind: "reading", file, share_ratio: 0 };
    this.#ask({ file, ...ground, system: this.#system, unit });
  }

  /** Stops whatever is going on, and forgets the file. */
  readonly stop = (): void => {
    this.#end();
    this.#state.value = { kind: "none" };
  };

  #ask(question: Omit<HeightQuestion, "number">): void {
    this.#worker ??= this.#startWorker(this.#tell, this.#failed);
    this.#worker.ask({ ...question, number: ++this.#number });
  }

  readonly #tell = (answer: HeightAnswer): void => {
    const state = this.#state.peek();
    if (answer.number !== this.#number || state.kind === "none") return;
    const { file } = state;
    switch (answer.kind) {
      case "progress":
        if (state.kind === "reading") this.#state.value = { ...state, share_ratio: answer.share_ratio };
        return;
      case "about":
        this.#state.value = { kind: "asked", file, about: answer.about, system: this.#system };
        return;
      case "refused":
        this.#state.value = { kind: "refused", file, sentences: answer.sentences };
        return;
      case "taken": {
        const against = this.#take(file, answer.grid);
        this.#end();
        this.#state.value =
          against.length > 0
            ? { kind: "refused", file, sentences: against }
            : { kind: "taken", file, sentences: answer.sentences };
        return;
      }
      default:
        answer satisfies never;
    }
  };

  readonly #failed = (): void => {
    const state = this.#state.peek();
    this.#end();
    if (state.kind !== "none") this.#state.value = { kind: "refused", file: state.file, sentences: [broken] };
  };

  #end(): void {
    this.#worker?.end();
    this.#worker = null;
    this.#number++;
  }
}
