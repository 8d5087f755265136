/** `npm start`: installs and builds what is missing, then serves the app on this machine. */
import { at, buildIfStale, checkNode, install, say } from "./lib/project.mjs";
import { serve } from "../src/cli/server.mjs";

const given = process.env.PORT ?? "4173";
const wanted = Number(given);
if (!/^\d{1,5}$/.test(given) || wanted > 65535) {
  console.error(`PORT=${given} is not a port: give a whole number from 0 to 65535, or leave it out for 4173`);
  process.exit(2);
}
checkNode();
install();
buildIfStale("app");
const { url, port } = await serve(at("dist"), wanted);
if (wanted !== 0 && port !== wanted) {
  say(`port ${wanted} is taken, so this uses ${port}`);
  say(
    `drawings are kept by address: those made at http://127.0.0.1:${wanted}/ are there again once that port is free`,
  );
}
say("serving the app to this machine only; Ctrl+C ends it");
console.log(url);
