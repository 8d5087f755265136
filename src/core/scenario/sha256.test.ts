import { createHash } from "node:crypto";
import { expect, test } from "vitest";
import { sha256 } from "./sha256";

test.each(["", "abc", "a".repeat(55), "a".repeat(56), "a".repeat(64), "é€😀 pole 9", "x".repeat(100_000)])(
  "the digest of %j is that of the platform's own",
  (text) => expect(sha256(text)).toBe(createHash("sha256").update(text, "utf8").digest("hex")),
);
