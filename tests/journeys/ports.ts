import { createServer } from "node:net";

/**
 * Where the built page and the plugin's host page are served while journeys run: two free ports, chosen by the first process and handed to
 * those it starts, so that two checkouts can be tested at the same time.
 */
const variable = "TAUTROW_JOURNEY_PORTS";
process.env[variable] ??= `${await freePort()},${await freePort()}`;
const [page = 0, host = 0] = process.env[variable].split(",").map(Number);

export const ports = { page, host } as const;

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.on("error", reject);
    server.listen(0, "127.0.0.1", () => {
      const address = server.address();
      server.close(() => resolve(typeof address === "object" && address !== null ? address.port : 0));
    });
  });
}
