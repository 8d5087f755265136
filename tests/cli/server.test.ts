import { mkdirSync, readdirSync, writeFileSync } from "node:fs";
import { createServer, get, type IncomingMessage } from "node:http";
import { join } from "node:path";
import { expect, test, vi } from "vitest";
import { serve } from "../../src/cli/server.mjs";
import { folder } from "./line";

/** What this process has open. */
const open = (): number => readdirSync("/dev/fd").length;

const ask = (url: string): Promise<IncomingMessage> =>
  new Promise((done, fail) => get(url, done).on("error", fail));

test("a download that is broken off lets go of its file", async () => {
  const at = folder();
  writeFileSync(join(at, "large.bin"), Buffer.alloc(30_000_000));
  const server = await serve(at);
  const before = open();
  for (let k = 0; k < 10; k++) (await ask(`${server.url}large.bin`)).destroy();
  await vi.waitFor(() => expect(open()).toBeLessThan(before + 3), { timeout: 5000 });
  await server.close();
});

test("the page is told what it may not do in its head as well", async () => {
  const at = folder();
  writeFileSync(join(at, "index.html"), "<p>here</p>");
  const server = await serve(at);
  const { headers } = await ask(server.url);
  expect(headers["content-security-policy"]).toMatch(
    /default-src 'none'.*worker-src 'self'.*frame-ancestors/,
  );
  expect(headers["permissions-policy"]).not.toContain("bluetooth");
  await server.close();
});

test("a folder asked for without its last stroke is asked for with it, as the page's own parts stand beside it", async () => {
  const at = folder();
  mkdirSync(join(at, "some", "folder"), { recursive: true });
  writeFileSync(join(at, "some", "folder", "index.html"), "<p>here</p>");
  const server = await serve(at);
  const { statusCode, headers } = await ask(`${server.url}some/folder?demo=tap`);
  expect([statusCode, headers.location]).toEqual([308, "folder/?demo=tap"]);
  expect((await ask(`${server.url}some/folder/?demo=tap`)).statusCode).toBe(200);
  await server.close();
});

test("a port that is taken leads to the next one, and the caller is told which", async () => {
  const other = createServer();
  const port = await new Promise<number>((done) =>
    other.listen(0, "127.0.0.1", () => done((other.address() as { port: number }).port)),
  );
  const server = await serve(folder(), port);
  expect(server.port).toBeGreaterThan(port);
  await server.close();
  other.close();
});
