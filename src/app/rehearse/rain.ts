/** Three contacts at once are rain, not a hand. */
const MOST_CONTACTS = 2;
const SETTLED_MS = 300;

/** Keeps rain on the glass from pressing anything: from the third contact on, until all are gone. */
export class Rain {
  #falls = false;

  readonly contacts = ({ touches }: TouchEvent): void => {
    if (touches.length > MOST_CONTACTS) this.#falls = true;
    else if (touches.length === 0 && this.#falls) setTimeout(() => (this.#falls = false), SETTLED_MS);
  };

  readonly ignore = (event: MouseEvent): void => {
    if (!this.#falls) return;
    event.preventDefault();
    event.stopPropagation();
  };
}
