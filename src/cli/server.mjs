/** A small server of static files, for this machine only. Needs nothing installed. */
import { createReadStream } from "node:fs";
import { stat } from "node:fs/promises";
import { createServer } from "node:http";
import { pipeline } from "node:stream";
import { basename, extname, join, normalize, sep } from "node:path";

const types = {
  ".css": "text/css; charset=utf-8",
  ".html": "text/html; charset=utf-8",
  ".ico": "image/x-icon",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".map": "application/json; charset=utf-8",
  ".md": "text/markdown; charset=utf-8",
  ".mjs": "text/javascript; charset=utf-8",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".txt": "text/plain; charset=utf-8",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json; charset=utf-8",
  ".woff2": "font/woff2",
};

const CONTENT_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "frame-src 'self' blob:",
  "frame-ancestors 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");

/** The file that a request means, the address to ask for instead, or nothing when there is none inside the folder. */
async function fileFor(folder, url) {
  let path, asked;
  try {
    asked = new URL(url, "http://localhost");
    path = normalize(join(folder, decodeURIComponent(asked.pathname)));
  } catch {
    return undefined;
  }
  if (path.includes("\0") || !`${path}${sep}`.startsWith(`${normalize(folder)}${sep}`)) return undefined;
  const found = await stat(path).catch(() => undefined);
  if (found?.isFile()) return { path, size: found.size };
  const index = join(path, "index.html");
  const page = found?.isDirectory() ? await stat(index).catch(() => undefined) : undefined;
  if (!page?.isFile()) return undefined;
  // What the page asks for stands beside it, so its address has to be that of a folder.
  return asked.pathname.endsWith("/")
    ? { path: index, size: page.size }
    : { instead: `${basename(asked.pathname)}/${asked.search}` };
}

async function answer(folder, request, response) {
  if (request.method !== "GET" && request.method !== "HEAD") return response.writeHead(405).end();
  const file = await fileFor(folder, request.url ?? "/");
  if (!file) return response.writeHead(404, { "content-type": "text/plain" }).end("not found\n");
  if (file.instead) return response.writeHead(308, { location: file.instead }).end();
  response.writeHead(200, {
    "content-type": types[extname(file.path)] ?? "application/octet-stream",
    "content-length": file.size,
    "cache-control": "no-cache",
    "x-content-type-options": "nosniff",
    // Codes are scanned with the camera; nothing else of the device is ever asked for, by this page or inside it.
    "permissions-policy": "camera=(self), microphone=(), geolocation=(), payment=(), usb=(), serial=()",
    // Beside the page's own, for what a page cannot say of itself and for its workers. A lesson may stand in a frame of its own origin.
    "content-security-policy": CONTENT_POLICY,
  });
  if (request.method === "HEAD") return response.end();
  // Whoever breaks off lets go of the file as well.
  pipeline(createReadStream(file.path), response, () => undefined);
}

const listen = (server, port) =>
  new Promise((done, failed) => {
    server.once("error", failed);
    server.listen(port, "127.0.0.1", () => done(server.address().port));
  });

/**
 * Serves a folder on 127.0.0.1, at the wanted port or the next free one; port 0 takes any.
 * Returns the address and a `close` that also ends connections that are still open.
 */
export async function serve(folder, port = 0) {
  for (let tried = 0; ; tried++) {
    const server = createServer((request, response) => void answer(folder, request, response));
    try {
      const taken = await listen(server, port === 0 ? 0 : port + tried);
      const close = () =>
        new Promise((done) => {
          server.close(() => done());
          server.closeAllConnections();
        });
      return { url: `http://127.0.0.1:${taken}/`, port: taken, close };
    } catch (error) {
      if (error.code !== "EADDRINUSE" || tried >= 50) throw error;
    }
  }
}
