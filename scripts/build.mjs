/** Installs what is missing and builds the app and the command line, as `npm pack` ships them. */
import { build, checkNode, install, say } from "./lib/project.mjs";

checkNode();
install();
for (const name of ["app", "cli"]) {
  say(`build: ${name}`);
  if (build(name) !== 0) process.exit(1);
}
