import { tellRouteTimes } from "./route-times.ts";

// Prints how long route and trench take, without the other benchmarks: node --import tsx tests/bench/route.ts
tellRouteTimes();
