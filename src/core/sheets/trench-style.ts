/** Colours and lines of the profile of a trench; it goes with the drawing wherever that goes. */
export const trenchStyle = `
.trench-side{font:13px "Atkinson Hyperlegible",system-ui,sans-serif;font-variant-numeric:tabular-nums}
.trench-side text{fill:#22281f}
.trench-side .trench-paper{fill:#f7f4ec}
.trench-side .trench-open{fill:#a9552e;fill-opacity:.13}
.trench-side .trench-water{fill:none;stroke:#1f7590;stroke-width:1.2}
.trench-side .trench-level{fill:none;stroke:#1f7590;stroke-width:1.6}
.trench-side .trench-ground{fill:none;stroke:#22281f;stroke-width:1.8}
.trench-side .trench-unknown{fill:none;stroke:#22281f;stroke-width:1.8;stroke-dasharray:8 5}
.trench-side .trench-earth{fill:none;stroke:#a9552e;stroke-width:1}
.trench-side .trench-bottom{fill:none;stroke:#a9552e;stroke-width:1.8}
.trench-side .trench-pipe{fill:none;stroke:#1f7590;stroke-linejoin:round}
.trench-side .trench-tee,.trench-side .trench-bend{fill:none;stroke:#22281f;stroke-width:1.4}
.trench-side .trench-lead,.trench-side .trench-grid{fill:none;stroke:#d9d4c5;stroke-width:1}
.trench-side .trench-crossing{fill:none;stroke:#22281f;stroke-width:1.6}
.trench-side .trench-joint{fill:#f7f4ec;stroke:#22281f;stroke-width:1.5}
.trench-side .is-start{fill:#22281f}
.trench-side .trench-low{fill:#f7f4ec;stroke:#1f7590;stroke-width:1.6}
.trench-side .trench-low.is-fitted{fill:#1f7590}
.trench-side .trench-high{fill:#f7f4ec;stroke:#54636e;stroke-width:1.6}
.trench-side .trench-high.is-fitted{fill:#54636e}
.trench-side .trench-label{paint-order:stroke;stroke:#f7f4ec;stroke-linejoin:round;stroke-width:4px}
.trench-side .trench-column text{font-size:12px}
.trench-side .trench-column path,.trench-side .trench-scale path{fill:none;stroke:#5c6256;stroke-width:1}
`.trim();
