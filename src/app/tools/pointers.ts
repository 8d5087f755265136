import { idle, pressed } from "./idle";
import type { Hand, PointerTool, Touch } from "./tool";

/** What the listener needs of the canvas. */
export interface Surface {
  readonly host: HTMLElement;
  readonly hand: Hand;
  touchOf(event: PointerEvent | MouseEvent): Touch;
  zoom(factor: number, screenX: number, screenY: number): void;
  pan(dx: number, dy: number): void;
}

interface Finger {
  readonly x: number;
  readonly y: number;
}

/** How much one notch of a wheel zooms. */
const WHEEL = 1.0015;

/**
 * Turns pointer events into tools. One pointer works; a second finger cancels what the first began, with no edit, and
 * both then pan and zoom; a third makes all of them void until every finger is up (rain, a palm).
 */
export function listen({ host, hand, touchOf, zoom, pan }: Surface): () => void {
  let tool: PointerTool = idle;
  let pinching = false;
  let isVoid = false;
  const fingers = new Map<number, Finger>();

  const spotOf = (event: PointerEvent): Finger => ({ x: event.clientX, y: event.clientY });

  function down(event: PointerEvent) {
    if (event.pointerType === "mouse" && event.button > 1) return;
    host.setPointerCapture(event.pointerId);
    fingers.set(event.pointerId, spotOf(event));
    if (fingers.size === 1) {
      tool = pressed(touchOf(event));
      return;
    }
    tool.cancel?.(hand);
    tool = idle;
    pinching = fingers.size === 2;
    isVoid ||= fingers.size > 2;
  }

  function move(event: PointerEvent) {
    const before = fingers.get(event.pointerId);
    if (before === undefined) return;
    const now = spotOf(event);
    fingers.set(event.pointerId, now);
    if (isVoid) return;
    if (pinching) return pinch(event.pointerId, before, now);
    if (fingers.size === 1) tool = tool.move?.(hand, touchOf(event)) ?? tool;
  }

  function pinch(id: number, before: Finger, now: Finger) {
    const other = [...fingers].find(([key]) => key !== id)?.[1];
    if (other === undefined) return;
    const box = host.getBoundingClientRect();
    const spread = (a: Finger) => Math.max(1, Math.hypot(a.x - other.x, a.y - other.y));
    pan((now.x - before.x) / 2, (now.y - before.y) / 2);
    zoom(spread(now) / spread(before), (now.x + other.x) / 2 - box.left, (now.y + other.y) / 2 - box.top);
  }

  function up(event: PointerEvent) {
    if (!fingers.delete(event.pointerId)) return;
    if (!pinching && !isVoid && fingers.size === 0) tool = tool.up?.(hand, touchOf(event)) ?? idle;
    release();
  }

  function cancel(event: PointerEvent) {
    if (!fingers.delete(event.pointerId)) return;
    tool.cancel?.(hand);
    tool = idle;
    release();
  }

  function release() {
    if (fingers.size > 0) return;
    pinching = false;
    isVoid = false;
    tool = idle;
  }

  function wheel(event: WheelEvent) {
    event.preventDefault();
    const box = host.getBoundingClientRect();
    const lines = event.deltaMode === 1 ? 16 : 1;
    if (event.ctrlKey || !event.shiftKey) {
      const strength = event.ctrlKey ? 4 : 1;
      zoom(WHEEL ** (-event.deltaY * lines * strength), event.clientX - box.left, event.clientY - box.top);
    } else pan(-event.deltaY * lines, 0);
  }

  const away = new AbortController();
  const { signal } = away;
  host.addEventListener("pointerdown", down, { signal });
  host.addEventListener("pointermove", move, { signal });
  host.addEventListener("pointerup", up, { signal });
  host.addEventListener("pointercancel", cancel, { signal });
  host.addEventListener("wheel", wheel, { signal, passive: false });
  host.addEventListener("contextmenu", (event) => event.preventDefault(), { signal });
  return () => away.abort();
}
