/** What hands do to a thing that they hold: spots and distances on the host [px]. */
export interface Grip {
  shift(dx: number, dy: number): void;
  /** so many times as large, and turned [degrees], about a spot */
  stretch(factor: number, turn: number, x: number, y: number): void;
}

interface Finger {
  readonly x: number;
  readonly y: number;
}

/** How much one notch of a wheel sizes, and how far it turns with Shift [degrees per px]. */
const [WHEEL, WHEEL_TURN] = [1.0015, 0.02];

/** One finger or the mouse moves what lies there; two size and turn it; a wheel sizes it, and with Shift turns it. */
export function gripping(host: HTMLElement, grip: Grip): () => void {
  const fingers = new Map<number, Finger>();
  const spotOf = (event: PointerEvent | WheelEvent): Finger => {
    const { left, top } = host.getBoundingClientRect();
    return { x: event.clientX - left, y: event.clientY - top };
  };

  function down(event: PointerEvent) {
    if (event.pointerType === "mouse" && event.button > 1) return;
    host.setPointerCapture(event.pointerId);
    fingers.set(event.pointerId, spotOf(event));
  }

  function move(event: PointerEvent) {
    const before = fingers.get(event.pointerId);
    if (before === undefined) return;
    const now = spotOf(event);
    fingers.set(event.pointerId, now);
    // Three at once are rain, or a palm.
    if (fingers.size === 1) grip.shift(now.x - before.x, now.y - before.y);
    else if (fingers.size === 2) pinch(event.pointerId, before, now);
  }

  /** The other finger stands still meanwhile: what lies under it stays there. */
  function pinch(id: number, before: Finger, now: Finger) {
    const other = [...fingers].find(([key]) => key !== id)![1];
    const spread = (it: Finger) => Math.max(1, Math.hypot(it.x - other.x, it.y - other.y));
    const angle = (it: Finger) => (Math.atan2(it.y - other.y, it.x - other.x) * 180) / Math.PI;
    grip.stretch(spread(now) / spread(before), angle(now) - angle(before), other.x, other.y);
  }

  function up(event: PointerEvent) {
    fingers.delete(event.pointerId);
  }

  function wheel(event: WheelEvent) {
    event.preventDefault();
    const { x, y } = spotOf(event);
    // Some browsers turn a wheel with Shift into one that goes sideways.
    const px = (event.deltaY === 0 ? event.deltaX : event.deltaY) * (event.deltaMode === 1 ? 16 : 1);
    if (event.shiftKey) grip.stretch(1, px * WHEEL_TURN, x, y);
    else grip.stretch(WHEEL ** -px, 0, x, y);
  }

  const away = new AbortController();
  const { signal } = away;
  host.addEventListener("pointerdown", down, { signal });
  host.addEventListener("pointermove", move, { signal });
  host.addEventListener("pointerup", up, { signal });
  host.addEventListener("pointercancel", up, { signal });
  host.addEventListener("wheel", wheel, { signal, passive: false });
  host.addEventListener("contextmenu", (event) => event.preventDefault(), { signal });
  return () => away.abort();
}
