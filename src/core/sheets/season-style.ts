import { chartStyle } from "./chart-style.ts";

/** The style of charts with that of the season's bars. */
export const seasonStyle = `${chartStyle}
.chart .season-peak{fill:#f7f4ec;stroke:#22281f;stroke-width:1.4}
.chart .season-usual{fill:#1f7590}
.chart .season-young{fill:#f7f4ec;stroke:#22281f;stroke-width:1.6}
.chart .season-first{fill:#22281f}`;
