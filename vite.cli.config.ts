import { chmodSync } from "node:fs";
import { defineConfig, type Plugin } from "vite";

/** Makes the one output file a program: a first line that says what runs it, and leave to run it. */
const program = (): Plugin => ({
  name: "stillhot-program",
  generateBundle(_options, bundle) {
    const main = bundle["main.js"];
    if (main?.type === "chunk" && !main.code.startsWith("#!"))
      main.code = `#!/usr/bin/env node\n${main.code}`;
  },
  writeBundle() {
    chmodSync("dist-cli/main.js", 0o755);
  },
});

/** The command line: one file for plain Node 20, with everything it needs inside. */
export default defineConfig({
  publicDir: false,
  build: {
    ssr: "src/cli/main.ts",
    outDir: "dist-cli",
    target: "node20",
    license: { fileName: "licences.md" },
    rolldownOptions: { output: { codeSplitting: false } },
  },
  ssr: { noExternal: true },
  plugins: [program()],
});
