/** Colours and lines of charts; it goes with the drawing wherever that goes. */
export const chartStyle = `
.chart{font:13px "Atkinson Hyperlegible",system-ui,sans-serif;font-variant-numeric:tabular-nums}
.chart text{fill:#22281f}
.chart .chart-paper{fill:#f7f4ec}
.chart .chart-grid{fill:none;stroke:#d9d4c5;stroke-width:1}
.chart .chart-line{fill:none;stroke:#1f7590;stroke-width:2.4;stroke-linejoin:round}
.chart .chart-line.is-gauge{stroke:#62685c;stroke-width:1.4;stroke-dasharray:2 4}
.chart .chart-line.is-clean{stroke-width:1.6;stroke-dasharray:9 5}
.chart .chart-demand{fill:none;stroke:#22281f;stroke-width:1.1}
.chart .chart-limit{fill:none;stroke:#22281f;stroke-width:1.6}
.chart .chart-counted{fill:none;stroke:#22281f;stroke-width:1.2;stroke-dasharray:5 4}
.chart .chart-dot{fill:#22281f;stroke:#f7f4ec;stroke-width:1.2}
.chart .chart-dot.is-short{fill:#f7f4ec;stroke:#a32222;stroke-width:2.4}
.chart .chart-lead{fill:none;stroke:#62685c;stroke-width:1}
.chart .chart-halo{paint-order:stroke;stroke:#f7f4ec;stroke-linejoin:round;stroke-width:4px}
`.trim();
