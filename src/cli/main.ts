import { processTerminal } from "./process-terminal.ts";
import { run } from "./run.ts";
import { exitCode } from "./terminal.ts";

// Whoever reads us may stop early (head, a pager that is closed): that ends the writing, and is no failure.
process.stdout.on("error", (problem: NodeJS.ErrnoException) => {
  if (problem.code !== "EPIPE") throw problem;
  process.exit();
});

try {
  process.exitCode = await run(process.argv.slice(2), processTerminal(["plan", "tautrow"]));
} catch (problem) {
  const trace = problem instanceof Error ? (problem.stack ?? problem.message) : String(problem);
  process.stderr.write(
    `This is a bug in tautrow, not a mistake of yours. Please report it with the file and these lines.\n${trace}\n`,
  );
  process.exitCode = exitCode.bug;
}
