import { existsSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { serve as serveFolder } from "./server.mjs";
import { type Command, UsageError } from "./command";
import { asText, jsonLine, wrapped } from "./print";
import { say, spell } from "./words";

/** The built app stands beside the built command line, in a clone as in an installed package. */
const app = fileURLToPath(new URL("../dist", import.meta.url));
const PORT = 4173;

/** Serves the app to this machine only, until it is stopped. */
export const serve: Command = {
  name: "serve",
  summary: "cli.serve.summary",
  help: "cli.serve.help",
  flags: [{ name: "--port", value: "N" }],
  takesFiles: false,
  async run({ flags, json }, io) {
    const port = portOf(flags.get("--port"));
    if (!existsSync(join(app, "index.html"))) {
      io.err(asText([spell(say("cli.serve.noApp"))]));
      return 2;
    }
    const stopped = io.untilStopped();
    const server = await serveFolder(app, port);
    if (port !== 0 && server.port !== port)
      io.err(asText(wrapped("", spell(say("cli.serve.otherPort", gapsOf(port, server.port))), "")));
    io.out(json ? jsonLine({ url: server.url, port: server.port }) : `${server.url}\n`);
    io.err(asText([spell(say("cli.serve.running"))]));
    if (!stopped.aborted)
      await new Promise<void>((done) => stopped.addEventListener("abort", () => done(), { once: true }));
    await server.close();
    return 0;
  },
};

const gapsOf = (wanted: number, port: number) => ({
  wanted: String(wanted),
  port: String(port),
  usual: `http://127.0.0.1:${wanted}/`,
});

function portOf(text: string | true | undefined): number {
  if (text === undefined) return PORT;
  const port = Number(text);
  if (/^\d{1,5}$/.test(String(text)) && port <= 65535) return port;
  throw new UsageError(spell(say("cli.serve.noPort", { port: String(text) })));
}
