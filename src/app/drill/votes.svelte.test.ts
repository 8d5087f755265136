import { expect, test } from "vitest";
import { voteCode, Votes } from "./votes.svelte";

test("hands are counted up and down, and never below none", () => {
  const votes = new Votes(3);
  votes.count(0, 1);
  votes.count(0, 1);
  votes.count(2, -1);
  votes.count(0, -1);
  expect(votes.counts).toEqual([1, 0, 0]);
});

test("a phone votes once, whatever it voted before, and beside the hands", () => {
  const votes = new Votes(4);
  votes.count(1, 1);
  expect(votes.take(voteCode("abc123", [0]))).toBe(true);
  expect(votes.take(voteCode("abc123", [3, 1]))).toBe(true);
  expect(votes.take(voteCode("xyz789", [1]))).toBe(true);
  expect(votes.counts).toEqual([0, 3, 0, 1]);
  votes.take(voteCode("abc123", []));
  expect(votes.counts).toEqual([0, 2, 0, 0]);
});

test.each(["https://example.org", "stillhot-vote.abc123.e", "stillhot-vote.ab.a", "stillhot-vote.abc123.A"])(
  "%s is no vote here",
  (text) => {
    const votes = new Votes(4);
    expect(votes.take(text)).toBe(false);
    expect(votes.counts).toEqual([0, 0, 0, 0]);
  },
);
