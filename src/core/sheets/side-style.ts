/** Colours and lines of the drawing of a row's side; it goes with the drawing wherever that goes. */
export const sideStyle = `
.row-side{font:13px "Atkinson Hyperlegible",system-ui,sans-serif;font-variant-numeric:tabular-nums}
.row-side text{fill:#22281f}
.row-side .side-paper{fill:#f7f4ec}
.row-side .side-ground{fill:none;stroke:#22281f;stroke-width:1.6}
.row-side .side-earth{fill:none;stroke:#a9552e;stroke-width:1}
.row-side .side-wire path{fill:none;stroke:#54636e;stroke-width:1.4}
.row-side .wire-drip path{stroke-dasharray:7 3}
.row-side .wire-foliage path{stroke-dasharray:2 3}
.row-side .side-hose{fill:none;stroke:#1f7590;stroke-width:3}
.row-side .side-emitter,.row-side .side-water{fill:#1f7590}
.row-side .side-stake{fill:none;stroke:#5c6256;stroke-width:1}
.row-side .side-vine{fill:none;stroke:#3e6b3a;stroke-linecap:round;stroke-width:2}
.row-side .side-post{fill:#22281f}
.row-side .side-buried{fill:none;stroke:#22281f;stroke-width:1;stroke-dasharray:3 2}
.row-side .side-tie{fill:none;stroke:#54636e;stroke-width:1.8}
.row-side .side-brace{fill:none;stroke:#22281f;stroke-width:4}
.row-side .side-anchor{fill:none;stroke:#22281f;stroke-width:2.4}
.row-side .side-dimension path{fill:none;stroke:#5c6256;stroke-width:1}
.row-side .side-dimension text,.row-side .side-scale text{paint-order:stroke;stroke:#f7f4ec;stroke-linejoin:round;stroke-width:5px}
.row-side .side-scale path{fill:none;stroke:#22281f;stroke-width:1.6}
`.trim();
