/** Paints the icons that a device installs, from the one picture that we draw: `node scripts/icons.mjs` after changing it. */
import { readFileSync } from "node:fs";
import { startBrowser } from "../tests/e2e/browser.mjs";
import { at } from "./lib/project.mjs";

/** A maskable icon is cut to any shape: what matters stands within four fifths of it, and its ground fills the rest. */
const ICONS = [
  { name: "icon-192", size: 192, isMaskable: false },
  { name: "icon-512", size: 512, isMaskable: false },
  { name: "icon-maskable-192", size: 192, isMaskable: true },
  { name: "icon-maskable-512", size: 512, isMaskable: true },
];
const EDGE = 0.12;

const svg = readFileSync(at("static/icon.svg"), "utf8");
const ground = /fill="(#[0-9a-f]+)"/i.exec(svg)[1];
const { browser, missing } = await startBrowser();
if (missing) {
  console.error(missing);
  process.exit(1);
}
for (const { name, size, isMaskable } of ICONS) {
  const edge = isMaskable ? Math.round(size * EDGE) : 0;
  const page = await browser.newPage({ viewport: { width: size, height: size }, deviceScaleFactor: 1 });
  const picture = svg
    .replace("<svg ", `<svg width="${size - 2 * edge}" height="${size - 2 * edge}" style="display:block" `)
    .replace(/rx="\d+"/, isMaskable ? 'rx="0"' : "$&");
  await page.setContent(
    `<body style="margin:0;padding:${edge}px;background:${isMaskable ? ground : "transparent"}">${picture}</body>`,
  );
  await page.screenshot({ path: at(`static/${name}.png`), omitBackground: true });
  await page.close();
}
await browser.close();
