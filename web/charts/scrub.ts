import type { Attachment } from 'svelte/attachments';

interface Drag {
  /** Which way the handle goes; x where nothing is said. */
  axis?: 'x' | 'y';
  /** Where the handle is when it is taken: it does not jump to the pointer. */
  at: () => number;
  onmove: (place: number) => void;
  onend: () => void;
}

const ENDS = ['pointerup', 'pointercancel'];

/** Lets a pointer move the cursor over a chart. The keyboard's twin are the chart's own keys and the scrubber. */
export function scrubbing(onmove: (x: number, y: number) => void): Attachment<Element> {
  return (element) => {
    const follow = (event: PointerEvent): void => {
      const { left, top } = element.getBoundingClientRect();
      onmove(event.clientX - left, event.clientY - top);
    };
    return listen(element, (down) => {
      follow(down);
      return { move: follow, end: () => undefined };
    });
  };
}

/** Lets a pointer drag a handle along an axis; the hand keeps the distance at which it took hold. */
export function dragging({ axis = 'x', at, onmove, onend }: Drag): Attachment<Element> {
  const placeOf = (event: PointerEvent): number => (axis === 'x' ? event.clientX : event.clientY);
  return (element) =>
    listen(element, (down) => {
      down.preventDefault();
      const offset = at() - placeOf(down);
      return {
        move: (event) => {
          onmove(placeOf(event) + offset);
        },
        end: onend,
      };
    });
}

interface Grip {
  move: (event: PointerEvent) => void;
  end: () => void;
}

function listen(element: Element, take: (down: PointerEvent) => Grip): () => void {
  let grip: Grip | null = null;
  const down = (event: Event): void => {
    if (!(event instanceof PointerEvent) || event.button !== 0) return;
    element.setPointerCapture(event.pointerId);
    grip = take(event);
  };
  const move = (event: Event): void => {
    if (event instanceof PointerEvent) grip?.move(event);
  };
  const end = (): void => {
    grip?.end();
    grip = null;
  };
  element.addEventListener('pointerdown', down);
  element.addEventListener('pointermove', move);
  for (const name of ENDS) element.addEventListener(name, end);
  return () => {
    element.removeEventListener('pointerdown', down);
    element.removeEventListener('pointermove', move);
    for (const name of ENDS) element.removeEventListener(name, end);
  };
}
