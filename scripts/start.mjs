/** `npm start`: installs and builds what is missing, then serves the app on this machine. */
import { at, buildIfStale, checkNode, install, say } from "./lib/project.mjs";
import { serve } from "../src/cli/server.mjs";

const wanted = Number(process.env.PORT ?? 4173);
checkNode();
install();
buildIfStale("app");
const { url, port } = await serve(at("dist"), wanted);
if (port !== wanted) say(`port ${wanted} is taken, so this uses ${port}`);
say("serving the app to this machine only; Ctrl+C ends it");
console.log(url);
