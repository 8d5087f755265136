import { linkOfCodes, linkOfSvg, type Message, MOST_LINK_LETTERS, textOfLink } from "../../core";
import { later } from "../words/later";
import { t, told } from "../words/words";
import { type Opened, readText } from "./files";
import { isPng, linkOfPng } from "../worker/png";
import { say } from "../words/catalogue";

/** Beyond this many letters a message, a mail or an address bar may cut a link off. */
export const LONGEST_LINK = 8000;

/** What of a link is the drawing, in an address or by itself; nothing where the text is no link of ours. */
export function fragmentOf(words: string): string | undefined {
  const trimmed = words.trim();
  const hash = trimmed.indexOf("#");
  const fragment = hash === -1 ? trimmed : trimmed.slice(hash + 1);
  return /^(d1|n1|n1p)\.[\w.-]+$/.test(fragment) ? fragment : undefined;
}

/** One of up to four codes of one drawing, as they are printed. */
const ONE_PART = /^n1p\.[A-Z0-9]{8}\.([1-4])\.([1-4])\.\d+$/;

/** A drawing of more letters is read off the main thread, which would stand still over it. */
const LARGE_LETTERS = 300_000;

/** Reads what a few letters may have unpacked to. */
async function readUnpacked(text: string, name: string): Promise<Opened> {
  if (text.length <= LARGE_LETTERS) return readText(text);
  const { readLargeDrawing } = await later(() => import("./model"));
  return readLargeDrawing(new Blob([text]), name);
}

/**
 * Reads the drawing inside a link. Whoever sent it may be anyone: what it unpacks to is bounded, and read as any file.
 *
 * @param name what is being read, for whoever waits for it
 */
export async function readLink(fragment: string, name = t("share.theLink")): Promise<Opened> {
  if (fragment.length > MOST_LINK_LETTERS) return refused(say("share.linkTooLong"));
  if (fragment.startsWith("n1p.")) {
    const [, n = "", count = ""] = ONE_PART.exec(fragment) ?? [];
    return refused(n !== "" && n <= count ? say("share.onePart", { n, count }) : say("share.linkDamaged"));
  }
  const text = textOfLink(fragment);
  return text === undefined ? refused(say("share.linkDamaged")) : readUnpacked(text, name);
}

/** Reads what several scanned codes hold together. */
export async function readCodes(texts: readonly string[]): Promise<Opened> {
  const fragment = linkOfCodes(texts);
  return fragment === undefined ? refused(say("share.codesUnfit")) : readLink(fragment);
}

/** Letters at the start that say what a file is. */
const PEEK = 400;

/** Reads whatever was opened, dropped or pasted, by what it is and not by its name, which is for whoever waits. */
export async function readBytes(bytes: Uint8Array, name: string): Promise<Opened> {
  if (isPng(bytes)) return carried(linkOfPng(bytes), name);
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return refused(say("share.notText"));
  }
  const start = text.slice(0, PEEK).trimStart();
  if (/^(<\?xml|<!--|<!DOCTYPE|<svg)/i.test(start)) return carried(linkOfSvg(text), name);
  const fragment = text.length <= MOST_LINK_LETTERS ? fragmentOf(text) : undefined;
  return fragment === undefined ? readUnpacked(text, name) : readLink(fragment, name);
}

async function carried(link: string | undefined, name: string): Promise<Opened> {
  const fragment = link === undefined ? undefined : fragmentOf(link);
  return fragment === undefined ? refused(say("share.noDrawingInside")) : readLink(fragment, name);
}

const refused = (why: Message): Opened => ({ problems: [told(why)] });
